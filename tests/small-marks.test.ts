/** Buttons at the bust, buttonholes for their buttons, notches at the back, zips by their garment. */
import assert from 'node:assert/strict';
import { saidOf } from './support/drafts';
import { panelText } from './support/panel';

const told = (text: string, code: string): readonly string[] =>
  saidOf(text).flatMap((line) => (line.startsWith(`${code}: `) ? [line.slice(code.length + 2)] : []));

describe('buttons on a front', () => {
  const row = (from: string, line = 'bust-line'): readonly string[] =>
    told(
      panelText(`balance line ${line} from (a down 14cm) to (a right 16cm down 14cm)
buttons fronts = 4 along (side parallel 2cm toward a) from (b left 2cm down ${from}) to (c left 2cm up 5cm)`),
      'button-off-bust',
    );

  it('have one within 15mm of the bust line, which goes on beyond its end', () => {
    assert.deepEqual(row('8cm'), []);
    assert.match(row('1cm')[0]!, /^The nearest of fronts lies 3cm from the bust line of front/);
    assert.deepEqual(row('1cm', 'waist-line'), []);
    // a row that begins below it does not pass the bust
    assert.deepEqual(row('16cm'), []);
  });

  it('go through buttonholes that are longer by their thickness', () => {
    const line = '(side parallel 2cm toward a) from (b left 2cm down 2cm) to (c left 2cm up 2cm)';
    const holes = (button: string, hole: string): readonly string[] =>
      told(
        panelText(
          `buttons closing = 4 along ${line}${button}`,
          `piece under worked from front {\n  cut pair\n  buttonholes closing = 4 along ${line}${hole}\n}`,
        ),
        'unlike-buttons',
      );
    assert.deepEqual(holes(', 15mm wide', ', 18mm long'), []);
    assert.deepEqual(holes(', 15mm wide', ''), []);
    assert.match(
      holes(', 15mm wide', ', 15mm long')[0]!,
      /1\.5cm long, and the buttons 1\.5cm across: the button does not go through/,
    );
    assert.match(holes(', 15mm wide', ', 25mm long')[0]!, /slips out/);
  });
});

describe('notches on an armhole', () => {
  it('are double at the back', () => {
    const notched = (piece: string, count: string): readonly string[] =>
      told(
        panelText('', `notch pitch on ${piece}.armhole at 8cm from b, ${count}`)
          .replace('piece front', `piece ${piece}`)
          .replace('side straight', 'armhole straight'),
        'single-back-notch',
      );
    assert.equal(notched('back', 'single').length, 1);
    assert.deepEqual(notched('back', 'double'), []);
    assert.deepEqual(notched('front', 'single'), []);
  });
});

describe('a zip', () => {
  /** A panel whose edges bear these names, the last of them with a zip. */
  const zip = (names: readonly string[], long: string): readonly string[] => {
    const text = ['top', 'side', 'hem', 'centre'].reduce(
      (was, name, i) => was.replace(`${name} straight`, `${names[i]} straight`),
      panelText('', `seam closing front.${names[3]} = its pair, zip ${long} from a`),
    );
    return told(text.replace('grain along centre', '').replaceAll('30cm', '80cm'), 'unusual-zip');
  };

  it('is as long as is usual for a skirt, a dress or a fly', () => {
    const skirt = ['waist', 'side', 'hem', 'centre'];
    const dress = ['neck', 'armhole', 'hem', 'centre'];
    const fly = ['waist', 'side', 'foot', 'rise'];
    for (const [names, usual, other] of [
      [skirt, '20cm', '31cm'],
      [dress, '55cm', '31cm'],
      [fly, '18cm', '10cm'],
    ] as const) {
      assert.deepEqual(zip(names, usual), []);
      assert.match(zip(names, other)[0]!, new RegExp(`is ${other} long here`));
    }
    // a bodice has whatever it has
    assert.deepEqual(zip(['neck', 'armhole', 'waist', 'centre'], '35cm'), []);
  });
});
