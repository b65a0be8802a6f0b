/** Starts the language server in its own process and connects the editor to it. */
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { pages } from './pages';

/** Starts server and client; the client stops both when it is disposed of. */
export async function startLanguageClient(context: vscode.ExtensionContext): Promise<LanguageClient> {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.js').fsPath;
  const client = new LanguageClient(
    'draftwright',
    'Draftwright',
    { module, transport: TransportKind.ipc },
    {
      documentSelector: [{ language: 'draftwright' }],
      initializationOptions: { pages },
      synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher('**/*.draft') },
    },
  );
  await client.start();
  return client;
}
