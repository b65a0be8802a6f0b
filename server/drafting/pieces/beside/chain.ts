/** Edges that follow each other, their darts folded out, with the two edges that they end at. */
import { compose, distance, identity, inverse, type Affine, type Path } from '../../../geometry';
import type { Dart, Edge, Piece } from '../../model';
import { close, swing } from '../truing';
import { pulled } from './pulled';

/** An edge with its darts closed, as it lies then. */
export interface ClosedEdge {
  readonly edge: Edge;
  readonly path: Path;
}

export interface Chain {
  /** Arrives where the chain begins. */
  readonly before: Edge;
  readonly beforePath: Path;
  readonly edges: readonly ClosedEdge[];
  /** Leaves where the chain ends. */
  readonly after: Edge;
  readonly afterPath: Path;
}

/** @param run numbers of the edges, in order; the end that lies on a fold stays where it is, else the first */
export function closedChain(piece: Piece, run: readonly number[]): Chain {
  const { edges, darts, fold } = piece;
  const count = edges.length;
  const [before, after] = [edges[(run[0]! - 1 + count) % count]!, edges[(run[run.length - 1]! + 1) % count]!];
  let by: Affine = identity;
  const closed = run.map((i): ClosedEdge => {
    const { path, turn } = folded(edges[i]!, darts);
    const laid = { edge: edges[i]!, path: path.transformed(by) };
    by = compose(turn, by);
    return laid;
  });
  const arriving = folded(before, darts);
  const leaving = folded(after, darts).path.transformed(by);
  const back = inverse(by)!;
  const still = after.name === fold?.edge;
  const kept = (path: Path): Path => (still ? path.transformed(back) : path);
  return {
    ...{ before, after },
    beforePath: kept(arriving.path.transformed(inverse(arriving.turn)!)),
    edges: closed.map(({ edge, path }) => ({ edge, path: kept(path) })),
    afterPath: kept(leaving),
  };
}

/** An edge folded at its darts, its first part unmoved, and how what follows it comes to lie. */
function folded(edge: Edge, darts: readonly Dart[]): { readonly path: Path; readonly turn: Affine } {
  const paths = close(edge, darts).map(({ part, by }) => part.path.transformed(by));
  const path = paths.slice(1).reduce((whole, next) => {
    const meets = distance(whole.end, next.start) < 1e-9;
    return whole.joinedTo(meets ? next : pulled(next, 'start', whole.end));
  }, paths[0] ?? edge.path);
  const own = edge.parts.flatMap((part) => darts.find(({ name }) => name === part.dart) ?? []);
  return { path, turn: own.reduce((turn: Affine, dart) => compose(swing(dart), turn), identity) };
}
