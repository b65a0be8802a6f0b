/** Starts the language server in its own process and connects the editor to it. */
import * as vscode from 'vscode';
import { LanguageClient, TransportKind, type StaticFeature } from 'vscode-languageclient/node';
import { pages } from './pages';
import { recovery } from './recovery';

/**
 * Has problems sent rather than asked for: they come with the drawing of the same text in one round, after the last
 * keystroke of a burst, and of files that are open behind others as well.
 */
const problemsAreSent: StaticFeature = {
  fillClientCapabilities: ({ textDocument }) => void delete textDocument?.diagnostic,
  initialize: () => undefined,
  getState: () => ({ kind: 'static' }),
  clear: () => undefined,
};

/** Starts server and client; the client stops both when it is disposed of. */
export async function startLanguageClient(context: vscode.ExtensionContext): Promise<LanguageClient> {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.js').fsPath;
  const client: LanguageClient = new LanguageClient(
    'draftwright',
    'Draftwright',
    { module, transport: TransportKind.ipc },
    {
      documentSelector: [{ language: 'draftwright' }],
      initializationOptions: { pages },
      errorHandler: recovery(() => client),
      synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher('**/*.draft') },
    },
  );
  client.registerFeature(problemsAreSent);
  await client.start();
  return client;
}
