/** What rounding a corner off moves, by the rule of the circle that touches both legs. */
import assert from 'node:assert/strict';
import { check } from '../server/checks/index';
import type { Smoothed } from '../server/drafting/model';
import { near } from './support/curves';
import { patternIn } from './support/drafts';

/** A panel whose right edge turns by some degrees in its middle, outward or inward, and a piece of it smoothed there. */
const panel = (
  turn: number,
  by: string,
  walked: 'round' | 'back' = 'round',
  more = '',
): string => `draft panel {
  point a = origin
  point m = a right 30cm down 20cm
  point b = m at ${90 - turn / 2}deg above left for 20cm
  point c = m at ${90 - turn / 2}deg below left for 20cm
  point d = a down to c
}
piece drawn of panel {
  outline from ${walked === 'round' ? 'a' : 'd'} {
    ${
      walked === 'round'
        ? 'top straight to b\n    seam-edge straight to m\n      then straight to c\n    foot straight to d\n    centre straight to a'
        : 'foot straight to c\n    seam-edge straight to m\n      then straight to b\n    top straight to a\n    centre straight to d'
    }
  }
}
piece front worked from drawn {
  smooth m by ${by} each side
}
${more}`;

const smoothed = (text: string): Smoothed =>
  patternIn(text).pieces.find(({ name }) => name === 'front')!.smoothed![0]!;

const told = (text: string): readonly string[] =>
  check(patternIn(text)).flatMap(({ code, message }) =>
    code === 'smoothed-away' ? [/(?:takes|adds) \S+ (?:off|to) \S+/.exec(message)![0]] : [],
  );

describe('a corner that is smoothed', () => {
  it('moves by its reach times the tangent of a quarter of the turn, to a fiftieth', () => {
    for (const turn of [10, 20, 29, 40]) {
      const { moved, by } = smoothed(panel(turn, '1.5cm'));
      const closed = by * Math.tan((turn / 4) * (Math.PI / 180));
      near(moved, closed, closed / 50, `at ${turn}°`);
    }
  });

  it('takes of the piece at a point and adds to it in a hollow, whichever way the outline is walked', () => {
    for (const walked of ['round', 'back'] as const) {
      assert.deepEqual(told(panel(29, '3cm', walked)), ['takes 3.8mm off front']);
      assert.deepEqual(told(panel(-29, '3cm', walked)), ['adds 3.8mm to front']);
      assert.deepEqual(told(panel(29, '1.5cm', walked)), []);
    }
  });

  it('is told once, where its line stands, and by the pattern’s own range', () => {
    assert.deepEqual(told(panel(29, '3cm', 'round', 'piece two worked from front {\n  cut 1\n}\n')), [
      'takes 3.8mm off front',
    ]);
    assert.deepEqual(told(panel(29, '3cm', 'round', 'usual smoothed-by in 0mm .. 4mm\n')), []);
  });
});
