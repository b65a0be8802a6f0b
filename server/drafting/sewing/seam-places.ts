/** Places along a seam: a point or a notch on one of its edges, or a length counted from one. */
import { say } from '../../../grammar/say';
import type { Expr, NotchNode, Place, Ref, Statement } from '../../../grammar/syntax';
import { shape } from '../names/references';
import { edgeShape, sewnTo } from '../shapes/parts';
import { distanceAlong } from '../shapes/places';
import { pointOf, type PathShape } from '../shapes/phrase';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import type { Edge, Piece } from '../model';
import type { SeamRun } from '../sewing-model';
import { edgeNamed, locatedOn, placeOnSide, sideLength } from './course';
import type { TakenEdge } from './edges';
import type { Runs } from './pairing';

/** The notch of a name, where the file has one. */
export type NamedNotch = (name: string) => (Statement & { readonly node: NotchNode }) | undefined;

/** A place on one side of a seam: along the side, and on the edge that it falls on. */
export interface SeamSpot {
  readonly side: 'left' | 'right';
  readonly at: number;
  readonly run: SeamRun;
  /** Sewn distance from the edge's first corner. */
  readonly distance: number;
}

/** A point counts as on an edge within what a sharp pencil can tell, mm. */
const ON_EDGE = 0.05;

/** Where a point, or a notch of that name, lies on a seam. */
export function placeOnSeam(
  reader: Reader,
  taken: readonly TakenEdge[],
  runs: Runs,
  expr: Expr,
  notch: NamedNotch,
): SeamSpot | undefined {
  const named = expr.kind === 'ref' && expr.path.length === 1 ? notch(expr.path[0]!.text) : undefined;
  // a notch may bear the name of the point it marks
  if (named === undefined || (expr.kind === 'ref' && reader.homeOf(expr) !== undefined))
    return pointOnSeam(reader, taken, runs, expr);
  const { statement } = reader;
  reader.statement = named;
  const spot = spotOf(reader, taken, runs, named.node.place, named.node.on);
  reader.statement = statement;
  return spot;
}

interface OnEdge {
  readonly spot: SeamSpot;
  readonly off: number;
}

/**
 * Whether a point is one of a piece's: a corner of it, or of its draft, or made from such in a bracket. Each draft is a
 * sheet of its own: what lies at the same place of another lies on nothing here.
 */
function isOf(reader: Reader, expr: Expr, piece: Piece): boolean {
  const drawn: Ref[] = [];
  shape(expr, (ref, space) => {
    if (space === 'shape') drawn.push(ref);
  });
  return drawn.length === 0 || drawn.some((ref) => isNameOf(reader, ref, piece));
}

function isNameOf(reader: Reader, ref: Ref, { corners, balance, marks, draft, base }: Piece): boolean {
  const isFirst = ({ name }: { readonly name: string }): boolean => name === ref.path[0]!.text;
  if (ref.path.length === 1 && corners.some(isFirst)) return true;
  if (balance.some(isFirst) || marks.some(isFirst)) return true;
  const home = reader.homeOf(ref);
  return home === undefined || home === draft || home === base;
}

/** How far a point lies from each edge of the two sides; a piece's corners are where its work left them. */
function candidates(reader: Reader, taken: readonly TakenEdge[], runs: Runs, expr: Expr): readonly OnEdge[] {
  const found: OnEdge[] = [];
  const own = (run: SeamRun): TakenEdge =>
    taken.find(({ piece, edge }) => piece === run.piece && edge === run.edge)!;
  const all = [...runs.left, ...runs.right];
  const some = all.some((run) => isOf(reader, expr, own(run).of));
  for (const side of ['left', 'right'] as const) {
    for (const run of runs[side]) {
      const { of } = own(run);
      if (some && !isOf(reader, expr, of)) continue;
      reader.standOn(of);
      const point = pointOf(reader, expr, say`a place on a seam`);
      if (point === undefined) return [];
      const located = locatedOn(edgeNamed(of, run.edge)!, point);
      const distance = clamped(run, located.distance);
      const at = run.start + Math.abs(distance - run.from);
      const off = Math.max(located.off, Math.abs(distance - located.distance));
      found.push({ spot: { side, at, run, distance }, off });
    }
  }
  return found;
}

/** Rounding at the ends of a stretch. */
const clamped = ({ from, to }: SeamRun, s: number): number =>
  Math.min(Math.max(s, Math.min(from, to)), Math.max(from, to));

function pointOnSeam(
  reader: Reader,
  taken: readonly TakenEdge[],
  runs: Runs,
  expr: Expr,
): SeamSpot | undefined {
  const all = candidates(reader, taken, runs, expr);
  const [on] = all.filter(({ off }) => off <= ON_EDGE);
  if (on !== undefined) return on.spot;
  if (all.length === 0) return undefined;
  const off = Math.min(...all.map((one) => one.off));
  return report(
    reader,
    'not-on-line',
    expr.at,
    say`${wordsOf(reader, expr)} lies on no edge of this seam: it is ${printLength(off, reader.unit)} away.`,
  );
}

const isHalfway = ({ value }: Place): boolean =>
  value.kind === 'ref' && value.path.length === 1 && value.path[0]!.text === 'halfway';

/**
 * The place at which a notch stands on a seam: `at P`, `at halfway`, `at 8cm from P`; a count goes on over the edge's end
 * on to the next edge of the side.
 */
export function spotOf(
  reader: Reader,
  taken: readonly TakenEdge[],
  runs: Runs,
  place: Place,
  on: Expr,
): SeamSpot | undefined {
  if (place.counted === undefined && isHalfway(place)) {
    const at = sideLength(runs.left) / 2;
    return { side: 'left', at, ...placeOnSide(runs.left, at)! };
  }
  if (place.counted === undefined || place.point === undefined) {
    if (place.value.kind === 'ref' || place.value.kind === 'bracket')
      return pointOnSeam(reader, taken, runs, place.value);
    return report(
      reader,
      'place-without-start',
      place.at,
      say`${wordsOf(reader, place)} is counted from nowhere: say from which point, such as ${wordsOf(reader, place)} from A.`,
    );
  }
  const anchor = anchorOf(reader, taken, runs, place);
  return anchor && counted(reader, taken, runs, place, anchor, on);
}

function anchorOf(
  reader: Reader,
  taken: readonly TakenEdge[],
  runs: Runs,
  place: Place,
): SeamSpot | undefined {
  const on = candidates(reader, taken, runs, place.point!).filter(({ off }) => off <= ON_EDGE);
  const [one] = on;
  if (one === undefined) return pointOnSeam(reader, taken, runs, place.point!);
  const rival = on.find(
    ({ spot }) => spot.side === one.spot.side && spot.run !== one.spot.run && place.toward === undefined,
  );
  if (rival === undefined) return one.spot;
  const name = ({ spot: { run } }: OnEdge): string => `${run.piece}.${run.edge}`;
  const point = wordsOf(reader, place.point!);
  return report(
    reader,
    'which-way',
    place.at,
    say`${point} is an end of ${name(one)} and of ${name(rival)}, so this could lie on either: name the edge in place of the seam, such as ${name(one)}.`,
  );
}

function counted(
  reader: Reader,
  taken: readonly TakenEdge[],
  runs: Runs,
  place: Place,
  anchor: SeamSpot,
  on: Expr,
): SeamSpot | undefined {
  const { run, side } = anchor;
  const { of } = taken.find(({ piece, edge }) => piece === run.piece && edge === run.edge)!;
  reader.standOn(of);
  const edge = edgeNamed(of, run.edge)!;
  const drawn = edgeShape(edge);
  if (drawn.kind === 'point') return undefined;
  const name = `${run.piece}.${run.edge}`;
  const [shown, from] = shownOf(edge, drawn, anchor);
  const along = distanceAlong(reader, shown, place, name);
  if (along === undefined) return undefined;
  const flat = from + along;
  const distance = flat < 0 ? flat : sewnTo(edge, flat);
  const at = run.start + (distance - run.from) * (run.to >= run.from ? 1 : -1);
  const total = sideLength(runs[side]);
  const over = Math.max(-at, at - total);
  if (over <= ON_EDGE) {
    const within = Math.min(Math.max(at, 0), total);
    return { side, at: within, ...placeOnSide(runs[side], within)! };
  }
  return report(
    reader,
    'out-of-reach',
    place.at,
    say`${wordsOf(reader, on)} is ${printLength(total, reader.unit)} long on this side: this place lies ${printLength(over, reader.unit)} beyond its end.`,
  );
}

/**
 * What a place is counted along: the edge, or the stretch of it that the seam takes where the count begins at an end of that
 * stretch, since within the seam there is one way from there. And where on the edge it begins.
 */
function shownOf(edge: Edge, drawn: PathShape, { run, distance }: SeamSpot): readonly [PathShape, number] {
  const [from, to] = run.from < run.to ? [run.from, run.to] : [run.to, run.from];
  const inner = distance > ON_EDGE && distance < edge.sewn - ON_EDGE;
  const atEnd = distance < from + ON_EDGE || distance > to - ON_EDGE;
  const flat = Math.abs(drawn.path.length - edge.sewn) < ON_EDGE;
  if (!inner || !atEnd || !flat) return [drawn, 0];
  return [{ ...drawn, path: drawn.path.part(from, to) }, from];
}

export const isAtEnd = (runs: readonly SeamRun[], at: number): boolean =>
  at <= ON_EDGE || at >= sideLength(runs) - ON_EDGE;
