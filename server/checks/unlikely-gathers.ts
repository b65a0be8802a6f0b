/** Finds gathers that draw up hardly anything, or more than cloth can be drawn. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Gathers, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { isUsual, usualRange, type Usual } from './usual';

const RATIO: Usual = {
  name: 'gathers',
  kind: 'ratio',
  low: 1.3,
  high: 3,
  standing:
    'common practice: 1½ for light cloth, 2 is usual, 3 for sheer; a ruffle 1½ times its line (Ingalls, c. 1911), a bias ruffle 1¼ to 1⅓ (Baldt, 1916)',
};

export const unlikelyGathers: Judged = {
  code: 'unlikely-gathers',
  severity: 'warning',
  title: 'Gathers that draw up hardly anything, or more than cloth can be drawn',
  by: 'judgement',
  usual: [RATIO],
  ofPiece: (piece, pattern) => (piece.shaping?.gathers ?? []).flatMap((one) => unlikely(piece, one, pattern)),
};

/** Less than this is no fullness that is seen, but ease that is held in (*common practice*). */
const EASE = 1.2;

const ROUNDING = 1e-6;

function unlikely(piece: Piece, gathers: Gathers, pattern: Judging): readonly Finding[] {
  const { name, statement, flat, gathered, edge } = gathers;
  const range = usualRange(pattern, RATIO);
  const ratio = flat / gathered;
  if (isUsual(range, ratio - ROUNDING) || isUsual(range, ratio + ROUNDING)) return [];
  const { unit } = pattern;
  const span = say`${range.low} to ${range.high} to 1`;
  const said = range.stated ? say`this pattern asks for ${span}` : say`usual are ${span}`;
  const advice =
    ratio > range.high
      ? say`The stitches will not hold so much: gather less, or pleat it.`
      : ratio < EASE
        ? say`So little is ease rather than gathers: say it on the seam, easing so much of this piece.`
        : say`So little hardly shows: give it more cloth, or ease it.`;
  const message = say`${name} draws ${printLength(flat, unit)} of ${edge} up to ${printLength(gathered, unit)}, ${Math.round(ratio * 100) / 100} to 1; ${said}. ${advice}`;
  const at = statement.node.kind === 'gathers' ? statement.node.name.at : statement.node.at;
  return [finding('unlikely-gathers', { statement, at }, message, { piece: piece.name })];
}
