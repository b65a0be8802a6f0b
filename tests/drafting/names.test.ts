/** What names lead to, from text to figures and findings: spaces, drafts, files, bodies, circles. */
import { checkDraft } from '../support/drafts';

describe('names', () => {
  it('values and shapes have names of their own and never meet', () =>
    checkDraft(`draft sheet {
  let hem = 3cm
  line hem = origin to (origin right hem) #= length 3cm
  let both = length(hem) + hem #= 6cm
}
`));

  it('a value that hides another or a measurement says so', () =>
    checkDraft(`let ease = 2cm
let waist = 70cm
#   ^^^^^ warning[hidden-name]: waist hides the measurement waist: in this file the name means this one. Give
#   | it a name of its own.
draft sheet {
  let ease = 3cm
#     ^^^^ warning[hidden-name]: ease hides the ease of the whole file: in this file the name means this one.
#     | Give it a name of its own.
#     see \`ease\`: ease of the file is defined here.
  let taken = ease #= 3cm
}
let outside = ease #= 2cm
`));

  it('a value of another draft goes by its draft’s name', () =>
    checkDraft(`draft sheet {
  let ease = 3cm
}
draft other {
  let taken = sheet.ease #= 3cm
}
`));

  it('a name that leads nowhere is never taken for a measurement', () =>
    checkDraft(`let quarter = wiast / 4
#             ^^^^^ error[unknown-name]: Nothing here is called wiast. Did you mean waist?
#             fix: Change to waist
let third = bustle-depth / 3
#           ^^^^^^^^^^^^ error[unknown-name]: Nothing here is called bustle-depth. Did you mean scye-depth?
#           fix: Change to scye-depth
`));

  it('a name with a hyphen before its number is offered without it, where that is defined', () =>
    checkDraft(`let dart1 = 2cm
let inner = 1cm
let twice = 2 * dart-1
#               ^^^^^^ error[unknown-name]: dart-1 is read as a subtraction, dart less 1, and nothing here is
#               | called dart. Did you mean dart1?
#               fix: Change to dart1
let less = inner-1cm
let nowhere = pleat-1
#             ^^^^^ error[unknown-name]: Nothing here is called pleat. Define it (let pleat = …), or declare
#             | it as a measurement (measure pleat "how it is taken").
`));

  it('a statement that can’t be read costs what rests on it and nothing more', () =>
    checkDraft(`let broken = 3cm < 4cm
#                ^ error[not-understood]: After \`3cm\` \`<\` can’t follow. A value is written \`let NAME = VALUE\`,
#                | such as \`let quarter = bust / 4\`.
let resting = broken + 1cm
let twice = resting * 2
draft sheet {
  point a = origin down down
#                       ^^^^ error[not-understood]: After \`down\` a value, a name or \`to\` should stand, not
#                       | \`down\`. A point, line, curve or arc is written \`point NAME = …\`, such as \`point
#                       | hem-cf = waist-cf down 60cm\`.
  point b = a right 3cm
  line l = a to b
}
`));

  it('a circle of definitions is named with the whole way round', () =>
    checkDraft(`let hem = waist-line + 1cm
#   ^^^ error[circle]: These need each other in a circle, so none can be computed: hem needs waist-line needs
#   | side needs hem. Give one of them a value of its own.
#   see \`waist-line\`: This is part of the circle.
#   see \`side\`: This is part of the circle.
let waist-line = side
let side = hem * 2
let alone = alone + 1cm
#   ^^^^^ error[circle]: alone needs itself, so it can't be computed. Define it by something else.
`));

  it('a used file lends its values by name, and by its second name after as', () =>
    checkDraft(
      `use "block.draft"
use "lengths.draft" as long
let taken = ease + 1cm #= 3cm
let named = long.skirt #= 60cm
let own-wins = hem #= 9cm
let hem = 9cm
#   ^^^ warning[hidden-name]: hem hides the hem of block.draft: in this file the name means this one. Give it
#   | a name of its own.
#   see \`hem\`: hem of block.draft is defined here.
draft sheet {
  let from-draft = long.block.width #= 7cm
}
`,
      {
        'block.draft': `let ease = 2cm
let hem = 4cm
`,
        'lengths.draft': `let skirt = 60cm
draft block {
  let width = 7cm
}
`,
      },
    ));

  it('a used file is drafted with the values that the using file sets', () =>
    checkDraft(
      `use "block.draft" as narrow
use "block.draft" as wide with width = own-width, lift = 1cm
let own-width = 12cm
let before = narrow.area-of #= 10.0cm2
let after = wide.area-of #= 12.0cm2
use "block.draft" as wrong with widht = 3cm
#                               ^^^^^ error[unknown-name]: block.draft has no value called widht to be set.
#                               | Did you mean width?
#                               fix: Change to width
`,
      {
        'block.draft': `choose width = 5cm
choose lift = 2cm
let area-of = width * lift
`,
      },
    ));

  it('files that use each other in a circle are named where it can be mended', () =>
    checkDraft(
      `use "b.draft"
#   ^^^^^^^^^ error[circular-use]: These files use each other in a circle: pattern.draft uses b.draft uses
#   | c.draft uses pattern.draft. Take out one of the use lines.
let taken = depth #= 3cm
`,
      {
        'b.draft': `use "c.draft"
let depth = 3cm
`,
        'c.draft': `use "pattern.draft"
`,
      },
    ));

  it('a measurement of the body comes after the names of the text', () =>
    checkDraft(`body pilot {
  waist 70cm
  fist 24cm
}
measure fist "round the closed hand" in 15cm .. 35cm
drafted for pilot
let quarter = waist / 4 #= 17.5cm
let opening = fist + 1cm #= 25cm
let hip = 90cm #= 90cm
#   ^^^ warning[hidden-name]: hip hides the measurement hip: in this file the name means this one. Give it a
#   | name of its own.
`));

  it('a measurement that nobody took is asked for once, with every place', () =>
    checkDraft(`drafted for pilot
#           ^^^^^ error[missing-measurement]: pilot lacks the measurements bust and hip. What rests on them is
#           | not drafted. Take them, or draft for another body.
#           see \`b\`: It is needed here.
#           see \`a\`: It is needed here.
body pilot {
  waist 70cm
}
let a = hip / 4
let b = bust / 4 + hip
`));

  it('a measurement that was written with a letter astray is named where it is missed', () =>
    checkDraft(`drafted for pilot
#           ^^^^^ error[missing-measurement]: pilot lacks the measurement waist. What rests on it is not
#           | drafted. Correct the name of its \`wiast\`, if that is meant for waist; else take it, or draft for
#           | another body.
#           see \`a\`: It is needed here.
body pilot {
  wiast 70cm
}
let a = waist / 4
`));

  it('halfway takes no distance, and says what to write in its place', () =>
    checkDraft(`draft sheet {
  line top = origin to (origin right 40cm)
  point a = on top 12cm after halfway
#                             ^^^^^^^ error[wrong-kind]: halfway can't take a distance after it: write after
#                             | (on top halfway), which is a point.
#                             fix: Write (on top halfway)
  point b = on top 12cm after (on top halfway) #= (32cm, 0cm)
  point c = on (origin to top.end) 12cm before halfway
#                                              ^^^^^^^ error[wrong-kind]: halfway can't take a distance before
#                                              | it. Make that place a point of the draft (point middle = on …
#                                              | halfway), and name it here.
  point d = halfway
#           ^^^^^^^ error[wrong-kind]: halfway is a place on a line, and stands behind its name: on L halfway.
#           | As a length, write length(L) / 2.
  point e = on top halfway #= (20cm, 0cm)
}
`));

  it('a notch is counted from the middle of its edge by a point of the draft, as is said', () =>
    checkDraft(`draft sheet {
  point a = origin
  point b = a right 40cm
  point c = b down 30cm
  line edge = a to b
  point middle = on edge halfway
}
piece flap of sheet {
  outline from a {
    top along edge to b
    side straight to c
    slant straight to a
  }
  notch one on top at 12cm after middle
  notch other on top at 12cm after halfway
#                                  ^^^^^^^ error[wrong-kind]: halfway can't take a distance after it. Make
#                                  | that place a point of the draft (point middle = on … halfway), and name
#                                  | it here.
}
`));
});
