/** A new pattern that is saved becomes a file: its previews turn to that file, which nothing in the editor tells. */
import * as vscode from 'vscode';

/** A formatter that runs while a file is saved moves spaces and lines, and nothing else. */
const written = (document: vscode.TextDocument): string => document.getText().replace(/\s+/g, '');

/** Milliseconds within which the editor takes a text away that it has saved, on a busy machine. */
const SOON = 5000;

/**
 * Calls back when a text that was nobody's file is saved as one: the editor writes the file while the new text is
 * still there, and takes that away at once. A new text that stays has only the same words as a file that was saved.
 */
export function onSavedAs(turn: (from: string, to: string) => void): vscode.Disposable {
  /** Files just saved, by the new texts that say the same. */
  const saved = new Map<string, string>();
  let waiting: NodeJS.Timeout | undefined;
  const forget = () => {
    clearTimeout(waiting);
    saved.clear();
  };
  return vscode.Disposable.from(
    vscode.workspace.onDidSaveTextDocument((file) => {
      if (file.languageId !== 'draftwright' || file.isUntitled) return;
      forget();
      for (const other of vscode.workspace.textDocuments)
        if (other.isUntitled && written(other) === written(file))
          saved.set(other.uri.toString(), file.uri.toString());
      waiting = setTimeout(forget, SOON);
    }),
    vscode.workspace.onDidCloseTextDocument((closed) => {
      const from = closed.uri.toString();
      const to = saved.get(from);
      if (to === undefined) return;
      forget();
      turn(from, to);
    }),
    { dispose: forget },
  );
}
