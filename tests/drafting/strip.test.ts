/** Strips on the straight and on the bias. */
import assert from 'node:assert/strict';
import { codesOf, drafted, edgeOf, pieceOf } from '../support/drafted';

describe('a strip', () => {
  it('is as long and as wide as it says, cut once, without allowance', () => {
    const tie = pieceOf(drafted('strip tie 90cm by 4cm in silk\n'), 'tie');
    assert.equal(tie.area, 900 * 40);
    assert.equal(tie.cut?.text, 'cut 1 in silk');
    assert.deepEqual(
      tie.edges.map(({ name, sewn }) => [name, sewn]),
      [
        ['upper', 900],
        ['right', 40],
        ['lower', 900],
        ['left', 40],
      ],
    );
    assert.ok([...tie.allowances.values()].every((width) => width === 0));
    assert.equal(tie.cutting?.length, 4);
  });

  it('lies along the thread, or at 45° to it on the bias', () => {
    for (const [words, degrees] of [
      ['', 0],
      [' on straight', 0],
      [' on bias', 45],
    ] as const) {
      const { grain } = pieceOf(drafted(`strip tie 90cm by 4cm${words}\n`), 'tie');
      const [x, y] = [grain!.to.x - grain!.from.x, grain!.to.y - grain!.from.y];
      assert.ok(Math.abs(Math.abs((Math.atan2(y, x) * 180) / Math.PI) - degrees) < 1e-9);
      assert.equal(grain!.bias, degrees === 45);
    }
  });

  it('takes its measures from values, and is sewn like any other piece', () => {
    const pattern = drafted(`let round = 30cm
strip collar (2 * round) by 6cm
strip other 60cm by 3cm
seam edge collar.lower = other.upper
`);
    assert.deepEqual(codesOf(pattern), []);
    assert.equal(edgeOf(pieceOf(pattern, 'collar'), 'lower').sewn, 600);
    assert.equal(pattern.seams[0]!.difference, 0);
  });

  it('of no size is refused', () => {
    assert.deepEqual(codesOf(drafted('strip tie 90cm by 0cm\n')), ['no-such-number']);
  });
});
