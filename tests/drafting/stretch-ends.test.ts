/** Places counted from an end of the stretch that a seam takes of an edge. */
import assert from 'node:assert/strict';
import { patternIn, saidOf } from '../support/drafts';

const sheet = (line: string): string => `draft sheet {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
  point slit = b down 12cm
}
piece front of sheet {
  cut pair
  outline from a {
    top straight to b
    side straight to slit
      then straight to c
    hem straight to d
    centre straight to a
  }
  grain along centre
}
seam above front.side from b to slit = front.centre from 12cm from a to a
seam below front.side from slit to c = front.centre from d to 12cm from a
${line}
`;

const at = (line: string): readonly number[] => {
  const [piece] = patternIn(sheet(line)).pieces;
  return piece!.notches.filter(({ edge }) => edge === 'side').map(({ distance }) => Math.round(distance));
};

describe('a notch counted from an end of a stretch', () => {
  it('lies within the stretch of its seam', () => {
    assert.deepEqual(at('notch n on above at 2cm from slit'), [100]);
    assert.deepEqual(at('notch n on below at 2cm from slit'), [140]);
    assert.deepEqual(at('notch n on below at 1/3 from slit'), [180]);
    assert.deepEqual(at('notch n on above at 2cm from b'), [20]);
  });

  it('is asked which way where the edge is named, which goes on both ways', () =>
    assert.ok(
      saidOf(sheet('notch n on front.side at 2cm from slit')).some((said) => said.startsWith('which-way')),
    ));

  it('is told where it lies beyond the other end', () =>
    assert.ok(saidOf(sheet('notch n on below at 20cm from slit')).some((said) => /out-of-reach/.test(said))));
});
