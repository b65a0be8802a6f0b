/** Ranges of a pattern's own: what they come to, and that an edit of one judges again and computes nothing else. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import { Workshop } from '../../server/drafting/workshop';
import { checkDraft, doorTo, MAIN, patternIn } from '../support/drafts';

const skirt = (lines: string): string => `body ferrywoman {
  waist 74cm
  hip 98cm
}
drafted for ferrywoman
draft skirt {
  point waist-cf = origin
  point hip-cf = waist-cf down 20cm
  point hem-cf = waist-cf down 60cm
  point waist-side = waist-cf left 38cm
  point hip-side = hip-cf left 50cm
  point hem-side = hem-cf left 50cm
}
piece front of skirt {
  cut 1 on fold
  outline from waist-cf {
    centre straight to hem-cf
    hem straight to hem-side
    side straight to hip-side
      then straight to waist-side
    waist straight to waist-cf
  }
  fold centre
  grain along centre
  balance line hip-line from hip-cf to hip-side
  allow 1.5cm
}
seam side front.side = its pair, zip 20cm from waist-side
finish top front.waist bound 1cm
finish hem front.hem turned up 4cm
${lines}`;

const easeOf = (text: string): readonly string[] =>
  check(patternIn(text)).flatMap(({ code, message }) => (code === 'unusual-ease' ? [message] : []));

describe('a usual range of the pattern’s own', () => {
  it('stands in place of the usual one, and the message says whose it is', () => {
    assert.deepEqual(easeOf(skirt('')), []);
    assert.deepEqual(easeOf(skirt('usual hip-ease in 3cm .. 6cm')), [
      'Round the hip the garment measures 100cm (hip-line of front), and ferrywoman 98cm: 2cm of ease; this pattern ' +
        'asks for 3cm to 6cm. Change the width, or say what is meant: usual hip-ease in LOW .. HIGH.',
    ]);
    assert.equal(easeOf(skirt('usual hip-ease in 0cm .. 1cm')).length, 1);
    assert.deepEqual(easeOf(skirt('usual hip-ease in -4cm .. 2cm')), []);
  });

  it('may rest on values and choices, and its ends may be exchanged', () =>
    checkDraft(`choose closeness = 1cm in 0cm .. 2cm
usual hip-ease in closeness .. 3 * closeness
usual waist-ease in 5cm .. closeness
#                   ^^^^^^^^^^^^^^^^ warning[range-turned-about]: This range runs from 5cm down to 1cm: the
#                   | lower end comes first.
#                   fix: Put the lower end first
`));

  it('is given once, by a name that some check knows, in the unit of that range', () =>
    checkDraft(`usual hip-ease in 1cm .. 3cm
usual hip-ease in 2cm .. 3cm
#     ^^^^^^^^ error[defined-twice]: hip-ease is defined already. A name is given once; rename this one or
#     | take it out.
#     see \`hip-ease\`: hip-ease is defined first here.
usual waist-ease in 1 .. 3
#                   ^^^^^^ error[wrong-kind]: waist-ease is a range of lengths (usual is at least 0mm), but
#                   | this one runs over plain numbers.
usual thigh-ease in 2 .. 3cm
#                   ^ error[missing-unit]: 2 has no unit, but the range wants a length: write 2cm.
#                   fix: Write 2cm
#                   fix: Write 2mm
#                   fix: Write 2in
usual ease in 2cm .. 3cm
#     ^^^^ error[unknown-range]: No check judges by a range called ease. The page of each check lists the
#     | ranges it judges by.
`));

  it('computes and draws nothing anew when it is edited, and judges by what it says now', () => {
    const text = skirt('usual hip-ease in 1cm .. 6cm\n');
    const workshop = new Workshop(doorTo(text));
    const before = workshop.pattern(MAIN);
    assert.deepEqual(
      check(before).filter(({ code }) => code === 'unusual-ease'),
      [],
    );
    const from = text.indexOf('1cm .. 6cm');
    workshop.edit(MAIN, [{ from, to: from + 3, text: '3cm' }]);
    const after = workshop.pattern(MAIN);
    assert.equal(after.pieces, before.pieces);
    assert.notEqual(after.usual, before.usual);
    assert.equal(check(after).filter(({ code }) => code === 'unusual-ease').length, 1);
    workshop.edit(MAIN, [{ from: 0, to: 0, text: '# a remark\n\n' }]);
    assert.equal(workshop.pattern(MAIN).usual, after.usual);
  });
});
