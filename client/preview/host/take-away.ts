/** What the preview takes away: the form of an export, the drawing as text, or as a picture that its page puts away. */
import * as vscode from 'vscode';
import { DRAW_FOR_PREVIEW, exportCommands, type Copied } from '../../export/commands';
import type { FromView, Picture, Trial } from '../protocol';

type Message = Extract<FromView, { type: 'export' | 'copy' | 'copied' }>;

/** @param trial what the preview tries: it is exported as it is seen */
export async function takeAway(
  message: Message,
  uri: string,
  trial: Trial,
  tell: (picture: Picture) => void,
): Promise<void> {
  const [file, { executeCommand }] = [vscode.Uri.parse(uri), vscode.commands];
  if (message.type === 'export') return void executeCommand(exportCommands[0], file, trial);
  if (message.type === 'copied') return said(message.failed);
  if (message.as === 'svg') return void executeCommand(exportCommands[1], file, trial);
  const made = await executeCommand<Copied>(DRAW_FOR_PREVIEW, file, trial);
  if ('reason' in made) return tell({ type: 'picture', png: '', reason: made.reason });
  tell({ type: 'picture', png: inBase64(made.bytes), reason: '' });
}

/** In every host, also where there is no Node. */
function inBase64(bytes: Uint8Array): string {
  let text = '';
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}

function said(failed: string): void {
  if (failed === '')
    vscode.window.setStatusBarMessage(vscode.l10n.t('The drawing is on the clipboard as a picture.'), 4000);
  else
    void vscode.window.showErrorMessage(
      vscode.l10n.t('The picture did not get to the clipboard: {0} Export it as PNG instead.', failed),
    );
}
