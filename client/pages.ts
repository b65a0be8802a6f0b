/** Shows the page of a problem's code: what it finds, why it matters, how to mend it. A click on a code leads here. */
import * as vscode from 'vscode';
import type { LanguageClient } from 'vscode-languageclient/node';
import { methods } from './preview/protocol';

const SCHEME = 'draftwright-page';

/** The beginning of a page's address, told to the server; the code and `.md` follow. */
export const pages = `${SCHEME}:/`;

export function activatePages(_context: vscode.ExtensionContext, client: LanguageClient): vscode.Disposable {
  return vscode.workspace.registerTextDocumentContentProvider(SCHEME, {
    async provideTextDocumentContent({ path }) {
      const code = path.replace(/^\//, '').replace(/\.md$/, '');
      const page = await client.sendRequest<string | null>(methods.explain, { code });
      return page ?? `There is no page about \`${code}\`.\n`;
    },
  });
}
