/** Finds pieces with a fold that are cut as wholes or as pairs: nothing of them is a half. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { placeOfLine } from './places';

export const idleFold: Judged = {
  code: 'idle-fold',
  severity: 'warning',
  title: 'A fold on a piece that is not cut on it',
  by: 'judgement',
  ofPiece: (piece) => {
    const { cut, fold } = piece;
    const half = cut?.layers.some(({ as }) => as === 'fold' || as === 'open') ?? true;
    const drafted = !piece.statement.block?.some(({ node }) => node.kind === 'fold');
    return half || fold === undefined || drafted ? [] : [idle(piece, fold.edge)];
  },
};

function idle(piece: Piece, edge: string): Finding {
  const message = say`${piece.name} is to be ${piece.cut!.text}, but ${edge} is its fold: nothing is allowed there, and no half of it is meant. Say cut 1 on fold; or take the fold out, and ${edge} is an edge to be sewn or finished.`;
  return finding('idle-fold', placeOfLine(piece, 'fold'), message, { piece: piece.name });
}
