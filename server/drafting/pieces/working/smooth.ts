/** Rounds a corner of the outline off, and trues an edge that has been worked. */
import { say } from '../../../../grammar/say';
import type { Expr } from '../../../../grammar/syntax';
import { cross, hobby, orientation, Path, type Point } from '../../../geometry';
import type { Edge } from '../../model';
import { report, type Reader } from '../../values/reader';
import { edgeOf } from '../outline';
import { trueEdge, type TruedEdge } from '../truing';
import type { Worked } from './ring';

/** What became of a corner: where it lies, how far the curve passes from it, and whether the piece grew there. */
export interface Rounding {
  readonly worked: Worked;
  readonly edge: string;
  readonly moved: number;
  readonly added: boolean;
}

/**
 * `smooth P by 1.5cm each side`: the bend at P, inside an edge, becomes one curve that begins and ends so far from it;
 * undefined where the edge has not so much on either side.
 */
export function smoothAt(worked: Worked, point: Point, by: number): Rounding | undefined {
  for (const edge of worked.edges) {
    const index = edge.parts.findIndex(
      ({ dart, path }) => dart === undefined && path.locate(point).distance < 0.05,
    );
    const part = edge.parts[index];
    if (part === undefined) continue;
    const { s } = part.path.locate(point);
    const [from, to] = [s - by, s + by];
    if (from < 0 || to > part.path.length) continue;
    const path = rounded(part.path, from, to);
    const parts = edge.parts.map((one, i) => (i === index ? { ...one, path } : one));
    const made = { ...edge, ...edgeOf(parts, edge.path.start) };
    const turn = cross(part.path.tangentAt(s, 'before'), part.path.tangentAt(s, 'after'));
    return {
      worked: { ...worked, edges: worked.edges.map((one) => (one === edge ? made : one)) },
      edge: edge.name,
      moved: path.locate(point).distance,
      added: turn * orientation(worked.edges.map((one) => one.path)) < 0,
    };
  }
  return undefined;
}

function rounded(path: Path, from: number, to: number): Path {
  const curve = hobby([
    { point: path.pointAt(from), leaving: path.tangentAt(from, 'before') },
    { point: path.pointAt(to), arriving: path.tangentAt(to, 'after') },
  ]);
  const kept = [path.part(0, from), Path.of(curve), path.part(to, path.length)].filter(
    ({ length }) => length > 1e-9,
  );
  return kept.reduce((a, b) => a.joinedTo(b));
}

/**
 * `true EDGE`: closed at its darts and drawn as one curve; without darts between its corners, where a work step left bends.
 *
 * @param expr the edge as it is written, for a finding
 */
export function trued(reader: Reader, worked: Worked, index: number, expr: Expr): Worked | undefined {
  const edge = worked.edges[index]!;
  const own = edge.parts.flatMap(({ dart }) => worked.darts.filter(({ name }) => name === dart));
  const folded = edge.parts.some(({ dart }) => dart !== undefined && own.every(({ name }) => name !== dart));
  if (folded || edge.parts.some((part) => part.gathered !== undefined)) {
    return report(
      reader,
      'out-of-place',
      expr.at,
      say`${edge.name} is pleated or gathered by now, and can't be drawn as one curve: true it before.`,
    );
  }
  const result = own.length > 0 ? trueEdge(edge, own, true) : drawnAsOne(edge);
  const darts = worked.darts.map((dart) => result.darts.find(({ name }) => name === dart.name) ?? dart);
  const before = worked.trued ?? [];
  return {
    ...worked,
    darts,
    edges: worked.edges.map((one, i) => (i === index ? result.edge : one)),
    trued: [...before.filter((one) => one.edge !== edge.name), result.trued],
  };
}

/** One curve through three places of an edge without darts. */
function drawnAsOne(edge: Edge): TruedEdge {
  const { path } = edge;
  const curve = hobby([
    { point: path.start, leaving: path.tangentAt(0) },
    ...[0.25, 0.5, 0.75].map((share) => ({ point: path.pointAt(share * path.length) })),
    { point: path.end, arriving: path.tangentAt(path.length, 'before') },
  ]);
  const trued = { edge: edge.name, kinks: [], moved: 0, sewnBefore: edge.sewn };
  if (curve.length === 0) return { edge, darts: [], trued };
  const made = Path.of(curve);
  const moved = Math.max(0, ...path.polyline(0.1).map((p) => made.locate(p).distance));
  return {
    edge: { ...edge, ...edgeOf([{ path: made }], path.start) },
    darts: [],
    trued: { ...trued, moved },
  };
}
