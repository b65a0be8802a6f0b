/** Where the checks of grain, folds and marks speak, and where they keep still. */
import assert from 'node:assert/strict';
import { saidOf } from '../support/drafts';
import { panelText } from '../support/panel';

/** The codes found in a panel, without those of its open edges. */
function codes(lines: string, more = '', cut = 'cut pair'): readonly string[] {
  const about = /^(?!unfinished-edge|missing-allowance|no-notch)/;
  const said = saidOf(panelText(lines, more, cut)).filter((one) => about.test(one));
  return [...new Set(said.map((one) => one.split(':')[0]!))];
}
const silent = (lines: string, more = '', cut = 'cut pair'): void =>
  assert.deepEqual(codes(lines, more, cut), []);

const BUTTON_LINE = '(side parallel 2cm toward a) from (b left 2cm down 2cm) to (c left 2cm up 2cm)';

describe('what is said of marks', () => {
  it('is nothing of buttons at a usual distance, and of fewer than four at any', () => {
    silent(`buttons fronts = 4 along ${BUTTON_LINE}`);
    silent(`buttons fronts = 3 along ${BUTTON_LINE}`);
    assert.deepEqual(codes(`buttons fronts = 6 along ${BUTTON_LINE}`), ['button-spacing']);
  });

  it('follows a range of the pattern in place of the usual one', () => {
    silent(`buttons fronts = 6 along ${BUTTON_LINE}`, 'usual button-spacing in 3cm .. 6cm');
    const eyelets =
      'eyelets lacing = 12 along (side parallel 2cm toward a) from (b left 2cm down 1cm) to (c left 2cm up 1cm)';
    assert.deepEqual(codes(eyelets), ['eyelet-places']);
    silent(eyelets, 'usual eyelet-from-edge in 1cm .. 2cm');
  });

  it('needs the width of the buttons to judge their stand', () => {
    const row =
      'buttons fronts = 4 along (side parallel 1cm toward a) from (b left 1cm down 2cm) to (c left 1cm up 2cm)';
    silent(row);
    assert.deepEqual(codes(`${row}, 12mm wide`), ['narrow-button-stand']);
    silent(`${row}, 8mm wide`);
  });

  it('is nothing of buttons on the fold of a piece', () => {
    silent(
      'fold side\nbuttons fronts = 4 along side from 2cm from b to 2cm from c, 2cm wide',
      '',
      'cut 1 on fold',
    );
  });

  it('compares buttons and buttonholes of one name alone', () => {
    const under = (name: string, count: number, to = 'up 2cm') =>
      `piece under worked from front {\n  cut pair\n  buttonholes ${name} = ${count} along ${BUTTON_LINE.replace('up 2cm', to)}\n}`;
    const row = `buttons closing = 4 along ${BUTTON_LINE}`;
    silent(row, under('closing', 4));
    silent(row, under('other', 5));
    assert.deepEqual(codes(row, under('closing', 5)), ['unlike-buttons']);
    assert.deepEqual(codes(row, under('closing', 4, 'up 4cm')), ['unlike-buttons']);
  });

  it('is nothing of bones that end in time or within the piece', () => {
    silent('bones ribs = 3 along top from 5cm from a to 5cm from b');
    silent('bone busk = (a right 5cm down 6mm) to (d right 5cm up 12cm)');
    assert.deepEqual(codes('bone busk = (a right 5cm down 4mm) to (d right 5cm up 12cm)'), ['bone-ends']);
  });

  it('is nothing of marks in the allowance, on the edge, or along a hem', () => {
    silent('allow 3cm\nbutton one = a up 2cm right 5cm\ndrill two = on side halfway\ntopstitch three = hem');
    assert.deepEqual(codes('allow 1cm\nbutton one = a up 2cm right 5cm'), ['mark-outside']);
  });

  it('tells of a mark in a hole', () => {
    const hole = `hole slot from (a right 5cm down 5cm) {
  s-top straight to (a right 9cm down 5cm)
  s-side straight to (a right 9cm down 11cm)
  s-slant straight to (a right 5cm down 5cm)
}
drill awl = a right 8cm down 7cm`;
    assert.deepEqual(codes(hole), ['mark-outside']);
  });
});

describe('what is said of grain and fold', () => {
  const grain = (line: string, cut = 'cut pair', lines = ''): readonly string[] =>
    [
      ...new Set(
        saidOf(panelText(lines, '', cut).replace('grain along centre', line)).map(
          (one) => one.split(':')[0]!,
        ),
      ),
    ].filter((code) => code.includes('grain') || code.includes('fold'));

  it('is nothing of a grain along or across a straight edge, or from point to point', () => {
    for (const line of ['grain along side', 'grain along top', 'grain from a to c', 'grain bias to hem'])
      assert.deepEqual(grain(line), [], line);
  });

  it('tells of a piece that is cut without, and of none that is not cut', () => {
    assert.deepEqual(grain(''), ['no-grain']);
    assert.deepEqual(grain('', '# a step on the way'), []);
  });

  it('tells of the bias on a fold, and not of a piece cut open', () => {
    const fold = 'fold centre';
    assert.deepEqual(grain('grain bias to centre', 'cut 1 on fold', fold), ['bias-on-fold']);
    assert.deepEqual(grain('grain from a to c', 'cut 1 on fold', fold), ['bias-on-fold']);
    assert.deepEqual(grain('grain along top', 'cut 1 on fold', fold), []);
    assert.deepEqual(grain('grain bias to centre', 'cut 1 open', fold), []);
  });
});
