/** Finds edges that meet a fold neither square nor plainly slanting: opened out, the cloth has a point or a dip there. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { finding, type Judged, type Judging } from './check';
import { lineOf, nameOfPiece } from './places';
import { cornerBeside, type CornerBeside } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

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
  ofPiece: (piece, pattern) => judged(piece, pattern),
};

/** Further from square than this, degrees, a point is meant: a V neck, a pointed hem. */
const MEANT = 15;

function judged(piece: Piece, pattern: Judging): readonly Finding[] {
  const fold = piece.edges.find(({ name }) => name === piece.fold?.edge);
  if (fold === undefined || piece.gaps.length > 0 || piece.unbuilt.length > 0) return [];
  const range = usualRange(pattern, CORNER);
  return [true, false].flatMap((atStart) => {
    const corner = cornerBeside(piece, fold, atStart);
    if (corner === undefined || Math.abs(corner.inside - 90) > MEANT || isUsual(range, corner.inside))
      return [];
    return [slanting(corner, rangeInWords(range, pattern.unit))];
  });
}

function slanting({ piece, edge, neighbour, inside }: CornerBeside, range: string): Finding {
  const angle = `${Math.round(inside * 10) / 10}°`;
  const way = inside > 90 ? say`a dip` : say`a point`;
  const message = say`${neighbour.name} meets the fold along ${edge.name} at ${angle}: opened out, ${piece.base} has ${way} of ${Math.round(Math.abs(2 * inside - 180) * 10) / 10}° there; ${range}. Let ${neighbour.name} leave the fold square (leaving square to ${edge.name}). A point that is meant is more than ${MEANT}° off, or accepted with its reason.`;
  const at = lineOf(piece, 'fold');
  const place = at === undefined ? nameOfPiece(piece) : { statement: at, at: at.node.edge.at };
  return finding('corner-at-fold', place, message, {
    piece: piece.name,
    related: [{ source: neighbour.source, message: say`${neighbour.name} is drawn here.` }],
  });
}
