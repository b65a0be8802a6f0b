/** Linings: cut after their piece, with words of their own. */
import assert from 'node:assert/strict';
import { near } from '../support/curves';
import { codesOf, drafted, edgeOf, pieceOf } from '../support/drafted';

const BACK = `
draft body {
  point a = origin
  point b = a right 20cm
  point c = b down 50cm
  point d = a down 50cm
  point low-left = a down 30cm
  point low-right = b down 30cm
  line low-line = low-left to low-right
}
piece back of body {
  cut 1 on fold
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  fold centre
  grain along centre
  allow 1.5cm
  allow 4cm at hem
}
`;

describe('a lining', () => {
  it('is a copy of its piece, allowances included, cut as its own words say', () => {
    const pattern = drafted(`${BACK}lining back-lining of back {\n  cut 1 on fold in lining\n}\n`);
    assert.deepEqual(codesOf(pattern), []);
    const [back, lining] = [pieceOf(pattern, 'back'), pieceOf(pattern, 'back-lining')];
    near(lining.area, back.area, 1e-9);
    assert.equal(lining.cut?.text, 'cut 1 on fold in lining');
    assert.equal(back.cut?.text, 'cut 1 on fold', 'the piece is still cut itself');
    assert.equal(lining.allowances.get('hem'), 40);
    assert.equal(lining.fold?.edge, 'centre');
  });

  it('takes over none of the finishes', () => {
    const pattern = drafted(`${BACK}lining back-lining of back {
  cut 1 on fold in lining
  allow 1cm at hem
}
finish hem back.hem turned up 5cm
`);
    assert.equal(pieceOf(pattern, 'back').allowances.get('hem'), 50);
    assert.equal(pieceOf(pattern, 'back-lining').allowances.get('hem'), 10);
  });

  it('is worked in its block: shorter at the hem, wider by a pleat at the centre', () => {
    const pattern = drafted(`${BACK}lining back-lining of back {
  cut 1 on fold in lining
  shorten 2cm at low-line
  spread 2cm along (on top 1mm from a) to (on hem 1mm from d)
}
`);
    assert.deepEqual(codesOf(pattern), []);
    const lining = pieceOf(pattern, 'back-lining');
    near(edgeOf(lining, 'side').sewn, 480, 1e-6);
    near(edgeOf(lining, 'top').sewn, 220, 1e-6);
    near(edgeOf(lining, 'hem').sewn, 220, 1e-6);
  });

  it('is left out with the choice that leaves it out', () => {
    const text = `choose lined = 1 in 0 .. 1\n${BACK}lining back-lining of back when lined > 0 {\n  cut pair in lining\n}\n`;
    const names = (of: string): string[] => drafted(of).pieces.map(({ name }) => name);
    assert.deepEqual(names(text), ['back', 'back-lining']);
    assert.deepEqual(names(text.replace('lined = 1', 'lined = 0')), ['back']);
  });
});
