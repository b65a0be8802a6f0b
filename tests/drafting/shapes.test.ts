/** Every way to a point, a line and a curve, from text to figures. */
import { checkDraft } from '../support/drafts';

describe('shapes', () => {
  it('a point is squared from another by a length, or until level with a third', () =>
    checkDraft(`draft sheet {
  point a = origin down 5cm left 2cm #= (-2cm, 5cm)
  point t = origin right 7cm down 9cm
  point below = a down to t #= (-2cm, 9cm)
  point beside = a across to t #= (7cm, 5cm)
  point nameless = (origin down 1cm) down to (origin down 3cm) #= (0cm, 3cm)
}
`));

  it('a point is squared from another until it meets a line made longer, or a curve as drawn', () =>
    checkDraft(`draft sheet {
  line far = (origin right 10cm down 20cm) to (origin right 11cm down 20cm)
  circle plate = centre origin radius 10cm
  point on-line = origin down to far #= (0cm, 20cm)
  point on-curve = origin right to plate #= (10cm, 0cm)
  point picked = (origin left 20cm) right to plate left-hand #= (-10cm, 0cm)
  point across-it = (origin left 20cm) across to plate right-hand #= (10cm, 0cm)
}
`));

  it('a place is counted from a named point along a line, whichever word counts it', () =>
    checkDraft(`draft sheet {
  line hem = origin to (origin right 12cm)
  point a = on hem 7cm from hem.start #= (7cm, 0cm)
  point third = on hem 1/3 from hem.end #= (8cm, 0cm)
  point tenth = on hem 10% from hem.start #= (1.2cm, 0cm)
  point beyond-end = on hem 2cm beyond hem.end #= (14cm, 0cm)
  point beyond-start = on hem 2cm beyond hem.start #= (-2cm, 0cm)
  point middle = on hem halfway #= (6cm, 0cm)
  point earlier = on hem 1cm before a #= (6cm, 0cm)
  point later = on hem 1cm after a #= (8cm, 0cm)
  point back = on hem 2cm from a toward hem.start #= (5cm, 0cm)
  point forth = on hem 2cm from a toward hem.end #= (9cm, 0cm)
  line centre-line = origin to (origin up 10cm)
  point lower-one = on centre-line 2cm below centre-line.end #= (0cm, -8cm)
  point upper-one = on centre-line 2cm above origin #= (0cm, -2cm)
}
`));

  it('a place on a curve and on an edge is counted along it', () =>
    checkDraft(`draft sheet {
  circle plate = centre origin radius 10cm
  arc quarter = (origin right 10cm) to (origin down 10cm) centre origin
  point eighth = on quarter halfway #= (7.0711cm, 7.0711cm)
  point twelfth = on quarter 1/3 from quarter.start #= (8.6603cm, 5.0000cm)
  point along-it = on quarter 5.23599cm from quarter.end #= (5.0000cm, 8.6603cm)
  point a = origin
  point b = a right 10cm
  point c = b down 10cm
}
piece patch of sheet {
  outline from a {
    top straight to b
    near straight to c
    slant straight to a
  }
}
let far = distance((on patch.top 3cm from patch.top.start), (on patch.slant halfway)) #= 5.3852cm
`));

  it('a bearing is named off a direction, or taken over from a line', () =>
    checkDraft(`draft sheet {
  point a = origin at 20deg below right for 12cm #= (112.7631mm, 41.0424mm)
  point b = origin at 20deg above left for 12cm #= (-112.7631mm, -41.0424mm)
  point c = origin at 15deg left of down for 10cm #= (-25.8819mm, 96.5926mm)
  point e = origin at 15deg right of up for 10cm #= (25.8819mm, -96.5926mm)
  line slant = origin to (origin right 3cm down 4cm)
  point f = (origin right 1cm) at slope(slant) for 5cm #= (4cm, 4cm)
}
`));

  it('the compass finds the point of a line or curve at its distance, and every pick says which', () =>
    checkDraft(`draft sheet {
  line floor = (origin down 6cm) to (origin down 6cm right 1cm)
  circle plate = centre (origin right 12cm) radius 9cm
  point a = origin reach 10cm to floor right-hand #= (8cm, 6cm)
  point b = origin reach 10cm to floor left-hand #= (-8cm, 6cm)
  point c = origin reach 10cm to floor nearest (origin left 3cm) #= (-8cm, 6cm)
  point e = origin reach 9cm to plate upper #= (6cm, -6.7082cm)
  point f = origin reach 9cm to plate lower #= (6cm, 6.7082cm)
  point once = origin reach 6cm to floor #= (0cm, 6cm)
}
`));

  it('lines meet under the ruler, curves where they are drawn, and every pick says which', () =>
    checkDraft(`draft sheet {
  line slant = origin to (origin right 3cm down 4cm)
  line floor = (origin down 6cm) to (origin down 6cm right 1cm)
  line plumb = (origin down 20cm) to (origin up 20cm)
  circle plate = centre origin radius 10cm
  circle other = centre (origin right 12cm) radius 10cm
  point a = where slant meets floor #= (4.5cm, 6cm)
  point b = where floor meets plate left-hand #= (-8cm, 6cm)
  point b2 = where floor meets plate right-hand #= (8cm, 6cm)
  point c = where plumb meets plate upper #= (0cm, -10cm)
  point e = where plate meets plumb lower #= (0cm, 10cm)
  point f = where plate meets other upper #= (6cm, -8cm)
  point g = where plate meets other nearest (origin down 3cm) #= (6cm, 8cm)
  point drawn-first = where (origin to (origin down 20cm)) meets plate #= (0cm, 10cm)
}
`));

  it('a square is dropped onto a line made longer and onto a curve, and raised from a slanting line', () =>
    checkDraft(`draft sheet {
  line hem = origin to (origin right 12cm)
  line slant = origin to (origin right 3cm down 4cm)
  circle plate = centre origin radius 10cm
  point a = (origin right 5cm down 2cm) squared onto hem #= (5cm, 0cm)
  point b = (origin right 20cm down 2cm) squared onto hem #= (20cm, 0cm)
  point c = (origin right 4cm) squared onto plate nearest (origin right 9cm) #= (10cm, 0cm)
  point e = origin squared from slant 5cm toward (origin right 9cm) #= (4cm, -3cm)
  point f = slant.end squared from slant 5cm toward (origin down 9cm) #= (-1cm, 7cm)
}
`));

  it('a point is mirrored, turned, moved and halved', () =>
    checkDraft(`draft sheet {
  line plumb = origin to (origin up 9cm)
  line slant = origin to (origin right 4cm down 4cm)
  point a = (origin right 3cm) mirrored across plumb #= (-3cm, 0cm)
  point b = (origin right 3cm) mirrored across slant #= (0cm, 3cm)
  point c = (origin right 3cm) turned 90deg about origin #= (0cm, -3cm)
  point e = (origin right 3cm) turned 90deg clockwise about origin #= (0cm, 3cm)
  point f = a moved left 3cm down 2cm #= (-6cm, 2cm)
  point g = midpoint of origin and (origin right 5cm) #= (2.5cm, 0cm)
}
`));

  it('a shape is laid as paper is laid, from a sheet of its own', () =>
    checkDraft(`draft collar {
  point fall = origin
  point tip = fall right 10cm
  curve edge-of = fall to tip hollow 1cm toward (origin down 3cm) #= length 102.62mm within 0.2mm
}
draft bodice {
  point neck = origin right 20cm
  point front = neck down 30cm
  curve laid-edge = collar.edge-of laid (collar.fall) on neck and (collar.tip) toward front #= length 102.62mm within 0.2mm
  point laid-tip = laid-edge.end #= (20cm, 10cm)
  point laid-middle = on laid-edge halfway #= (19cm, 5cm)
}
`));

  it('a line is any way to a point', () =>
    checkDraft(`draft sheet {
  point p = origin
  point q = origin right 5cm down 2cm
  line a = p to q #= length 5.3852cm
  line b = p across to q #= length 5cm
  line c = p down 3cm #= length 3cm
  line e = p at 30deg below right for 4cm #= length 4.000cm
  line f = (p to q) moved up 1cm #= length 5.3852cm
  line g = (p to q) parallel 1cm toward (origin down 9cm) #= length 5.3852cm
}
`));

  it('a curve leaves and arrives as it is told', () =>
    checkDraft(`draft sheet {
  point p = origin
  point q = origin right 20cm
  line wall = q to (q down 5cm)
  # one cubic for half a circle: its radius is 1.84 % out at the worst (worked out from k = 4/3)
  curve half = p to q leaving down arriving up #= length 317.165mm
  point lowest = on half halfway #= (10cm, 10cm)
  curve squared-to = p to q leaving down arriving square to wall
  curve aimed = p to q leaving toward (origin right 5cm down 5cm) arriving along wall
  curve at-bearing = p to q leaving at 20deg below right arriving at 20deg above right
  point top-of-arch = on at-bearing halfway #= (10cm, 1.763cm) within 0.3mm
  curve free = p to q leaving at 0deg below right #= length 20.0cm
  let fuller-longer = if(length(p to q leaving down fuller 20%) > length(p to q leaving down), 1, 0) #= 1
  let flatter-shorter = if(length(p to q leaving down flatter 20%) < length(p to q leaving down), 1, 0) #= 1
}
`));

  it('a curve goes through its points, with a heading where one is told', () =>
    checkDraft(`draft sheet {
  curve neck = origin to (origin right 15cm up 5cm) through (origin right 10cm down 5cm) going right, (origin right 15cm down 2cm)
  point lowest = (origin right 10cm) down to neck #= (10cm, 5cm)
  point second = (origin right 30cm down 2cm) left to neck nearest (origin right 15cm down 2cm) #= (15cm, 2cm)
  curve rising = origin to (origin right 9cm) through (origin right 4cm up 2cm) going at 10deg above right
}
`));

  it('a hollow is deepest where it is told, on the side it is told', () =>
    checkDraft(`draft sheet {
  curve even = origin to (origin right 10cm) hollow 1.2cm toward (origin down 5cm)
  point deepest = on even halfway #= (5cm, 1.2cm)
  curve early = origin to (origin right 12cm) hollow 1cm toward (origin up 5cm) at 1/3 from origin
  point deepest-early = (origin right 4cm) up to early #= (4cm, -1.0cm)
  curve late = origin to (origin right 12cm) hollow 1cm toward (origin up 5cm) at 3cm from (origin right 12cm)
  point deepest-late = (origin right 9cm) up to late #= (9cm, -1.0cm)
}
`));

  it('arcs go the short way or the long, circles by their radius or round a length', () =>
    checkDraft(`draft sheet {
  arc short-way = (origin right 5cm) to (origin down 5cm) centre origin #= length 78.540mm
  arc long-way = (origin right 5cm) to (origin down 5cm) centre origin the long way #= length 235.619mm
  circle plate = centre origin radius 9cm #= length 56.5487cm
  circle hem = centre origin round 40cm #= length 40.000cm
}
`));

  it('a part of a closed curve runs the way the curve is drawn', () =>
    checkDraft(`draft sheet {
  circle plate = centre origin radius 9cm
  point right-end = origin right 9cm
  point foot = origin down 9cm
  curve quarter = part of plate from right-end to foot #= length 14.1372cm
  curve rest-of-it = part of plate from foot to right-end #= length 42.4115cm
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  curve half = part of bow from (on bow halfway) to bow.start
  let share = length(half) / length(bow) #= 0.50000
}
`));

  it('curves run on end to end, are turned about, and go backwards', () =>
    checkDraft(`draft sheet {
  point q = origin right 20cm
  curve two = run (origin to q) then (q to (q down 5cm)) #= length 25.0cm
  curve three = run (q to origin) then ((q down 5cm) to q) then ((q down 5cm) to (q down 8cm)) #= length 28.0cm
  curve back = two reversed
  point begins = back.start #= (20cm, 5cm)
  point ends = back.end #= (0cm, 0cm)
}
`));

  it('a parallel is longer outside a bend and shorter inside it, as Steiner has it', () =>
    checkDraft(`draft sheet {
  circle plate = centre origin radius 10cm
  curve outside = plate parallel 1cm toward (origin right 30cm) #= length 691.15mm
  curve inside = plate parallel 1cm toward origin #= length 565.49mm
  arc quarter = (origin right 5cm) to (origin down 5cm) centre origin
  curve beside = quarter parallel 1cm toward origin #= length 62.832mm
}
`));

  it('a line or curve is carried like paper, whole', () =>
    checkDraft(`draft sheet {
  line hem = origin to (origin right 10cm)
  arc quarter = (origin right 5cm) to (origin down 5cm) centre origin
  line turned-hem = hem turned 90deg about origin
  point a = turned-hem.end #= (0cm, -10cm)
  arc mirrored-quarter = quarter mirrored across (origin to (origin down 1cm))
  point b = mirrored-quarter.start #= (-5cm, 0cm)
  arc moved-quarter = quarter moved up 5cm right 1cm #= length 78.540mm
  point c = moved-quarter.end #= (1cm, 0cm)
}
`));

  it('a place on an extended line that no drawn part bears is had all the same, a curve’s is not', () =>
    checkDraft(`draft sheet {
  line short-line = origin to (origin right 1cm)
  point a = on short-line 30cm from origin #= (30cm, 0cm)
  curve bow = origin to (origin right 10cm) hollow 1cm toward (origin down 5cm)
  point b = on bow 15cm from bow.start
#                  ^^^^^^^^^^^^^^^^^^^ error[out-of-reach]: bow is 10.26cm long: this place lies 4.74cm beyond
#                  | its end, and a curve does not run on. Count less, or draw it longer.
  point c = on bow 1cm beyond bow.end
#                  ^^^^^^^^^^^^^^^^^^ error[out-of-reach]: bow is 10.26cm long: this place lies 1cm beyond its
#                  | end, and a curve does not run on. Count less, or draw it longer.
}
`));
});
