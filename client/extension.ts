/** The extension's door: activates every feature of the table, and says which one failed if one does. */
import * as vscode from 'vscode';
import { features } from './features';

/** Starts each feature by itself, so that a broken one leaves the others working. */
export async function activate(context: vscode.ExtensionContext): Promise<void> {
  for (const { name, activate: start } of features) {
    try {
      context.subscriptions.push(await start(context));
    } catch (fault) {
      const reason = fault instanceof Error ? fault.message : String(fault);
      void vscode.window.showErrorMessage(`Draftwright could not start its ${name}: ${reason}`);
    }
  }
}

/** Nothing to do: the editor disposes what activation subscribed. */
export function deactivate(): void {}
