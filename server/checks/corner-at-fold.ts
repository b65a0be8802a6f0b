/** Finds edges that meet a fold neither square nor plainly slanting: opened out, the cloth has a point or a dip there. */
import { say } from '../../grammar/say';
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece } from '../drafting/model';
import { finding, type Judged } from './check';
import { lineOf, nameOfPiece } from './places';
import { cornerBeside, type CornerBeside } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual, type UsualRange } from './usual';

const CORNER: Usual = {
  name: 'fold-corner',
  kind: 'angle',
  low: 88.5,
  high: 91.5,
  standing: 'common practice',
};

export const cornerAtFold: Judged = {
  code: 'corner-at-fold',
  severity: 'warning',
  title: 'An edge that is not square to the fold it meets',
  by: 'judgement',
  usual: [CORNER],
  ofPattern: (pattern) => once(pattern),
};

/** Further from square than this, degrees, a point is meant: a V neck, a pointed hem. */
const MEANT = 15;

const kept = new WeakMap<
  Piece,
  { readonly low: number; readonly high: number; readonly found: readonly CornerBeside[] }
>();

/** The corners of a piece that are off; of a piece that stayed the same they are not looked for again. */
function cornersOff(piece: Piece, range: UsualRange): readonly CornerBeside[] {
  const before = kept.get(piece);
  if (before?.low === range.low && before.high === range.high) return before.found;
  const fold = piece.edges.find(({ name }) => name === piece.fold?.edge);
  const judged = fold !== undefined && piece.gaps.length === 0 && piece.unbuilt.length === 0;
  const found = (judged ? [true, false] : []).flatMap((atStart) => {
    const corner = cornerBeside(piece, fold!, atStart);
    const off =
      corner !== undefined && Math.abs(corner.inside - 90) <= MEANT && !isUsual(range, corner.inside);
    return off ? [corner] : [];
  });
  kept.set(piece, { low: range.low, high: range.high, found });
  return found;
}

/** Angles that differ by less are of one corner, degrees. */
const SAME = 0.05;

/**
 * A corner that several pieces have from one block is told where it comes first: mended there, it is mended in all. Where
 * lines of the pattern accept it at some of them it is told at these, so that each line has what it accepts.
 */
function once(pattern: Pattern): readonly SourcedFinding[] {
  const range = usualRange(pattern, CORNER);
  const groups: CornerBeside[][] = [];
  for (const corner of pattern.pieces.flatMap((piece) => cornersOff(piece, range))) {
    const group = groups.find(([one]) => isDrawnAs(one!, corner));
    if (group === undefined) groups.push([corner]);
    else group.push(corner);
  }
  const accepting = pattern.acceptances.filter(({ code }) => code === cornerAtFold.code);
  const isAccepted = ({ piece }: CornerBeside): boolean =>
    accepting.some(({ of }) => of?.source === piece.source);
  return groups.flatMap((group) => {
    const accepted = group.filter(isAccepted);
    return (accepted.length > 0 ? accepted : group.slice(0, 1)).map((corner) => ({
      source: corner.piece.source,
      finding: slanting(corner, rangeInWords(range, pattern.unit)),
    }));
  });
}

const isDrawnAs = (one: CornerBeside, other: CornerBeside): boolean =>
  one.edge.statement === other.edge.statement &&
  one.neighbour.statement === other.neighbour.statement &&
  Math.abs(one.inside - other.inside) < SAME;

function slanting({ piece, edge, neighbour, inside }: CornerBeside, range: string): Finding {
  const angle = `${Math.round(inside * 10) / 10}°`;
  const turn = Math.round(Math.abs(2 * inside - 180) * 10) / 10;
  const way = inside > 90 ? say`a dip of ${turn}°` : say`a point of ${turn}°`;
  const message = say`${neighbour.name} meets the fold along ${edge.name} at ${angle}: opened out, ${piece.base} has ${way} there; ${range}. Let ${neighbour.name} leave the fold square (leaving square to ${edge.name}). A point that is meant is more than ${MEANT}° off, or accepted with its reason.`;
  const at = lineOf(piece, 'fold');
  const place = at === undefined ? nameOfPiece(piece) : { statement: at, at: at.node.edge.at };
  return finding('corner-at-fold', place, message, {
    piece: piece.name,
    related: [{ source: neighbour.source, message: say`${neighbour.name} is drawn here.` }],
  });
}
