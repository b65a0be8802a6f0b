/** A skirt that is closed all round: what has to get through its waist, and what is known of that. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';

/** A skirt of two halves on the fold, its waist four times `half`, for a body with these measurements. */
const skirt = (half: string, body: string): string => `body figure {
  ${body}
}
drafted for figure
draft skirt {
  point waist-cf = origin
  point waist-side = waist-cf left ${half}
  point hem-side = waist-side down 60cm
  point hem-cf = hem-side right ${half}
}
piece front of skirt {
  cut 1 on fold
  outline from waist-cf {
    waist straight to waist-side
    side straight to hem-side
    hem straight to hem-cf
    centre straight to waist-cf
  }
  fold centre
  allow 1cm
}
piece back worked from front {
  cut 1 on fold
}
seam side front.side = back.side
finish waist front.waist, back.waist bound 6mm
`;

const told = (half: string, body: string): readonly string[] =>
  saidOf(skirt(half, body)).flatMap(
    (line) => /^cannot-get-on: .* get through with ([^:]*\)): /.exec(line)?.slice(1, 2) ?? [],
  );

describe('a skirt that is closed all round', () => {
  it('goes over the hips or over the head, whichever is less', () => {
    assert.deepEqual(told('18cm', 'hip 96cm\n  bust 88cm'), ['88cm (bust)']);
    assert.deepEqual(told('22.1cm', 'hip 96cm\n  bust 88cm'), []);
  });

  it('is judged by a small bust where the bust was not measured', () => {
    assert.deepEqual(told('18cm', 'hip 96cm'), ['80cm or more (bust was not measured; seldom is it less)']);
    assert.deepEqual(told('20.1cm', 'hip 96cm'), []);
  });

  it('is not judged where the hips were not measured', () => assert.deepEqual(told('18cm', 'bust 88cm'), []));
});
