/** Puts pleats into an edge: spread in, so that the piece grows, or taken out of the width that was drawn. */
import { say } from '../../../../grammar/say';
import type { PleatsNode, Statement } from '../../../../grammar/syntax';
import { add, distance, dot, lineIntersections, Path, scale, subtract, type Point } from '../../../geometry';
import type { Edge, Pleat, Pleats } from '../../model';
import { edgeShape } from '../../shapes/parts';
import { printLength } from '../../values/quantity';
import { report } from '../../values/reader';
import { readPleats, type Take } from '../pleats';
import { centreOf, edgeNamed, type Bench } from './bench';
import { cutAt, edgesOf, itemsOf, type Worked } from './ring';
import { spread, type OnEdge } from './slash';

/** A take and the name of the part of the edge that it becomes. */
interface NamedTake extends Take {
  readonly part: string;
}

export function pleated(
  bench: Bench,
  worked: Worked,
  statement: Statement,
  node: PleatsNode,
): { readonly worked: Worked; readonly pleats: Pleats } | undefined {
  const named = edgeNamed(bench, worked, node.on);
  const read = named && readPleats(bench.reader, node, named);
  if (named === undefined || read === undefined) return undefined;
  const takes = read.takes.map((take, i): NamedTake => ({ ...take, part: `${node.name.text} ${i + 1}` }));
  if (!fit(bench, node, named.edge, takes)) return undefined;
  const down = downOf(bench, named.edge);
  const made = node.added
    ? spreadIn(bench, worked, node, named.index, takes, down)
    : takenOut(bench, worked, node, named.index, takes);
  if (made === undefined) return undefined;
  const lines = linesOf(made, named.index, takes, down, node.added ? Infinity : read.stitched);
  return {
    worked: made,
    pleats: {
      name: node.name.text,
      source: `${bench.source}/${node.name.text}`,
      statement,
      form: node.form,
      edge: named.edge.name,
      taking: read.taking,
      places: read.places,
      pleats: lines,
      added: node.added,
      stitched: read.stitched,
    },
  };
}

/** An edge of which pleats leave less than this, mm, is gone. */
const LEAST = 1;

/** Every pleat lies on the edge. */
function fit({ reader }: Bench, node: PleatsNode, edge: Edge, takes: readonly NamedTake[]): boolean {
  const shape = edgeShape(edge);
  if (shape.kind === 'point') return false;
  const { length } = shape.path;
  const whole = takes.reduce((sum, { width }) => sum + width, 0);
  const sewn = node.added ? length : length - whole;
  if (sewn >= LEAST && takes.every(({ at }) => at >= -1e-6 && at <= sewn + 1e-6)) return true;
  const what =
    sewn < LEAST
      ? say`take ${printLength(whole, reader.unit)} in all, but ${edge.name} has ${printLength(length, reader.unit)}`
      : say`don't all lie on ${edge.name}, which is ${printLength(sewn, reader.unit)} long when they are folded`;
  report(
    reader,
    'pleats-off-edge',
    node.name.at,
    say`The pleats of ${node.name.text} ${what}. Move them, take less each, or say added.`,
  );
  return false;
}

/** Into the piece from an edge: along the grain where that leads in, else square to the edge's chord. */
function downOf({ grain, reader }: Bench, { path }: Edge): Point {
  const inward = reader.inward ?? 1;
  const chord = subtract(path.end, path.start);
  const size = Math.hypot(chord.x, chord.y);
  const square = size > 0 ? { x: (-chord.y / size) * inward, y: (chord.x / size) * inward } : { x: 0, y: 1 };
  if (grain === undefined) return square;
  const along = dot(grain, square);
  return Math.abs(along) < LEADS_IN ? square : scale(grain, Math.sign(along));
}

/** Cosine of 60°: a grain line that lies flatter to the edge than this does not lead into the piece. */
const LEADS_IN = 0.5;

/** Cut from each place straight to the opposite edge and moved apart by what the pleat takes. */
function spreadIn(
  bench: Bench,
  worked: Worked,
  node: PleatsNode,
  index: number,
  takes: readonly NamedTake[],
  down: Point,
): Worked | undefined {
  let made = worked;
  for (const take of [...takes].reverse()) {
    const shape = edgeShape(made.edges[index]!);
    if (shape.kind === 'point') return undefined;
    const point = shape.path.pointAt(take.at);
    const foot = footOf(made, point, down);
    if (foot === undefined) {
      return report(
        bench.reader,
        'never-meet',
        node.on.at,
        say`Straight down from a pleat of ${node.name.text} there is no other edge to cut the piece open to.`,
      );
    }
    const top: OnEdge = { edge: index, s: take.at, point };
    made = spread(made, top, foot, take.width, centreOf(bench, made), bench.reader.inward ?? 1, take.part);
  }
  return made;
}

/** The first edge that a line from a point into the piece comes to. */
function footOf(worked: Worked, from: Point, down: Point): OnEdge | undefined {
  let best: (OnEdge & { readonly u: number }) | undefined;
  worked.edges.forEach((edge, index) => {
    const shape = edgeShape(edge);
    if (shape.kind === 'point') return;
    for (const { s, u, point } of lineIntersections(from, down, shape.path)) {
      if (u > NEAREST && (best === undefined || u < best.u)) best = { edge: index, s, point, u };
    }
  });
  return best;
}

/** Nearer than this, mm, a line that leaves an edge has not left it yet. */
const NEAREST = 1;

/** Marked on the edge as it is drawn; each lies beyond those before it by what they take. */
function takenOut(
  { reader }: Bench,
  worked: Worked,
  node: PleatsNode,
  index: number,
  takes: readonly NamedTake[],
): Worked | undefined {
  let items = itemsOf(worked.edges);
  let before = takes.reduce((sum, { width }) => sum + width, 0);
  for (const take of [...takes].reverse()) {
    before -= take.width;
    const from = Math.max(0, take.at + before);
    const end = cutAt(items, index, from + take.width);
    const cut = cutAt(end.items, index, from);
    const last = end.joint + cut.items.length - end.items.length;
    const inside = cut.items.slice(cut.joint, last);
    if (inside.length !== 1 || inside[0]!.dart !== undefined || inside[0]!.gathered) {
      return report(
        reader,
        'pleats-off-edge',
        node.name.at,
        say`A pleat of ${node.name.text} runs into a dart, another pleat or gathers. Move it, or take less each.`,
      );
    }
    items = cut.items.map((item, i) => (i === cut.joint ? { ...item, dart: take.part } : item));
  }
  return { ...worked, edges: edgesOf(worked.edges, items) };
}

/** How far pleats that are not stitched are drawn into the piece, mm, where no cut leads through it. */
const SHOWN = 60;

/** Lines of every pleat from the edge into the piece. */
function linesOf(
  worked: Worked,
  index: number,
  takes: readonly NamedTake[],
  down: Point,
  reach: number,
): readonly Pleat[] {
  const { parts } = worked.edges[index]!;
  const line = (from: Point): Path => {
    const foot = footOf(worked, from, down);
    const deepest = foot === undefined ? SHOWN : distance(from, foot.point);
    return Path.line(from, add(from, scale(down, Math.min(deepest, reach > 0 ? reach : SHOWN))));
  };
  return takes.flatMap(({ part, folds, width }) => {
    const found = parts.find(({ dart }) => dart === part);
    if (found === undefined) return [];
    const [start, end] = [line(found.path.start), line(found.path.end)];
    return [{ part, folds, width, start, end }];
  });
}
