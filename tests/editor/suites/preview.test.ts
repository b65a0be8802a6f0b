/** The preview as the editor sees it: one tab a file, beside the text, under the file's name. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import { fileUri, forget, pocket, replace, write } from './editor';

const TITLE = 'Preview: harbour-skirt.draft';

const previews = () =>
  vscode.window.tabGroups.all
    .flatMap(({ tabs }) => tabs)
    .filter(({ label }) => label.startsWith('Preview: '));

/** Tabs come and go a moment after a command has been answered. */
async function until(holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 100 && !holds(); tries++) await new Promise((done) => setTimeout(done, 50));
}

async function openDraft(): Promise<void> {
  const folder = vscode.workspace.workspaceFolders![0]!.uri;
  await vscode.window.showTextDocument(vscode.Uri.joinPath(folder, 'harbour-skirt.draft'), {
    viewColumn: vscode.ViewColumn.One,
  });
}

async function openPreview(command: string): Promise<void> {
  await vscode.commands.executeCommand(command);
  await until(() => previews().length > 0);
}

describe('preview in the editor', () => {
  beforeEach(openDraft);

  afterEach(() => vscode.commands.executeCommand('workbench.action.closeAllEditors'));

  it('the preview opens beside the text, under the name of its file', async () => {
    await openPreview('draftwright.openPreviewToSide');
    assert.deepEqual(
      previews().map(({ label, group }) => [label, group.viewColumn]),
      [[TITLE, vscode.ViewColumn.Two]],
    );
  });

  it('the text keeps the focus when the preview opens beside it', async () => {
    await openPreview('draftwright.openPreviewToSide');
    assert.equal(vscode.window.activeTextEditor?.document.uri.path.endsWith('harbour-skirt.draft'), true);
  });

  it('the preview opens in the place of the text when asked so', async () => {
    await openPreview('draftwright.openPreview');
    assert.equal(previews()[0]!.group.viewColumn, vscode.ViewColumn.One);
  });

  it('a file that is asked for again shows the preview it has', async () => {
    await openPreview('draftwright.openPreviewToSide');
    await openDraft();
    await openPreview('draftwright.openPreviewToSide');
    assert.equal(previews().length, 1);
  });

  it('the preview of a new text stays with it when a file that says the same is saved', async () => {
    const text = pocket.replace('"Pocket"', '"Twin"');
    const fresh = await vscode.workspace.openTextDocument({ language: 'draftwright', content: text });
    await vscode.window.showTextDocument(fresh, { viewColumn: vscode.ViewColumn.One });
    await openPreview('draftwright.openPreviewToSide');
    const label = () => previews().map(({ label }) => label);
    await until(() => label()[0]?.includes('Untitled') === true);
    const [before] = label();
    const twin = fileUri('twin.draft');
    await write(twin, text.replace('16cm', '17cm'));
    // not shown: a preview that is not pinned would turn to it
    const file = await vscode.workspace.openTextDocument(twin);
    await replace(file, '17cm', '16cm');
    assert.ok(await file.save());
    await new Promise((done) => setTimeout(done, 1000));
    assert.deepEqual(label(), [before]);
    assert.match(before!, /Untitled/);
    await forget();
    await vscode.workspace.fs.delete(twin);
  });

  it('a closed preview can be opened again', async () => {
    await openPreview('draftwright.openPreviewToSide');
    await vscode.window.tabGroups.close(previews());
    await until(() => previews().length === 0);
    await openPreview('draftwright.openPreviewToSide');
    assert.equal(previews().length, 1);
  });
});
