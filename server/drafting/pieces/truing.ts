/**
 * Truing: an edge with darts is closed, drawn as one smooth curve and opened again, so that it runs on when the darts are
 * sewn. The rule is the language's own (reference, darts): through the ends and the middle of each part, the ends keeping
 * their headings; the leg ends move along the legs.
 */
import {
  apply,
  compose,
  distance,
  hobby,
  identity,
  inverse,
  lineIntersections,
  Path,
  rotation,
  subtract,
  translation,
  type Affine,
  type Point,
} from '../../geometry';
import type { Dart, Edge, EdgePart, Trued } from '../model';
import { edgeOf } from './outline';
import { withMouth } from './darts';

/** Below this bend, degrees, nothing moves: the needle smooths it. */
const SMOOTH_ENOUGH = 1;
/** Legs further apart than this, mm, are made equal even where nothing bends. */
const EQUAL_LEGS = 0.01;

const DEGREES = 180 / Math.PI;

export interface TruedEdge {
  readonly edge: Edge;
  readonly darts: readonly Dart[];
  readonly trued: Trued;
}

/** A part of the edge, and the movement that lays it where it is when the darts are closed. */
interface Closed {
  readonly part: EdgePart;
  readonly by: Affine;
}

/**
 * @param darts those of this edge, in the order of its parts; none of no width
 * @param always even where no join bends
 */
export function trueEdge(edge: Edge, darts: readonly Dart[], always = false): TruedEdge {
  const closed = close(edge, darts);
  const kinks = bends(closed);
  const trued = { edge: edge.name, kinks, moved: 0, sewnBefore: edge.sewn };
  const even = darts.every((dart) => dart.legsApart <= EQUAL_LEGS);
  if (!always && even && kinks.every((kink) => Math.abs(kink) < SMOOTH_ENOUGH)) return { edge, darts, trued };
  const curve = smooth(closed);
  if (curve === undefined) return { edge, darts, trued };
  return open(edge, darts, closed, curve, trued) ?? { edge, darts, trued };
}

/** Lays the parts end to end: each is swung about its dart's pivot until the legs lie on each other. */
export function close(edge: Edge, darts: readonly Dart[]): readonly Closed[] {
  const found: Closed[] = [];
  let by: Affine = identity;
  for (const part of edge.parts) {
    if (part.dart === undefined) {
      found.push({ part, by });
      continue;
    }
    const dart = darts.find(({ name }) => name === part.dart);
    // what a pleat takes is folded away: the parts beside it come together as they are
    const folded = translation(subtract(part.path.start, part.path.end));
    by = compose(dart === undefined ? folded : swing(dart), by);
  }
  return found;
}

/** Swings the leg `to` on to the leg `from`. */
export function swing({ pivot, from, to }: Dart, share = 1): Affine {
  const [a, b] = [subtract(from, pivot), subtract(to, pivot)];
  return rotation(pivot, share * Math.atan2(b.x * a.y - b.y * a.x, a.x * b.x + a.y * b.y));
}

/** How much an edge bends at each of these darts of it when they are closed, degrees; 0 is straight. */
export const bendsOf = ({ parts }: Edge, darts: readonly Dart[]): readonly number[] =>
  darts.map((dart) => {
    const index = parts.findIndex((part) => part.dart === dart.name);
    const [before, after] = [parts[index - 1]?.path, parts[index + 1]?.path.transformed(swing(dart))];
    return before === undefined || after === undefined ? 0 : bend(before, after);
  });

/** At each join of the parts. */
function bends(closed: readonly Closed[]): number[] {
  return closed.slice(1).map((next, i) => {
    const before = closed[i]!.part.path.transformed(closed[i]!.by);
    return bend(before, next.part.path.transformed(next.by));
  });
}

/** From the end of one path to the start of the next, degrees. */
function bend(before: Path, after: Path): number {
  const [a, b] = [before.tangentAt(before.length, 'before'), after.tangentAt(0)];
  return Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y) * DEGREES;
}

/** One curve through the ends and the middle of each part. */
function smooth(closed: readonly Closed[]): Path | undefined {
  const paths = closed.map(({ part, by }) => part.path.transformed(by));
  const [first, last] = [paths[0]!, paths[paths.length - 1]!];
  const segments = hobby([
    { point: first.start, leaving: first.tangentAt(0) },
    ...paths.map((path) => ({ point: path.pointAt(path.length / 2) })),
    { point: last.end, arriving: last.tangentAt(last.length, 'before') },
  ]);
  return segments.length === 0 ? undefined : Path.of(segments);
}

/** Cuts the curve where the closed legs meet it, and swings the parts open again. Undefined when a leg misses the curve. */
function open(
  edge: Edge,
  darts: readonly Dart[],
  closed: readonly Closed[],
  curve: Path,
  trued: Trued,
): TruedEdge | undefined {
  const cuts = darts.map((dart, i) => onLeg(dart, closed[i]!.by, curve));
  if (cuts.some((cut) => cut === undefined)) return undefined;
  const at = [0, ...(cuts as number[]), curve.length];
  const parts: EdgePart[] = [];
  const opened: Dart[] = [];
  let moved = 0;
  closed.forEach(({ by }, i) => {
    const back = inverse(by)!;
    const path = curve.part(at[i]!, at[i + 1]!).transformed(back);
    const dart = darts[i - 1];
    if (dart !== undefined) {
      const before = parts[parts.length - 1]!.path.end;
      moved = Math.max(moved, distance(before, dart.from), distance(path.start, dart.to));
      opened.push(withMouth(dart, before, path.start));
      parts.push({ path: Path.line(before, path.start), dart: dart.name });
    }
    parts.push({ path });
  });
  return { edge: { ...edge, ...edgeOf(parts, curve.start) }, darts: opened, trued: { ...trued, moved } };
}

/** Where a closed leg, as long as it needs to be, meets the curve: nearest to where the leg ended. */
function onLeg(dart: Dart, by: Affine, curve: Path): number | undefined {
  const [pivot, end]: [Point, Point] = [apply(by, dart.pivot), apply(by, dart.from)];
  const hits = lineIntersections(pivot, subtract(end, pivot), curve).filter(({ u }) => u > 0.2);
  hits.sort((p, q) => Math.abs(p.u - 1) - Math.abs(q.u - 1));
  return hits[0]?.s;
}
