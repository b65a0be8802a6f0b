/** How a row of marks lies to the edges of its piece. */
import type { Edge, Mark, Piece } from '../drafting/model';

export interface Beside {
  readonly edge: Edge;
  /** From the edge to the nearest and to the farthest of the row, mm. */
  readonly near: number;
  readonly far: number;
}

/** A row runs beside the edge from which the farthest of it is least far; none where that is farther than `within`. */
export function besideEdge(piece: Piece, { points }: Mark, within: number): Beside | undefined {
  let best: Beside | undefined;
  for (const edge of piece.edges) {
    const off = points.map((point) => edge.path.locate(point).distance);
    const far = Math.max(...off);
    if (best === undefined || far < best.far) best = { edge, near: Math.min(...off), far };
  }
  return best !== undefined && best.far <= within ? best : undefined;
}

/** A row farther from an edge than this does not lace it, mm. */
export const LACES_WITHIN = 40;

/** Rows of a kind of mark that close something: fewer than four are an ornament, a cuff, a tab. */
export const closingRows = ({ marks }: Piece, word: Mark['word']): readonly Mark[] =>
  marks.filter((mark) => mark.word === word && mark.row !== undefined && mark.points.length >= 4);
