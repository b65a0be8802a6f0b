/** The extension's door in a browser without a machine behind it: the language server runs in a worker. */
import * as vscode from 'vscode';
import { LanguageClient } from 'vscode-languageclient/browser';
import { activateWith } from './activate';
import { clientOptions, NAME } from './language';
import { activateNoExport } from './export/elsewhere';

declare const Worker: new (address: string) => ConstructorParameters<typeof LanguageClient>[2];

export function activate(context: vscode.ExtensionContext): void {
  const address = vscode.Uri.joinPath(context.extensionUri, 'dist', 'worker.js').toString(true);
  const worker = new Worker(address);
  const client: LanguageClient = new LanguageClient(
    ...NAME,
    worker,
    clientOptions(false, () => client),
  );
  activateWith(context, client, { readsDisk: false, activateExport: activateNoExport });
}

/** Nothing to do: the editor disposes what activation subscribed. */
export function deactivate(): void {}
