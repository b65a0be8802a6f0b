/** Which draft is meant where a command is told none: the one with the keyboard, else one that is seen. */
import * as vscode from 'vscode';

/** A page such as the first steps may be in front, with the text that it speaks of beside it. */
export function editorInFront(): vscode.TextEditor | undefined {
  const { activeTextEditor, visibleTextEditors } = vscode.window;
  return activeTextEditor ?? visibleTextEditors.find(({ document }) => document.languageId === 'draftwright');
}
