/** Finds pieces that are cut on a fold, or open from a half, and do not say along which edge. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { placeOfLine } from './places';

export const noFold: Judged = {
  code: 'no-fold',
  severity: 'error',
  title: 'A half without the edge that is its middle',
  by: 'judgement',
  ofPiece: (piece) => {
    const half = piece.cut?.layers.find(({ as }) => as === 'fold' || as === 'open');
    return half === undefined || piece.fold !== undefined || isTold(piece) ? [] : [without(piece, half.as)];
  },
};

/** A fold line that can't be had has been told. */
const isTold = ({ statement }: Piece): boolean =>
  (statement.block ?? []).some(
    ({ node }) => node.kind === 'fold' || (node.kind === 'broken' && (node.word ?? 'fold') === 'fold'),
  );

function without(piece: Piece, as: string): Finding {
  const how = as === 'fold' ? say`cut on the fold` : say`cut open from a half`;
  const straight = piece.edges.filter(({ path }) => path.isStraight(0.2)).map(({ name }) => name);
  const edge = straight.includes('centre') ? 'centre' : (straight[0] ?? 'EDGE');
  const message = say`${piece.name} is ${how}, but no edge of it is its middle: say which, such as fold ${edge}. If it is no half, it is cut pair, or cut 1.`;
  return finding('no-fold', placeOfLine(piece, 'cut'), message, { piece: piece.name });
}
