/** “Compare With …” in the editor: a panel with what a change did, from which a click leads to both texts. */
import { editorInFront } from '../front';
import * as vscode from 'vscode';
import { newNonce } from '../nonce';
import { methods, type Against, type ComparedPanel, type SourcePlace } from '../preview/protocol';
import type { LanguageClientLike } from '../preview/host';
import { askAgainst } from './ask';
import { panelPage, refusalHtml } from './page';

export const compareCommands = [
  'draftwright.compareWith',
  'draftwright.compareWithHead',
  'draftwright.compareWithCommit',
] as const;

const VIEW_TYPE = 'draftwright.comparison';
/** Texts of revisions, which lie in no file. */
const SCHEME = 'draftwright-revision';

export function activateCompare(
  _context: vscode.ExtensionContext,
  client: LanguageClientLike,
): vscode.Disposable {
  const comparisons = new Comparisons(client);
  const [ask, head, commit] = compareCommands;
  const { registerCommand } = vscode.commands;
  return vscode.Disposable.from(
    registerCommand(ask, (...asked: unknown[]) => comparisons.ask(fileOf(asked))),
    registerCommand(head, (...asked: unknown[]) =>
      comparisons.open(fileOf(asked), { kind: 'revision', name: 'HEAD' }),
    ),
    registerCommand(commit, (...asked: unknown[]) =>
      comparisons.open(fileOf(asked), { kind: 'revision', name: commitOf(asked) ?? 'HEAD' }),
    ),
    vscode.workspace.registerTextDocumentContentProvider(SCHEME, comparisons),
    vscode.workspace.onDidSaveTextDocument((document) => comparisons.saved(document)),
  );
}

/** What was pointed at: a file of the explorer, one of source control, an entry of the timeline, or the text in front. */
function fileOf(asked: readonly unknown[]): vscode.Uri | undefined {
  for (const one of asked) {
    if (one instanceof vscode.Uri) return one;
    const uri = (one as { resourceUri?: unknown } | undefined)?.resourceUri;
    if (uri instanceof vscode.Uri) return uri;
  }
  return editorInFront()?.document.uri;
}

/** The commit of an entry of the timeline, as short as git writes it; the editor's git gives an entry its whole name. */
function commitOf(asked: readonly unknown[]): string | undefined {
  const names = asked.map((one) => (one as { id?: unknown } | undefined)?.id);
  return names
    .find((name): name is string => typeof name === 'string' && /^[0-9a-f]{40,64}$/.test(name))
    ?.slice(0, 10);
}

interface Shown {
  readonly panel: vscode.WebviewPanel;
  readonly uri: vscode.Uri;
  readonly against: Against;
}

interface Places {
  readonly was?: SourcePlace;
  readonly now?: SourcePlace;
}

class Comparisons implements vscode.TextDocumentContentProvider {
  private readonly open_ = new Set<Shown>();
  /** Texts of revisions by their address. */
  private readonly texts = new Map<string, string>();

  constructor(private readonly client: LanguageClientLike) {}

  async ask(uri: vscode.Uri | undefined): Promise<void> {
    if (!isDraft(uri)) return;
    const against = await askAgainst(this.client, uri);
    if (against !== undefined) await this.open(uri, against);
  }

  async open(uri: vscode.Uri | undefined, against: Against): Promise<void> {
    if (!isDraft(uri)) return;
    const place = { viewColumn: vscode.ViewColumn.Beside, preserveFocus: true };
    const panel = vscode.window.createWebviewPanel(VIEW_TYPE, vscode.l10n.t('Comparison'), place, {
      enableScripts: true,
      enableFindWidget: true,
      localResourceRoots: [],
    });
    const shown = { panel, uri, against };
    this.open_.add(shown);
    panel.onDidDispose(() => this.open_.delete(shown));
    panel.webview.onDidReceiveMessage((message: { readonly type: 'go'; readonly place: Places }) =>
      this.go(message.place, panel),
    );
    await this.show(shown);
  }

  /** A comparison is made anew when a draft is saved: any of them may be used by the one that is shown. */
  saved({ languageId }: vscode.TextDocument): void {
    if (languageId !== 'draftwright') return;
    for (const shown of this.open_) void this.show(shown);
  }

  provideTextDocumentContent(uri: vscode.Uri): string {
    return this.texts.get(uri.toString()) ?? '';
  }

  private async show({ panel, uri, against }: Shown): Promise<void> {
    const asked = { uri: uri.toString(), against };
    // in a browser there is neither git nor a disk, and nobody answers
    const answer = await this.client
      .sendRequest<ComparedPanel | null>(methods.compare, asked)
      .catch((): ComparedPanel => ({
        refusal: vscode.l10n.t('Comparing needs git and the files of this machine.'),
      }));
    const name = uri.path.split('/').pop() ?? '';
    const refusal =
      answer === null
        ? vscode.l10n.t('It could not be compared; the log of the language server says why.')
        : 'refusal' in answer
          ? answer.refusal
          : undefined;
    panel.title = vscode.l10n.t('Compare: {0}', name);
    if (answer !== null && 'html' in answer) this.keep(answer, against);
    const [title, html] =
      answer !== null && 'html' in answer ? [answer.title, answer.html] : [name, refusalHtml(refusal!)];
    panel.webview.html = panelPage({ title, html, nonce: newNonce() });
  }

  private keep({ texts }: Extract<ComparedPanel, { html: string }>, against: Against): void {
    if (against.kind !== 'revision') return;
    for (const [path, text] of Object.entries(texts))
      this.texts.set(revisionUri(against.name, path).toString(), text);
  }

  /** Both texts beside each other as the editor compares them; one alone where the other side has no such place. */
  private async go({ was, now }: Places, panel: vscode.WebviewPanel): Promise<void> {
    const column =
      panel.viewColumn === vscode.ViewColumn.One ? vscode.ViewColumn.Beside : vscode.ViewColumn.One;
    const options = (place: SourcePlace) => ({
      viewColumn: column,
      selection: rangeOf(place),
      preview: true,
    });
    if (was !== undefined && now !== undefined) {
      const title = `${uriOf(now).path.split('/').pop()} (${'revision' in was ? was.revision : vscode.l10n.t('as it was')} ↔ ${vscode.l10n.t('as it is')})`;
      await vscode.commands.executeCommand('vscode.diff', uriOf(was), uriOf(now), title, options(now));
    } else {
      const place = now ?? was;
      if (place !== undefined) await vscode.window.showTextDocument(uriOf(place), options(place));
    }
  }
}

function isDraft(uri: vscode.Uri | undefined): uri is vscode.Uri {
  if (uri?.scheme === 'file' && uri.path.endsWith('.draft')) return true;
  void vscode.window.showInformationMessage(
    vscode.l10n.t('Open a saved .draft file first: it is compared with another state of it.'),
  );
  return false;
}

const revisionUri = (revision: string, path: string): vscode.Uri =>
  vscode.Uri.from({ scheme: SCHEME, path: `/${path}`, query: revision });

const uriOf = (place: SourcePlace): vscode.Uri =>
  'uri' in place ? vscode.Uri.parse(place.uri) : revisionUri(place.revision, place.path);

const rangeOf = ({ range: { start, end } }: SourcePlace): vscode.Range =>
  new vscode.Range(start.line, start.character, end.line, end.character);
