/** One of the two parts that a cut leaves of a piece: its stretch of the outline, closed by the cut. */
import { samePoint, type Path, type Point } from '../../../geometry';
import type { Edge, Piece, RunningAllowance } from '../../model';
import { everyEdge } from '../../shapes/parts';
import { carriedWithin } from '../carried';
import { areaLeft } from '../holes';
import { edgeOf } from '../outline';
import { shapingWithin } from '../shaped';
import { edgesOf, type Item } from './ring';

/** Points nearer than this are one, mm. */
const ONE_POINT = 0.05;

/** An edge whose ends both stay while its middle is cut away comes in two: the second has this after its name. */
export const FURTHER = '-further';

/**
 * @param own the part's stretch of the outline, in order
 * @param cut from the end of that stretch back to its start
 * @param name of the edge along the cut
 */
export function partOf(piece: Piece, own: readonly Item[], cut: Path, name: string, source: string): Piece {
  const edges = stretches(own).flatMap((items) => edgeWithin(piece, items));
  const seam: Edge = {
    name,
    source: `${source}/${name}`,
    statement: piece.statement,
    ...{ fromName: cornerAt(piece, cut.start), toName: cornerAt(piece, cut.end) },
    divided: source,
    ...edgeOf([{ path: cut }], cut.start),
  };
  const whole = [...apart(edges), seam];
  const left = new Set(own.flatMap((item) => item.dart ?? []));
  const outline = whole.map(({ path }) => path);
  const carried = carriedWithin(piece, outline, cut);
  const names = new Set(everyEdge({ edges: whole, holes: carried.holes }).map((edge) => edge.name));
  const { fold, shaping, ...rest } = piece;
  return {
    ...rest,
    ...(shaping && { shaping: shapingWithin(shaping, left, names, outline, cut) }),
    ...(fold !== undefined && names.has(fold.edge) && { fold }),
    edges: whole,
    darts: piece.darts.filter((dart) => left.has(dart.name)),
    area: areaLeft(whole, carried.holes),
    allowances: allowancesOf(piece, whole, name),
    running: whole.flatMap((edge) => runningWithin(piece, edge)),
    ...carried,
    corners: piece.corners.filter(({ point }) =>
      whole.some(({ path }) => path.locate(point).distance < ONE_POINT),
    ),
  };
}

/** Items of one edge that follow each other; an edge of which the middle is gone gives two. */
function stretches(own: readonly Item[]): readonly (readonly Item[])[] {
  const found: Item[][] = [];
  for (const item of own) {
    const last = found[found.length - 1];
    if (last !== undefined && last[0]!.edge === item.edge) last.push(item);
    else found.push([item]);
  }
  return found;
}

/** What is left of an edge; its ends keep their names where they are still its ends. */
function edgeWithin(piece: Piece, items: readonly Item[]): readonly Edge[] {
  const before = piece.edges[items[0]!.edge]!;
  const edge = edgesOf(piece.edges, items)[items[0]!.edge]!;
  if (edge.parts.length === 0) return [];
  const { start, end } = edge.path;
  return [
    {
      ...edge,
      fromName: samePoint(start, before.path.start, ONE_POINT) ? edge.fromName : '',
      toName: samePoint(end, before.path.end, ONE_POINT) ? edge.toName : '',
    },
  ];
}

function apart(edges: readonly Edge[]): readonly Edge[] {
  return edges.map((edge, i) =>
    edges.slice(0, i).some(({ name }) => name === edge.name)
      ? { ...edge, name: `${edge.name}${FURTHER}` }
      : edge,
  );
}

const nameBefore = (piece: Piece, { name }: Edge): string =>
  name.endsWith(FURTHER) && !piece.edges.some((edge) => edge.name === name)
    ? name.slice(0, -FURTHER.length)
    : name;

const cornerAt = ({ corners }: Piece, point: Point): string =>
  corners.find((corner) => samePoint(corner.point, point, ONE_POINT))?.name ?? '';

/** Both edges of a cut are allowed alike: what most edges of the piece are. */
function allowancesOf(piece: Piece, edges: readonly Edge[], cut: string): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  if (piece.allowances.size === 0) return found;
  for (const hole of piece.holes)
    for (const { name } of hole.edges) keep(found, name, piece.allowances.get(name));
  for (const edge of edges) keep(found, edge.name, piece.allowances.get(nameBefore(piece, edge)));
  return found.set(cut, commonAllowance(piece));
}

function keep(found: Map<string, number>, name: string, width: number | undefined): void {
  if (width !== undefined) found.set(name, width);
}

function commonAllowance({ allowances, fold }: Piece): number {
  const counts = new Map<number, number>();
  for (const [edge, width] of allowances)
    if (edge !== fold?.edge) counts.set(width, (counts.get(width) ?? 0) + 1);
  return [...counts].reduce((best, one) => (one[1] > best[1] ? one : best), [0, 0])[0];
}

/** What of a running allowance lies on what is left of its edge, counted anew from its start. */
function runningWithin(piece: Piece, edge: Edge): readonly RunningAllowance[] {
  const name = nameBefore(piece, edge);
  const before = piece.edges.find((one) => one.name === name);
  if (before === undefined) return [];
  const [first, last] = [before.path.locate(edge.path.start).s, before.path.locate(edge.path.end).s];
  return piece.running.flatMap((run): RunningAllowance[] => {
    const [from, to] = [Math.max(run.from, first), Math.min(run.to, last)];
    if (run.edge !== name || to - from < ONE_POINT) return [];
    const share = (run.widthTo - run.widthFrom) / (run.to - run.from);
    const width = (s: number): number => run.widthFrom + share * (s - run.from);
    const widths = { widthFrom: width(from), widthTo: width(to) };
    return [{ ...run, edge: edge.name, from: from - first, to: to - first, ...widths }];
  });
}
