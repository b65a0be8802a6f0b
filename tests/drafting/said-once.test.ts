/** What may be said once in a file, and what is not said again once its reason was told. */
import assert from 'node:assert/strict';
import { checkDraft, checkSaid, patternIn } from '../support/drafts';

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
#                                                       | outside its range of 2cm to 6cm. Choose within it,
#                                                       | or widen the range.
expect skirt.closure = buttons
let twice = skirt.doubled #= 40cm
`,
      CHOICES,
    ));
});

const square = (lines: string, more = ''): string => `draft pouch {
  point a = origin
  point b = a right 20cm
  point c = b down 30cm
  point d = a down 30cm
}
piece front of pouch {
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
${lines}
}
${more}`;

describe('the lines of a piece', () => {
  it('name an edge once, and not by capitals alone', () =>
    checkSaid(
      square('').replace('hem straight', 'top straight').replace('centre straight', 'Side straight'),
      [
        'defined-twice: This outline has an edge called top already. Give each edge a name of its own, or let this be a stretch of it (then …).',
        'defined-twice: Side and side differ in capitals alone, which nobody hears when they are read out. Rename one of them.',
      ],
    ));

  it('give a dart its name, an edge its width and a corner its rule once', () =>
    checkSaid(
      square(
        [
          '  allow 1cm',
          '  allow 2cm',
          '  allow 1cm at side',
          '  allow 3cm at hem, side',
          '  corner at b squared',
          '  corner at b mitred',
          '  dart inner on top at 7cm from a, 2cm wide, 9cm long',
          '  dart inner on top at 12cm from a, 2cm wide, 9cm long',
        ].join('\n'),
      ),
      [
        'overlapping-allowances: This line and an earlier one both give a width to the whole piece. This one counts; take one of the two out.',
        'overlapping-allowances: This line and an earlier one both give a width to side. This one counts; take one of the two out.',
        'defined-twice: How the corner at b is cut was said already, and the first line counts. Take one of the two out.',
        'defined-twice: This piece has a dart called inner already; give this one a name of its own.',
      ],
    ));

  it('lay no grain from a place to itself', () =>
    checkSaid(square('  grain from a to a'), ['no-length: The grain runs nowhere: a and a are one place.']));

  it('are not told twice for cutting words that can’t be had', () =>
    checkSaid(
      `${square('  cut 0\n  grain along centre')}piece back worked from front {
  cut 1
  mark m = a right 2cm down 2cm
}
finish edges back.top, back.side, back.hem, back.centre raw
piece third worked from back {
  cut 0
}
`,
      [
        'no-such-number: Pieces are cut in whole numbers from 1 to 999; this comes to 0.',
        'no-such-number: Pieces are cut in whole numbers from 1 to 999; this comes to 0.',
      ],
    ));

  it('call the edges of their piece without its name', () =>
    checkDraft(
      square('  grain along front.centre\n  mark line = front.side parallel 1cm toward a').replace(
        '  grain along front.centre\n  mark line = front.side parallel 1cm toward a',
        `  grain along front.centre
#             ^^^^^^^^^^^^ error[circle]: front.centre is asked for while front is being made. Within its own
#             | block it is called centre.
#             fix: Write centre
  mark line = front.side parallel 1cm toward a
#             ^^^^^^^^^^ error[circle]: front.side is asked for while front is being made. Within its own
#             | block it is called side.
#             fix: Write side`,
      ),
    ));

  it('cut notches into the piece, at edges of its own and at seams', () => {
    const text = square(
      `  cut 1
  notch own on side at 8cm from b
  notch full on front.hem at halfway, triple
  notch sewn on join-line at 5cm from a`,
      `seam join-line front.centre = front.side reversed
piece back worked from front {
  cut 1
  notch own on side at 9cm from b, single
}
`,
    );
    const notches = patternIn(text).pieces.map(({ notches: of }) =>
      of.map(({ name, edge, distance, count }) => `${name} ${edge} ${Math.round(distance)} ${count}`),
    );
    assert.deepEqual(notches, [
      ['own side 80 1', 'full hem 100 3', 'sewn centre 250 1', 'sewn side 50 1'],
      ['own side 90 1'],
    ]);
  });

  it('cut notches into a part of a divided piece', () => {
    const text = square(
      '  cut 1',
      `divide front at ((a down 10cm) to (b down 10cm)) along cut-line into upper holding top {
  notch own on side at 3cm from b
}, lower {
  notch own on hem at halfway, double
}
`,
    );
    const notches = patternIn(text).pieces.flatMap(({ name, notches: of }) =>
      of.map(({ edge, distance, count }) => `${name}.${edge} ${Math.round(distance)} ${count}`),
    );
    assert.deepEqual(notches, ['upper.side 30 1', 'lower.hem 100 2']);
  });

  it('are of a piece, where a piece is worked', () =>
    checkSaid('draft pouch {\n}\npiece front worked from pouch {\n  cut 1\n}\n', [
      'wrong-kind: pouch is a draft, but a piece is needed here. A piece is walked round on a draft: piece NAME of pouch, with its outline.',
    ]));
});

describe('a half that is worked into a pair', () => {
  const text = square(
    '  fold centre\n  allow 1cm',
    `piece open worked from front {
  cut pair
}
piece whole worked from front {
  cut 1 on fold in silk, pair in coutil
}
`,
  );

  it('opens its fold, which is an edge like any other', () => {
    const [open, whole] = ['open', 'whole'].map((name) =>
      patternIn(text).pieces.find((piece) => piece.name === name)!,
    );
    assert.deepEqual([open!.fold, whole!.fold?.edge], [undefined, 'centre']);
    assert.deepEqual([open!.allowances.get('centre'), whole!.allowances.get('centre')], [10, 0]);
  });
});
