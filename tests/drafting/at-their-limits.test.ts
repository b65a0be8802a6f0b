/** Names that go on, amounts that miss by a rounding, and numbers of pleats that can't be. */
import assert from 'node:assert/strict';
import { saidOf } from '../support/drafts';

const panel = (lines: string, more = ''): string => `draft panel {
  point a = origin
  point b = a right 60cm
  point c = b down 40cm
  point m = c left 30cm
  point d = a down 40cm
}
piece front of panel {
  cut 1
  outline from a {
    top straight to b
    side straight to c
    hem straight to m
    hem-back straight to d
    back straight to a
  }
${lines}
}
${more}`;

const linesWith = (word: string, text: string): readonly string[] =>
  saidOf(text).filter((line) => line.includes(word));

describe('names and numbers at their limits', () => {
  it('an acceptance at an edge does not take the edge whose name goes on', () => {
    const text = panel(
      '',
      'piece two worked from front {\n  cut 1\n}\naccept unfinished-edge at two.hem because "it is felt"',
    );
    assert.equal(linesWith('Accepted because', text).length, 1);
  });

  it('darts written 3cm apart are 3cm apart', () => {
    const darts = (second: string): string =>
      panel(
        `  dart one on top at 20cm from a, 2cm wide, 9cm long\n  dart two on top at ${second} from a, 2cm wide, 9cm long`,
      );
    assert.deepEqual(linesWith('dart-spacing', darts('25cm')).concat(linesWith('apart', darts('25cm'))), []);
    assert.equal(linesWith('apart', darts('24.9cm')).length, 1);
  });

  it('a count of pleats that is no whole number is told rounded', () => {
    const text = panel(
      '  pleats fan = 10 / 3 knife on top from a to b, taking 2cm each, folds toward side, added',
    );
    assert.deepEqual(
      linesWith('comes to', text).map((line) => /comes to .*$/.exec(line)![0]),
      ['comes to 3.333.'],
    );
  });

  it('pleats are not stitched down over less than nothing', () => {
    const text = panel(
      '  pleats fan = 3 knife on top from a to b, taking 2cm each, folds toward side, stitched down -5cm, added',
    );
    assert.equal(linesWith('not less than nothing', text).length, 1);
  });
});
