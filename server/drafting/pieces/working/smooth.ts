/** Rounds a corner of the outline off, and trues an edge that has been worked. */
import { hobby, Path, type Point } from '../../../geometry';
import type { Edge } from '../../model';
import { edgeOf } from '../outline';
import { trueEdge } from '../truing';
import type { Worked } from './ring';

/** `smooth P by 1.5cm each side`: the bend at P, inside an edge, becomes one curve that begins and ends so far from it. */
export function smoothAt(worked: Worked, point: Point, by: number): { worked: Worked; done: boolean } {
  let done = false;
  const edges = worked.edges.map((edge): Edge => {
    if (done) return edge;
    const index = edge.parts.findIndex(
      ({ dart, path }) => dart === undefined && path.locate(point).distance < 0.05,
    );
    const part = edge.parts[index];
    if (part === undefined) return edge;
    const { s } = part.path.locate(point);
    const [from, to] = [s - by, s + by];
    if (from < 0 || to > part.path.length) return edge;
    done = true;
    const path = rounded(part.path, from, to);
    const parts = edge.parts.map((one, i) => (i === index ? { path } : one));
    return { ...edge, ...edgeOf(parts, edge.path.start) };
  });
  return { worked: { ...worked, edges }, done };
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

/** `true EDGE`: closed at its darts and drawn as one curve; between its corners, where a work step left bends. */
export function trued(worked: Worked, index: number): Worked {
  const edge = worked.edges[index];
  if (edge === undefined) return worked;
  const own = edge.parts.flatMap(({ dart }) => worked.darts.filter(({ name }) => name === dart));
  if (own.length > 0) {
    const result = trueEdge(edge, own, true);
    const darts = worked.darts.map((dart) => result.darts.find(({ name }) => name === dart.name) ?? dart);
    return { ...worked, darts, edges: worked.edges.map((one, i) => (i === index ? result.edge : one)) };
  }
  const { path } = edge;
  const curve = hobby([
    { point: path.start, leaving: path.tangentAt(0) },
    ...[0.25, 0.5, 0.75].map((share) => ({ point: path.pointAt(share * path.length) })),
    { point: path.end, arriving: path.tangentAt(path.length, 'before') },
  ]);
  if (curve.length === 0) return worked;
  const made = { ...edge, ...edgeOf([{ path: Path.of(curve) }], path.start) };
  return { ...worked, edges: worked.edges.map((one, i) => (i === index ? made : one)) };
}
