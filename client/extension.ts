/** The extension's door where there is Node: the language server runs in a process of its own. */
import * as vscode from 'vscode';
import { LanguageClient, TransportKind } from 'vscode-languageclient/node';
import { activateWith } from './activate';
import { activateExport } from './export';
import { clientOptions, NAME } from './language';

export function activate(context: vscode.ExtensionContext): void {
  const module = vscode.Uri.joinPath(context.extensionUri, 'dist', 'server.js').fsPath;
  const server = { module, transport: TransportKind.ipc };
  const client: LanguageClient = new LanguageClient(
    ...NAME,
    server,
    clientOptions(true, () => client),
  );
  activateWith(context, client, { readsDisk: true, activateExport });
}

/** Nothing to do: the editor disposes what activation subscribed. */
export function deactivate(): void {}
