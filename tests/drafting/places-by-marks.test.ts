/** Places on edges and seams that are told by balance lines and marks of their piece. */
import assert from 'node:assert/strict';
import { patternIn, saidOf } from '../support/drafts';

const bodice = (inside: string, more: string): string => `draft sheet {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
  point e = a right 40cm
  point f = e right 20cm
  point g = f down 30cm
  point h = e down 30cm
}
piece front of sheet {
  cut pair
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  balance line level from (a down 12cm) to (b down 12cm)
  mark stripe = (a down 20cm) to (b down 20cm)
${inside}
}
piece back of sheet {
  cut pair
  outline from e {
    top straight to f
    side straight to g
    hem straight to h
    centre straight to e
  }
  balance line level from (e down 13cm) to (f down 13cm)
}
seam joins front.side = back.side
${more}
`;

const notches = (text: string): readonly string[] =>
  patternIn(text).pieces.flatMap(({ name, notches: of }) =>
    of.map(({ edge, distance }) => `${name}.${edge} ${Math.round(distance)}`),
  );

describe('a place told by a balance line or a mark', () => {
  it('of a piece named before it lies on a seam, and on an edge', () => {
    assert.deepEqual(notches(bodice('', 'notch n on joins at front.level.end')), [
      'front.side 120',
      'back.side 120',
    ]);
    assert.deepEqual(notches(bodice('', 'notch n on back.side at back.level.end')), ['back.side 130']);
    assert.deepEqual(notches(bodice('', 'notch n on front.side at 2cm below front.stripe.end')), [
      'front.side 220',
    ]);
  });

  it('needs no name of its piece in the piece’s own block', () =>
    assert.deepEqual(notches(bodice('  notch n on side at level.end\n  notch m on side at stripe.end', '')), [
      'front.side 120',
      'front.side 200',
    ]));

  it('that the piece has not got is told', () =>
    assert.ok(
      saidOf(bodice('', 'notch n on joins at front.nowhere.end')).some((said) => /unknown-name/.test(said)),
    ));
});
