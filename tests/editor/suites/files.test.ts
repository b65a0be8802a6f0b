/** Every kind of file that an editor holds: unsaved, used by others, with other line ends, in another folder, gone. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  fileUri,
  problemsOf,
  until,
  fix,
  forget,
  hoverAt,
  pocket,
  problem,
  problemGone,
  rangeOf,
  replace,
  show,
  write,
} from './editor';

const BODIES = 'body porter {\n  waist 80cm\n  hip 100cm\n}\n';
const USING = 'pattern "Sash"\nuse "porter.draft"\ndrafted for porter\nlet half = waist / 2\n';
const BROKEN = pocket.replace('foot straight to foot-left', 'foot straight to foot-lift');

describe('files in the editor', () => {
  afterEach(forget);

  it('a measurement edited in the used file counts before it is saved', async () => {
    const bodies = await show(fileUri('porter.draft'), BODIES);
    const using = await show(fileUri('sash.draft'), USING);
    assert.match(await hoverAt(using, 'half ='), /40cm/);
    await replace(bodies, 'waist 80cm', 'waist 90cm');
    assert.match(await hoverAt(using, 'half ='), /45cm/);
    assert.equal(bodies.isDirty, true);
  });

  it('what a used file no longer says is told where it is used', async () => {
    const bodies = await show(fileUri('porter.draft'), BODIES);
    const using = await show(fileUri('sash.draft'), USING);
    await replace(bodies, '  waist 80cm\n', '');
    await problem(using.uri, 'missing-measurement');
    await replace(bodies, '  hip', '  waist 80cm\n  hip');
    await problemGone(using.uri, 'missing-measurement');
  });

  it('a used file that is deleted is missed until it is restored', async () => {
    await write(fileUri('carter.draft'), BODIES);
    const using = await show(fileUri('belt.draft'), USING.replace('porter.draft', 'carter.draft'));
    assert.match(await hoverAt(using, 'half ='), /40cm/);
    await vscode.workspace.fs.delete(fileUri('carter.draft'));
    await problem(using.uri, 'missing-file');
    await write(fileUri('carter.draft'), BODIES);
    await problemGone(using.uri, 'missing-file');
  });

  it('a draft without a file is checked as it is written', async () => {
    const document = await vscode.workspace.openTextDocument({ language: 'draftwright', content: BROKEN });
    await vscode.window.showTextDocument(document);
    const { range } = await problem(document.uri, 'unknown-name');
    assert.deepEqual(range, rangeOf(document, 'foot-lift'));
  });

  it('lines that end as on Windows move no problem and survive a fix', async () => {
    const text = pocket.replace('\n    left-side straight to mouth-left', '').replace(/\n/g, '\r\n');
    const document = await show(fileUri('windows.draft'), text);
    assert.equal(document.eol, vscode.EndOfLine.CRLF);
    const { range } = await problem(document.uri, 'unclosed-outline');
    assert.deepEqual(range, rangeOf(document, 'straight to foot-left'));
    await fix(document.uri, range, 'Add a straight edge back to mouth-left');
    await problemGone(document.uri, 'unclosed-outline');
    assert.doesNotMatch(document.getText(), /[^\r]\n/);
  });

  it('names in any script are known, in the text and of the file', async () => {
    const text = pocket
      .replaceAll('mouth', 'öffnung')
      .replaceAll('width', '幅')
      .replace('right 幅', 'right 幅幅');
    const document = await show(fileUri('Täschchen – карман 裳.draft'), text);
    const { range } = await problem(document.uri, 'unknown-name');
    assert.deepEqual(range, rangeOf(document, '幅幅'));
    await replace(document, '幅幅', '幅');
    await problemGone(document.uri, 'unknown-name');
  });

  it('characters outside the first plane do not shift what comes after them', async () => {
    const text = pocket.replace('pattern "Pocket"', 'pattern "Pocket 🧵🪡" 5');
    const document = await show(fileUri('thread.draft'), text);
    const found = await until('a problem', () => problemsOf(document.uri)[0]);
    assert.deepEqual(found.range, rangeOf(document, '5'));
  });

  it('each folder of a workspace has its own files', async () => {
    assert.equal(vscode.workspace.workspaceFolders!.length, 2);
    await write(fileUri('porter.draft'), BODIES);
    await write(fileUri('porter.draft', 1), BODIES.replace('80cm', '70cm'));
    const here = await show(fileUri('sash.draft'), USING);
    const there = await show(fileUri('sash.draft', 1), USING);
    assert.match(await hoverAt(here, 'half ='), /40cm/);
    assert.match(await hoverAt(there, 'half ='), /35cm/);
  });
});
