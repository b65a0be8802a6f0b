/** Replacements that the language server asks for, made in the texts of the editor. */
import * as vscode from 'vscode';

interface Place {
  readonly line: number;
  readonly character: number;
}

/** A replacement as the language server protocol has it. */
interface Replacement {
  readonly range: { readonly start: Place; readonly end: Place };
  readonly newText: string;
}

export interface Changes {
  readonly changes?: Readonly<Record<string, readonly Replacement[]>>;
}

const rangeOf = ({ start, end }: Replacement['range']): vscode.Range =>
  new vscode.Range(start.line, start.character, end.line, end.character);

export function workspaceEdit({ changes = {} }: Changes): vscode.WorkspaceEdit {
  const edit = new vscode.WorkspaceEdit();
  for (const [file, replacements] of Object.entries(changes)) {
    for (const { range, newText } of replacements)
      edit.replace(vscode.Uri.parse(file), rangeOf(range), newText);
  }
  return edit;
}

/**
 * Makes the replacements as part of a longer movement: all of it is undone at once. Only a text that is seen can be
 * edited so.
 *
 * @param first the movement begins here
 * @returns false where the text is not seen, or did not take the edit
 */
export async function editInOneStep({ changes = {} }: Changes, first: boolean): Promise<boolean> {
  for (const [file, replacements] of Object.entries(changes)) {
    const editor = vscode.window.visibleTextEditors.find(({ document }) => document.uri.toString() === file);
    if (editor === undefined) return false;
    const stops = { undoStopBefore: first, undoStopAfter: false };
    const done = await editor.edit((edit) => {
      for (const { range, newText } of replacements) edit.replace(rangeOf(range), newText);
    }, stops);
    if (!done) return false;
  }
  return true;
}
