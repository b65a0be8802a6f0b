/** What activation comes to in every host: every feature of the table, each by itself, while the client starts. */
import * as vscode from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { speak } from '../grammar/say';
import { featuresWith, type Feature } from './features';
import { withProblemsSent } from './language';
import { tellFiles } from './told-files';

/** A feature starts by itself, so that a broken one leaves the others working. */
function start(feature: Feature, ...[context, client]: Parameters<Feature['activate']>): void {
  try {
    context.subscriptions.push(feature.activate(context, client));
  } catch (fault) {
    const reason = fault instanceof Error ? fault.message : String(fault);
    void vscode.window.showErrorMessage(
      vscode.l10n.t('Draftwright could not start: {0}. {1}', vscode.l10n.t(feature.name), reason),
    );
  }
}

/** What differs from host to host. */
export interface Host {
  /** Whether the server has a disk of its own to read `file:` addresses from. */
  readonly readsDisk: boolean;
  readonly activateExport: Feature['activate'];
}

/**
 * Does not wait for the server: commands answer at once, and what they ask of the client it keeps until the server
 * runs. Why a server does not start the client tells by itself.
 */
export function activateWith(context: vscode.ExtensionContext, client: BaseLanguageClient, host: Host): void {
  speak(vscode.l10n.bundle);
  withProblemsSent(client);
  featuresWith(host.activateExport).forEach((feature) => start(feature, context, client));
  context.subscriptions.push(client);
  client.start().then(
    () => tellFiles(client, host.readsDisk),
    () => undefined,
  );
}
