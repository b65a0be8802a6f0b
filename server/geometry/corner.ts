/** The corner between two lines that run beside an outline: mitred to a limit, then blunt. */
import { add, cross, distance, dot, type Point, scale, subtract } from './point';

/** The end of one offset run and the start of the next, round the same corner of the outline. */
export interface CornerEnds {
  /** The corner of the outline. */
  readonly at: Point;
  readonly from: Point;
  /** Unit direction in which the first arrives. */
  readonly arriving: Point;
  readonly to: Point;
  /** Unit direction in which the second leaves. */
  readonly leaving: Point;
}

/** How far the first runs on, and how far before its start the second would have to begin, until they meet. */
export interface Extension {
  readonly forward: number;
  readonly back: number;
  readonly tip: Point;
}

/** Where the two, run on straight, meet; undefined where they are parallel. */
export function extension({ from, arriving, to, leaving }: CornerEnds): Extension | undefined {
  const turn = cross(arriving, leaving);
  if (Math.abs(turn) < 1e-9) return undefined;
  const gap = subtract(to, from);
  const forward = cross(gap, leaving) / turn;
  const back = -cross(gap, arriving) / turn;
  return { forward, back, tip: add(from, scale(arriving, forward)) };
}

/**
 * The corner points between the two runs when they have to be run on: the tip, or, where it is further than `limit`
 * from the corner, the two ends of a cut square to the line from the corner to the tip.
 */
export function runOnTo(ends: CornerEnds, { tip, forward, back }: Extension, limit: number): Point[] {
  const reach = distance(ends.at, tip);
  if (reach <= limit) return [tip];
  const out = scale(subtract(tip, ends.at), 1 / reach);
  const first = (limit - dot(subtract(ends.from, ends.at), out)) / dot(ends.arriving, out);
  const second = (limit - dot(subtract(ends.to, ends.at), out)) / -dot(ends.leaving, out);
  return [
    add(ends.from, scale(ends.arriving, within(first, forward))),
    subtract(ends.to, scale(ends.leaving, within(second, back))),
  ];
}

const within = (value: number, most: number): number =>
  Number.isFinite(value) ? Math.min(Math.max(0, value), most) : 0;
