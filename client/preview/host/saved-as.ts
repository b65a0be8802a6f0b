/** A new pattern that is saved becomes a file: its previews turn to that file, which nothing in the editor tells. */
import * as vscode from 'vscode';

/** A formatter that runs while a file is saved moves spaces and lines, and nothing else. */
const written = (document: vscode.TextDocument): string => document.getText().replace(/\s+/g, '');

/**
 * Calls back when a text that was nobody's file is saved as one: the editor writes the file while the new text is
 * still there, and takes that away afterwards.
 */
export function onSavedAs(turn: (from: string, to: string) => void): vscode.Disposable {
  return vscode.workspace.onDidSaveTextDocument((file) => {
    if (file.languageId !== 'draftwright' || file.isUntitled) return;
    const isThis = (other: vscode.TextDocument) => other.isUntitled && written(other) === written(file);
    const [from, second] = vscode.workspace.textDocuments.filter(isThis);
    // two new texts that say the same: nobody can tell which of them it was
    if (from && second === undefined) turn(from.uri.toString(), file.uri.toString());
  });
}
