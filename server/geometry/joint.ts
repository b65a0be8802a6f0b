/** How two cutting lines meet at a corner: what both kinds of corner, plain and made by a rule, are described by. */
import { line } from './cubic';
import { intersections, type Meeting } from './intersect';
import { Path } from './path';
import { add, distance, type Point, scale } from './point';

/**
 * `mitred`: both cutting lines run on straight until they meet. `blunt`: the same, cut off at the limit. `stepped`: the
 * allowance changes where the edge runs smoothly on. `inner`: the lines cross before the corner. `smooth`: nothing to do.
 * `turned-back`, `squared`, `folded`: as a `CornerRule` asks.
 */
export type CornerKind =
  'mitred' | 'blunt' | 'stepped' | 'inner' | 'smooth' | 'turned-back' | 'squared' | 'folded';

/** The corner at the end of the edge with the same number. */
export interface CutCorner {
  readonly kind: CornerKind;
  /** On the sewing line. */
  readonly at: Point;
  /** On the cutting line: the tip; of a blunt corner or a step, its middle. */
  readonly tip: Point;
}

/** Which of the two edges at a corner is meant: the one that ends there, or the one that begins. */
export type Which = 'before' | 'after';

/**
 * How the allowance is cut at a convex corner. Where the rule can't be followed (an edge leans too far, a line would run
 * off beyond the mitre's limit) the corner is mitred.
 *
 * - `turned-back`: `edge` is a fold along which its allowance is turned over, `folds` times: the neighbour's cutting line
 *   goes on as its own mirror image, so that the allowance lies on the piece.
 * - `squared`: the allowance of `edge` ends square to it, where its sewing line, run on, meets the other's cutting line.
 * - `folded`: the allowance of `edge` is pressed over; its end is the mirror image of the other's cutting line.
 * - `stepped`: the wider allowance ends square to its own edge.
 */
export type CornerRule =
  | { readonly how: 'mitred' | 'stepped' }
  | { readonly how: 'turned-back'; readonly edge: Which; readonly folds: 1 | 2 }
  | { readonly how: 'squared' | 'folded'; readonly edge: Which };

/** An edge with the line beside it. */
export interface Run {
  /** Directions in which the sewing line leaves and arrives. */
  readonly sewn: { readonly leaving: Point; readonly arriving: Point };
  /** The cutting line, uncut at its ends. */
  readonly path: Path;
  readonly width: number;
  readonly widthAtEnd: number;
  /** As the cutting line does, by the sewing line: where that is too tight the raw offset itself runs backwards. */
  readonly leaving: Point;
  readonly arriving: Point;
}

/** How a run is cut at a corner: where along it, and what leads on from the end of the first to the start of the second. */
export interface Joint {
  readonly corner: CutCorner;
  readonly endAt: number | undefined;
  readonly startAt: number | undefined;
  readonly between: readonly (Point | Path)[];
}

/** A run walked the other way. */
export const runReversed = (run: Run): Run => ({
  sewn: { leaving: scale(run.sewn.arriving, -1), arriving: scale(run.sewn.leaving, -1) },
  path: run.path.reversed(),
  width: run.widthAtEnd,
  widthAtEnd: run.width,
  leaving: scale(run.arriving, -1),
  arriving: scale(run.leaving, -1),
});

/**
 * A joint worked out for the corner walked the other way, as it is for the walk itself.
 *
 * @param before the run that ends at the corner
 */
export const jointReversed = (joint: Joint, before: Run, after: Run): Joint => ({
  corner: joint.corner,
  endAt: joint.startAt === undefined ? undefined : before.path.length - joint.startAt,
  startAt: joint.endAt === undefined ? undefined : after.path.length - joint.endAt,
  between: [...joint.between].reverse().map((part) => (part instanceof Path ? part.reversed() : part)),
});

/** The path with a straight line of a length added at its end, or (`before`) ahead of its start. */
export const runOn = (path: Path, arriving: Point, by: number): Path =>
  path.joinedTo(Path.of([line(path.end, add(path.end, scale(arriving, by)))]));

export const begunBefore = (path: Path, leaving: Point, by: number): Path =>
  Path.of([line(add(path.start, scale(leaving, -by)), path.start)]).joinedTo(path);

/** Where two paths meet nearest to a point. */
export function meetingNearest(a: Path, b: Path, to: Point): Meeting | undefined {
  let best: Meeting | undefined;
  for (const meeting of intersections(a, b))
    if (!best || distance(meeting.point, to) < distance(best.point, to)) best = meeting;
  return best;
}
