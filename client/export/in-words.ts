/** What the command line can export, in the words of the person: its titles and explanations are the command line's own, and English. */
import * as vscode from 'vscode';
import type { ExportTarget } from '../../server/drawing/exporting';

const inWords = <T extends { readonly title: string; readonly words: string }>(said: T): T => ({
  ...said,
  title: vscode.l10n.t(said.title),
  words: vscode.l10n.t(said.words),
});

export const targetsInWords = (targets: readonly ExportTarget[]): readonly ExportTarget[] =>
  targets.map((target) => ({ ...inWords(target), options: target.options.map(inWords) }));
