/** Runs an export while a notification tells that it runs and lets it be stopped, and says what came of it. */
import { isAbsolute, join } from 'node:path';
import * as vscode from 'vscode';
import type { Ran } from '../../server/drawing/exporting';
import { writtenFiles } from './answers';
import { Stopped, type Desk, type Exporter } from './exporter';

/** @returns undefined where the person stopped it */
export async function withProgress(
  title: string,
  exporter: Exporter,
  folder: string,
  work: () => Promise<Ran>,
): Promise<Ran | undefined> {
  const location = vscode.ProgressLocation.Notification;
  return vscode.window.withProgress({ location, title, cancellable: true }, async (_, token) => {
    token.onCancellationRequested(() => exporter.stop(folder));
    try {
      return await work();
    } catch (fault) {
      if (fault instanceof Stopped) return undefined;
      throw fault;
    }
  });
}

/** What was said, in as many words as a notification takes. */
const short = (words: string): string => {
  const lines = words.trim().split('\n').filter(Boolean);
  const sentences = lines.slice(0, 3).map((line) => line.replace(/([^.!?])$/, '$1.'));
  return sentences.join(' ') + (lines.length > 3 ? ' …' : '');
};

/** Says what was written and what is missing in it, and offers to go there. */
export async function tell({ exit, out, err }: Ran, { folder }: Pick<Desk, 'folder'>): Promise<void> {
  const files = writtenFiles(out).map((file) => (isAbsolute(file) ? file : join(folder, file)));
  if (files.length === 0)
    return void vscode.window.showErrorMessage(short(err) || vscode.l10n.t('Nothing was exported.'));
  const named = files.reduce(
    (words, file) => words.replace(file, vscode.workspace.asRelativePath(file)),
    out,
  );
  const message = [short(named), short(err)].filter(Boolean).join(' ');
  const show = exit === 0 ? vscode.window.showInformationMessage : vscode.window.showWarningMessage;
  const [toOpen, toReveal] = [vscode.l10n.t('Open'), vscode.l10n.t('Reveal')];
  const chosen = await show(message, toOpen, toReveal);
  if (chosen === toOpen) await open(vscode.Uri.file(files[0]!));
  if (chosen === toReveal) await reveal(vscode.Uri.file(files[0]!));
}

/** Kinds that the editor shows by itself; others are for the program that the machine has for them. */
const SHOWN = /\.(svg|png|md|txt|csv|json|dxf)$/i;

async function open(file: vscode.Uri): Promise<void> {
  if (SHOWN.test(file.path)) return void vscode.commands.executeCommand('vscode.open', file);
  const opened = vscode.env.remoteName === undefined && (await vscode.env.openExternal(file));
  if (!opened) await reveal(file);
}

/** In the editor's own tree where the file lies in the workspace, else where the machine shows files. */
async function reveal(file: vscode.Uri): Promise<void> {
  const inside = vscode.workspace.getWorkspaceFolder(file) !== undefined;
  await vscode.commands.executeCommand(inside ? 'revealInExplorer' : 'revealFileInOS', file);
}
