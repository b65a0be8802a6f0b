/** What the checks of allowances share: the edges of a seam or a finish with the pieces they belong to. */
import type { Finish, Piece, Seam, SewnEdge } from '../drafting/model';

/** Widths nearer than this are one width, mm: rounding of units. */
export const SAME_WIDTH = 0.05;

/** Only of what is cut, and drawn whole, anything is said. */
export const isJudged = (piece: Piece | undefined): piece is Piece =>
  piece !== undefined && piece.cut !== undefined && piece.unbuilt.length === 0 && piece.gaps.length === 0;

/** The edge of a piece, the allowance of which is the same all along and not a finish's. */
export function evenWidth(piece: Piece, edge: string, finishes: readonly Finish[]): number | undefined {
  if (piece.running.some((one) => one.edge === edge) || piece.fold?.edge === edge) return undefined;
  if (finishes.some(({ edges }) => edges.some((one) => isOf(one, piece, edge)))) return undefined;
  return piece.allowances.get(edge);
}

export const isOf = (sewn: SewnEdge, piece: Piece, edge: string): boolean =>
  sewn.piece === piece.base && sewn.edge === edge;

/** Every edge that a seam takes. */
export const edgesOf = ({ left, right }: Seam): readonly SewnEdge[] => [...left, ...right];

/** Names of the edges of a piece that seams take. */
export function sewnEdges({ base }: Piece, seams: readonly Seam[]): ReadonlySet<string> {
  const names = new Set<string>();
  for (const seam of seams) for (const { piece, edge } of edgesOf(seam)) if (piece === base) names.add(edge);
  return names;
}
