/** What the language client is told in every host, however its server is reached. */
import * as vscode from 'vscode';
import type { BaseLanguageClient, LanguageClientOptions, StaticFeature } from 'vscode-languageclient';
import { pages } from './pages';
import { recovery } from './recovery';
import { filesFirst } from './told-files';

/** Identifier and name of the client. */
export const NAME = ['draftwright', 'Draftwright'] as const;

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

export const withProblemsSent = (client: BaseLanguageClient): void => client.registerFeature(problemsAreSent);

/** @param readsDisk whether the server has a disk of its own to read `file:` addresses from */
export const clientOptions = (
  readsDisk: boolean,
  client: () => BaseLanguageClient,
): LanguageClientOptions => ({
  documentSelector: [{ language: 'draftwright' }],
  initializationOptions: { pages },
  errorHandler: recovery(client),
  synchronize: { fileEvents: vscode.workspace.createFileSystemWatcher('**/*.draft') },
  middleware: { workspace: { didChangeWatchedFile: filesFirst(readsDisk) } },
});
