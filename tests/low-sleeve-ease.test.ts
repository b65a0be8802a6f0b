/** Ease of a sleeve under the arm: a sixth of it lies there where it is shared evenly, and none above the pitches. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';

/** Two armholes of 24 cm, and a head that is longer than both by some ease. */
const sleeve = (ease: string, rest: string, reversed = false): string => `draft body {
  point tip-f = origin
  point pit-f = tip-f down 24cm
  point foot-f = pit-f right 20cm
  point tip-b = tip-f left 60cm
  point pit-b = tip-b down 24cm
  point foot-b = pit-b left 20cm
}
piece front of body {
  outline from tip-f {
    armhole straight to pit-f
    side straight to foot-f
    centre straight to tip-f
  }
}
piece back of body {
  outline from tip-b {
    armhole straight to pit-b
    side straight to foot-b
    centre straight to tip-b
  }
}
draft arm {
  point under-b = origin
  point top = under-b right 18cm up 10cm
  let half = 24cm + ${ease} / 2
  point under-f = top right 18cm down 10cm
  solve reach in 5cm .. 25cm so that distance(under-b, high) = half
  point high = under-b right 18cm up reach
  point wrist = top down 50cm
}
piece arm-piece of arm {
  outline from under-b {
    head straight to high
      then straight to under-f
    front-seam straight to wrist
    back-seam straight to under-b
  }
}
seam armhole ${reversed ? 'back.armhole + front.armhole = arm-piece.head' : 'arm-piece.head = back.armhole + front.armhole'} easing ${ease}${rest}
`;

const told = (...of: Parameters<typeof sleeve>): readonly string[] =>
  saidOf(sleeve(...of)).flatMap((line) => /^low-sleeve-ease: (\S+) of/.exec(line)?.slice(1) ?? []);

describe('ease of a sleeve', () => {
  it('lies under the arm by a sixth on either side where it is shared evenly', () => {
    for (const reversed of [false, true]) {
      assert.deepEqual(told('1.8cm', '', reversed), []);
      assert.deepEqual(told('2.4cm', '', reversed), ['4mm']);
    }
    assert.deepEqual(told('2.4cm', '\nusual ease-under-arm in 0mm .. 5mm'), []);
  });

  it('lies above the pitches where the seam says so', () => {
    const notches =
      '\nnotch back-pitch on back.armhole at 8cm from pit-b, double\nnotch front-pitch on front.armhole at 8cm from pit-f, single';
    assert.deepEqual(told('2.4cm', `, none below back-pitch and front-pitch${notches}`), []);
  });

  it('is none where the head is gathered', () => {
    assert.deepEqual(told('2.4cm', '').length, 1);
    assert.deepEqual(
      saidOf(sleeve('2.4cm', '').replace('easing 2.4cm', 'gathered 1.05 to 1')).filter((line) =>
        line.startsWith('low'),
      ),
      [],
    );
  });
});
