/** Finds bands whose underlap is too short to hold its fastening, or longer than it needs. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const UNDERLAP: Usual = {
  name: 'underlap',
  kind: 'length',
  low: 25,
  high: 40,
  standing: 'common practice',
};

export const unusualUnderlap: Judged = {
  code: 'unusual-underlap',
  severity: 'warning',
  title: 'A band with an unusually short or long underlap',
  by: 'judgement',
  usual: [UNDERLAP],
  ofPiece: (piece, pattern) => ofPiece(piece, pattern),
};

function ofPiece({ underlap, statement, base, side }: Piece, pattern: Judging): readonly Finding[] {
  const { node } = statement;
  if (node.kind !== 'band' || node.underlap === undefined || side === 'left') return [];
  const range = usualRange(pattern, UNDERLAP);
  if (underlap === undefined || isUsual(range, underlap)) return [];
  const why = underlap < range.low ? say`a hook or button needs more room` : say`more of it only adds bulk`;
  const message = say`The underlap of ${base} is ${printLength(underlap, pattern.unit)} long: ${rangeInWords(range, pattern.unit)}; ${why}.`;
  return [finding('unusual-underlap', { statement, at: node.underlap.by.at }, message, { piece: base })];
}
