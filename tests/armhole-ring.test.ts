/** Armholes beside the bust of the body: where a ring closes, and where it is not plain that it does. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';

/** A vest of two halves; its armhole falls straight for `depth`, and runs 6 cm out on a quarter of an arc or straight. */
const vest = (depth: string, lines: string, bust = 'bust 90cm'): string => `body figure {
  ${bust}
}
drafted for figure
draft vest {
  point neck = origin
  point tip = neck right 12cm
  point pit = tip down ${depth}
  point foot-side = pit down 20cm
  point foot = foot-side left 12cm
}
piece front of vest {
  cut pair
  outline from neck {
    shoulder straight to tip
    armhole straight to pit
    side straight to foot-side
    hem straight to foot
    centre straight to neck
  }
  grain along centre
}
piece back worked from front {
  cut pair
}
seam shoulder front.shoulder = back.shoulder
${lines}`;

const told = (text: string): readonly string[] =>
  saidOf(text).flatMap(
    (line) => /^armhole-ring: .*? all round, \S+ of the bust/.exec(line)?.[0].slice(18) ?? [],
  );

const SIDE = 'seam side front.side = back.side\n';
const BOUND = 'finish arms front.armhole, back.armhole raw\n';
const WIDE = 'armhole (front.armhole + back.armhole) is 48cm all round, 53.3% of the bust';

describe('an armhole beside the bust', () => {
  it('is as usual from 42% to 50% of it, and told beyond', () => {
    for (const depth of ['18.9cm', '20cm', '22.5cm']) assert.deepEqual(told(vest(depth, SIDE + BOUND)), []);
    assert.deepEqual(told(vest('24cm', SIDE + BOUND)), [WIDE]);
    assert.equal(told(vest('18.8cm', SIDE + BOUND)).length, 1);
    assert.deepEqual(told(vest('24cm', `${SIDE}${BOUND}usual armhole-ring in 0.48 .. 0.56\n`)), []);
  });

  it('is told of what a sleeve is set into, closed or not', () => {
    const sleeve = `piece sleeve of vest {
  cut pair
  outline from neck {
    head straight to tip
      then straight to pit
    rest straight to neck
  }
}
seam arm sleeve.head = front.armhole + back.armhole within 50cm
`;
    assert.deepEqual(told(vest('24cm', sleeve)), [WIDE]);
  });

  it('is let be where the edges do not close to a ring, or nobody was measured', () => {
    assert.deepEqual(told(vest('24cm', BOUND)), []);
    assert.deepEqual(told(vest('24cm', 'seam side front.side = its pair\n' + BOUND)), []);
    assert.deepEqual(
      told(vest('24cm', SIDE + 'finish arms front.armhole raw\nfinish back back.armhole raw\n')),
      [],
    );
    assert.deepEqual(told(vest('24cm', SIDE + BOUND, 'waist 70cm')), []);
  });
});
