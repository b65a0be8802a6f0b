/** A cut becomes a seam of itself: the edges that a division made are sewn together again. */
import type { Edge, Piece, Seam, SewnEdge } from '../model';
import { usualTolerance } from './seam';

interface Made {
  readonly piece: Piece;
  readonly edge: Edge;
}

/** Seams between the pieces that are cut and have an edge of one and the same division. */
export function cutSeams(pieces: readonly Piece[]): readonly Seam[] {
  const made = new Map<string, Made[]>();
  for (const piece of pieces) {
    if (piece.cut === undefined) continue;
    for (const edge of piece.edges) {
      if (edge.divided === undefined) continue;
      const key = `${edge.divided} ${piece.side ?? ''}`;
      made.set(key, [...(made.get(key) ?? []), { piece, edge }]);
    }
  }
  return [...made.values()].flatMap((both) => (both.length === 2 ? [kept(both[0]!, both[1]!)] : []));
}

/** The same object while both edges stay the same. */
const seams = new WeakMap<Edge, { readonly other: Edge; readonly seam: Seam }>();

function kept(one: Made, other: Made): Seam {
  const before = seams.get(one.edge);
  if (before?.other === other.edge) return before.seam;
  const seam = seamOf(one, other);
  seams.set(one.edge, { other: other.edge, seam });
  return seam;
}

function seamOf(one: Made, other: Made): Seam {
  const [left, right] = [sewn(one), sewn(other)];
  return {
    name: one.edge.name,
    source: one.edge.source,
    statement: one.piece.statement,
    left: [left],
    right: [right],
    itsPair: false,
    leftLength: left.length,
    rightLength: right.length,
    difference: right.length - left.length,
    tolerance: usualTolerance(Math.max(left.length, right.length)),
    toleranceStated: false,
    comparable: one.piece.unbuilt.length === 0 && other.piece.unbuilt.length === 0,
    ...(one.piece.side !== undefined && { side: one.piece.side }),
  };
}

function sewn({ piece, edge }: Made): SewnEdge {
  const { node } = piece.statement;
  const at = 'name' in node && node.name !== undefined ? node.name.at : node.at;
  return { piece: piece.base, edge: edge.name, source: edge.source, length: edge.sewn, at };
}
