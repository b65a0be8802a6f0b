/** What is drawn on a piece and leads over a place where it is lengthened, shortened or divided. */
import assert from 'node:assert/strict';
import { patternIn } from '../support/drafts';

const skirt = (lines: string): string => `draft sheet {
  point a = origin
  point b = a right 40cm
  point c = b down 60cm
  point d = a down 60cm
  line knee = (a down 40cm) to (b down 40cm)
  line level = (a down 20cm) to (b down 20cm)
}
piece front of sheet {
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  grain along centre
  mark stripe = (a right 5cm) to (d right 5cm)
  balance line slant from (a right 2cm) to (c left 2cm)
  pleats fan = 1 knife on waist at 20cm from a, taking 6cm each, folds toward side, added
}
${lines}
`;

/** Lengths of the stripe, the slanting balance line and both lines of the pleat, in mm. */
function lengths(text: string, name: string): readonly (number | undefined)[] {
  const piece = patternIn(text).pieces.find((one) => one.name === name)!;
  const pleat = piece.shaping?.pleats[0]?.pleats[0];
  const lines = [piece.marks[0]?.paths[0], piece.balance[0]?.path, pleat?.start, pleat?.end];
  return lines.map((path) => path && Math.round(path.length * 1000) / 1000);
}

const worked = (step: string): string => skirt(`piece other worked from front {\n  cut 1\n  ${step}\n}`);

/** Straight from corner to corner of what is left, the pleat's 6 cm counted in. */
const slant = (down: number): number => Math.round(Math.hypot(420, down) * 1000) / 1000;

describe('lines that lead over a cut', () => {
  it('go on to where they ended when a piece is lengthened, those of pleats too', () => {
    const [stripe, , start, end] = lengths(worked('lengthen 10cm at level'), 'other');
    assert.deepEqual([stripe, start, end], [700, 700, 700]);
  });

  it('lose what is taken out when a piece is shortened', () => {
    const [stripe, balance, start, end] = lengths(worked('shorten 10cm at level'), 'other');
    assert.deepEqual([stripe, start, end], [500, 500, 500]);
    assert.ok(balance! > slant(500) && balance! < slant(600), 'a slanting line goes over with a small step');
  });

  it('are as long as they were when a piece is lengthened and shortened again', () => {
    const lines = 'lengthen 10cm at level\n  shorten 10cm at level';
    const [stripe, , start, end] = lengths(worked(lines), 'other');
    assert.deepEqual([stripe, start, end], [600, 600, 600]);
  });

  it('end at the cut of a division', () => {
    const text = skirt('divide front at knee along cut-line into upper holding waist, lower');
    const [stripe, , start, end] = lengths(text, 'upper');
    assert.deepEqual([stripe, start, end], [400, 400, 400]);
    assert.equal(lengths(text, 'lower')[0], 200);
  });
});

describe('a line that a piece is divided at', () => {
  const cutLength = (line: string): number | undefined => {
    const text = `${skirt('divide front at cut along cut-line into upper holding waist, lower')}`;
    const drawn = text.replace('  line level', `  ${line}\n  line level`);
    const upper = patternIn(drawn).pieces.find(({ name }) => name === 'upper');
    const edge = upper?.edges.find(({ name }) => name === 'cut-line');
    return edge && Math.round(edge.sewn * 1000) / 1000;
  };

  it('is drawn on to the edges under the ruler, and ends where it leaves the piece', () => {
    assert.equal(cutLength('line cut = (a down 30cm right 3cm) to (a down 30cm right 9cm)'), 460);
    assert.equal(cutLength('line cut = (a down 30cm left 3cm) to (a down 30cm right 90cm)'), 460);
    assert.equal(cutLength('line cut = (a down 30cm left 3cm) to (a down 30cm right 9cm)'), 460);
  });

  it('ends at the edges where it is a curve, but is not drawn on', () => {
    const over =
      'curve cut = (a down 30cm left 3cm) to (a down 30cm right 60cm) leaving right arriving right';
    assert.equal(cutLength(over), 460);
    assert.equal(cutLength(over.replace('right 60cm', 'right 30cm')), undefined);
  });
});
