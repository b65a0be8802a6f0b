/** The extension's door: starts the language client, then every feature of the table, and says which one failed. */
import * as vscode from 'vscode';
import { type Feature, features } from './features';
import { startLanguageClient } from './language';

/** A feature starts by itself, so that a broken one leaves the others working. */
function start(feature: Feature, ...[context, client]: Parameters<Feature['activate']>): void {
  try {
    context.subscriptions.push(feature.activate(context, client));
  } catch (fault) {
    const reason = fault instanceof Error ? fault.message : String(fault);
    void vscode.window.showErrorMessage(`Draftwright could not start its ${feature.name}: ${reason}`);
  }
}

export async function activate(context: vscode.ExtensionContext): Promise<void> {
  const client = await startLanguageClient(context);
  context.subscriptions.push(client);
  features.forEach((feature) => start(feature, context, client));
}

/** Nothing to do: the editor disposes what activation subscribed. */
export function deactivate(): void {}
