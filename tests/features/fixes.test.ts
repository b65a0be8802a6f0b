/** Repairs that are offered, taken, and seen to help. */
import { checkFix } from '../support/fixes';

describe('a repair', () => {
  it('of a mistyped name writes the nearest one', () =>
    checkFix(
      'choose width = 60cm\nlet half = wdith / 2\n#          ^ here\n',
      'write width',
      'choose width = 60cm\nlet half = width / 2\n',
    ));

  it('of a bare number gives it a unit', () =>
    checkFix(
      'let wide = 4 * 2cm\nlet long = min(3, 2cm)\n#              ^ here\n',
      'write 3cm',
      'let wide = 4 * 2cm\nlet long = min(3cm, 2cm)\n',
    ));
});
