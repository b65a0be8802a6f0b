/** Export where no machine stands behind the page: it says what to do instead. */
import * as vscode from 'vscode';
import { DRAW_FOR_PREVIEW, exportCommands, type Copied } from './commands';

const WHY = vscode.l10n.t(
  'Files are written by a program on your machine, and this editor runs in the browser alone. Open the folder in an editor on your machine to export, or run draftwright print there.',
);

export const activateNoExport = (): vscode.Disposable =>
  vscode.Disposable.from(
    vscode.commands.registerCommand(DRAW_FOR_PREVIEW, (): Copied => ({ reason: WHY })),
    ...exportCommands.map((command) =>
      vscode.commands.registerCommand(command, () => vscode.window.showInformationMessage(WHY)),
    ),
  );
