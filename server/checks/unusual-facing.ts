/** Finds facings that are so narrow that they turn out, or so deep that they hang loose. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const FACING_DEPTH: Usual = {
  name: 'facing-depth',
  kind: 'length',
  low: 40,
  high: 80,
  standing: 'common practice',
};

export const unusualFacing: Judged = {
  code: 'unusual-facing',
  severity: 'warning',
  title: 'A facing that is unusually narrow or deep',
  by: 'judgement',
  usual: [FACING_DEPTH],
  ofPiece: (piece, pattern) => ofPiece(piece, pattern),
};

function ofPiece({ facing, statement, base, side }: Piece, pattern: Judging): readonly Finding[] {
  const { node } = statement;
  if (facing === undefined || node.kind !== 'facing' || side === 'left') return [];
  const range = usualRange(pattern, FACING_DEPTH);
  if (isUsual(range, facing.depth)) return [];
  const depth = printLength(facing.depth, pattern.unit);
  const why =
    facing.depth < range.low
      ? say`a narrower one turns out when it is worn`
      : say`a deeper one hangs loose behind`;
  const message = say`${base} is ${depth} deep: ${rangeInWords(range, pattern.unit)}; ${why}. Write another depth, or usual facing-depth in … for this pattern.`;
  return [finding('unusual-facing', { statement, at: node.deep.at }, message, { piece: base })];
}
