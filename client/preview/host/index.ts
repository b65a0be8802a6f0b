/** The preview in the editor: its commands, the panels that are open, and bringing them back after a reload. */
import * as vscode from 'vscode';
import { editorInFront } from '../../front';
import { methods, type Do, type Laid, type Sheet, type ViewState } from '../protocol';
import { RUNNING, type LanguageClientLike } from './client';
import { Cursor } from './cursor';
import { PreviewPanel, VIEW_TYPE, type Shared } from './panel';
import { onSavedAs } from './saved-as';
import { Highlight } from './source';

export type { LanguageClientLike } from './client';

export const previewCommands = [
  'draftwright.openPreviewToSide',
  'draftwright.openPreview',
  'draftwright.openAnotherPreview',
] as const;

/** Commands that choose a tool of the preview in front, and what the preview calls it. */
export const toolCommands = {
  'draftwright.measureInPreview': 'measure',
  'draftwright.findInPreview': 'find',
  'draftwright.listPreview': 'contents',
  'draftwright.walkSeamInPreview': 'walk',
  'draftwright.layTogetherInPreview': 'together',
  'draftwright.closeDartsInPreview': 'darts',
  'draftwright.leftOverRightInPreview': 'sides',
} as const;

/** Registers everything of the preview; disposing of the answer takes it away again. */
export function activatePreview(
  context: vscode.ExtensionContext,
  client: LanguageClientLike,
): vscode.Disposable {
  const previews = new Previews(context.extensionUri, client);
  const [toSide, here, another] = previewCommands;
  const { Beside, Active } = vscode.ViewColumn;
  const opens = (command: string, open: (uri?: vscode.Uri) => void) =>
    vscode.commands.registerCommand(command, open);
  return vscode.Disposable.from(
    previews,
    opens(toSide, (uri) => previews.open(uri, Beside)),
    opens(here, (uri) => previews.open(uri, Active)),
    opens(another, (uri) => previews.another(uri, Beside)),
    ...Object.entries(toolCommands).map(([command, tool]) => opens(command, () => previews.choose(tool))),
    vscode.window.registerWebviewPanelSerializer(VIEW_TYPE, previews),
    vscode.window.onDidChangeActiveTextEditor((editor) => previews.follow(editor?.document)),
    onSavedAs((from, to) => previews.savedAs(from, to)),
    client.onNotification(methods.sheet, (sheet: Sheet) => previews.forward(sheet)),
    client.onNotification(methods.laid, (laid: Laid) => previews.forward(laid)),
    client.onDidChangeState(againAfter(() => previews.beginAgain())),
  );
}

/** Not when the server runs for the first time: what previews asked until then is answered now. */
function againAfter(begin: () => void): (event: { readonly newState: number }) => void {
  let ran = false;
  return ({ newState }) => {
    if (newState !== RUNNING) return;
    if (ran) begin();
    ran = true;
  };
}

class Previews implements vscode.Disposable, vscode.WebviewPanelSerializer<ViewState> {
  /** By seat: a file may have several, each with what it tries. */
  private readonly panels = new Map<string, PreviewPanel>();
  private readonly cursor: Cursor;
  private readonly shared: Shared;

  constructor(extensionUri: vscode.Uri, client: LanguageClientLike) {
    this.cursor = new Cursor(client, (uri) => this.of(uri));
    this.shared = { client, extensionUri, highlight: new Highlight(client) };
  }

  /** Opens the preview of a file, or brings the one it has to the front. */
  open(asked: vscode.Uri | undefined, viewColumn: vscode.ViewColumn): void {
    const uri = this.fileOf(asked);
    const [open] = uri === undefined ? [] : this.of(uri);
    if (open) open.panel.reveal(undefined, true);
    else this.another(asked, viewColumn);
  }

  /** Opens one more preview of a file: for another size, or other values, beside the first. */
  another(asked: vscode.Uri | undefined, viewColumn: vscode.ViewColumn): void {
    const uri = this.fileOf(asked);
    if (uri === undefined)
      return void vscode.window.showInformationMessage(
        vscode.l10n.t('Open a .draft file first: the preview draws its pieces.'),
      );
    const place = { viewColumn, preserveFocus: viewColumn === vscode.ViewColumn.Beside };
    // beside the text and beside the previews that are there, so that all of them are seen
    const columns = this.of(uri).map(({ panel }) => panel.viewColumn ?? 0);
    if (vscode.window.activeTextEditor === undefined && viewColumn === vscode.ViewColumn.Beside)
      columns.push(...textColumns(uri));
    if (columns.length > 0) place.viewColumn = Math.min(Math.max(...columns) + 1, vscode.ViewColumn.Nine);
    this.adopt(vscode.window.createWebviewPanel(VIEW_TYPE, vscode.l10n.t('Preview'), place), uri);
  }

  /** A panel that the editor brings back after a reload; its state says which file it shows, and from which seat. */
  async deserializeWebviewPanel(panel: vscode.WebviewPanel, state: ViewState | undefined): Promise<void> {
    if (state?.schema !== 1) return panel.dispose();
    this.adopt(panel, state.uri, state.seat);
  }

  /** Previews that are not pinned show the draft that the person turned to. */
  follow(document: vscode.TextDocument | undefined): void {
    if (document?.languageId !== 'draftwright') return;
    const uri = document.uri.toString();
    for (const preview of this.panels.values()) if (!preview.pinned) preview.turnTo(uri);
  }

  /** A new text became a file: what showed the one shows the other. */
  savedAs(from: string, to: string): void {
    for (const preview of this.of(from)) preview.turnTo(to, true);
  }

  /** Takes up a tool of the preview that has the keyboard, or of the one that is seen. */
  choose(tool: string): void {
    const all = [...this.panels.values()].map(({ panel }) => panel).filter(({ visible }) => visible);
    const panel = all.find(({ active }) => active) ?? all[0];
    if (panel === undefined)
      return void vscode.window.showInformationMessage(vscode.l10n.t('Open a preview first.'));
    panel.reveal(undefined, false);
    const message: Do = { type: 'do', tool };
    void panel.webview.postMessage(message);
  }

  forward(message: Sheet | Laid): void {
    const preview = this.panels.get(message.seat);
    if (preview?.uri === message.uri) preview.forward(message);
  }

  beginAgain(): void {
    for (const preview of this.panels.values()) preview.begin();
  }

  /** The panels stay: when the window is reloaded the editor keeps them and hands them back. */
  dispose(): void {
    this.cursor.dispose();
    this.shared.highlight.dispose();
  }

  private of(uri: string): readonly PreviewPanel[] {
    return [...this.panels.values()].filter((preview) => preview.uri === uri);
  }

  /** The file that is asked for: that of a text, or of the preview in front. */
  private fileOf(asked: vscode.Uri | undefined): string | undefined {
    const front = [...this.panels.values()].find(({ panel }) => panel.active)?.uri;
    return asked?.toString() ?? front ?? editorInFront()?.document.uri.toString();
  }

  private adopt(panel: vscode.WebviewPanel, uri: string, wanted = ''): void {
    const seat = wanted !== '' && !this.panels.has(wanted) ? wanted : this.freeSeat();
    this.panels.set(seat, new PreviewPanel(panel, uri, seat, this.shared, () => this.cursor.moved()));
    panel.onDidDispose(() => this.panels.delete(seat));
  }

  private freeSeat(): string {
    let count = 1;
    while (this.panels.has(`preview ${count}`)) count++;
    return `preview ${count}`;
  }
}

/** Where the text itself is seen: something else is in front, and beside that the text may lie. */
const textColumns = (uri: string): readonly number[] =>
  vscode.window.visibleTextEditors
    .filter(({ document }) => document.uri.toString() === uri)
    .map(({ viewColumn }) => viewColumn ?? 0);
