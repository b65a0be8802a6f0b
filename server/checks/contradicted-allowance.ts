/** Finds edges to which the piece gives one width by name, and a finish another. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Finish, Pattern, Piece, StatedAllowance } from '../drafting/model';
import { finishAllowance } from '../drafting/sewing/finish';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { isOf, SAME_WIDTH } from './allowed';
import type { AroundPiece } from './around';
import { finding, type Judged } from './check';

export const contradictedAllowance: Judged = {
  code: 'contradicted-allowance',
  severity: 'error',
  title: 'An allowance that the finish contradicts',
  by: 'judgement',
  ofSewnPiece: (piece, around) =>
    piece.cut !== undefined && piece.side !== 'left' ? contradictions(piece, around) : [],
};

const contradictions = (piece: Piece, { finishes, unit }: AroundPiece): readonly Finding[] =>
  lastStated(piece).flatMap((stated) => {
    // of a stretch that is finished the rest keeps the width stated
    const finish = finishes.find(({ edges }) =>
      edges.some((one) => isOf(one, piece, stated.edge) && one.stretch === undefined),
    );
    const wanted = finish && TURNED.has(finish.how) ? finishAllowance(finish) : undefined;
    if (wanted === undefined || Math.abs(wanted - stated.width) <= SAME_WIDTH) return [];
    return [contradicted(piece, stated, finish!, wanted, unit)];
  });

/** Of two lines for one edge the later counts; the other half of an open piece is told where it has a width of its own. */
function lastStated({ statedAllowances = [] }: Piece): readonly StatedAllowance[] {
  const last = statedAllowances.filter(
    ({ edge }, i) => !statedAllowances.slice(i + 1).some((later) => later.edge === edge),
  );
  return last.flatMap((stated) => {
    const half = OTHER_HALF.exec(stated.edge)?.[1];
    const drawn = half && last.find(({ edge }) => edge === half);
    if (!drawn) return [stated];
    return Math.abs(drawn.width - stated.width) <= SAME_WIDTH ? [] : [{ ...stated, edge: half }];
  });
}

/** How edges of the half that is not drafted are called. */
const OTHER_HALF = /^(.+)-other$/;

/**
 * Finishes that need the cloth of their width. A bound or raw edge is cut on its line whatever a block allows for a garment
 * that is to be made of it.
 */
const TURNED: ReadonlyMap<Finish['how'], () => string> = new Map([
  ['turned-up', () => say`turns it up`],
  ['turned-twice', () => say`turns it twice`],
  ['rolled', () => say`rolls it`],
] as const);

function contradicted(
  piece: Piece,
  stated: StatedAllowance,
  finish: Finish,
  wanted: number,
  unit: Pattern['unit'],
): Finding {
  const { edge, width, statement, at, shared } = stated;
  const edgeName = `${piece.base}.${edge}`;
  const message = say`${edgeName} is allowed ${printLength(width, unit)} here, but finish ${finish.name} ${TURNED.get(finish.how)!()}, which takes ${printLength(wanted, unit)}; it is cut with that. Make the two say the same.`;
  const text = printLengthFine(wanted, unit);
  return finding('contradicted-allowance', { statement, at }, message, {
    piece: piece.name,
    related: [{ source: finish.source, message: say`This takes ${printLength(wanted, unit)}.` }],
    fixes: shared ? [] : [{ title: say`Allow ${text}`, edits: [{ statement, at, text }] }],
  });
}
