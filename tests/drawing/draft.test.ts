/** The draft beneath the pieces: which of its lines and points are drawn with a piece, and where. */
import assert from 'node:assert/strict';
import { withDrafts } from '../../server/drawing/draft';
import { draw } from '../../server/drawing/draw';
import { drafted } from '../support/drafted';

const TEXT = `draft sheet {
  point a = origin
  point b = a right 30cm
  point c = b down 20cm
  point d = a down 20cm
  point guide = d down 6cm
  point beyond = d down 9cm
  line aside = guide to d
  line away = d to beyond
  curve belly = d to c hollow 1.2cm toward a
}
piece flag of sheet {
  cut 1
  outline from a {
    top straight to b
    fly straight to c
    foot along belly to d
    hoist straight to a
  }
}
piece turned worked from flag mirrored {
  cut 1
}
`;

const beneath = (name: string) => {
  const pattern = drafted(TEXT);
  const bare = draw(pattern).pieces.find((piece) => piece.name === name)!;
  const drawn = withDrafts(draw(pattern), pattern).pieces.find((piece) => piece.name === name)!;
  return { bare, drawn };
};

describe('the draft beneath a piece', () => {
  it('is its lines and points within a hand of the piece, and the frame holds them', () => {
    const { bare, drawn } = beneath('flag');
    const lines = drawn.lines.filter(({ role }) => role === 'construction');
    assert.deepEqual(
      lines.map(({ source, tip }) => [source, tip]),
      [
        ['sheet/aside', 'aside, 6cm'],
        ['sheet/belly', `belly, ${lines[1]!.tip.slice('belly, '.length)}`],
      ],
    );
    const points = drawn.dots.filter(({ role }) => role === 'point');
    assert.deepEqual(
      points.map(({ name, at }) => [name, at.x, at.y]),
      [
        ['guide', 0, 260],
        ['belly, where it is deepest', 150, 188],
      ],
    );
    assert.equal(bare.frame.bottom, 200);
    assert.equal(drawn.frame.bottom, 260);
  });

  it('adds nothing to a piece that was turned over since, nor takes anything away', () => {
    const { bare, drawn } = beneath('turned');
    assert.equal(drawn, bare);
    const flag = beneath('flag');
    assert.deepEqual(
      flag.drawn.lines.filter(({ role }) => role !== 'construction'),
      flag.bare.lines,
    );
  });
});
