/** A half on the fold whose ends are not quite square to it: cut from the fold round to the fold, never along it. */
import assert from 'node:assert/strict';
import { pathOf } from '../../server/drawing/path';
import { patternIn } from '../support/drafts';
import { drawnIn, panelText } from '../support/panel';

/** The panel on the fold at x = 0 with other corners, and its cutting line. */
function cutOf(words: string, others: string) {
  const text = panelText('fold centre\nallow 1cm', 'finish hem front.hem turned up 4cm', 'cut 1 on fold');
  const cut = drawnIn(patternIn(text.replace(words, others))).lines.filter(({ role }) => role === 'cutting');
  assert.equal(cut.length, 1);
  return pathOf(cut[0]!).segments;
}

const SLANTS = [
  ['c = b down 30cm', 'c = b down 30cm'],
  ['c = b down 30cm', 'c = b down 30.6cm'],
  ['c = b down 30cm', 'c = b down 29.4cm'],
  ['b = a right 20cm', 'b = a right 20cm down 6mm'],
  ['b = a right 20cm', 'b = a right 20cm up 6mm'],
] as const;

describe('the cutting line of a half', () => {
  for (const [words, others] of SLANTS) {
    it(`leaves the fold and comes back to it where it is drafted with ${others}`, () => {
      const segments = cutOf(words, others);
      const ends = [segments[0]!.p0, segments.at(-1)!.p3];
      assert.deepEqual(
        ends.map(({ x }) => Math.abs(x) < 0.01),
        [true, true],
        JSON.stringify(ends),
      );
      const along = segments.filter(({ p0, p3 }) => Math.abs(p0.x) < 5 && Math.abs(p3.x) < 5);
      assert.ok(
        along.every(({ p0, p3 }) => Math.abs(p0.y - p3.y) < 1),
        'a cut along the fold',
      );
    });
  }
});
