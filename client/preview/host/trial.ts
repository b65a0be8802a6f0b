/** Writes what was tried in a preview into the text. */
import * as vscode from 'vscode';
import { methods, type Trial } from '../protocol';
import type { LanguageClientLike } from './client';

interface Replacement {
  readonly range: { readonly start: Place; readonly end: Place };
  readonly newText: string;
}

interface Place {
  readonly line: number;
  readonly character: number;
}

/** @returns whether the text says now what was tried; the person is told when it can't be written */
export async function applyTrial(client: LanguageClientLike, uri: string, trial: Trial): Promise<boolean> {
  const params = { uri, trial };
  const answer = await client.sendRequest<{ changes?: Record<string, Replacement[]> } | null>(
    methods.writeTrial,
    params,
  );
  const edit = new vscode.WorkspaceEdit();
  for (const [file, replacements] of Object.entries(answer?.changes ?? {})) {
    for (const { range, newText } of replacements)
      edit.replace(vscode.Uri.parse(file), rangeOf(range), newText);
  }
  if (edit.size > 0 && (await vscode.workspace.applyEdit(edit))) return true;
  void vscode.window.showWarningMessage(
    'Nothing was written: the text no longer holds what was tried, or can’t be changed.',
  );
  return false;
}

const rangeOf = ({ start, end }: Replacement['range']): vscode.Range =>
  new vscode.Range(start.line, start.character, end.line, end.character);
