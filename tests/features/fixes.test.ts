/** Repairs that are offered, taken, and seen to help. */
import { checkFix } from '../support/fixes';

describe('a repair', () => {
  it('of a mistyped name writes the nearest one', () =>
    checkFix(
      'choose width = 60cm\nlet half = wdith / 2\n#          ^ here\n',
      'Change to width',
      'choose width = 60cm\nlet half = width / 2\n',
    ));

  it('of a bare number gives it a unit', () =>
    checkFix(
      'draft sheet {\n  point a = origin down 5\n#                       ^ here\n}\n',
      'Write 5cm',
      'draft sheet {\n  point a = origin down 5cm\n}\n',
    ));
});
