/** Corners at a fold that are not square: told once for all pieces that have them from one block. */
import assert from 'node:assert/strict';
import { check } from '../server/checks/index';
import { patternIn, saidOf } from './support/drafts';

const block = (lines: string): string => `draft skirt {
  point waist-cf = origin
  point hem-cf = waist-cf down 60cm
  point hem-side = hem-cf left 30cm up 3cm
  point waist-side = waist-cf left 20cm
  line side = waist-side to hem-side
  curve hemline = hem-side to hem-cf leaving square to side arriving at 5deg below right
}
piece front of skirt {
  cut 1 on fold
  outline from waist-cf {
    waist straight to waist-side
    side straight to hem-side
    hem along hemline to hem-cf
    centre straight to waist-cf
  }
  fold centre
}
${lines}`;

const told = (lines: string): readonly string[] =>
  saidOf(block(lines)).flatMap((line) => /^corner-at-fold: .*? has/.exec(line)?.[0].slice(16) ?? []);

const ONCE = ['hem meets the fold along centre at 85°: opened out, front has'];

describe('a corner at a fold', () => {
  it('that several pieces have from one block is told at the first of them', () =>
    assert.deepEqual(
      told(
        'piece back worked from front {\n  cut 1 on fold\n}\nlining under of front {\n  cut 1 on fold\n}\n',
      ),
      ONCE,
    ));

  it('is let stand in all pieces that have it from one block, whichever of them is named', () => {
    const w = 'piece w worked from front {\n  cut 1 on fold\n}\n';
    const standing = (...names: string[]): readonly string[] => {
      const lines = names.map((name) => `accept corner-at-fold at ${name} because "it points"\n`);
      const found = check(patternIn(block(w + lines.join(''))));
      return found.flatMap(({ code, severity, piece }) =>
        /corner-at-fold|stale/.test(code) ? [`${severity} ${code} ${piece ?? ''}`] : [],
      );
    };
    assert.deepEqual(standing(), ['warning corner-at-fold front']);
    assert.deepEqual(standing('front'), ['note corner-at-fold front']);
    assert.deepEqual(standing('w'), ['note corner-at-fold w']);
    assert.deepEqual(standing('w', 'front'), ['note corner-at-fold front', 'note corner-at-fold w']);
  });

  it('is told of each piece that draws its own', () => {
    const own = `piece back of skirt {
  cut 1 on fold
  outline from waist-cf {
    waist straight to waist-side
    side straight to hem-side
    hem along hemline to hem-cf
    centre straight to waist-cf
  }
  fold centre
}
`;
    assert.deepEqual(told(own), [...ONCE, ONCE[0]!.replace('front', 'back')]);
  });
});
