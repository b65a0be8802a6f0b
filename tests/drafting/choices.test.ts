/** Choices, unknowns and expectations, from text to figures and findings. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import { checkDraft, checkPieces, patternIn, set } from '../support/drafts';

describe('choices, unknowns and expectations', () => {
  it('a choice within its range is silent, and outside it is a warning', () =>
    checkDraft(`choose within-range = 3cm in 1cm .. 5cm #= 3cm
choose above = 3cm in 1cm .. 2cm #= 3cm
#              ^^^ warning[choice-out-of-range]: above is 3cm, outside its range of 1cm to 2cm. Choose within
#              | it, or widen the range.
choose turned = 3cm in 5cm .. 2cm #= 3cm
#                      ^^^^^^^^^^ warning[range-turned-about]: This range runs from 5cm down to 2cm: the lower
#                      | end comes first.
#                      fix: Put the lower end first
choose unitless = 3 in 1cm .. 5cm
#                 ^ error[missing-unit]: 3 has no unit, but unitless wants a length: write 3cm.
#                 fix: Write 3cm
#                 fix: Write 3mm
#                 fix: Write 3in
choose numbers = 2 among 1, 2, 3 #= 2
choose none = 4 among 1, 2, 3
#             ^ warning[choice-out-of-range]: none is chosen among 1, 2, 3; 4 is none of them.
`));

  it('both ends of a range that is worked out are tried', () => {
    const { choices } = patternIn('let hem = 3cm\nchoose drop = 4cm in hem - 5cm .. hem * 7 / 3\n');
    assert.deepEqual(
      choices.map(({ low, high }) => [low, high]),
      [['-2cm', '7cm']],
    );
  });

  it('ends of another kind than their value are told once, and not tried', () => {
    const wrong = 'choose ease = 4cm in 1 .. 8\n';
    assert.deepEqual(
      check(patternIn(wrong)).map(({ code }) => code),
      ['missing-unit', 'missing-unit'],
    );
    assert.equal(patternIn(wrong).choices[0]!.low, undefined);
  });

  it('a choice among words is asked by its words alone', () =>
    checkDraft(`choose closure = zip among zip, buttons
choose wrong = snaps among zip, buttons
#              ^^^^^ error[unknown-name]: wrong is chosen among zip, buttons; snaps is none of them.
let asked = if(closure = zip, 1, 2) #= 1
let turned-about = if(buttons = closure, 1, 2) #= 2
let unknown = if(closure = hooks, 1, 2)
#                          ^^^^^ error[unknown-name]: closure is chosen among zip, buttons; hooks is none of
#                          | them.
let more = if(closure < zip, 1, 2)
#             ^^^^^^^^^^^^^ error[wrong-kind]: Words are alike or not, never more or less: write closure =
#             | zip.
let counted = closure * 2
#             ^^^^^^^ error[wrong-kind]: closure is the word "zip", but a number is needed here. A choice
#             | among words can be asked with if(closure = zip, …, …).
`));

  it('an expectation that holds is silent, and one that does not says both sides and how far apart', () =>
    checkDraft(`expect 3cm = 3.1cm within 2mm
expect 2cm <= 2cm
expect 3cm = 3.3cm within 2mm
#      ^^^^^^^^^^^ error[expectation-missed]: 3cm is 3cm; it was expected to be equal to 3.3cm. They are 3mm
#      | apart, and 2mm is allowed. Mend what they come from, or the expectation if that is wrong.
expect 3cm < 2cm
#      ^^^^^^^^^ error[expectation-missed]: 3cm is 3cm; it was expected to be less than 2cm. They are 1cm
#      | apart. Mend what they come from, or the expectation if that is wrong.
expect 3cm >= 4cm
#      ^^^^^^^^^^ error[expectation-missed]: 3cm is 3cm; it was expected to be at least 4cm. They are 1cm
#      | apart. Mend what they come from, or the expectation if that is wrong.
expect 3cm > 4cm and 1 = 1
#      ^^^^^^^^^^^^^^^^^^^ error[expectation-missed]: This was expected, but does not hold: 3cm > 4cm and 1 =
#      | 1. Mend what it comes from, or the expectation if that is wrong.
expect not (1 = 1)
#      ^^^^^^^^^^^ error[expectation-missed]: This was expected, but does not hold: not (1 = 1). Mend what it
#      | comes from, or the expectation if that is wrong.
expect 3cm
#      ^^^ error[wrong-kind]: A condition is needed here, such as waist > 80cm; 3cm compares nothing.
expect 3cm = 4cm within 2
#                       ^ error[missing-unit]: 2 has no unit, but within wants a length: write 2cm.
#                       fix: Write 2cm
#                       fix: Write 2mm
#                       fix: Write 2in
`));

  it('an unknown is found through the curve it draws, which is no circle', () =>
    checkDraft(`draft sleeve {
  solve rise in 1cm .. 20cm so that length(head) = 30cm
  point pit = origin
  point top = pit right 20cm up rise
  curve head = pit to top leaving up arriving right
  let found = length(head) #= 30.0000cm
}
`));

  it('unknowns of every kind are found', () =>
    checkDraft(`solve share in 1 .. 3 so that share * share = 2 #= 1.41421
solve corner in 0deg .. 90deg so that sin(corner) = 0.5 #= 30.0000deg
solve long in 1cm .. 9cm so that long * long = 20cm * 2cm #= 63.2456mm
`));

  it('an unknown may rest on another that was found before it', () =>
    checkDraft(`draft sheet {
  solve rise in 1cm .. 20cm so that distance(a, b) = 10cm #= 6.0000cm
  point a = origin
  point b = a right 8cm up rise
  solve drop in 1cm .. 30cm so that distance(b, c) = rise - 1cm #= 3.0000cm
  point c = b right 4cm up drop
}
`));

  it('two unknowns through each other are a circle, and both are named', () =>
    checkDraft(`draft sheet {
  solve rise in 1cm .. 20cm so that distance(a, b) = 10cm + drop
#       ^^^^ error[circle]: rise and drop can only be found through each other, and a circle holds one
#       | unknown. Take something measured or chosen into one of their equations instead.
#       see \`drop\`: This is part of the circle.
#       see \`b\`: This is part of the circle.
  solve drop in 1cm .. 20cm so that distance(a, b) = 12cm + rise
  point a = origin
  point b = a right drop up rise
}
`));

  it('an unknown that can’t be found says both residuals, and why', () =>
    checkDraft(`solve far in 1cm .. 2cm so that 2 * far = 10cm
#     ^^^ error[no-solution]: No far between 1cm and 2cm makes both sides equal: the left side is 8cm too
#     | short at one end and 6cm too short at the other. Widen the range, or look at what the two sides
#     | measure.
solve apart in 3cm .. 4cm so that apart = 1cm
#     ^^^^^ error[no-solution]: No apart between 3cm and 4cm makes both sides equal: the left side is 2cm too
#     | long at one end and 3cm too long at the other. Widen the range, or look at what the two sides measure.
solve mixed in 1cm .. 2 so that 2 * mixed = 3cm
#                     ^ error[missing-unit]: 2 has no unit, but the range wants a length: write 2cm.
#                     fix: Write 2cm
#                     fix: Write 2mm
#                     fix: Write 2in
solve unitless in 1cm .. 2cm so that 2 * unitless = 3
#                                                   ^ error[missing-unit]: 3 has no unit, but the comparison
#                                                   | wants a length: write 3cm.
#                                                   fix: Write 3cm
#                                                   fix: Write 3mm
#                                                   fix: Write 3in
solve leap in 1cm .. 5cm so that if(leap > 3cm, 1cm, 2cm) = 1.5cm
#     ^^^^ error[no-solution]: No leap makes both sides equal: at 3cm their difference jumps by 1cm, from one
#     | side being the larger to the other. Look for a round or an if in what the two sides measure.
solve elsewhere in 1cm .. 2cm so that 3cm = 3cm
#     ^^^^^^^^^ error[no-solution]: Nothing on either side depends on elsewhere, so no value of it can make
#     | them equal.
solve split in 0cm .. 5cm so that 1cm / split = 2
#     ^^^^^ error[no-solution]: split can't be tried over its whole range: the two sides can't both be had at
#     | 0mm.
solve turned in 5cm .. 1cm so that 2 * turned = 4cm #= 2.0cm
#               ^^^^^^^^^^ warning[range-turned-about]: This range runs from 5cm down to 1cm: the lower end
#               | comes first.
#               fix: Put the lower end first
`));

  it('an unknown is found on the way between two places', () =>
    checkDraft(`draft sheet {
  solve reach-of in 1cm .. 20cm so that distance(a, c) = 12cm
  point a = origin
  line floor = (origin down 12cm) to (origin down 12cm right 1cm)
  point c = a down reach-of
}
`));
});

const pocket = `choose closure = zip among zip, buttons
choose hem-width = 2cm in 1cm .. 4cm
draft sheet {
  point a = origin
  point b = a right 10cm
  point c = b down hem-width
  point d = c across to a
  solve rise in 1cm .. 9cm so that distance(a, b) = 2 * rise
}
piece patch of sheet when closure = buttons {
  cut 1
  outline from a {
    top straight to b
    near straight to c
    foot straight to d
    far straight to a
  }
  grain from a to d
  allow 1cm
}
piece strip-left of sheet when closure = zip and hem-width > 1cm {
  cut 1
  outline from a {
    top straight to b
    near straight to c
    foot straight to d
    far straight to a
  }
  grain from a to d
  allow 1cm
}
seam joint patch.top = patch.foot when closure = buttons
`;

describe('choices set from outside', () => {
  it('cut the pieces and sew the seams whose condition holds, and no others', () => {
    checkPieces(pocket, ['strip-left']);
    checkPieces(pocket, ['patch'], set({ closure: 'buttons' }));
    checkPieces(pocket, [], set({ 'hem-width': '1cm' }));
    const seams = (closure: string) => patternIn(pocket, {}, set({ closure })).seams.map(({ name }) => name);
    assert.deepEqual([seams('zip'), seams('buttons')], [[], ['joint']]);
  });

  it('say of a word that is not offered which ones are', () => {
    const said = check(patternIn(pocket, {}, set({ closure: 'hooks' }))).map(({ message }) => message);
    assert.deepEqual(said[0], 'closure is chosen among zip, buttons; hooks is none of them.');
  });

  it('never override what is worked out, and say why', () => {
    const refused = (name: string, value: string) => patternIn(pocket, {}, set({ [name]: value })).refused;
    assert.deepEqual(refused('sheet.rise', '3cm'), [
      "sheet.rise is worked out from its equation (solve), so it can't be set.",
    ]);
    assert.deepEqual(refused('closur', 'zip'), ['No choice is called closur. Did you mean closure?']);
    assert.deepEqual(patternIn('let a = 3cm\nchoose b = 2cm\n', {}, set({ a: '2cm' })).refused, [
      "a is worked out (let), so it can't be set: only what the pattern chooses can be.",
    ]);
    assert.deepEqual(refused('hem-width', '3cm + 2cm'), [
      "hem-width can't be set to 3cm + 2cm: write a value as in the file, such as 68cm, 20deg, 0.5 or a word.",
    ]);
  });

  it('are taken whole: another kind than the choice has is refused where the choice stands', () => {
    const said = check(patternIn(pocket, {}, set({ 'hem-width': '20deg' }))).map(({ message }) => message);
    assert.ok(said.includes('hem-width is a length, but it was set to an angle.'), said.join('\n'));
  });
});
