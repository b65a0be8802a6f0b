/** Finds edges that are sewn with too little cloth beyond the stitches to hold them. */
import type { SourcedFinding } from '../drafting/finding';
import type { Edge, Pattern, Piece } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { printLength } from '../drafting/values/quantity';
import { evenWidth, isJudged } from './allowed';
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
  ofPattern: (pattern) => pattern.pieces.filter(isRight).flatMap((piece) => ofPiece(piece, pattern)),
};

const isRight = (piece: Piece): boolean => isJudged(piece) && piece.side !== 'left';

interface Kept {
  readonly around: readonly unknown[];
  readonly findings: readonly SourcedFinding[];
}

const kept = new WeakMap<Piece, Kept>();

function ofPiece(piece: Piece, pattern: Pattern): readonly SourcedFinding[] {
  const [seams, finishes] = [pattern.seamsOf(piece.base), pattern.finishesOf(piece.base)];
  const around = [seams, finishes, pattern.unit, pattern.usual];
  const before = kept.get(piece);
  if (before !== undefined && around.every((one, i) => one === before.around[i])) return before.findings;
  const range = usualRange(pattern, SEWN_ALLOWANCE);
  const sewn = new Set(
    seams.flatMap(({ left, right }) =>
      [...left, ...right].flatMap((one) => (one.piece === piece.base ? [one.edge] : [])),
    ),
  );
  const findings = everyEdge(piece).flatMap((edge): SourcedFinding[] => {
    const width = sewn.has(edge.name) ? evenWidth(piece, edge.name, finishes) : undefined;
    // nothing at all is meant: the edges meet, or are bound together
    if (width === undefined || width === 0 || isUsual(range, width)) return [];
    return [narrow(piece, edge, width, rangeInWords(range, pattern.unit), pattern.unit)];
  });
  kept.set(piece, { around, findings });
  return findings;
}

function narrow(
  piece: Piece,
  edge: Edge,
  width: number,
  range: string,
  unit: Pattern['unit'],
): SourcedFinding {
  const message =
    `${piece.base}.${edge.name} is sewn, and allowed ${printLength(width, unit)}: ${range}. ` +
    'Narrower, it frays out of the seam and can’t be pressed. Allow more there, and trim when it is sewn.';
  return {
    source: piece.source,
    finding: finding('narrow-allowance', edgeOfPiece(edge), message, { piece: piece.name }),
  };
}
