/** Edges that run on through a seam, and square to a fold: the same whichever way an outline is walked, and turned over. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import { patternIn } from '../support/drafts';

/** Half a skirt cut from a ring: a quarter of the circle, its hem turned at the side by some degrees. */
interface Cut {
  readonly side: 'left' | 'right';
  readonly walked: 'round' | 'back';
  readonly bend: number;
}

const quarter = (name: string, { side, walked, bend }: Cut): string => {
  const other = side === 'left' ? 'right' : 'left';
  const leaving = bend === 0 ? 'down' : `at ${90 - Math.abs(bend)}deg below ${bend > 0 ? side : other}`;
  const round = `
    centre straight to hem-cf
    hem along hemline to hem-side
    side straight to waist-side
    waist along waistline to waist-cf`;
  const back = `
    waist along waistline to waist-side
    side straight to hem-side
    hem along hemline to hem-cf
    centre straight to waist-cf`;
  return `
draft ${name}-ring {
  point middle = origin
  point waist-cf = middle down 20cm
  point hem-cf = middle down 80cm
  point waist-side = middle ${side} 20cm
  point hem-side = middle ${side} 80cm
  curve waistline = waist-cf to waist-side leaving ${side} arriving up
  curve hemline = hem-side to hem-cf leaving ${leaving} arriving ${other}
}
piece ${name} of ${name}-ring {
  outline from waist-cf {${walked === 'round' ? round : back}
  }
  fold centre
}
`;
};

const skirt = (front: Cut, back: Cut): string =>
  `${quarter('front', front)}${quarter('back', back)}
seam side front.side = back.side
finish hem front.hem, back.hem turned up 2cm
finish waist front.waist, back.waist bound 8mm
`;

/** Bends in degrees that are told, by code. */
const bends = (text: string, code: string): readonly number[] =>
  check(patternIn(text))
    .filter((found) => found.code === code)
    .map(({ message }) => Number(/bend of ([\d.]+)°|at ([\d.]+)°:/.exec(message)?.slice(1).find(Boolean)));

const CUTS: readonly Omit<Cut, 'bend'>[] = [
  { side: 'left', walked: 'round' },
  { side: 'left', walked: 'back' },
  { side: 'right', walked: 'round' },
  { side: 'right', walked: 'back' },
];

describe('edges that run on through a seam', () => {
  it('do so in two quarters of a circle, walked either way and turned over', () => {
    for (const front of CUTS) {
      for (const back of CUTS)
        assert.deepEqual(bends(skirt({ ...front, bend: 0 }, { ...back, bend: 0 }), 'kinked-edge'), []);
    }
  });

  it('are told with the bend of both corners together, walked either way and turned over', () => {
    for (const front of CUTS) {
      for (const back of CUTS) {
        assert.deepEqual(bends(skirt({ ...front, bend: 3 }, { ...back, bend: 4 }), 'kinked-edge'), [7]);
        // what one piece dips the other may rise: then the sewn edge is straight
        assert.deepEqual(bends(skirt({ ...front, bend: 4 }, { ...back, bend: -4 }), 'kinked-edge'), []);
      }
    }
  });

  it('are told of the piece alone where a facing or a lining that lies behind it bends alike', () => {
    const [cut] = CUTS;
    const behind = `facing front-facing of front along hem, 6cm deep
facing back-facing of back along hem, 6cm deep
lining front-lining of front {
}
lining back-lining of back {
}
seam facing-side front-facing.side = back-facing.side
seam lining-side front-lining.side = back-lining.side
finish behind front-facing.inner, back-facing.inner, front-lining.hem, back-lining.hem raw
`;
    const text = skirt({ ...cut!, bend: 3 }, { ...cut!, bend: 4 });
    assert.deepEqual(bends(text + behind, 'kinked-edge'), [7]);
    // turned up by itself, a lining has a hem of its own
    const turned = behind.replace(', front-lining.hem, back-lining.hem raw', ' raw');
    const hems = 'finish lining-hems front-lining.hem, back-lining.hem turned up 2cm\n';
    assert.deepEqual(bends(text + turned + hems, 'kinked-edge'), [7, 7]);
  });

  it('are let be where they bend by no more than is usual, or so far that a corner is meant', () => {
    const [cut] = CUTS;
    assert.deepEqual(bends(skirt({ ...cut!, bend: 1 }, { ...cut!, bend: 0.9 }), 'kinked-edge'), []);
    assert.deepEqual(bends(skirt({ ...cut!, bend: 20 }, { ...cut!, bend: 20 }), 'kinked-edge'), []);
  });
});

describe('edges that meet a fold', () => {
  const folded = (heading: string, walked: Cut['walked'], side: Cut['side']): string => {
    const text = skirt({ side, walked, bend: 0 }, { side, walked, bend: 0 });
    return text.replace(/arriving (left|right)\n}/, (_, to: string) => `arriving ${heading} ${to}\n}`);
  };

  it('are told with their angle where it is not square, walked either way and turned over', () => {
    for (const { side, walked } of CUTS) {
      const found = bends(folded('at 4deg below', walked, side), 'corner-at-fold');
      assert.deepEqual(found, [86]);
    }
  });

  it('are let be where the angle is nearly square', () => {
    for (const { side, walked } of CUTS)
      assert.deepEqual(bends(folded('at 1deg below', walked, side), 'corner-at-fold'), []);
  });
});
