/** Writes what was tried in a preview into the text. */
import * as vscode from 'vscode';
import { methods, type Trial } from '../protocol';
import type { LanguageClientLike } from './client';
import { workspaceEdit, type Changes } from './edits';

const REFUSED = vscode.l10n.t(
  'Nothing was written: the text no longer holds what was tried, or can’t be changed.',
);

/** @returns whether the text says now what was tried; the person is told when it can't be written */
export async function applyTrial(client: LanguageClientLike, uri: string, trial: Trial): Promise<boolean> {
  const answer = await client.sendRequest<Changes | null>(methods.writeTrial, { uri, trial });
  const edit = workspaceEdit(answer ?? {});
  if (edit.size > 0 && (await vscode.workspace.applyEdit(edit))) return true;
  void vscode.window.showWarningMessage(REFUSED);
  return false;
}
