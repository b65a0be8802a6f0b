/** Starts the language server in its own process and connects the editor to it. */
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';

let client: LanguageClient | undefined;

/** The running client, for features that ask the server something of their own. */
export const languageClient = (): LanguageClient | undefined => client;

/** Starts server and client; disposing of the answer stops both. */
export async function openLanguageService(context: vscode.ExtensionContext): Promise<vscode.Disposable> {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.js').fsPath;
  const started = new LanguageClient(
    'draftwright',
    'Draftwright',
    { module, transport: TransportKind.ipc },
    {
      documentSelector: [{ language: 'draftwright' }],
      synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher('**/*.draft') },
    },
  );
  await started.start();
  client = started;
  return new vscode.Disposable(() => void started.dispose());
}
