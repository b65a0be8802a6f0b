/** Finds open pieces whose two halves, drafted each side, don't meet along the fold they were drawn to. */
import { say } from '../../grammar/say';
import type { PieceNode } from '../../grammar/syntax';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';

export const sidedFoldLengths: Judged = {
  code: 'sided-fold-lengths',
  severity: 'error',
  title: 'Two halves that don’t meet along their fold',
  by: 'judgement',
  ofPiece: (piece, pattern) => {
    const folds = foldsOf(piece);
    return folds === undefined || folds.apart <= MEETS ? [] : [apart(piece, folds, pattern)];
  },
};

/** What can be smoothed away where two halves join down the middle, mm (language reference, sides). */
const MEETS = 0.5 + 1e-6;

interface Folds {
  readonly lengths: readonly [number, number];
  /** Farthest that two ends lie apart, mm. */
  readonly apart: number;
}

/** The fold of both halves of an open piece: its outline is one half, then the other back again. */
function foldsOf({ edges, fold, statement }: Piece): Folds | undefined {
  const { node } = statement;
  if (node.kind !== 'piece' || !node.eachSide || fold !== undefined || foldLine({ statement }) === undefined)
    return undefined;
  const half = edges.length / 2;
  const ends = [edges[0], edges[half - 1], edges[half], edges[edges.length - 1]];
  const [a, b, c, d] = [ends[0]?.path.start, ends[1]?.path.end, ends[2]?.path.start, ends[3]?.path.end];
  if (a === undefined || b === undefined || c === undefined || d === undefined) return undefined;
  const far = (p: { x: number; y: number }, q: { x: number; y: number }): number =>
    Math.hypot(p.x - q.x, p.y - q.y);
  return { lengths: [far(a, b), far(c, d)], apart: Math.max(far(a, d), far(b, c)) };
}

const foldLine = ({ statement }: Pick<Piece, 'statement'>) =>
  statement.block?.find(({ node }) => node.kind === 'fold');

function apart(piece: Piece, { lengths, apart: by }: Folds, { unit }: Judging): Finding {
  const [one, other] = lengths.map((length) => printLengthFine(length, unit)) as [string, string];
  const line = foldLine(piece);
  const place =
    line === undefined
      ? { statement: piece.statement, at: (piece.statement.node as PieceNode).name.at }
      : { statement: line, at: line.node.at };
  const message = say`${piece.name} is drafted each side, but its halves don't meet: the fold is ${one} long on one side of the wearer and ${other} on the other, and their ends lie ${printLength(by, unit)} apart (0.5mm is allowed). Draft the fold from measurements that both sides share.`;
  return finding('sided-fold-lengths', place, message, { piece: piece.name });
}
