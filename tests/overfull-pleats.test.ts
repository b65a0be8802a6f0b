/** Rows of pleats are judged alike whichever way their edge is walked. */
import assert from 'node:assert/strict';
import { check } from '../server/checks/index';
import type { Pattern, Piece } from '../server/drafting/model';
import { patternIn, saidOf } from './support/drafts';

/** A panel of 60 cm with pleats that fold toward its middle, and a strip beside it whose outline is walked the other way. */
const panel = (spacing: string, cut = '  cut 1\n', more = ''): string => `draft panel {
  point a = origin
  point b = a right 60cm
  point c = b down 40cm
  point d = a down 40cm
  point middle = a right 30cm
  point f = b right 10cm
  point g = c right 10cm
}
piece front of panel {
${cut}  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    back straight to a
  }
  pleats fan = 4 knife on top at ${spacing} from a, taking 5cm each, folds toward middle, added
}
piece strip of panel {
  outline from b {
    inner straight to c
    foot straight to g
    outer straight to f
    strip-top straight to b
  }
}
${more}`;

const told = (text: string): readonly string[] =>
  saidOf(text).flatMap((line) => (line.startsWith('overfull-pleats') ? [line] : []));

const CROWDED = '10cm, 12cm, 40cm, 44cm';

describe('pleats that lie too thick', () => {
  it('are those that fold under each other, from whichever side they come', () => {
    const [line, ...more] = told(panel(CROWDED));
    assert.match(line!, /take 5cm each, and 2cm lies between two on top: 2\.5 times/);
    assert.deepEqual(more, []);
    // across the middle they fold away from each other, and lie as near as one likes
    assert.deepEqual(told(panel('10cm, 20cm, 29.5cm, 40cm')), []);
  });

  it('are found in the same words where the outline of their piece is walked back', () => {
    const joined = panel(
      CROWDED,
      '',
      'join strip.inner to front.side into skirt\npiece whole worked from skirt {\n  cut 1\n}\n',
    );
    const whole = patternIn(joined).pieces.find(({ name }) => name === 'whole');
    // from the far end of the top to its beginning
    const { path } = whole!.edges.find(({ name }) => name === 'top')!;
    assert.ok(path.start.x - path.end.x > 600);
    assert.deepEqual(told(joined), told(panel(CROWDED)));
  });

  it('are found in whatever order their row names them', () => {
    const pattern = patternIn(panel(CROWDED));
    const [piece] = pattern.pieces as [Piece];
    const rows = piece.shaping!.pleats.map((row) => ({ ...row, pleats: [...row.pleats].reverse() }));
    const shaping = { value: { ...piece.shaping!, pleats: rows } };
    const turned = Object.create(pattern, {
      pieces: { value: [Object.create(piece, { shaping })] },
    }) as Pattern;
    const lines = (of: Pattern): readonly string[] =>
      check(of).flatMap(({ code, message }) => (code === 'overfull-pleats' ? [message] : []));
    assert.deepEqual(lines(turned), lines(pattern));
    assert.equal(lines(turned).length, 1);
  });
});
