/** Pieces that are sewn to copies of themselves until they close, as the gores of a skirt are: all of them go round. */
import type { Piece } from '../model';

/**
 * The piece, and how many of it go round. Its sides are the edges that are sewn to its own kind, and its fold; it closes
 * where they leave two openings or more. Where they leave one, as at the neck of a collar or the mouth of a bag, what is
 * cut more than once lies in layers.
 *
 * @param own edges that are sewn to the pair, or to other edges of the same piece
 */
export function withCopies(piece: Piece, own: ReadonlySet<string>): Piece {
  const layer = piece.cut?.layers[0];
  const copies = layer === undefined ? 1 : layer.as === 'pairs' ? layer.count / 2 : layer.count;
  if (copies < 2 || own.size === 0) return piece;
  const isSide = piece.edges.map(({ name }) => own.has(name) || name === piece.fold?.edge);
  const openings = isSide.filter((side, i) => !side && isSide[(i + isSide.length - 1) % isSide.length]);
  return openings.length < 2 ? piece : { ...piece, copies };
}
