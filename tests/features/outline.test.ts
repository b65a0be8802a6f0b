/** The outline of a file and what can be folded away. */
import { checkFolds, checkOutline } from '../support/features';

const text = `# first line
# second line
pattern "Apron"
choose width = 60cm

draft sheet {
  # one comment line alone is not folded
  point a = origin
  line top = a to (a right width)
}

piece skirt of sheet {
  cut 1
  outline from a {
    top along top to (a right width)
    rest straight to a
  }
  notch half on top at halfway
}
seam side skirt.top = its pair
`;

describe('the outline of a file', () => {
  it('lists what a person would look for, edges and marks under their piece', () =>
    checkOutline(text, [
      'choice width: choose',
      'draft sheet: draft',
      '  shape a: point',
      '  shape top: line',
      'piece skirt: piece of sheet',
      '  edge top: edge',
      '  edge rest: edge',
      '  mark half: notch',
      'seam side: seam',
    ]));

  it('is there for a file that is being typed', () =>
    checkOutline('draft sheet {\n  point a = \n}\npiece p of sheet {\n', [
      'draft sheet: draft',
      '  mark a: not understood',
      'piece p: piece of sheet',
    ]));
});

describe('folding', () => {
  it('takes blocks without their closing brace, and comments of several lines', () =>
    checkFolds(text, ['1-2 comment', '6-9 block', '12-18 block', '14-16 block']));

  it('works with line ends of another system', () =>
    checkFolds(text.replaceAll('\n', '\r\n'), ['1-2 comment', '6-9 block', '12-18 block', '14-16 block']));
});
