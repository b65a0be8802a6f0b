/** Finds pieces that nobody will cut, though others of the pattern are cut and nothing is made of them. */
import { keptFor } from '../../grammar/kept';
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { basesOf } from './made-of';

export const notCut: Judged = {
  code: 'not-cut',
  severity: 'note',
  title: 'A piece that is not cut',
  by: 'judgement',
  ofPattern: (pattern) => forgotten(pattern),
};

function forgotten({ pieces, pieceNames }: Pattern): readonly SourcedFinding[] {
  // what can't be made may be what the piece is for
  const made = new Set(pieces.map(({ source }) => source));
  return pieceNames.some((name) => !made.has(name)) ? [] : ofNoUse(pieces);
}

const ofNoUse = keptFor((pieces: readonly Piece[]): readonly SourcedFinding[] => {
  const used = new Set(pieces.flatMap(({ statement }) => basesOf(statement.node)));
  const lost = pieces.filter((piece) => piece.cut === undefined && !used.has(piece.base) && !isTold(piece));
  // a file in which nothing is cut is a block for others
  return pieces.some(({ cut }) => cut !== undefined) ? lost.map(told) : [];
});

/** Cutting words that could not be read have been told. */
const isTold = ({ statement }: Piece): boolean =>
  (statement.block ?? []).some(
    ({ node }) => node.kind === 'cut' || (node.kind === 'broken' && node.word === 'cut'),
  );

function told(piece: Piece): SourcedFinding {
  const { statement, base, source } = piece;
  const { node } = statement;
  const worked = node.kind === 'piece' && node.workedFrom !== undefined;
  const why = worked ? say`A worked piece does not inherit them. ` : '';
  const message = say`${base} has no cutting words, and nothing is made of it, so it is neither cut nor drawn. ${why}Say how it is cut, such as cut pair, or take it out.`;
  const at = 'name' in node && node.name !== undefined ? node.name.at : node.at;
  return { source, finding: finding('not-cut', { statement, at }, message, { piece: piece.name }) };
}
