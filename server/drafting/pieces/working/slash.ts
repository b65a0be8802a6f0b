/** Cuts a piece across and opens, spreads, lengthens or shortens it there. */
import { distance, rotation, scale, translation, type Affine, type Point } from '../../../geometry';
import { bridge, cutAt, edgesOf, itemsOf, moveStretch, stretchOf, type Item, type Worked } from './ring';

/** A place on the outline: the edge by number, and the sewn distance along it. */
export interface OnEdge {
  readonly edge: number;
  readonly s: number;
  readonly point: Point;
}

/** The ring cut at two places, the earlier first. */
function cutTwice(
  worked: Worked,
  one: OnEdge,
  other: OnEdge,
): { items: Item[]; a: number; b: number; swapped: boolean } {
  const swapped = other.edge < one.edge || (other.edge === one.edge && other.s < one.s);
  const [first, second] = swapped ? [other, one] : [one, other];
  const late = cutAt(itemsOf(worked.edges), second.edge, second.s);
  const early = cutAt(late.items, first.edge, first.s);
  const added = early.items.length - late.items.length;
  return { items: early.items, a: early.joint, b: late.joint + added, swapped };
}

/** Moves one side of the cut and bridges both gaps straight, each as part of the edge it lies on. */
function movedApart(
  worked: Worked,
  one: OnEdge,
  other: OnEdge,
  keepHolding: number | undefined,
  movement: (forward: boolean) => Affine,
  part?: string,
): Worked {
  const { items, a, b, swapped } = cutTwice(worked, one, other);
  const inner = stretchOf(items, a, b);
  const outer = stretchOf(items, b, a);
  const holds = (stretch: ReadonlySet<number>): boolean =>
    [...stretch].some((i) => items[i]!.edge === keepHolding);
  const moveInner = keepHolding === undefined || !holds(inner) || holds(outer);
  const moved = moveStretch(worked, items, moveInner ? inner : outer, movement(moveInner));
  const [edgeA, edgeB] = [items[a % items.length]!.edge, items[(b - 1 + items.length) % items.length]!.edge];
  const later = bridge(moved.items, b, edgeB, swapped ? part : undefined);
  const ring = bridge(later, a, edgeA, swapped ? undefined : part);
  return { ...moved.worked, edges: edgesOf(worked.edges, ring) };
}

/** `slash from P to Q, hinge at Q, open 4cm`: turned about the hinge until P's two sides stand apart. */
export function slash(
  worked: Worked,
  open: OnEdge,
  hinge: OnEdge,
  width: number,
  centre: number | undefined,
  inward: 1 | -1,
): Worked {
  const reach = distance(open.point, hinge.point);
  if (reach < 1e-6 || Math.abs(width) > 2 * reach) return worked;
  const angle = 2 * Math.asin(width / (2 * reach));
  const early = open.edge < hinge.edge || (open.edge === hinge.edge && open.s < hinge.s);
  // the stretch that follows the opening turns away from it: the way it turns follows the walk of the outline
  const sense = (early ? 1 : -1) * inward;
  return movedApart(worked, open, hinge, centre, (inner) =>
    rotation(hinge.point, sense * (inner ? angle : -angle)),
  );
}

/**
 * `spread 6cm along P to Q`: both sides apart by the same width, square to the cut.
 *
 * @param part the name of a pleat that takes what opens at `one`
 */
export function spread(
  worked: Worked,
  one: OnEdge,
  other: OnEdge,
  width: number,
  centre: number | undefined,
  inward: 1 | -1,
  part?: string,
): Worked {
  const reach = distance(one.point, other.point);
  if (reach < 1e-6) return worked;
  const early = one.edge < other.edge || (one.edge === other.edge && one.s < other.s);
  const [from, to] = early ? [one.point, other.point] : [other.point, one.point];
  const along = { x: (to.x - from.x) / reach, y: (to.y - from.y) / reach };
  // the stretch between the cuts lies, as the outline is walked, on this side of the way from one to the other
  const away = { x: along.y * inward, y: -along.x * inward };
  const movement = (inner: boolean): Affine => translation(scale(away, inner ? width : -width));
  return movedApart(worked, one, other, centre, movement, part);
}
