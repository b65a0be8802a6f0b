/** Shows the page of a problem's code: what it finds, why it matters, how to mend it. A click on a code leads here. */
import * as vscode from 'vscode';
import { pageInDialect, readDialect } from '../grammar/dialect';
import { isGerman } from '../grammar/say';

const SCHEME = 'draftwright-page';

/** The beginning of a page's address, told to the server; the code and `.md` follow. */
export const pages = `${SCHEME}:/`;

/**
 * The pages are packed with the extension, and read from there in every host: in German where the editor speaks it, else in
 * English, whose open pages follow the setting for its dialect.
 */
export function activatePages({ extensionUri }: vscode.ExtensionContext): vscode.Disposable {
  const changed = new vscode.EventEmitter<vscode.Uri>();
  const provider: vscode.TextDocumentContentProvider = {
    onDidChange: changed.event,
    async provideTextDocumentContent({ path }) {
      const file = path.replace(/^\//, '');
      const folder = vscode.Uri.joinPath(extensionUri, 'dist', 'checks');
      const page = isGerman(vscode.env.language)
        ? await read(vscode.Uri.joinPath(folder, 'de', file))
        : undefined;
      if (page !== undefined) return page;
      const english = await read(vscode.Uri.joinPath(folder, file));
      if (english !== undefined) return pageInDialect(dialect(), english);
      return `${vscode.l10n.t('There is no page about {0}.', `\`${file.replace(/\.md$/, '')}\``)}\n`;
    },
  };
  const following = vscode.workspace.onDidChangeConfiguration((change) => {
    if (!change.affectsConfiguration('draftwright.dialect')) return;
    for (const { uri } of vscode.workspace.textDocuments) if (uri.scheme === SCHEME) changed.fire(uri);
  });
  const provided = vscode.workspace.registerTextDocumentContentProvider(SCHEME, provider);
  return vscode.Disposable.from(changed, following, provided);
}

async function read(page: vscode.Uri): Promise<string | undefined> {
  try {
    return new TextDecoder().decode(await vscode.workspace.fs.readFile(page));
  } catch {
    return undefined;
  }
}

const dialect = () => readDialect(vscode.workspace.getConfiguration('draftwright').get('dialect'));
