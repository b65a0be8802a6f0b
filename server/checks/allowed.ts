/** What the checks of allowances share: the edges of a seam or a finish with the pieces they belong to. */
import type { Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';

/** Widths nearer than this are one width, mm: rounding of units. */
export const SAME_WIDTH = 0.05;

const byBase = new WeakMap<readonly Piece[], ReadonlyMap<string, Piece>>();

/** Pieces by their name in the text; where the wearer's sides differ the right one speaks for both. */
export function piecesByBase({ pieces }: Pattern): ReadonlyMap<string, Piece> {
  const before = byBase.get(pieces);
  if (before !== undefined) return before;
  const found = new Map<string, Piece>();
  for (const piece of pieces) if (piece.side !== 'left') found.set(piece.base, piece);
  byBase.set(pieces, found);
  return found;
}

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
