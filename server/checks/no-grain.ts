/** Finds pieces that are cut and do not say how they lie on the cloth. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { nameOfPiece } from './places';

export const noGrain: Judged = {
  code: 'no-grain',
  severity: 'error',
  title: 'A piece without a grain line',
  by: 'judgement',
  ofPiece: (piece) =>
    piece.cut !== undefined && piece.grain === undefined && !isDoubtful(piece) ? [without(piece)] : [],
};

/** A grain line that could not be read has been told. */
const isDoubtful = ({ statement, unbuilt }: Piece): boolean =>
  unbuilt.length > 0 ||
  (statement.block ?? []).some(
    ({ node }) => node.kind === 'grain' || (node.kind === 'broken' && (node.word ?? 'grain') === 'grain'),
  );

function without(piece: Piece): Finding {
  const edge = piece.fold?.edge ?? piece.edges[0]?.name ?? 'EDGE';
  const message = say`${piece.name} is cut, but nothing says how it lies on the cloth: without a grain line nobody can lay it. Add one, such as grain along ${edge}, or grain bias to ${edge} if it is cut on the bias.`;
  return finding('no-grain', nameOfPiece(piece), message, { piece: piece.name });
}
