/** Lengthens a piece at a line across it, or takes a strip out of it there. */
import { say } from '../../../../grammar/say';
import {
  add,
  distance,
  lineIntersections,
  Path,
  scale,
  subtract,
  translation,
  type Point,
  type Segment,
} from '../../../geometry';
import { edgeShape } from '../../shapes/parts';
import { pathOf } from '../../shapes/phrase';
import { lengthOf } from '../../values/arithmetic';
import { printLength } from '../../values/quantity';
import { report, wordsOf } from '../../values/reader';
import type { Bench, Step } from './bench';
import { cutAt, edgesOf, itemsOf, moveStretch, stretchOf, type Item, type Joint, type Worked } from './ring';
import { spread, type OnEdge } from './slash';

/** Across the piece along a line, drawn out to the outline on both sides; the part below the line moves. */
export const lengthenStep: Step = (bench, worked, { node }) => {
  if (node.kind !== 'lengthen' && node.kind !== 'shorten') return undefined;
  const { reader } = bench;
  const by = lengthOf(reader, node.by, node.kind);
  const line = pathOf(reader, node.line, 'at');
  if (by === undefined || line === undefined) return undefined;
  const hits = crossings(worked, line.path.start, subtract(line.path.end, line.path.start));
  const [one, other] = hits;
  if (one === undefined || other === undefined || hits.length !== 2) {
    return report(
      reader,
      'never-meet',
      node.line.at,
      say`${wordsOf(reader, node.line)} must cross the outline twice to ${node.kind} the piece there; it crosses it ${hits.length} times.`,
    );
  }
  const longer = node.kind === 'lengthen' ? by : -by;
  if (longer >= 0) return spread(worked, one, other, longer, upperEdge(worked), reader.inward ?? 1);
  const made = withoutStrip(bench, worked, one, other, -longer);
  if ('worked' in made) return made.worked;
  return report(
    reader,
    'out-of-reach',
    node.by.at,
    say`${printLength(-longer, reader.unit)} can't be taken out below ${wordsOf(reader, node.line)}: ${made.why}.`,
  );
};

function crossings(worked: Worked, origin: Point, direction: Point): OnEdge[] {
  const found = worked.edges.flatMap((edge, index): OnEdge[] => {
    const shape = edgeShape(edge);
    if (shape.kind === 'point') return [];
    return lineIntersections(origin, direction, shape.path).map(({ s, point }) => ({
      edge: index,
      s,
      point,
    }));
  });
  // a line through a corner meets both its edges there
  return found.filter((a, i) => !found.slice(0, i).some((b) => distance(a.point, b.point) < 1e-6));
}

/** The edge that lies highest stays where it is. */
function upperEdge(worked: Worked): number {
  const tops = worked.edges.map(({ path }) => (path.box.minY + path.box.maxY) / 2);
  return tops.indexOf(Math.min(...tops));
}

type Strip = { readonly worked: Worked } | { readonly why: string };

/** The strip beside a line is taken out, on the side that does not hold the upper edge, and that side moved up to the line. */
function withoutStrip(bench: Bench, worked: Worked, one: OnEdge, other: OnEdge, by: number): Strip {
  const inward = bench.reader.inward ?? 1;
  const early = comesBefore(one, other);
  const [first, second] = early ? [one, other] : [other, one];
  const reach = distance(first.point, second.point);
  const along = {
    x: (second.point.x - first.point.x) / reach,
    y: (second.point.y - first.point.y) / reach,
  };
  // between the crossings the outline lies, as it is walked, on this side of the way from the first to the second
  const between = { x: along.y * inward, y: -along.x * inward };
  const inner = !holdsBetween(first, second, upperEdge(worked));
  const away = inner ? between : { x: -between.x, y: -between.y };
  const shifted = { x: first.point.x + away.x * by, y: first.point.y + away.y * by };
  const hits = crossings(worked, shifted, along).filter(
    (hit) => inner === (comesBefore(first, hit) && comesBefore(hit, second)),
  );
  if (hits.length !== 2) return { why: say`the piece ends before that, or turns` };
  const [near, far] = inOrder(hits, inner ? first : second);
  const places = inner ? [first, near, far, second] : [second, near, far, first];
  return closedUp(worked, places, { x: -away.x * by, y: -away.y * by });
}

const comesBefore = (a: OnEdge, b: OnEdge): boolean => a.edge < b.edge || (a.edge === b.edge && a.s < b.s);

/** Both hits as the outline is walked on from a place. */
function inOrder(hits: readonly OnEdge[], from: OnEdge): readonly [OnEdge, OnEdge] {
  const [a, b] = hits as [OnEdge, OnEdge];
  const ahead = (one: OnEdge): boolean => comesBefore(from, one);
  if (ahead(a) !== ahead(b)) return ahead(a) ? [a, b] : [b, a];
  return comesBefore(a, b) ? [a, b] : [b, a];
}

const holdsBetween = (first: OnEdge, second: OnEdge, edge: number): boolean =>
  edge > first.edge && edge < second.edge;

/**
 * @param places where the outline is cut, as it is walked: the strip's first side from the line to its other end, what
 * moves, and the strip's second side back to the line
 */
function closedUp(worked: Worked, places: readonly OnEdge[], by: Point): Strip {
  const { items, joints } = cutAll(itemsOf(worked.edges), places);
  const [a, near, far, b] = joints as [Joint, Joint, Joint, Joint];
  const [gone, goneToo] = [stretchOf(items, a, near), stretchOf(items, far, b)];
  const dropped = [...gone, ...goneToo];
  const held = dropped.flatMap((i) => items[i]!.dart ?? [])[0];
  if (held !== undefined) return { why: say`${held} lies there` };
  const between = stretchOf(items, near, far);
  const strip = [
    ...[...gone].map((i) => items[i]!.path),
    Path.line(places[1]!.point, places[2]!.point),
    ...[...goneToo].map((i) => items[i]!.path),
    Path.line(places[3]!.point, places[0]!.point),
  ];
  const moved = moveStretch(worked, items, between, translation(by), [], strip);
  const out = new Set(dropped);
  const left = moved.items.filter((_, i) => !out.has(i));
  const onMove = new Set([...between].map((i) => moved.items[i]!));
  const lost = worked.edges.find((_, i) => !left.some((item) => item.edge === i));
  if (lost !== undefined) return { why: say`nothing of ${lost.name} would be left` };
  const corners = moved.worked.corners.map((corner) => {
    const within = dropped.find((i) => items[i]!.path.locate(corner.point).distance < 1e-6);
    const on = left.some((item) => item.path.locate(corner.point).distance < 1e-6);
    if (within === undefined || on) return corner;
    return { ...corner, point: gone.has(within) ? places[0]!.point : places[3]!.point };
  });
  return { worked: joinedUp({ ...moved.worked, corners }, left, onMove) };
}

/** The ring cut at several places, and the joint at each of them. */
function cutAll(
  items: readonly Item[],
  places: readonly OnEdge[],
): { readonly items: readonly Item[]; readonly joints: readonly Joint[] } {
  const order = places.map((_, i) => i).sort((i, j) => (comesBefore(places[i]!, places[j]!) ? 1 : -1));
  let ring = [...items];
  const joints: Joint[] = [];
  const done: number[] = [];
  for (const i of order) {
    const cut = cutAt(ring, places[i]!.edge, places[i]!.s);
    const more = cut.items.length - ring.length;
    for (const j of done) joints[j]! += more;
    joints[i] = cut.joint;
    done.push(i);
    ring = cut.items;
  }
  return { items: ring, joints };
}

/**
 * Edges that were not parallel do not go on where they ended: the part that moved is drawn on to meet the other, by less
 * and less toward its far end, as a cutter redraws a side from the fold down.
 */
function joinedUp(worked: Worked, items: readonly Item[], moved: ReadonlySet<Item>): Worked {
  const ring = [...items];
  let { corners } = worked;
  items.forEach((item, i) => {
    const last = (i - 1 + items.length) % items.length;
    const [end, start] = [items[last]!.path.end, item.path.start];
    if (distance(end, start) < 1e-9) return;
    const ahead = moved.has(item);
    const at = ahead ? i : last;
    const { path } = ring[at]!;
    const by = ahead ? subtract(end, start) : subtract(start, end);
    ring[at] = { ...ring[at]!, path: faded(path, by, ahead) };
    corners = corners.map((corner) => {
      const { s, distance: away } = path.locate(corner.point);
      return away > 1e-6 ? corner : { ...corner, point: add(corner.point, fading(path, by, ahead, s)) };
    });
  });
  return { ...worked, corners, edges: edgesOf(worked.edges, ring) };
}

/** All of a movement at one end of a path, nothing of it at the other. */
function fading({ length }: Path, by: Point, fromStart: boolean, s: number): Point {
  const share = length > 0 ? s / length : 0;
  return scale(by, fromStart ? 1 - share : share);
}

function faded(path: Path, by: Point, fromStart: boolean): Path {
  let s = 0;
  return Path.of(
    path.segments.map((segment): Segment => {
      const long = Path.of([segment]).length;
      const moved = (p: Point, share: number): Point => add(p, fading(path, by, fromStart, s + share * long));
      const [p0, p3] = [moved(segment.p0, 0), moved(segment.p3, 1)];
      const made: Segment =
        segment.kind === 'line'
          ? { ...segment, p0, p3 }
          : { ...segment, p0, p1: moved(segment.p1, 1 / 3), p2: moved(segment.p2, 2 / 3), p3 };
      s += long;
      return made;
    }),
  );
}
