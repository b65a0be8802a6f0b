/** Corners of a cutting line that are cut by a rule of the trade: turned back, squared off, or as the seam folds. */
import { intersections } from './intersect';
import {
  begunBefore,
  jointReversed,
  meetingNearest,
  runOn,
  runReversed,
  type CornerRule,
  type Joint,
  type Run,
} from './joint';
import { Path } from './path';
import { add, distance, dot, normalised, type Point, scale, subtract } from './point';
import { mirror } from './transform';

/** Where a corner lies and how far from it a cutting line may go. */
export interface CornerPlace {
  readonly at: Point;
  /** Millimetres. */
  readonly reach: number;
}

/** The joint by a rule; undefined where it can't be followed. */
export function ruledJoint(rule: CornerRule, before: Run, after: Run, place: CornerPlace): Joint | undefined {
  if (before.widthAtEnd + after.width === 0) return undefined;
  const edge = 'edge' in rule ? rule.edge : rule.how === 'stepped' ? wider(before, after) : undefined;
  if (edge === undefined) return undefined;
  // only what lies about the corner is looked at: long curves are slow to measure
  const skipped = Math.max(0, before.path.length - 2 * place.reach);
  const [last, first] = [lastPart(before, skipped), firstPart(after, 2 * place.reach)];
  // each way of cutting is worked out for the seam that arrives and the edge that leaves
  const turned = rule.how === 'turned-back' ? edge === 'before' : edge === 'after';
  const [one, other] = turned ? [runReversed(first), runReversed(last)] : [last, first];
  const found =
    rule.how === 'turned-back'
      ? turnedBack(one, other, place, rule.folds)
      : endOfSeam(one, other, place, rule.how === 'folded');
  const joint = found && turned ? jointReversed(found, last, first) : found;
  return joint?.endAt === undefined ? joint : { ...joint, endAt: joint.endAt + skipped };
}

const lastPart = (run: Run, from: number): Run =>
  from === 0 ? run : { ...run, path: run.path.part(from, run.path.length) };

const firstPart = (run: Run, to: number): Run =>
  to >= run.path.length ? run : { ...run, path: run.path.part(0, to) };

function wider(before: Run, after: Run): 'before' | 'after' | undefined {
  const more = before.widthAtEnd - after.width;
  return Math.abs(more) < 1e-6 ? undefined : more > 0 ? 'before' : 'after';
}

/** A seam that leans more than this against the hem (cosine; 40 degrees from square) is not turned back but mitred. */
const LEANING = Math.cos((50 * Math.PI) / 180);

/**
 * The cutting line of the seam is led to the fold, and on as its own mirror image to the hem's cutting line. Turned twice,
 * the second layer lies on the first: it is the mirror image of it across the second fold.
 */
function turnedBack(seam: Run, hem: Run, { at, reach }: CornerPlace, folds: 1 | 2): Joint | undefined {
  const along = hem.sewn.leaving;
  const out = normalised(subtract(hem.path.start, at));
  if (hem.width === 0 || out === undefined || Math.abs(dot(seam.arriving, along)) > LEANING) return undefined;
  const foldLine = lineThrough(at, along, reach);
  const ahead = runOn(seam.path, seam.arriving, reach);
  const fold = meetingNearest(ahead, foldLine, at);
  if (fold === undefined) return undefined;
  const depth = hem.width / folds;
  const above = stretchBefore(ahead, fold.sA, 2 * depth).reversed();
  const layers = [above.transformed(mirror(at, add(at, along)))];
  if (folds === 2) {
    const second = add(at, scale(out, depth));
    const met = firstMeeting(layers[0]!, lineThrough(second, along, reach + 2 * depth));
    if (met === undefined) return undefined;
    layers[0] = layers[0]!.part(0, met.sA);
    layers.push(layers[0].reversed().transformed(mirror(second, add(second, along))));
  }
  const cut = begunBefore(hem.path, hem.leaving, reach);
  const outer = layers.pop()!;
  // the last layer may end exactly on the hem's cutting line: a hair more lets it be crossed
  const end = firstMeeting(runOn(outer, outer.tangentAt(outer.length, 'before'), depth), cut);
  if (end === undefined) return undefined;
  layers.push(outer.part(0, Math.min(end.sA, outer.length)));
  return {
    corner: { kind: 'turned-back', at, tip: end.point },
    endAt: Math.min(fold.sA, seam.path.length),
    startAt: Math.max(0, end.sB - reach),
    between: [...layers, end.point],
  };
}

const lineThrough = (at: Point, along: Point, reach: number): Path =>
  Path.line(add(at, scale(along, -2 * reach)), add(at, scale(along, 2 * reach)));

/** The meeting that is reached first along `a`. */
const firstMeeting = (a: Path, b: Path): ReturnType<typeof meetingNearest> => intersections(a, b)[0];

/** The last stretch before a place, of a length; begun earlier by a straight line where the path is too short for it. */
function stretchBefore(path: Path, s: number, length: number): Path {
  if (s >= length) return path.part(s - length, s);
  return begunBefore(path.part(0, s), path.tangentAt(0), length - s);
}

/**
 * The seam's sewing line, run on, meets the other edge's cutting line; from there the seam's allowance ends square to it,
 * or (folded) as the mirror image of that cutting line, so that the allowance lies on it when it is pressed over.
 */
function endOfSeam(seam: Run, other: Run, { at, reach }: CornerPlace, folded: boolean): Joint | undefined {
  if (seam.widthAtEnd === 0) return undefined;
  const onward = seam.sewn.arriving;
  const out = normalised(subtract(seam.path.end, at));
  if (out === undefined) return undefined;
  const crossing = begunBefore(other.path, other.leaving, reach);
  const sewing = Path.line(at, add(at, scale(onward, reach)));
  const tip = meetingNearest(sewing, crossing, at);
  if (tip === undefined) return undefined;
  const ahead = runOn(seam.path, seam.arriving, reach);
  const mirrored = folded
    ? stretchAfter(crossing, tip.sB, reach).transformed(mirror(at, add(at, onward)))
    : Path.line(tip.point, add(tip.point, scale(out, 2 * seam.widthAtEnd)));
  const end = firstMeeting(mirrored, ahead);
  if (end === undefined || distance(end.point, at) > reach)
    return folded ? endOfSeam(seam, other, { at, reach }, false) : undefined;
  return {
    corner: { kind: folded ? 'folded' : 'squared', at, tip: tip.point },
    endAt: Math.min(end.sB, seam.path.length),
    startAt: Math.max(0, tip.sB - reach),
    between: [mirrored.part(0, end.sA).reversed(), tip.point],
  };
}

/** A stretch after a place, run on straight where the path is too short. */
function stretchAfter(path: Path, s: number, length: number): Path {
  if (path.length - s >= length) return path.part(s, s + length);
  return runOn(path.part(s, path.length), path.tangentAt(path.length, 'before'), length);
}
