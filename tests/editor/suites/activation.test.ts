/** The extension wakes for a draft, registers what its manifest promises, and stays asleep otherwise. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { forget } from './editor';

const folder = () => vscode.workspace.workspaceFolders![0]!.uri;
const extension = () => vscode.extensions.getExtension('draftwright.draftwright')!;

describe('activation in the editor', () => {
  it('the extension is known to the editor by its own name', () => {
    assert.equal(extension().packageJSON.displayName, 'Draftwright');
  });

  it('a file that ends in .draft is opened in the language of the extension', async () => {
    const document = await vscode.workspace.openTextDocument(
      vscode.Uri.joinPath(folder(), 'harbour-skirt.draft'),
    );
    assert.equal(document.languageId, 'draftwright');
  });

  it('opening a draft wakes the extension', async () => {
    await extension().activate();
    assert.equal(extension().isActive, true);
  });

  it('every command of the manifest is registered', async () => {
    const known = new Set(await vscode.commands.getCommands(true));
    const promised: { command: string }[] = extension().packageJSON.contributes.commands;
    assert.deepEqual(
      promised.map(({ command }) => command).filter((command) => !known.has(command)),
      [],
    );
  });

  it('each template begins a text that is no file yet, with the preview on demand alone', async () => {
    for (const name of ['blank', 'skirt', 'bodice-block']) {
      await vscode.commands.executeCommand('draftwright.newPattern', name);
      const { document } = vscode.window.activeTextEditor!;
      assert.deepEqual([document.uri.scheme, document.languageId], ['untitled', 'draftwright']);
      assert.match(document.getText(), /^pattern "/);
    }
    assert.equal(vscode.window.tabGroups.all.length, 1);
    await forget();
  });
});
