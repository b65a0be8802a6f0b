/** Finds corners that are rounded off so widely that the outline no longer passes where it was fitted. */
import { say } from '../../grammar/say';
import type { Finding, Fix } from '../drafting/finding';
import type { Piece, Smoothed } from '../drafting/model';
import type { Statement } from '../../grammar/syntax';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const MOVED: Usual = {
  name: 'smoothed-by',
  kind: 'length',
  low: 0,
  high: 2,
  standing: 'common practice: 1.5cm each side of a turn of 29° moves it by 1.9mm',
};

export const smoothedAway: Judged = {
  code: 'smoothed-away',
  severity: 'warning',
  title: 'A corner that is smoothed away by more than the body lets',
  by: 'judgement',
  usual: [MOVED],
  ofPiece: (piece, pattern) =>
    piece.side === 'left'
      ? []
      : (piece.smoothed ?? []).flatMap((one) => (isOwn(piece, one) ? judged(piece, one, pattern) : [])),
};

/** Of a piece worked from one that was smoothed, that one speaks. */
const isOwn = ({ statement }: Piece, smoothed: Smoothed): boolean => holds(statement, smoothed.statement);

const holds = ({ block = [] }: Statement, line: Statement): boolean =>
  block.some((one) => one === line || holds(one, line));

function judged(piece: Piece, smoothed: Smoothed, pattern: Judging): readonly Finding[] {
  const { name, edge, moved, by, added, statement } = smoothed;
  const range = usualRange(pattern, MOVED);
  if (isUsual(range, moved) || moved < range.low || statement.node.kind !== 'smooth') return [];
  const { unit } = pattern;
  const what = added ? say`adds ${printLength(moved, unit)} to` : say`takes ${printLength(moved, unit)} off`;
  const message = say`Smoothed by ${printLength(by, unit)} each side, ${name} ${what} ${piece.base} at ${edge}; ${rangeInWords(range, unit)}. What is fitted there, a bust or a hip, is fitted no more: smooth it by less, or turn less sharply.`;
  return [
    finding('smoothed-away', { statement, at: statement.node.point.at }, message, {
      piece: piece.name,
      fixes: byLess(smoothed, range.high, unit),
    }),
  ];
}

/** A length is written in steps of these, mm. */
const STEPS: Readonly<Record<Judging['unit'], number>> = { cm: 1, mm: 1, in: 25.4 / 16 };

/** The curve moves in proportion to how far it reaches, along straight lines exactly. */
function byLess({ by, moved, statement }: Smoothed, most: number, unit: Judging['unit']): readonly Fix[] {
  const step = STEPS[unit];
  const less = Math.floor((by * most) / moved / step) * step;
  const { node } = statement;
  if (less < 2 * step || node.kind !== 'smooth') return [];
  const text = printLength(less, unit);
  return [{ title: say`Smooth it by ${text} each side`, edits: [{ statement, at: node.by.at, text }] }];
}
