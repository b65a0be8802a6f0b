/** Lines and curves as points with straight chords between them, each told to be a turn or a point of a curve. */
import { distance, type Path, type Point, type Segment } from '../../geometry';
import { flattened } from '../../geometry/flatten';

/** No chord strays further than this from its curve, mm: far within a cutter's knife, and few points. */
export const CHORD_TOLERANCE_MM = 0.02;

/** Directions that differ by more, in radians, make a corner: half a degree, below what a cutter sees. */
const CORNER = 0.009;
/** Points closer than this, mm, are one. */
const SAME = 1e-6;

export interface FlatPoint extends Point {
  /** A corner, or an end of a straight stretch; the others lie on a curve. */
  readonly turns: boolean;
}

export interface Flat {
  readonly points: readonly FlatPoint[];
  readonly closed: boolean;
}

/** @param closed the last point is joined to the first; a repeated first point is left out */
export function flatOf(path: Path, closed: boolean): Flat {
  const { segments } = path;
  const points: FlatPoint[] = [];
  const push = (point: Point, turns: boolean): void => {
    const last = points.at(-1);
    if (last === undefined || distance(last, point) > SAME) points.push({ ...point, turns });
    else if (turns && !last.turns) points[points.length - 1] = { ...last, turns };
  };
  segments.forEach((segment, i) => {
    push(segment.p0, turnsBetween(segments[i - 1], segment));
    const chords: Point[] = [];
    flattened(segment, CHORD_TOLERANCE_MM, chords);
    chords.slice(0, -1).forEach((point) => push(point, false));
  });
  const end = segments.at(-1)!.p3;
  const [first] = points;
  if (!closed || first === undefined || distance(end, first) > SAME) push(end, true);
  return { points: closed ? joined(points, segments) : points, closed };
}

/** Where a closed line comes back to its start it turns or goes on as anywhere else. */
function joined(points: readonly FlatPoint[], segments: readonly Segment[]): readonly FlatPoint[] {
  const [first, ...rest] = points;
  const [start, end] = [segments[0]!, segments.at(-1)!];
  if (first === undefined || distance(start.p0, end.p3) > SAME) return points;
  return [{ ...first, turns: turnsBetween(end, start) }, ...rest];
}

function turnsBetween(before: Segment | undefined, after: Segment): boolean {
  if (before === undefined || distance(before.p3, after.p0) > SAME) return true;
  if (before.kind === 'line' || after.kind === 'line') return true;
  const [a, b] = [leaving(before), arriving(after)];
  const turn = Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
  return Math.abs(turn) > CORNER;
}

/** The way in which a segment ends, and in which one begins; control points on the end tell nothing. */
const leaving = (segment: Segment): Point => wayOf([...controls(segment)].reverse(), -1);
const arriving = (segment: Segment): Point => wayOf(controls(segment), 1);

const controls = (segment: Segment): readonly Point[] =>
  segment.kind === 'line' ? [segment.p0, segment.p3] : [segment.p0, segment.p1, segment.p2, segment.p3];

function wayOf([from, ...others]: readonly Point[], sign: 1 | -1): Point {
  const to = others.find((point) => distance(point, from!) > SAME) ?? from!;
  return { x: sign * (to.x - from!.x), y: sign * (to.y - from!.y) };
}
