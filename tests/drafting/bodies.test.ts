/** Bodies, size tables and the wearer's two sides, from text to figures, findings and pieces. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import { checkDraft, patternIn } from '../support/drafts';

describe('bodies and sizes', () => {
  it('a measurement with sides is that of the half the draft is drawn for, and each side by its name', () =>
    checkDraft(`drafted for gatekeeper
body gatekeeper {
  shoulder left 12.8cm right 12.2cm
  waist 70cm
}
let left-one = shoulder.left #= 12.8cm
let right-one = shoulder.right #= 12.2cm
let middle = shoulder.average #= 12.5cm
let more = shoulder.larger #= 12.8cm
let less = shoulder.smaller #= 12.2cm
let once = waist.larger #= 70cm
let wrong = shoulder.longest
#                    ^^^^^^^ error[unknown-name]: shoulder answers to .left, .right, .average, .larger and
#                    | .smaller, not to .longest.
draft right-half {
  let own = shoulder #= 12.2cm
}
draft left-half {
  drawn as left
  let own = shoulder #= 12.8cm
}
`));

  it('a body takes from a table what was not measured', () =>
    checkDraft(`drafted for understudy
sizes standard {
  size S M L
  bust 84cm 92cm 101cm
  waist 66cm 74cm 83cm
}
body understudy from standard M {
  waist 80cm
}
let a = bust #= 92cm
let b = waist #= 80cm
`));

  it('a body may lie two sizes from the one it borrows from, but no more', () => {
    const table = `sizes standard {
  size S M L XL
  bust 84cm 92cm 100cm 110cm
  waist 66cm 74cm 83cm 93cm
  hip 90cm 98cm 98cm 106cm
}
`;
    const found = (body: string) =>
      check(patternIn(`${table}body understudy from standard ${body}\n`)).map(({ message }) => message);
    assert.deepEqual(found('S {\n  waist 83cm\n}'), []);
    assert.equal(found('S {\n  waist 84cm\n}').length, 1);
    // a row that does not rise gives no steps to count
    assert.deepEqual(found('S {\n  hip 106cm\n}'), []);
    // beyond the table its last step goes on
    assert.deepEqual(found('XL {\n  bust 130cm\n}'), []);
    assert.deepEqual(found('XL {\n  bust 131cm\n}'), [
      'The bust of understudy is 131cm, more than two sizes from the 110cm of standard XL, which lends understudy all that was not measured. No other size is nearer: measure the rest as well.',
    ]);
    // the girth that lies furthest is named, and sizes that would not do for the others are not offered
    const both = check(
      patternIn(`${table}body understudy from standard S {\n  bust 84cm\n  waist 93cm\n}\n`),
    );
    assert.match(both[0]!.message, /^The waist of understudy is 93cm/);
    assert.deepEqual(both[0]!.fixes, []);
  });

  it('a table may step unevenly, and is drafted for one of its sizes', () =>
    checkDraft(`drafted for standard L
sizes standard {
  size S M L
  bust 84cm 92cm 101cm
}
let a = bust #= 101cm
`));

  it('a table with cells missing or over, or without sizes, says so at its rows', () =>
    checkDraft(`drafted for standard M
sizes standard {
  size S M L
  bust 84cm 92cm
# ^^^^ error[uneven-table]: bust has 2 values for 3 sizes: L has none.
  waist 66cm 74cm 83cm 90cm
# ^^^^^ error[uneven-table]: waist has 4 values, but there are only 3 sizes (S, M, L).
}
sizes nameless {
#     ^^^^^^^^ error[uneven-table]: nameless names no sizes: its first row is size, followed by their names,
#     | such as size S M L.
  bust 84cm
}
let a = waist #= 74cm
`));

  it('a size that a table lacks is told which there are, and a body which is near', () =>
    checkDraft(`drafted for standard XL
#                    ^^ error[unknown-name]: standard has the sizes S, M, L, not XL.
#                    fix: Draft for standard S
#                    fix: Draft for standard M
#                    fix: Draft for standard L
sizes standard {
  size S M L
  bust 84cm 92cm 101cm
}
let a = bust
`));

  it('a cell without its unit is told which it may be, and a turned measurement what bodies have', () =>
    checkDraft(`drafted for gatekeeper
body gatekeeper {
  waist 70
#       ^^ error[missing-unit]: 70 has no unit, but a measurement wants one: write 70cm.
#       fix: Write 70cm
  hip 9.8cm
# ^^^ warning[implausible-measurement]: hip of gatekeeper is 9.8cm; bodies run from 48cm to 185cm. Look at the
# | unit and the digits, or measure again: Level, feet together.
}
let a = hip #= 9.8cm
`));

  it('a piece each side is a pair from the larger where the sides are alike within a millimetre and a half', () =>
    checkDraft(`drafted for gatekeeper
body gatekeeper {
  shoulder left 12.3cm right 12.2cm
}
draft yoke {
  point neck = origin
  point tip = neck right shoulder
  point foot = neck down 12cm
}
piece front of yoke each side {
  cut pair
  outline from neck {
    shoulder straight to tip
    armhole straight to foot
    centre straight to neck
  }
  grain along centre
  allow 1cm
}
finish edges front.shoulder, front.armhole, front.centre raw
`));
});

/** A yoke for two shoulders, with the words of its piece. */
const yoke = (
  left: string,
  right: string,
  words: { of?: string; cut?: string; fold?: string; drawn?: string } = {},
) => `drafted for gatekeeper
body gatekeeper {
  shoulder left ${left} right ${right}
}
draft yoke {
  ${words.drawn ?? ''}
  point neck = origin
  point tip = neck right shoulder
  point foot = neck down 12cm
}
piece front of yoke ${words.of ?? 'each side'} {
  cut ${words.cut ?? 'pair'}
  outline from neck {
    shoulder straight to tip
    armhole straight to foot
    centre straight to neck
  }
  ${words.fold ?? ''}
  grain along centre
  allow 1cm
}
finish edges front.shoulder, front.armhole, front.centre raw
`;

/** Names, cutting words and shoulder lengths of what is cut. */
const cut = (text: string) =>
  patternIn(text).pieces.map(({ name, cut: words, edges }) => [
    name,
    words?.text,
    edges.map(({ drawn }) => Math.round(drawn * 100) / 100)[0],
  ]);

describe('the two sides of the wearer', () => {
  it('are cut as one pair from the larger where no point differs by more than a millimetre and a half', () => {
    assert.deepEqual(cut(yoke('12.35cm', '12.2cm')), [['front', 'cut pair', 123.5]]);
    assert.deepEqual(patternIn(yoke('12.35cm', '12.2cm')).pieces[0]!.remarks, [
      'for both sides, from the left, which is the larger',
    ]);
    assert.deepEqual(patternIn(yoke('12.2cm', '12.2cm')).pieces[0]!.remarks, []);
  });

  it('are cut as a right and a left, each right side up, where a point differs by more', () => {
    assert.deepEqual(cut(yoke('12.36cm', '12.2cm')), [
      ['front-right', 'cut 1 right, right side up', 122],
      ['front-left', 'cut 1 left, right side up', 123.6],
    ]);
  });

  it('lie mirrored to each other, the drawn half as it is drawn', () => {
    const tips = (text: string) =>
      patternIn(text).pieces.map(({ name, corners }) => [
        name,
        corners.find(({ name: of }) => of === 'tip')?.point.x,
      ]);
    assert.deepEqual(tips(yoke('13cm', '12cm')), [
      ['front-right', 120],
      ['front-left', -130],
    ]);
    assert.deepEqual(tips(yoke('13cm', '12cm', { drawn: 'drawn as left' })), [
      ['front-left', 130],
      ['front-right', -120],
    ]);
  });

  /** A panel that is the same on both sides but for what its last line draws. */
  const marked = (line: string) =>
    patternIn(`drafted for gatekeeper
body gatekeeper {
  waist-to-hip left 20cm right 24cm
}
draft panel {
  point a = origin
  point b = a right 20cm
  point c = b down 40cm
  point e = a down 40cm
}
piece front of panel each side {
  cut pair
  outline from a {
    top straight to b
    side straight to c
    foot straight to e
    inner straight to a
  }
  ${line}
}
`);

  it('are two where a mark alone lies elsewhere on the other side', () => {
    const pattern = marked('button knop = a right 5cm down waist-to-hip');
    assert.deepEqual(
      pattern.pieces.map(({ name, marks }) => [name, Math.round(marks[0]!.points[0]!.y)]),
      [
        ['front-right', 240],
        ['front-left', 200],
      ],
    );
  });

  it('are two where a placed label alone lies elsewhere, and a pair where a label has no place', () => {
    const named = (line: string) => marked(line).pieces.map(({ name }) => name);
    assert.deepEqual(named('label "pocket here" at (a right 5cm down waist-to-hip)'), [
      'front-right',
      'front-left',
    ]);
    assert.deepEqual(named('label "pocket here"'), ['front']);
  });

  it('are drafted once where the piece does not say each side', () => {
    assert.deepEqual(cut(yoke('13cm', '12cm', { of: '' })), [['front', 'cut pair', 120]]);
  });

  it('come out as one open piece on the fold where the folds agree', () => {
    const text = yoke('13cm', '12cm', { cut: '1 on fold', fold: 'fold centre' });
    const [front, ...others] = patternIn(text).pieces;
    assert.deepEqual([front!.name, front!.cut?.text, others.length], ['front', 'cut 1 open', 0]);
    assert.deepEqual(
      front!.edges.map(({ name, drawn }) => [name, Math.round(drawn * 10) / 10]),
      [
        ['shoulder', 120],
        ['armhole', 169.7],
        ['armhole-other', 176.9],
        ['shoulder-other', 130],
      ],
    );
    assert.equal(Math.round(front!.area), (120 * 120 + 120 * 130) / 2);
    assert.deepEqual(
      check(patternIn(text)).map(({ message }) => message),
      [],
    );
  });

  it('are refused on the fold with both lengths where the folds differ by more than half a millimetre', () => {
    const uneven = (by: string) =>
      yoke('13cm', '12cm', { cut: '1 on fold', fold: 'fold centre' }).replace(
        'down 12cm',
        `down 12cm + (shoulder - 12cm) * ${by}`,
      );
    const said = (by: string) =>
      check(patternIn(uneven(by))).map(({ code, message }) => `${code}: ${message}`);
    assert.deepEqual(said('0.05'), []);
    assert.match(
      said('0.06').join('\n'),
      /^sided-fold-lengths: .* the fold is 12cm long on one side of the wearer and 12\.06cm on the other/,
    );
  });

  it('are refused as a pair from one half, unless it says which measurement both take', () => {
    const text = yoke('13cm', '12cm', { of: '', cut: 'pair' });
    assert.match(
      check(patternIn(text))
        .map(({ code, message }) => `${code}: ${message}`)
        .join('\n'),
      /^sided-fold: \S+ is cut as a pair from one half, so both come out alike, but shoulder of \S+ differs/,
    );
    assert.deepEqual(check(patternIn(text.replace('right shoulder', 'right shoulder.larger'))), []);
    assert.deepEqual(check(patternIn(yoke('13cm', '13cm', { of: '', cut: 'pair' }))), []);
  });

  it('are refused on the fold where the piece is not drafted each side, unless it says which measurement both halves take', () => {
    const text = yoke('13cm', '12cm', { of: '', cut: '1 on fold', fold: 'fold centre' });
    assert.deepEqual(
      check(patternIn(text)).map(({ code }) => code),
      ['sided-fold'],
    );
    for (const which of ['average', 'larger', 'smaller', 'left', 'right']) {
      assert.deepEqual(
        check(patternIn(text.replace('right shoulder', `right shoulder.${which}`))),
        [],
        which,
      );
    }
  });
});
