/** Linings: cut after their piece, with words of their own. */
import assert from 'node:assert/strict';
import { near } from '../support/curves';
import { codesOf, drafted, edgeOf, pieceOf } from '../support/drafted';
import { saidOf } from '../support/drafts';

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

  it('takes over what it is matched by, and nothing that is worked in the cloth outside', () => {
    const marked = BACK.replace(
      '  allow 4cm at hem',
      `  allow 4cm at hem
  hole slit from low-left {
    upper straight to (low-left right 5cm)
    lower straight to (low-left right 3cm down 2cm)
    back straight to low-left
  }
  balance line level from low-left to low-right
  mark pocket = low-left right 8cm
  drill tip = low-left right 9cm
  button knop = a down 2cm right 2cm
  eyelets lace = 4 along top from a to b
  bone stay = low-line
  topstitch edge = top parallel 6mm toward c
  label "pocket" at (low-left right 8cm)
  label "nap down"`,
    );
    const pattern = drafted(`${marked}lining back-lining of back {
  cut 1 on fold in lining
  button inner = a down 2cm right 3cm
}
`);
    assert.deepEqual(codesOf(pattern), []);
    const [back, lining] = [pieceOf(pattern, 'back'), pieceOf(pattern, 'back-lining')];
    assert.deepEqual([back.marks.length, back.holes.length], [6, 1]);
    assert.deepEqual(
      lining.marks.map(({ name }) => name),
      ['pocket', 'tip', 'inner'],
    );
    assert.deepEqual([lining.balance.length, lining.holes], [1, []]);
    assert.deepEqual(
      lining.labels.map(({ text }) => text),
      ['nap down'],
    );
    near(lining.area - back.area, (50 * 20) / 2, 1e-6, 'the hole is cloth again');
  });

  it('is left out with the choice that leaves it out', () => {
    const text = `choose lined = 1 in 0 .. 1\n${BACK}lining back-lining of back when lined > 0 {\n  cut pair in lining\n}\n`;
    const names = (of: string): string[] => drafted(of).pieces.map(({ name }) => name);
    assert.deepEqual(names(text), ['back', 'back-lining']);
    assert.deepEqual(names(text.replace('lined = 1', 'lined = 0')), ['back']);
  });
});

describe('a lining of a back', () => {
  const back = (lines: string, cut = 'cut 1 on fold in lining'): string => `draft bodice {
  point nape = origin
  point tip = nape right 19cm
  point pit = nape right 24cm down 22cm
  point foot-side = pit down 20cm
  point foot = nape down to foot-side
}
piece back of bodice {
  cut 1 on fold
  outline from nape {
    neck straight to tip
    armhole straight to pit
    side straight to foot-side
    waist straight to foot
    centre straight to nape
  }
  fold centre
}
lining back-lining of back {
  ${cut}
  ${lines}
}
`;
  const told = (text: string): readonly string[] =>
    saidOf(text).flatMap((line) => /^tight-lining: back-lining has (.*?) at the/.exec(line)?.slice(1) ?? []);

  it('wants a pleat of 2cm in all down its fold, however it is put in', () => {
    assert.deepEqual(told(back('')), ['no pleat']);
    assert.deepEqual(told(back('spread 5mm along nape to foot')), ['a pleat of 1cm']);
    for (const line of [
      'spread 1cm along nape to foot',
      'spread 1cm along (nape right 5cm) to (foot right 5cm)',
      'widen 1cm at centre',
      'pleats back-pleat = 1 knife on neck at 3cm from nape, taking 3cm each, folds toward centre, added',
    ])
      assert.deepEqual(told(back(line)), [], line);
  });

  it('is let be where it has a seam there, no armholes, or a range of the pattern’s own', () => {
    assert.deepEqual(told(back('', 'cut pair in lining')), []);
    assert.deepEqual(
      told(
        back('')
          .replace('fold centre', '')
          .replace('cut 1 on fold\n', 'cut pair\n')
          .replace('cut 1 on fold', 'cut pair'),
      ),
      [],
    );
    assert.deepEqual(told(back('').replace('armhole', 'top')), []);
    assert.deepEqual(told(`${back('')}usual lining-pleat in 0cm .. 5cm\n`), []);
  });
});
