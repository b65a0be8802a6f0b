/** A half on the fold, drawn with its other half: sizes by closed forms. */
import assert from 'node:assert/strict';
import { areaOf } from '../../server/geometry';
import { wholeByMirror } from '../../server/drawing/by-mirror';
import { pathOf } from '../../server/drawing/path';
import { drawnIn, linesOf, panel } from '../support/panel';

/** A panel of 20 by 30 cm, half of it on the fold at its centre, with an allowance of 1 cm. */
const half = () =>
  drawnIn(
    panel('fold centre\nallow 1cm\ndart tuck on top at 10cm from a, 2cm wide, 9cm long', '', 'cut 1 on fold'),
  );

describe('a half that is drawn whole', () => {
  it('is twice as wide about its fold, and as high', () => {
    const { frame } = wholeByMirror(half());
    const round = (mm: number) => Math.round(mm);
    assert.deepEqual([round(frame.left), round(frame.right), round(frame.bottom)], [-210, 210, 310]);
  });

  it('has one closed cutting line about both halves', () => {
    const cut = wholeByMirror(half()).lines.filter(({ role }) => role === 'cutting');
    assert.deepEqual([cut.length, cut[0]!.closed], [1, true]);
    const plain = drawnIn(panel('fold centre\nallow 1cm', '', 'cut 1 on fold'));
    const [outline] = wholeByMirror(plain).lines.filter(({ role }) => role === 'cutting');
    assert.equal(Math.round(areaOf([pathOf(outline!)])), 420 * 320);
  });

  it('has its fold as a centre line, its darts twice and its grain once', () => {
    const whole = wholeByMirror(half());
    const roles = (role: string) => whole.lines.filter((line) => line.role === role).length;
    assert.deepEqual([roles('fold'), roles('centre'), roles('grain')], [0, 1, 1]);
    assert.equal(linesOf(whole, 'tuck').length, 2 * linesOf(half(), 'tuck').length);
  });

  it('is the same object while the half is, and a piece without a fold is left alone', () => {
    const one = half();
    assert.equal(wholeByMirror(one), wholeByMirror(one));
    const flat = drawnIn(panel('allow 1cm'));
    assert.equal(wholeByMirror(flat), flat);
  });
});
