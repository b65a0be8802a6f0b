/** What is said where a point, line or curve can't be had: each construct in words of its own, with its numbers. */
import { checkDraft } from '../support/drafts';

describe('shapes that can’t be had', () => {
  it('the compass that never reaches says how near or far its line lies', () =>
    checkDraft(`draft sheet {
  point tip = origin
  line shoulder-line = (origin down 13.1cm) to (origin down 13.1cm right 5cm)
  circle plate = centre origin radius 5cm
  point short-of-it = tip reach 12.5cm to shoulder-line
#                         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[out-of-reach]: The compass of 12.5cm from tip
#                         | never reaches shoulder-line: nearest 13.1cm.
  point outside = (origin right 20cm) reach 3cm to plate
#                                     ^^^^^^^^^^^^^^^^^^ error[out-of-reach]: The compass of 3cm from (origin
#                                     | right 20cm) never reaches plate: nearest 15cm.
  point inside = (origin right 20cm) reach 30cm to plate
#                                    ^^^^^^^^^^^^^^^^^^^ error[out-of-reach]: The compass of 30cm from (origin
#                                    | right 20cm) never reaches plate: farthest 25cm.
  point shut = tip reach 0cm to shoulder-line
#                        ^^^ error[no-such-number]: The compass of 0mm from tip has no opening: the length
#                        | must be above zero.
  point twice = tip reach 20cm to shoulder-line
#                   ^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[several-places]: The compass of 20cm from tip meets
#                   | shoulder-line in 2 places. Say which: nearest P, upper, lower, left-hand or right-hand.
}
`));

  it('lines and curves that never meet say by how much they miss', () =>
    checkDraft(`draft sheet {
  line floor = (origin down 9cm) to (origin down 9cm right 1cm)
  line lower-floor = floor moved down 4cm
  circle plate = centre origin radius 5cm
  circle other = centre (origin right 30cm) radius 5cm
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  point a = where plate meets floor
#           ^^^^^^^^^^^^^^^^^^^^^^^ error[never-meet]: plate and floor never meet: they come no nearer than
#           | 4cm, and not with the line made longer either.
  point b = where floor meets lower-floor
#           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[never-meet]: floor and lower-floor never meet: they run side
#           | by side.
  point c = where plate meets other
#           ^^^^^^^^^^^^^^^^^^^^^^^ error[never-meet]: plate and other never meet: they come no nearer than
#           | 20cm.
  point e = where bow meets ((origin right 12cm) to (origin right 12cm down 3cm))
#           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[never-meet]: bow and
#           | ((origin right 12cm) to (origin right 12cm down 3cm)) never meet: they come no nearer than 2cm,
#           | and not with the line made longer either.
  point several = where plate meets (origin to (origin right 1cm))
#                 ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[several-places]: plate and (origin to
#                 | (origin right 1cm)) meet in 2 places. Say which: nearest P, upper, lower, left-hand or
#                 | right-hand.
}
`));

  it('a ruler that goes the wrong way or passes beside says so, with a repair where there is one', () =>
    checkDraft(`draft sheet {
  point tip = origin
  line floor = (origin down 9cm) to (origin down 9cm right 1cm)
  circle plate = centre origin radius 5cm
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  point a = tip up to floor
#               ^^^^^^^^^^^ error[other-way]: floor lies 9cm down from tip, not up.
#               fix: Write down to
  point b = tip right to floor
#               ^^^^^^^^^^^^^^ error[never-meet]: The ruler laid right from tip never meets floor: it passes
#               | 9cm beside it.
  point c = tip up to (origin down 5cm)
#               ^^^^^^^^^^^^^^^^^^^^^^^ error[other-way]: (origin down 5cm) lies 5cm down from tip, not up.
#               fix: Write down to
  point e = (origin right 12cm) down to bow
#                               ^^^^^^^^^^^ error[never-meet]: The ruler laid down from (origin right 12cm)
#                               | never meets bow: it passes 2cm beside it.
  point f = (origin left 20cm) right to plate
#                              ^^^^^^^^^^^^^^ error[several-places]: The ruler laid right from (origin left
#                              | 20cm) meets plate in 2 places. Say which: nearest P, upper, lower, left-hand
#                              | or right-hand.
}
`));

  it('a place that can’t be had says why: beyond, unitless, from nowhere, either way, off the line', () =>
    checkDraft(`draft sheet {
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  point middle = on bow halfway
  point a = on bow 15cm from bow.start
#                  ^^^^^^^^^^^^^^^^^^^ error[out-of-reach]: bow is 10.26cm long: this place lies 4.74cm beyond
#                  | its end, and a curve does not run on. Count less, or draw it longer.
  point b = on bow 7 from bow.start
#                  ^ error[missing-unit]: 7 without a unit is a share of the whole, and a share is at most 1.
#                  | If a length is meant, write 7cm.
#                  fix: Write 7cm
  point c = on bow 7cm
#                  ^^^ error[place-without-start]: 7cm is counted from nowhere: say from which point of bow,
#                  | such as 7cm from A.
  point e = on bow 3cm from middle
#                  ^^^^^^^^^^^^^^^ error[which-way]: middle is no end of bow, so 3cm from middle could lie
#                  | either way: write before or after middle, or from middle toward another point.
  point f = on bow 3cm from (origin down 20cm)
#                           ^^^^^^^^^^^^^^^^^^ error[not-on-line]: (origin down 20cm) does not lie on bow: it
#                           | is 19.39cm away.
  point g = on bow 20deg from bow.start
#                  ^^^^^ error[wrong-kind]: A place wants a length or a share; this is an angle.
  point h = on bow 3cm from middle toward middle
#                                         ^^^^^^ error[no-direction]: middle is where the count begins, so it
#                                         | does not say which way.
}
`));

  it('a square that falls nowhere says how near the curve comes', () =>
    checkDraft(`draft sheet {
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  line floor = (origin down 9cm) to (origin down 9cm right 1cm)
  point a = (origin right 30cm) squared onto bow
#                               ^^^^^^^^^^^^^^^^ error[out-of-reach]: No square from (origin right 30cm) falls
#                               | on bow: the curve ends before it (its nearest point is an end, 20cm away).
  point b = floor.start squared from floor 1cm toward floor.end
#                                                     ^^^^^^^^^ error[no-direction]: floor.end lies along
#                                                     | floor, so it does not say to which side. Name a point
#                                                     | beside it.
}
`));

  it('a way that is none says why', () =>
    checkDraft(`draft sheet {
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  line a = origin to origin
#          ^^^^^^^^^^^^^^^^ error[no-length]: origin to origin goes nowhere: both ends are one point. Name two
#          | points that lie apart.
  line b = origin to (origin right 1cm) leaving down
#                                       ^^^^^^^^^^^^ error[wrong-kind]: A line is straight; leaving down makes
#                                       | a curve of it. Write curve instead of line.
  line c = bow
#          ^^^ error[wrong-kind]: bow bends: write curve c = … instead of line.
  line e = origin
#          ^^^^^^ error[wrong-kind]: origin is a point. A line goes from one point to another: P to Q.
  curve f = part of bow from origin to (origin down 7cm)
#                                      ^^^^^^^^^^^^^^^^^ error[not-on-line]: (origin down 7cm) does not lie on
#                                      | bow: it is 6.66cm away.
  curve g = part of bow from origin to origin
#           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[no-length]: part of bow from origin to origin has no
#           | length: both points are one.
  curve h = run bow then ((origin right 12cm) to (origin right 20cm))
#                        ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[run-with-gap]: bow and ((origin
#                        | right 12cm) to (origin right 20cm)) do not join: their nearest ends are 2cm apart.
#                        | Let the one begin where the other ends.
}
`));

  it('a curve that can’t be drawn as told says which of its words stands in the way', () =>
    checkDraft(`draft sheet {
  point q = origin right 10cm
  curve a = origin to q hollow 1cm toward (origin right 5cm)
#           ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[no-direction]: (origin right 5cm) lies on
#           | the straight way between the ends, so it does not say to which side the curve is hollow. Name a
#           | point beside it.
  curve b = origin to q hollow 1cm toward (origin down 5cm) at 0cm from origin
#                                                              ^^^^^^^^^^^^^^^ error[out-of-reach]: The
#                                                              | deepest point of a hollow must lie between
#                                                              | its two ends.
  curve c = origin to q leaving toward origin
#                                      ^^^^^^ error[no-direction]: origin lies where the curve already is, so
#                                      | it gives no direction.
  curve e = origin to q leaving down flatter 100%
#                                            ^^^^ error[no-such-number]: flatter takes a share such as 20%;
#                                            | this one leaves no curve.
  curve f = origin to q leaving down fuller 3cm
#                                           ^^^ error[wrong-kind]: 3cm is a length, but fuller wants a plain
#                                           | number.
  curve g = origin to q leaving down fuller 400%
#                                           ^^^^ error[no-such-number]: fuller takes a share such as 20%; more
#                                           | than 300% is no curve that anybody draws.
}
`));

  it('an arc and a circle that can’t be drawn say what their compass lacks', () =>
    checkDraft(`draft sheet {
  line wall = origin to (origin down 3cm)
  arc a = origin to (origin right 10cm)
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[arc-without-centre]: An arc needs its centre: origin to (origin
#         | right 10cm) centre O.
  arc b = origin to (origin right 10cm) centre (origin right 4cm)
#         ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^ error[arc-radii-differ]: No circle round
#         | (origin right 4cm) goes through both ends: one is 4cm away, the other 6cm. Move the centre, or one
#         | of the ends.
  circle c = centre origin radius -1cm
#                                 ^^^^ error[no-such-number]: A circle's radius must be above zero; this one
#                                 | comes to -1cm.
  circle e = centre origin round 0cm
#                                ^^^ error[no-such-number]: A circle's length must be above zero; this one
#                                | comes to 0mm.
  circle f = centre wall radius 1cm
#                   ^^^^ error[wrong-kind]: wall is a line, but centre wants a point. Take one of its ends
#                   | (.start, .end), or a place on it (on … halfway).
}
`));

  it('paper that can’t be carried as told says why', () =>
    checkDraft(`draft sheet {
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  circle plate = centre origin radius 5cm
  point a = origin mirrored across bow
#                                  ^^^ error[wrong-kind]: Paper folds along a straight line only; bow bends.
  point b = origin parallel 1cm toward (origin down 1cm)
#           ^^^^^^ error[wrong-kind]: origin is a point, but only a line or curve can be parallel.
  point c = origin reversed
#           ^^^^^^ error[wrong-kind]: origin is a point, but only a line or curve can be reversed.
  curve e = plate parallel 6cm toward origin
#                 ^^^^^^^^^^^^^^^^^^^^^^^^^^ error[out-of-reach]: plate bends tighter than 6cm, so nothing
#                 | runs parallel to it there (the tightest bend is 0mm along it).
  curve f = bow parallel 1cm toward bow.end
#                                   ^^^^^^^ error[no-direction]: bow.end lies along bow, so it does not say to
#                                   | which side. Name a point beside it.
  curve g = bow laid origin on origin and origin toward bow.end
#                                         ^^^^^^ error[no-direction]: origin lies on the point it is to turn
#                                         | about, so it gives no direction.
}
`));

  it('a shape of another kind than is wanted says what it is and what could stand there', () =>
    checkDraft(`draft sheet {
  line wall = origin to (origin down 3cm)
  point a = 3cm
#           ^^^ error[wrong-kind]: 3cm is a value, but a point, line or curve is needed here.
  point b = where origin meets wall
#                 ^^^^^^ error[wrong-kind]: origin is a point, but where … meets wants a line or curve. Two
#                 | points in a bracket make a line: (A to B).
  point c = origin.start
#                  ^^^^^ error[unknown-name]: A point answers to no further name; origin.start is nothing.
  point e = wall.middle
#                ^^^^^^ error[unknown-name]: A line or curve answers to .start and .end; wall.middle is
#                | nothing.
  point f = wall
#           ^^^^ error[wrong-kind]: wall is a line, but point f wants a point. Take one of its ends (.start,
#           | .end), or a place on it (on … halfway).
  point g = origin down wall
#                       ^^^^ error[wrong-kind]: wall is a line, but a value is needed here. length(wall) gives
#                       | its length.
#                       see \`wall\`: wall is defined here.
}
`));

  it('a number of another kind than a shape wants says both', () =>
    checkDraft(`draft sheet {
  point a = origin at 20cm below right for 3cm
#                     ^^^^ error[wrong-kind]: 20cm is a length, but a bearing wants an angle.
  point b = origin at 20deg below right for 3
#                                           ^ error[missing-unit]: 3 has no unit, but for wants a length:
#                                           | write 3cm.
#                                           fix: Write 3cm
#                                           fix: Write 3mm
#                                           fix: Write 3in
  point c = origin turned 20 about origin
#                         ^^ error[missing-unit]: 20 has no unit, but turned wants an angle: write 20deg.
#                         fix: Write 20deg
  point e = origin down 3deg
#                       ^^^^ error[wrong-kind]: 3deg is an angle, but down wants a length.
}
`));

  it('what rests on a shape that can’t be had says nothing more', () =>
    checkDraft(`draft sheet {
  point tip = origin reach 12.5cm to floor
#                    ^^^^^^^^^^^^^^^^^^^^^ error[out-of-reach]: The compass of 12.5cm from origin never
#                    | reaches floor: nearest 13.1cm.
  line floor = (origin down 13.1cm) to (origin down 13.1cm right 5cm)
  point a = tip down 3cm
  curve c = a to origin leaving down
  let long = length(c)
}
piece patch of sheet {
  cut 1
  outline from origin {
    side along c to a
    back straight to origin
  }
}
seam joint patch.side = patch.back
`));

  it('each draft is its own sheet: lengths go across, points do not unless they are laid', () =>
    checkDraft(`draft one {
  point a = origin right 3cm
  let far = 5cm
}
draft other {
  point b = origin right one.far #= (5cm, 0cm)
  point c = a down 3cm
#           ^ error[unknown-name]: Nothing here is called a. Define it, or correct the name.
}
`));
});
