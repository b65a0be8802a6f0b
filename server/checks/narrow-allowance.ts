/** Finds edges that are sewn with too little cloth beyond the stitches to hold them. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Edge, Pattern, Piece } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { printLength } from '../drafting/values/quantity';
import { evenWidth, isJudged, sewnEdges } from './allowed';
import type { AroundPiece } from './around';
import { finding, type Judged } from './check';
import { edgeOfPiece } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const SEWN_ALLOWANCE: Usual = {
  name: 'sewn-allowance',
  kind: 'length',
  low: 5,
  high: Infinity,
  standing: 'possible are 0.5 to 3.5 cm, by tables of the trade; less frays out (common practice)',
};

export const narrowAllowance: Judged = {
  code: 'narrow-allowance',
  severity: 'warning',
  title: 'A sewn edge with too narrow an allowance',
  by: 'judgement',
  usual: [SEWN_ALLOWANCE],
  ofSewnPiece: (piece, around) =>
    isJudged(piece) && piece.side !== 'left' ? narrowEdges(piece, around) : [],
};

function narrowEdges(piece: Piece, { seams, finishes, unit, ...around }: AroundPiece): readonly Finding[] {
  const range = usualRange(around, SEWN_ALLOWANCE);
  const sewn = sewnEdges(piece, seams);
  return everyEdge(piece).flatMap((edge): Finding[] => {
    const width = sewn.has(edge.name) ? evenWidth(piece, edge.name, finishes) : undefined;
    // nothing at all is meant: the edges meet, or are bound together
    if (width === undefined || width === 0 || isUsual(range, width)) return [];
    return [narrow(piece, edge, width, rangeInWords(range, unit), unit)];
  });
}

function narrow(piece: Piece, edge: Edge, width: number, range: string, unit: Pattern['unit']): Finding {
  const message = say`${piece.base}.${edge.name} is sewn, and allowed ${printLength(width, unit)}: ${range}. Narrower, it frays out of the seam and can’t be pressed. Allow more there, and trim when it is sewn.`;
  return finding('narrow-allowance', edgeOfPiece(edge), message, { piece: piece.name });
}
