/** A word that is both a value and an edge, and halves sewn to wholes. */
import assert from 'node:assert/strict';
import { near } from '../support/curves';
import { patternIn, saidOf } from '../support/drafts';
import { edgeOf, pieceOf } from '../support/drafted';

const APRON = `drafted for maid
body maid {
  waist 72cm
}
draft sheet {
  point a = origin
  point b = a right 40cm
  point c = b down 60cm
  point d = a down 60cm
}
piece apron of sheet {
  cut 1 on fold
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  fold centre
  grain along centre
  gathers fullness on waist, to waist / 4
  allow waist / 36 at hem
  allow 1cm at waist
}
`;

describe('a word that is an edge and a measurement', () => {
  it('is the measurement where a value is due, and the edge where one is', () => {
    const apron = pieceOf(patternIn(APRON), 'apron');
    near(edgeOf(apron, 'waist').sewn, 180, 1e-6);
    near(apron.allowances.get('hem')!, 20, 1e-6);
  });
});

describe('a half on the fold that is sewn to a strip', () => {
  const sewn = (length: string): string =>
    saidOf(
      `${APRON}strip tie 200cm by 6cm\nseam tied apron.waist = tie.lower from 80cm from tie.lower.start to ${length} from tie.lower.start\n`,
    ).join('\n');

  it('is told that the whole is twice as long', () => {
    assert.match(
      sewn('116cm'),
      /mismatched-seam: .* apron lies on the fold and is a half: sew it to half of tie\.lower/,
    );
    assert.match(sewn('110cm'), /mismatched-seam: (?!.*lies on the fold)/);
  });

  it('is not asked for the allowance of the strip, which is cut to measure', () => {
    assert.doesNotMatch(sewn('98cm'), /mismatched-seam|unequal-allowances/);
  });
});
