/** Values, from text to figures and findings: units, kinds, functions. */
import { checkDraft } from '../support/drafts';

describe('values', () => {
  it('every function of numbers gives what a table of functions gives', () =>
    checkDraft(`let least = min(3cm, 2cm, 5cm) #= 2.0cm
let most = max(1, 2) #= 2
let size = abs(-3cm) #= 3cm
let to-step = round(12.4cm, 5mm) #= 12.5cm
let half-up = round(2.5) #= 3
let half-down = round(-2.5mm) #= -3mm
let side-of-square = sqrt(9cm * 16cm) #= 12.00cm
let root = sqrt(2) #= 1.41421
let sine = sin(30deg) #= 0.50000
let cosine = cos(60deg) #= 0.50000
let tangent = tan(45deg) #= 1.00000
let from-sine = asin(0.5) #= 30.0000deg
let from-cosine = acos(0.5) #= 60.0000deg
let from-tangent = atan(1) #= 45.0000deg
let ring = pi #= 3.14159
let none = nothing #= 0cm
let whichever = if(least > 1cm, 7cm, 8cm) #= 7cm
let logic = if(not (1 = 2) and (1 < 2 or 3 < 2), 1, 2) #= 1
`));

  it('every unit is worth its millimetres and keeps its kind', () =>
    checkDraft(`let mixed = 2 1/2in #= 63.5mm
let yard = 1yd #= 36in
let metre = 0.5m #= 50cm
let share = 50% * 10cm #= 5cm
let square = 3cm * 4cm #= 12.0cm2
let back-to-length = square / 2cm #= 6cm
let plain = 10cm / 4cm #= 2.5
let bracketed = -(2cm - 5cm) * 2 #= 6cm
let corner = 20deg + 0.5 * 20deg #= 30deg
`));

  it('every function of shapes measures what is drawn', () =>
    checkDraft(`draft sheet {
  point far = origin right 30mm down 40mm
  line slant = origin to far
  circle plate = centre origin radius 10mm
  let apart = distance(origin, far) #= 50.000mm
  let long = length(slant) #= 50.000mm
  let on-paper = drawn(slant) #= 50.000mm
  let way = slope(slant) #= 53.1301deg
  let at-origin = angle(far, origin, (origin right 1cm)) #= 53.1301deg
  let between = angle(slant, (origin to (origin up 1cm))) #= 143.1301deg
  let inside = area(plate) #= 3.1416cm2 within 0.001cm2
  let nameless = length(origin to far) #= 5cm
  let bent = length((origin to far through (origin right 3cm), (origin right 3cm down 2cm))) #= 70.0mm within 12mm
}
`));

  it('kinds that don’t go together are told apart in words', () =>
    checkDraft(`let sum = 3cm + 20deg
#         ^^^^^^^^^^^ error[wrong-kind]: 3cm is a length and 20deg is an angle: they can't be added.
let volume = 3cm * 3cm * 3cm
#            ^^^^^^^^^^^^^^^ error[wrong-kind]: An area times a length is nothing that can be drawn.
let swing = 20deg * 3cm
#           ^^^^^^^^^^^ error[wrong-kind]: An angle times a length is nothing that can be drawn.
let root = sqrt(3cm)
#          ^^^^^^^^^ error[wrong-kind]: sqrt takes a plain number or an area (a length times a length); this
#          | is a length.
let sine = sin(0.5)
#          ^^^^^^^^ error[wrong-kind]: sin takes an angle, such as 20deg; this is a plain number.
let angle-of-angle = asin(20deg)
#                    ^^^^^^^^^^^ error[wrong-kind]: asin takes a plain number; this is an angle.
let least = min(3cm, 2deg)
#           ^^^^^^^^^^^^^^ error[wrong-kind]: min compares values of one kind; these are a length and an
#           | angle.
let step = round(3cm, 2)
#          ^^^^^^^^^^^^^ error[wrong-kind]: round needs a step of the value's own kind, a length; this is a
#          | plain number.
let either = if(1 = 1, 1cm, 2deg)
#            ^^^^^^^^^^^^^^^^^^^^ error[wrong-kind]: The two values of an if must be of one kind; these are a
#            | length and an angle.
let compared = if(3cm = 2deg, 1, 2)
#                 ^^^^^^^^^^ error[wrong-kind]: 3cm is a length and 2deg is an angle: they can't be compared.
`));

  it('a number without its unit is told which it may be', () =>
    checkDraft(`let sum = 3cm + 2
#               ^ error[missing-unit]: 2 has no unit, but the sum wants a length: write 2cm.
#               fix: Write 2cm
#               fix: Write 2mm
#               fix: Write 2in
let less = 2 - 3cm
#          ^ error[missing-unit]: 2 has no unit, but the difference wants a length: write 2cm.
#          fix: Write 2cm
#          fix: Write 2mm
#          fix: Write 2in
expect 3cm = 2
#            ^ error[missing-unit]: 2 has no unit, but the comparison wants a length: write 2cm.
#            fix: Write 2cm
#            fix: Write 2mm
#            fix: Write 2in
`));

  it('numbers that don’t exist are refused where they are asked for', () =>
    checkDraft(`let split = 3cm / 0
#           ^^^^^^^ error[no-such-number]: 3cm / 0 comes to no number that can be drawn (a division by
#           | nothing, or beyond ten thousand kilometres).
let root = sqrt(-1)
#          ^^^^^^^^ error[no-such-number]: A number below zero has no square root.
let steep = tan(90deg)
#           ^^^^^^^^^^ error[no-such-number]: tan(90deg) comes to no number that can be drawn (a division by
#           | nothing, or beyond ten thousand kilometres).
let beyond = asin(2)
#            ^^^^^^^ error[no-such-number]: No angle has 2 for its sin: it must lie between -1 and 1.
let no-step = round(3cm, 0cm)
#             ^^^^^^^^^^^^^^^ error[no-such-number]: round(3cm, 0cm) comes to no number that can be drawn (a
#             | division by nothing, or beyond ten thousand kilometres).
`));

  it('a function with too few or too many values says how many it takes', () =>
    checkDraft(`let least = min()
#           ^^^^^ error[wrong-kind]: min needs at least one value.
let size = abs(2cm, 3cm)
#          ^^^^^^^^^^^^^ error[wrong-kind]: abs takes one value, not 2.
let step = round(3cm, 2mm, 3mm)
#          ^^^^^^^^^^^^^^^^^^^^ error[wrong-kind]: round takes a value, and the step to round to when it is
#          | not one: round(x, 5mm).
let either = if(1 = 1, 2)
#            ^^^^^^^^^^^^ error[wrong-kind]: if takes three things: a condition, the value when it holds, and
#            | the value when it does not.
let unasked = if(3cm, 1, 2)
#                ^^^ error[wrong-kind]: A condition is needed here, such as waist > 80cm; 3cm compares
#                | nothing.
draft sheet {
  line slant = origin to (origin right 3cm)
  let apart = distance(origin)
#             ^^^^^^^^^^^^^^^^ error[wrong-kind]: distance takes two points; 1 stands here.
  let corner = angle(slant)
#              ^^^^^^^^^^^^ error[wrong-kind]: angle takes three points (the angle at the middle one) or two
#              | lines; 1 stands here.
  let twice = length(slant, slant)
#             ^^^^^^^^^^^^^^^^^^^^ error[wrong-kind]: length takes one line, curve or edge; 2 stand here.
}
`));

  it('a function of shapes says what it wants instead', () =>
    checkDraft(`draft sheet {
  point far = origin right 3cm
  line slant = origin to far
  let long = length(far)
#                   ^^^ error[wrong-kind]: far is a point, but length wants a line or curve. Two points in a
#                   | bracket make a line: (A to B).
  let apart = distance(slant, far)
#                      ^^^^^ error[wrong-kind]: slant is a line, but distance wants a point. Take one of its
#                      | ends (.start, .end), or a place on it (on … halfway).
  let inside = area(slant)
#                   ^^^^^ error[wrong-kind]: area takes a piece or a closed curve; slant encloses nothing.
  let bare = slant
#            ^^^^^ error[wrong-kind]: slant is a line, but a value is needed here. length(slant) gives its
#            | length.
#            see \`slant\`: slant is defined here.
  let corner = angle(far, far, origin)
#              ^^^^^^^^^^^^^^^^^^^^^^^ error[no-direction]: angle(far, far, origin) has no angle: two of its
#              | points are one.
}
`));
});
