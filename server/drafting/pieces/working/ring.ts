/** The outline of a piece being worked: its parts in a ring, cut and moved as paper is. */
import { apply, distance, Path, samePoint, type Affine, type Point } from '../../../geometry';
import type { Corner, Dart, Edge, EdgePart, Shaping, Smoothed, Trued } from '../../model';
import { carriedPartly, type Carried } from '../carried';
import { edgeOf } from '../outline';
import { shapingPartly } from '../shaped';

/** What a work step changes. */
export interface Worked extends Carried {
  readonly edges: readonly Edge[];
  readonly darts: readonly Dart[];
  readonly corners: readonly Corner[];
  readonly trued?: readonly Trued[];
  readonly smoothed?: readonly Smoothed[];
  readonly shaping?: Shaping;
}

/** One part of the ring, and the edge it belongs to. */
export interface Item extends EdgePart {
  readonly edge: number;
}

export const itemsOf = (edges: readonly Edge[]): Item[] =>
  edges.flatMap((edge, index) => edge.parts.map((part) => ({ ...part, edge: index })));

/** Edges made anew from their parts; parts without size go, neighbours that are both sewn become one. */
export function edgesOf(before: readonly Edge[], items: readonly Item[]): Edge[] {
  return before.map((edge, index) => {
    const parts: EdgePart[] = [];
    for (const item of items) {
      if (item.edge !== index || (item.dart === undefined && item.path.length < 1e-9)) continue;
      const last = parts[parts.length - 1];
      const { edge: _, ...part } = item;
      if (last !== undefined && isOneStretch(last, part))
        parts[parts.length - 1] = { ...last, path: last.path.joinedTo(part.path) };
      else parts.push(part);
    }
    return { ...edge, ...edgeOf(parts, edge.path.start) };
  });
}

const isOneStretch = (a: EdgePart, b: EdgePart): boolean =>
  a.dart === undefined && b.dart === undefined && a.gathered?.by === b.gathered?.by;

/** A place between two parts: the number of the part that follows. */
export type Joint = number;

/** Cuts the ring at a sewn distance along an edge; answers the ring and the joint there. */
export function cutAt(items: readonly Item[], edge: number, s: number): { items: Item[]; joint: Joint } {
  const found: Item[] = [];
  let [walked, joint] = [0, -1];
  items.forEach((item) => {
    if (item.edge !== edge || item.dart !== undefined || joint >= 0 || s > walked + item.path.length + 1e-9) {
      found.push(item);
      if (item.edge === edge && item.dart === undefined) walked += item.path.length;
      return;
    }
    const at = Math.max(0, s - walked);
    walked += item.path.length;
    const [before, after] = item.path.splitAt(at);
    if (at > 1e-9) found.push({ ...item, path: before });
    joint = found.length;
    if (item.path.length - at > 1e-9) found.push({ ...item, path: after });
  });
  return { items: found, joint: joint < 0 ? lastOf(found, edge) + 1 : joint };
}

const lastOf = (items: readonly Item[], edge: number): number => {
  let last = -1;
  items.forEach((item, i) => {
    if (item.edge === edge) last = i;
  });
  return last;
};

/** The parts from one joint forward to another, round the ring. */
export function stretchOf(items: readonly Item[], from: Joint, to: Joint): ReadonlySet<number> {
  const count = items.length;
  const found = new Set<number>();
  for (let i = from % count; i !== to % count || found.size === 0; i = (i + 1) % count) {
    found.add(i);
    if (found.size === count) break;
  }
  return found;
}

export const lengthOfStretch = (items: readonly Item[], stretch: ReadonlySet<number>): number =>
  [...stretch].reduce((sum, i) => sum + items[i]!.path.length, 0);

/**
 * Moves a stretch of the ring, with the darts and the named corners that lie on it, and what is drawn on that part.
 *
 * @param via where the cut bends between both ends of the stretch: the pivot of a dart
 */
export function moveStretch(
  worked: Worked,
  items: readonly Item[],
  stretch: ReadonlySet<number>,
  m: Affine,
  via: readonly Point[] = [],
  gone?: readonly Path[],
): { worked: Worked; items: Item[] } {
  const moved = items.map((item, i) => (stretch.has(i) ? { ...item, path: item.path.transformed(m) } : item));
  const onIt = new Set([...stretch].flatMap((i) => items[i]!.dart ?? []));
  const darts = worked.darts.map((dart) => (onIt.has(dart.name) ? movedDart(dart, m) : dart));
  const corners = worked.corners.map((corner) =>
    liesOn(items, stretch, corner.point) ? { ...corner, point: apply(m, corner.point) } : corner,
  );
  const paths = [...stretch].map((i) => items[i]!.path);
  const cut = Path.polyline([paths[paths.length - 1]!.end, ...via, paths[0]!.start]);
  const moving = { stretch: paths, cut, by: m, ...(gone !== undefined && { gone }) };
  const carried = carriedPartly(worked, moving);
  const shaping = worked.shaping && shapingPartly(worked.shaping, onIt, moving);
  const made = { ...worked, ...carried, darts, corners };
  return { worked: shaping === undefined ? made : { ...made, shaping }, items: moved };
}

/**
 * Whether a corner goes with a stretch: within one of its parts, where two runs of an edge meet, between two of them, or
 * where one begins behind the mouth of a dart.
 */
function liesOn(items: readonly Item[], stretch: ReadonlySet<number>, point: Point): boolean {
  return items.some((item, i) => {
    if (!samePoint(item.path.start, point, 1e-6)) return stretch.has(i) && liesWithin(item.path, point);
    const before = (i - 1 + items.length) % items.length;
    if (!stretch.has(i)) return stretch.has(before) && items[i]!.dart !== undefined;
    return stretch.has(before) || items[before]!.dart !== undefined;
  });
}

function liesWithin(path: Path, point: Point): boolean {
  const { s, distance: away } = path.locate(point);
  return away < 1e-6 && s > 1e-6 && s < path.length - 1e-6;
}

export const movedDart = (dart: Dart, m: Affine): Dart => ({
  ...dart,
  from: apply(m, dart.from),
  to: apply(m, dart.to),
  pivot: apply(m, dart.pivot),
  tip: apply(m, dart.tip),
});

/** Where a straight part must be put in: the ring gapes between the end of the part before a joint and the one after. */
export function bridge(items: readonly Item[], joint: Joint, edge: number, dart?: string): Item[] {
  const count = items.length;
  const before = items[(joint - 1 + count) % count]!.path.end;
  const after = items[joint % count]!.path.start;
  if (distance(before, after) < 1e-9) return [...items];
  const item: Item = { edge, path: Path.line(before, after), ...(dart !== undefined && { dart }) };
  return [...items.slice(0, joint), item, ...items.slice(joint)];
}
