/** Finds collars that fall no lower than the stand they are sewn to, so that the seam at the neck shows. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece, Seam, SewnEdge } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const FALL: Usual = {
  name: 'collar-over-stand',
  kind: 'length',
  low: 8,
  high: Infinity,
  standing: 'common practice',
};

export const lowCollar: Judged = {
  code: 'low-collar',
  severity: 'warning',
  title: 'A collar that does not cover its stand',
  by: 'judgement',
  usual: [FALL],
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

/** How deep a collar or a stand is at the centre back: along its fold, or the edge called centre. */
export const depthOf = ({ fold, edges }: Piece): number | undefined =>
  edges.find(({ name }) => (fold === undefined ? called(name, 'centre') : name === fold.edge))?.sewn;

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const { left, right, itsPair, comparable, side } = seam;
  if (itsPair || !comparable || side === 'left' || left.length !== 1 || right.length !== 1) return [];
  const both = [left[0]!, right[0]!];
  if (!both.some(({ piece }) => piece.includes('collar'))) return [];
  const collar = both.find(({ piece }) => called(piece, 'collar') && !called(piece, 'stand'));
  const stand = both.find(({ piece }) => called(piece, 'stand'));
  return collar === undefined || stand === undefined ? [] : low(seam, collar, stand, pattern);
}

function low(seam: Seam, collar: SewnEdge, stand: SewnEdge, pattern: Judging): readonly Finding[] {
  const [fall, height] = [collar, stand].map(({ of }) => of && depthOf(of));
  if (fall === undefined || height === undefined) return [];
  const range = usualRange(pattern, FALL);
  if (isUsual(range, fall - height, 0.05)) return [];
  const { unit } = pattern;
  const over = fall - height;
  const much = over < 0 ? say`${printLength(-over, unit)} less` : say`${printLength(over, unit)} more`;
  const advice =
    over < range.low
      ? say`Turned down, it lets the seam at the neck be seen: make ${collar.piece} deeper, or ${stand.piece} lower.`
      : say`It stands away from the neck: make ${collar.piece} less deep.`;
  const message = say`${collar.piece} is ${printLength(fall, unit)} deep at the centre back, and ${stand.piece}, over which it falls, ${printLength(height, unit)}: ${much} (${rangeInWords(range, unit)} more). ${advice}`;
  return [
    finding('low-collar', { statement: seam.statement, at: collar.at }, message, { piece: collar.piece }),
  ];
}
