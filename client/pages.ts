/** Shows the page of a problem's code: what it finds, why it matters, how to mend it. A click on a code leads here. */
import * as vscode from 'vscode';

const SCHEME = 'draftwright-page';

/** The beginning of a page's address, told to the server; the code and `.md` follow. */
export const pages = `${SCHEME}:/`;

/** The pages are packed with the extension, and read from there in every host. */
export function activatePages({ extensionUri }: vscode.ExtensionContext): vscode.Disposable {
  return vscode.workspace.registerTextDocumentContentProvider(SCHEME, {
    async provideTextDocumentContent({ path }) {
      const file = path.replace(/^\//, '');
      try {
        const page = await vscode.workspace.fs.readFile(
          vscode.Uri.joinPath(extensionUri, 'dist', 'checks', file),
        );
        return new TextDecoder().decode(page);
      } catch {
        return `${vscode.l10n.t('There is no page about {0}.', `\`${file.replace(/\.md$/, '')}\``)}\n`;
      }
    },
  });
}
