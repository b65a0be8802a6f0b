/** A hem that is turned up along a curve: how much longer or shorter its edge is than the line on which it is sewn down. */
import type { Piece } from '../model';
import { signedArea } from '../../geometry';

export interface HemFullness {
  /** How deep one fold is, mm. */
  readonly depth: number;
  /** What the raw edge has more than the place where it comes to lie, as a share; less than nothing: it is too short. */
  readonly share: number;
}

/**
 * By Steiner's rule a line beside a curve is longer by its distance times the turning: turned up, it lies on a line that is
 * as much shorter. Over the whole edge this is the depth over the mean radius. The share is of the sewn edge.
 */
export function hemFullness(piece: Piece, edge: string): HemFullness | undefined {
  const folds = piece.hems.get(edge);
  const path = piece.edges.find(({ name }) => name === edge)?.path;
  if (folds === undefined || path === undefined || path.length === 0) return undefined;
  const depth = (piece.allowances.get(edge) ?? 0) / folds;
  const outward = signedArea(piece.edges.map((one) => one.path)) < 0 ? -1 : 1;
  return { depth, share: (depth * path.turning() * outward) / path.length };
}
