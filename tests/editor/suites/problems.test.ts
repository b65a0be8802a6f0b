/** What a cutter would catch is told at the right place in the text, and a quick fix mends it. */
import assert from 'node:assert/strict';
import * as vscode from 'vscode';
import {
  codeOf,
  fileUri,
  fix,
  forget,
  pocket,
  problem,
  problemGone,
  problemsOf,
  rangeOf,
  replace,
  show,
} from './editor';

const LAST_RUN = '\n    left-side straight to mouth-left';

describe('problems in the editor', () => {
  afterEach(forget);

  it('a deleted run is an unclosed outline at the run that is left without an end', async () => {
    const document = await show(fileUri('pocket.draft'), pocket);
    await replace(document, LAST_RUN, '');
    const found = await problem(document.uri, 'unclosed-outline');
    assert.deepEqual(found.range, rangeOf(document, 'straight to foot-left'));
    assert.match(found.message, /gap of 18cm/);
    assert.equal(found.severity, vscode.DiagnosticSeverity.Error);
  });

  it('the fix of an unclosed outline writes the missing run, and the problem is gone', async () => {
    const document = await show(fileUri('pocket.draft'), pocket);
    await replace(document, LAST_RUN, '');
    const { range } = await problem(document.uri, 'unclosed-outline');
    await fix(document.uri, range, 'Add a straight edge back to mouth-left');
    await problemGone(document.uri, 'unclosed-outline');
    assert.match(document.getText(), /foot straight to foot-left\n {4}\S.*straight to mouth-left\n/);
  });

  it('a seam that does not fit tells both lengths and leads to the other side', async () => {
    const document = await show(fileUri('faults/seam-mismatch.draft'));
    const { message, range, relatedInformation } = await problem(document.uri, 'mismatched-seam');
    assert.match(message, /102\.5cm.*102cm/s);
    assert.equal(document.getText(range), 'back.side');
    assert.ok(relatedInformation?.some((related) => /102cm/.test(related.message)));
  });

  it('the fix of a seam that does not fit eases the surplus in', async () => {
    const document = await show(fileUri('faults/seam-mismatch.draft'));
    const { range } = await problem(document.uri, 'mismatched-seam');
    await fix(document.uri, range, 'Ease the surplus: easing 5mm of back');
    await problemGone(document.uri, 'mismatched-seam');
    assert.match(document.getText(), /seam side back\.side = front\.side easing 5mm of back\n/);
  });

  it('the code of a problem leads to its page in the editor', async () => {
    const document = await show(fileUri('faults/seam-mismatch.draft'));
    const { code } = await problem(document.uri, 'mismatched-seam');
    const { target } = code as { target: vscode.Uri };
    const page = await vscode.workspace.openTextDocument(target);
    assert.match(page.getText(), /seam/);
  });

  it('a garment of the wardrobe has no errors', async () => {
    const document = await show(fileUri('harbour-skirt.draft'));
    await replace(document, 'choose hip-ease = 4cm', 'choose hip-ease = 40cm');
    await problem(document.uri, 'choice-out-of-range');
    await replace(document, 'choose hip-ease = 40cm', 'choose hip-ease = 4cm');
    await problemGone(document.uri, 'choice-out-of-range');
    const errors = problemsOf(document.uri).filter(
      ({ severity }) => severity === vscode.DiagnosticSeverity.Error,
    );
    assert.deepEqual(errors.map(codeOf), []);
  });
});
