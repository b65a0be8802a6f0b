/** Lines, curves and arcs from one point to another; stretches of them; runs joined end to end. */
import { say } from '../../../grammar/say';
import type { Expr, Joined, Section, Via, Way, WayOption } from '../../../grammar/syntax';
import {
  arc,
  distance,
  deepestOf,
  hobby,
  hollowCurve,
  Path,
  samePoint,
  subtract,
  type Knot,
  type Point,
} from '../../geometry';
import type { CurveShape, Shape } from '../model';
import { lengthOf, ofKind, quantity } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { headingOf } from './directions';
import { pathOf, pointOf, type PathShape } from './phrase';
import { ON_LINE } from './places';

export const curveShape = (path: Path, extra: Partial<CurveShape> = {}): CurveShape => ({
  kind: 'curve',
  path,
  closed: path.isClosed(),
  ...extra,
});

type Option<K extends WayOption['kind']> = Extract<WayOption, { kind: K }>;

const option = <K extends WayOption['kind']>(
  options: readonly WayOption[],
  ...kinds: K[]
): Option<K> | undefined => options.find((one): one is Option<K> => (kinds as string[]).includes(one.kind));

/**
 * `P to Q …`.
 *
 * @param word what is being defined: a `line` takes no bends, an `arc` needs its centre
 */
export function way(reader: Reader, expr: Way, word: 'line' | 'curve' | 'arc' | 'way'): Shape | undefined {
  const start = pointOf(reader, expr.start, 'to');
  const end = pointOf(reader, expr.end, 'to');
  if (start === undefined || end === undefined) return undefined;
  return wayBetween(reader, { expr, start, end, options: expr.options, word });
}

export interface WayEnds {
  readonly expr: { readonly at: { readonly from: number; readonly to: number } };
  readonly start: Point;
  readonly end: Point;
  readonly options: readonly WayOption[];
  readonly word: 'line' | 'curve' | 'arc' | 'way';
}

export function wayBetween(reader: Reader, ends: WayEnds): Shape | undefined {
  const { start, end, options, word, expr } = ends;
  if (samePoint(start, end, 1e-6)) {
    return report(
      reader,
      'no-length',
      expr.at,
      say`${wordsOf(reader, expr)} goes nowhere: both ends are one point. Name two points that lie apart.`,
    );
  }
  const centre = option(options, 'centre');
  if (centre !== undefined) return arcShape(reader, ends, centre);
  if (word === 'arc') {
    return report(
      reader,
      'arc-without-centre',
      expr.at,
      say`An arc needs its centre: ${wordsOf(reader, expr)} centre O.`,
    );
  }
  const bend = options[0];
  if (word === 'line' && bend !== undefined) {
    return report(
      reader,
      'wrong-kind',
      bend.at,
      say`A line is straight; ${wordsOf(reader, bend)} makes a curve of it. Write curve instead of line.`,
    );
  }
  if (bend === undefined) {
    const path = Path.line(start, end);
    return word === 'curve' ? curveShape(path) : { kind: 'line', path };
  }
  const hollow = option(options, 'hollow');
  return hollow === undefined ? bent(reader, ends) : hollowed(reader, ends, hollow);
}

/** Two radii may differ by what a pencil can't show; more than that and the arc can't be drawn. */
const SAME_RADIUS = 0.05;

function arcShape(reader: Reader, { start, end, expr }: WayEnds, given: Option<'centre'>): Shape | undefined {
  const centre = pointOf(reader, given.point, 'centre');
  if (centre === undefined) return undefined;
  const radii = [distance(centre, start), distance(centre, end)] as const;
  if (Math.abs(radii[0] - radii[1]) <= SAME_RADIUS && radii[0] > 0) {
    return curveShape(arc(centre, start, end, given.longWay), { centre });
  }
  const [a, b] = [printLength(radii[0], reader.unit), printLength(radii[1], reader.unit)];
  return report(
    reader,
    'arc-radii-differ',
    expr.at,
    say`No circle round ${wordsOf(reader, given.point)} goes through both ends: one is ${a} away, the other ${b}. Move the centre, or one of the ends.`,
  );
}

function hollowed(reader: Reader, { start, end, expr }: WayEnds, given: Option<'hollow'>): Shape | undefined {
  const depth = lengthOf(reader, given.depth, 'hollow');
  const toward = pointOf(reader, given.toward, 'toward');
  if (depth === undefined || toward === undefined) return undefined;
  const at = given.place === undefined ? 0.5 : hollowShare(reader, start, end, given);
  if (at === undefined) return undefined;
  if (offChord(start, end, toward) > ON_LINE) {
    const deepest = deepestOf(start, end, depth, toward, at);
    return curveShape(hollowCurve(start, end, depth, toward, at), { deepest });
  }
  return report(
    reader,
    'no-direction',
    expr.at,
    say`${wordsOf(reader, given.toward)} lies on the straight way between the ends, so it does not say to which side the curve is hollow. Name a point beside it.`,
  );
}

/** How far a point lies from the straight line through two others. */
function offChord(start: Point, end: Point, point: Point): number {
  const [along, off] = [subtract(end, start), subtract(point, start)];
  return Math.abs(along.x * off.y - along.y * off.x) / distance(start, end);
}

/** Where along the straight way the deepest point lies, as a share strictly inside it. */
function hollowShare(reader: Reader, start: Point, end: Point, given: Option<'hollow'>): number | undefined {
  const place = given.place!;
  const whole = distance(start, end);
  if (place.counted === undefined) return 0.5;
  const amount = quantity(reader, place.value);
  const from = place.point && pointOf(reader, place.point, 'at');
  if (amount === undefined || from === undefined) return undefined;
  const share = amount.kind === 'length' ? amount.amount / whole : amount.amount;
  const fromStart = distance(from, start) <= distance(from, end) ? share : 1 - share;
  if (fromStart > 0.02 && fromStart < 0.98) return fromStart;
  return report(
    reader,
    'out-of-reach',
    place.at,
    say`The deepest point of a hollow must lie between its two ends.`,
  );
}

/** A curve by its headings and the points it goes through. */
function bent(reader: Reader, { start, end, options, expr }: WayEnds): Shape | undefined {
  const via = option(options, 'through')?.via ?? [];
  const points = [start, ...via.map((one) => pointOf(reader, one.point, 'through')), end];
  if (points.some((point) => point === undefined)) return undefined;
  const known = points as Point[];
  const leaving = option(options, 'leaving');
  const arriving = option(options, 'arriving');
  const last = known.length - 1;
  const chord = (from: number): Point => subtract(known[from + 1]!, known[from]!);
  const first = leaving && headingOf(reader, leaving.heading, start, chord(0));
  const final = arriving && headingOf(reader, arriving.heading, end, chord(last - 1));
  if ((leaving && !first) || (arriving && !final)) return undefined;
  const inner = via.map((one, i) => goingThrough(reader, one, known[i + 1]!, chord(i)));
  if (inner.some((knot) => knot === undefined)) return undefined;
  const scaleHandles = handleScale(reader, options);
  if (scaleHandles === undefined) return undefined;
  const knots: Knot[] = [
    { point: start, leaving: first },
    ...(inner as Knot[]),
    { point: end, arriving: final },
  ];
  const segments = hobby(knots, { scaleHandles });
  if (segments.length > 0) return curveShape(Path.of(segments));
  return report(
    reader,
    'no-length',
    expr.at,
    say`${wordsOf(reader, expr)} goes nowhere: all its points are one. Name points that lie apart.`,
  );
}

function goingThrough(reader: Reader, via: Via, point: Point, chord: Point): Knot | undefined {
  if (via.going === undefined) return { point };
  const going = headingOf(reader, via.going, point, chord);
  return going && { point, leaving: going, arriving: going };
}

function handleScale(reader: Reader, options: readonly WayOption[]): number | undefined {
  const given = option(options, 'fuller', 'flatter');
  if (given === undefined) return 1;
  const share = ofKind(reader, given.by, 'ratio', given.kind);
  if (share === undefined) return undefined;
  const factor = given.kind === 'fuller' ? 1 + share : 1 - share;
  if (factor > 0 && factor <= 4) return factor;
  const why = factor > 0 ? say`more than 300% is no curve that anybody draws` : say`this one leaves no curve`;
  return report(reader, 'no-such-number', given.by.at, say`${given.kind} takes a share such as 20%; ${why}.`);
}

/** `part of C from P to Q`; on a closed curve in the direction it is drawn. */
export function section(reader: Reader, expr: Section): Shape | undefined {
  const whole = pathOf(reader, expr.of, 'part of');
  const from = pointOf(reader, expr.from, 'from');
  const to = pointOf(reader, expr.to, 'to');
  if (whole === undefined || from === undefined || to === undefined) return undefined;
  const a = onShape(reader, whole, from, expr.from, expr.of);
  const b = onShape(reader, whole, to, expr.to, expr.of);
  if (a === undefined || b === undefined) return undefined;
  const path = stretch(whole, a, b);
  return path.length > 0
    ? sameKind(whole, path)
    : report(reader, 'no-length', expr.at, say`${wordsOf(reader, expr)} has no length: both points are one.`);
}

/** The stretch of a shape between two distances along it. */
export function stretch(whole: PathShape, a: number, b: number): Path {
  const { path } = whole;
  if (whole.kind === 'curve' && whole.closed && a > b)
    return path.part(a, path.length).joinedTo(path.part(0, b));
  return path.part(a, b);
}

export function onShape(
  reader: Reader,
  shape: PathShape,
  point: Point,
  expr: Expr,
  of: Expr,
): number | undefined {
  const { s, distance: off } = shape.path.locate(point);
  if (off <= ON_LINE) return s;
  const name = wordsOf(reader, of);
  return report(
    reader,
    'not-on-line',
    expr.at,
    say`${wordsOf(reader, expr)} does not lie on ${name}: it is ${printLength(off, reader.unit)} away.`,
  );
}

export const sameKind = (shape: PathShape, path: Path): PathShape =>
  shape.kind === 'line'
    ? { kind: 'line', path }
    : curveShape(path, shape.centre === undefined ? {} : { centre: shape.centre });

/** `run A then B`: end to end; each is turned about where that makes the ends meet. */
export function joinedRun(reader: Reader, expr: Joined): Shape | undefined {
  const parts = expr.parts.map((part) => pathOf(reader, part, 'run'));
  if (parts.some((part) => part === undefined)) return undefined;
  let path = firstTurned((parts as PathShape[]).map((part) => part.path));
  for (let i = 1; i < parts.length; i++) {
    const next = parts[i]!.path;
    const [asIs, about] = [distance(path.end, next.start), distance(path.end, next.end)];
    const gap = Math.min(asIs, about);
    if (gap > ON_LINE) {
      const [before, after] = [wordsOf(reader, expr.parts[i - 1]!), wordsOf(reader, expr.parts[i]!)];
      return report(
        reader,
        'run-with-gap',
        expr.parts[i]!.at,
        say`${before} and ${after} do not join: their nearest ends are ${printLength(gap, reader.unit)} apart. Let the one begin where the other ends.`,
      );
    }
    path = path.joinedTo(asIs <= about ? next : next.reversed());
  }
  return curveShape(path);
}

function firstTurned(paths: readonly Path[]): Path {
  const [first, second] = paths;
  if (second === undefined) return first!;
  const reach = (point: Point): number =>
    Math.min(distance(point, second.start), distance(point, second.end));
  return reach(first!.start) < reach(first!.end) - ON_LINE ? first!.reversed() : first!;
}
