/** The course of a seam: places along its two sides, and which of them come to lie on each other when it is sewn. */
import { keptFor } from '../../../grammar/kept';
import type { Path, Point } from '../../geometry';
import type { Edge, Piece } from '../model';
import type { SeamCourse, SeamPlace, SeamRun, Stretch } from '../sewing-model';
import { everyEdge, flatAt, sewnTo, withoutMouths } from '../shapes/parts';

/** What is sewn of an edge, without the mouths of its darts, laid flat. */
export const sewnPath = keptFor(({ parts }: Edge): Path => withoutMouths(parts));

export const sizeOf = ({ from, to }: Stretch): number => Math.abs(to - from);

/** Length of a side, mm. */
export const sideLength = (runs: readonly SeamRun[]): number =>
  runs.reduce((sum, run) => sum + sizeOf(run), 0);

/** A hair, mm: places are compared with it on top. */
const HAIR = 1e-6;

/** Where a place of an edge lies along a side; undefined where the seam does not take it. */
export function alongSide(
  runs: readonly SeamRun[],
  at: { readonly piece: string; readonly edge: string; readonly distance: number },
): number | undefined {
  for (const run of runs) {
    if (run.piece !== at.piece || run.edge !== at.edge) continue;
    const [low, high] = [Math.min(run.from, run.to), Math.max(run.from, run.to)];
    if (at.distance < low - HAIR || at.distance > high + HAIR) continue;
    return run.start + Math.abs(at.distance - run.from);
  }
  return undefined;
}

/** The edge and its place at a distance along a side; a join of two edges counts to the later one. */
export function placeOnSide(
  runs: readonly SeamRun[],
  s: number,
): { readonly run: SeamRun; readonly distance: number } | undefined {
  const run = [...runs].reverse().find(({ start }) => s >= start - HAIR) ?? runs[0];
  if (run === undefined) return undefined;
  const along = Math.min(Math.max(s - run.start, 0), sizeOf(run));
  return { run, distance: run.from + Math.sign(run.to - run.from) * along };
}

/** The place on the other side that a place of one side is sewn to. */
export function across({ meets }: SeamCourse, side: 'left' | 'right', s: number): number {
  const other = side === 'left' ? 'right' : 'left';
  for (let i = 1; i < meets.length; i++) {
    const [a, b] = [meets[i - 1]!, meets[i]!];
    if (s > b[side] + HAIR && i < meets.length - 1) continue;
    const share = b[side] > a[side] ? (s - a[side]) / (b[side] - a[side]) : 0;
    return a[other] + share * (b[other] - a[other]);
  }
  return s;
}

/** What of one side is eased, and where. */
export interface EaseShared {
  /** Nothing is eased so far from the beginning, and from the end. */
  readonly before: number;
  readonly after: number;
  /** Joins of the side that is not eased, counted along it, and the share of the ease up to there. */
  readonly joins: readonly { readonly at: number; readonly share: number }[];
}

/** Places that are sewn together, for a side of length `eased` that is shared along one of length `other`. */
function shared(eased: number, other: number, { before, after, joins }: EaseShared): [number, number][] {
  const surplus = eased - other;
  // a stretch without ease can't be longer than either side: then all of it is shared evenly
  if (before + after > Math.min(eased, other) + HAIR)
    return [
      [0, 0],
      [eased, other],
    ];
  const within = joins.filter(({ at }) => at > before + HAIR && at < other - after - HAIR);
  const places: [number, number][] = [
    [0, 0],
    [before, before],
    ...within.map(({ at, share }): [number, number] => [at + share * surplus, at]),
    [eased - after, other - after],
    [eased, other],
  ];
  const distinct = places.filter(([, o], i) => i === 0 || o > places[i - 1]![1] + HAIR);
  distinct[distinct.length - 1] = [eased, other];
  return distinct;
}

/** @param eased the side whose ease is shared along the other */
export function meetingPlaces(
  leftLength: number,
  rightLength: number,
  eased: 'left' | 'right',
  ease: EaseShared,
): readonly SeamPlace[] {
  return eased === 'left'
    ? shared(leftLength, rightLength, ease).map(([left, right]) => ({ left, right }))
    : shared(rightLength, leftLength, ease).map(([right, left]) => ({ left, right }));
}

/** Where a sewn distance of an edge lies on paper. */
export const pointOn = (edge: Edge, distance: number): Point =>
  sewnPath(edge).pointAt(flatAt(edge, distance));

/** The sewn distance of the place of an edge that lies nearest to a point, and how far off that is, mm. */
export function locatedOn(edge: Edge, point: Point): { readonly distance: number; readonly off: number } {
  const { s, distance } = sewnPath(edge).locate(point);
  return { distance: sewnTo(edge, s), off: distance };
}

/** An edge of the outline or of a hole. */
export const edgeNamed = (piece: Piece, name: string): Edge | undefined =>
  everyEdge(piece).find((edge) => edge.name === name);

/** The edges round which one goes with an edge: the outline, or the hole it belongs to. */
export const loopOf = (piece: Piece, edge: Edge): readonly Edge[] =>
  piece.holes.find(({ edges }) => edges.includes(edge))?.edges ?? piece.edges;
