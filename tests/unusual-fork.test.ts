/** The fork of trousers and their length between the legs, beside the body. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';

/** A half of trousers with a fork of so many cm; the outline runs either way, the leg to either side. */
const leg = (name: string, reach: string, turned = false): string => {
  const [out, back] = turned ? ['left', 'right'] : ['right', 'left'];
  const outline = turned
    ? [
        'side straight to foot-out',
        'foot straight to foot-in',
        'inseam straight to fork',
        'rise straight to seat\n      then straight to waist',
        'waist straight to waist-side',
      ]
    : [
        'rise straight to seat\n      then straight to fork',
        'inseam straight to foot-in',
        'foot straight to foot-out',
        'side straight to waist-side',
        'waist straight to waist',
      ];
  return `draft ${name}-leg {
  point waist = origin
  point seat = waist down 18cm
  point fork = seat down 8cm ${out} ${reach}
  point foot-in = waist down 100cm
  point foot-out = foot-in ${back} 20cm
  point waist-side = waist ${back} 23cm
}
piece ${name} of ${name}-leg {
  cut pair
  outline from ${turned ? 'waist-side' : 'waist'} {
    ${outline.join('\n    ')}
  }
  balance line seat-line from ${turned ? '(seat right 20cm) to seat' : 'seat to (seat left 20cm)'}
}
`;
};

const trousers = (pieces: string, body = 'hip 100cm', more = ''): string =>
  `body figure {\n  ${body}\n}\ndrafted for figure\n${pieces}${more}`;

const told = (...of: Parameters<typeof trousers>): readonly string[] =>
  saidOf(trousers(...of)).flatMap((line) => /^unusual-fork: (.*?);/.exec(line)?.slice(1) ?? []);

describe('the fork of trousers', () => {
  it('is usual in front from 4 to 6.5% of the hip, and behind from 12 to 16%, drawn either way', () => {
    for (const turned of [false, true]) {
      for (const reach of ['4cm', '6.5cm']) assert.deepEqual(told(leg('front', reach, turned)), []);
      for (const reach of ['12cm', '16cm']) assert.deepEqual(told(leg('back', reach, turned)), []);
      assert.deepEqual(told(leg('front', '7cm', turned)), [
        'The fork of front reaches 7cm beyond the seat line, 7% of the hip of figure (100cm)',
      ]);
      assert.equal(told(leg('back', '11cm', turned)).length, 1);
    }
    assert.deepEqual(told(leg('front', '7cm'), 'hip 100cm', 'usual front-fork in 0.05 .. 0.08\n'), []);
  });

  it('is let be without a seat line, without a hip, and in pieces that are no leg', () => {
    assert.deepEqual(told(leg('front', '7cm').replace('seat-line', 'other-line')), []);
    assert.deepEqual(told(leg('front', '7cm'), 'waist 80cm'), []);
    assert.deepEqual(told(leg('gore', '7cm')), []);
  });

  it('and the rise go round the body with 1 to 3cm to spare', () => {
    // 18cm to the seat, then straight to the fork: √(8² + 5²) in front and √(8² + 13²) behind
    const round = 18 + Math.hypot(8, 5) + 18 + Math.hypot(8, 13);
    const both = leg('front', '5cm') + leg('back', '13cm');
    const body = (ease: number): string =>
      `hip 100cm\n  crotch-length ${Math.round((round - ease) * 1000) / 1000}cm`;
    for (const ease of [1, 2, 3]) assert.deepEqual(told(both, body(ease)), []);
    for (const [ease, words] of [
      [0.5, '5mm more than'],
      [3.5, '3.5cm more than'],
      [-1, '1cm less than'],
    ] as const) {
      const [said] = told(both, body(ease));
      assert.ok(said?.includes(words), said);
    }
  });
});
