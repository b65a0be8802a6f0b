/** What may be said once in a file, and what is not said again once its reason was told. */
import { checkDraft, checkSaid } from '../support/drafts';

const CHOICES = {
  'skirt.draft': `choose ease = 4cm in 2cm .. 6cm
choose closure = zip among zip, buttons
let doubled = ease * 2
`,
};

describe('what is said once', () => {
  it('a measurement, a date or a row of sizes that a body has twice is told', () =>
    checkSaid(
      `sizes chorus {
  size S M
  hip 92cm 98cm
  hip 93cm 99cm
  size L
}
body ferrywoman {
  taken 2026-09-14
  waist 74cm
  waist 76cm
  taken 2026-09-15
}
`,
      [
        'defined-twice: chorus has a line for hip already. Take one of the two out.',
        'defined-twice: chorus has a line for size already. Take one of the two out.',
        'defined-twice: ferrywoman has a line for waist already. Take one of the two out.',
        'defined-twice: ferrywoman has a line for taken already. Take one of the two out.',
      ],
    ));

  it('a line that a file has once is told where it stands again', () =>
    checkDraft(`pattern "Bag"
units cm
units in
#<^^^^^^ error[defined-twice]: The unit of what is shown is said already, and the first line counts. Take one
# | of the two out.
tolerance 2mm
tolerance 3mm
#<^^^^^^^^^^^ error[defined-twice]: The tolerance is said already, and the first line counts. Take one of the
# | two out.
`));

  it('a used file bears a name that nothing else has', () =>
    checkSaid(
      `use "skirt.draft" as skirt
use "skirt.draft" as skirt with ease = 5cm
use "skirt.draft" as sheet
draft sheet {
  point a = origin
}
`,
      [
        'defined-twice: skirt is the name of another used file as well, so skirt.waist could mean either. Give the used file another name.',
        'defined-twice: sheet is the name of a draft of this file as well, so sheet.waist could mean either. Give the used file another name.',
      ],
      CHOICES,
    ));

  it('names of a file that can’t be had are not told a second time', () => {
    checkDraft(`use "gone.draft" as gone
#   ^^^^^^^^^^^^ error[missing-file]: There is no file gone.draft that can be read, seen from this one.
#   | Correct the path, or create the file.
let taken = gone.ease * 2
`);
    checkDraft(`use "bodies.draft"
#   ^^^^^^^^^^^^^^ error[missing-file]: There is no file bodies.draft that can be read, seen from this one.
#   | Correct the path, or create the file.
drafted for ferrywoman
let quarter = waist / 4
let own = fist + 1cm
let slip = quartr
#          ^^^^^^ error[unknown-name]: Nothing here is called quartr. Did you mean quarter?
#          fix: Change to quarter
`);
  });

  it('names of a file whose line can’t be read are not told either', () =>
    checkDraft(
      `use "skirt.draft" as skirt with skirt.ease = 5cm
#                                    ^ error[not-understood]: After \`skirt\` \`=\` should stand, not \`.\`. Another
#                                    | file is written \`use "PATH"\`, such as \`use "bodies/company.draft"\`.
let taken = skirt.doubled
`,
      CHOICES,
    ));

  it('a tolerance is a length above nothing', () =>
    checkSaid('tolerance 0mm\n', [
      'no-such-number: A tolerance is more than nothing: no two edges are cut alike to the last hair.',
    ]));

  it('a tolerance that is worked out is told, since nothing is judged by it', () =>
    checkSaid('let hair = 1mm\ntolerance hair * 2\n', [
      'no-such-number: A tolerance is written as a plain length, such as 2mm: it is needed before anything is worked out.',
    ]));
});

describe('choices of a used file', () => {
  it('are set to a word, to a value, and from a choice of words of one’s own', () => {
    checkDraft(
      `use "skirt.draft" as skirt with closure = buttons, ease = near
let near = 5cm
expect skirt.closure = buttons
let twice = skirt.doubled #= 10cm
`,
      CHOICES,
    );
    checkDraft(
      `use "skirt.draft" as skirt with closure = fastening
choose fastening = buttons among zip, buttons
expect skirt.closure = buttons
`,
      CHOICES,
    );
  });

  it('are held to their range and to their words where they are set', () =>
    checkDraft(
      `use "skirt.draft" as skirt with closure = hooks, ease = 20cm
#                                         ^^^^^ error[unknown-name]: closure is chosen among zip, buttons;
#                                         | hooks is none of them.
#                                                       ^^^^ warning[choice-out-of-range]: ease is 20cm,
#                                                       | outside its range of 2cm to 6cm.
expect skirt.closure = buttons
let twice = skirt.doubled #= 40cm
`,
      CHOICES,
    ));
});
