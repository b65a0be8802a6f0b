/** The last step of making a piece: allowances that finishes take, notches, and the cutting line. */
import { cuttingLine } from '../../geometry';
import type { Finish, Notch, Piece } from '../model';
import { cutPath } from '../pieces/roof';
import { finishAllowance } from './finish';
import type { PlacedNotch } from './notch';

/**
 * A piece ready to be cut.
 *
 * @param finishes those that take an edge of this piece, in file order
 * @param notches those cut into this piece
 */
export function finished(piece: Piece, finishes: readonly Finish[], notches: readonly PlacedNotch[]): Piece {
  const allowances = withFinishes(piece, finishes);
  const cut = notches.map(({ piece: _, ...notch }): Notch => notch);
  return withCutting({ ...piece, allowances, notches: cut });
}

/** The piece with its cutting line drawn anew from its allowances. */
export const withCutting = (piece: Piece): Piece => {
  const { cutting: _, ...rest } = piece;
  return { ...rest, ...cutting(rest, piece.allowances) };
};

/** A finish gives its own allowance; a fold has none. */
function withFinishes(piece: Piece, finishes: readonly Finish[]): ReadonlyMap<string, number> {
  const allowances = new Map(piece.allowances);
  for (const finish of finishes) {
    const width = finishAllowance(finish);
    if (width === undefined) continue;
    for (const edge of finish.edges) if (edge.piece === piece.base) allowances.set(edge.edge, width);
  }
  if (piece.fold !== undefined) allowances.set(piece.fold.edge, 0);
  return allowances;
}

/** None for an outline with a gap, or where no allowance is stated at all: such a piece is shown by its sewing line. */
function cutting(piece: Omit<Piece, 'cutting'>, allowances: ReadonlyMap<string, number>): Pick<Piece, 'cutting'> {
  const stated = [...allowances.values()].some((width) => width > 0) || allowances.size >= piece.edges.length;
  if (piece.gaps.length > 0 || !stated) return {};
  const edges = piece.edges.map((edge) => ({
    path: cutPath(edge, piece.darts),
    allowance: allowances.get(edge.name) ?? 0,
  }));
  return { cutting: cuttingLine(edges).outline };
}
