/** Finds rows of buttons of which none lies at the bust, where the front gapes first. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Mark, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { dot, normalised, subtract } from '../geometry';
import { closingRows } from './beside';
import { finding, type Judged, type Judging } from './check';
import { nameOfMark } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const OFF: Usual = {
  name: 'button-to-bust',
  kind: 'length',
  low: 0,
  high: 15,
  standing: 'common practice, for a bust that fills the front',
};

export const buttonOffBust: Judged = {
  code: 'button-off-bust',
  severity: 'note',
  title: 'Buttons of which none lies at the bust',
  by: 'judgement',
  usual: [OFF],
  ofPiece: (piece, pattern) =>
    piece.side === 'left' ? [] : closingRows(piece, 'button').flatMap((row) => judged(piece, row, pattern)),
};

function judged(piece: Piece, row: Mark, pattern: Judging): readonly Finding[] {
  const line = piece.balance.find(({ name }) => name === 'bust-line')?.path;
  const along = line && normalised(subtract(line.end, line.start));
  if (line === undefined || along === undefined) return [];
  // the line goes on to the row, which may lie beyond its end
  const across = { x: -along.y, y: along.x };
  const off = row.points.map((point) => dot(subtract(point, line.start), across));
  const nearest = Math.min(...off.map(Math.abs));
  const reaches = Math.min(...off) < 0 && Math.max(...off) > 0;
  const range = usualRange(pattern, OFF);
  if (!reaches || isUsual(range, nearest)) return [];
  const { unit } = pattern;
  const message = say`The nearest of ${row.name} lies ${printLength(nearest, unit)} from the bust line of ${piece.base}; ${rangeInWords(range, unit)}. The front gapes at the bust first: begin the row so that a button falls there.`;
  return [finding('button-off-bust', nameOfMark(row), message, { piece: piece.name })];
}
