/** Finds rows of eyelets for a lacing that stand unusually far apart, or too near or too far from their edge. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Mark, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { LACES_WITHIN, besideEdge, closingRows } from './beside';
import { finding, type Judged, type Judging } from './check';
import { nameOfMark } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const SPACING: Usual = {
  name: 'eyelet-spacing',
  kind: 'length',
  low: 20,
  high: 28,
  standing: 'common practice: wider apart a laced edge gapes',
};
const FROM_EDGE: Usual = {
  name: 'eyelet-from-edge',
  kind: 'length',
  low: 10,
  high: 15,
  standing: 'common practice: room for a bone between eyelet and edge',
};

export const eyeletPlaces: Judged = {
  code: 'eyelet-places',
  severity: 'note',
  title: 'Eyelets unusually far apart, or from their edge',
  by: 'judgement',
  usual: [SPACING, FROM_EDGE],
  ofPiece: (piece, pattern) =>
    closingRows(piece, 'eyelet').flatMap((row) => [
      ...apart(piece, row, pattern),
      ...fromEdge(piece, row, pattern),
    ]),
};

function apart(piece: Piece, row: Mark, pattern: Judging): readonly Finding[] {
  const range = usualRange(pattern, SPACING);
  const { apart: is } = row.row!;
  if (isUsual(range, Math.round(is * 1000) / 1000)) return [];
  const does = is > range.high ? say`the laced edge gapes between them` : say`the cloth between them tears`;
  const message = say`${row.name} stand ${printLength(is, pattern.unit)} apart (${rangeInWords(range, pattern.unit)}): ${does}. Change their number, or where the row begins and ends.`;
  return [finding('eyelet-places', nameOfMark(row), message, { piece: piece.name })];
}

function fromEdge(piece: Piece, row: Mark, pattern: Judging): readonly Finding[] {
  const range = usualRange(pattern, FROM_EDGE);
  const beside = besideEdge(piece, row, LACES_WITHIN);
  if (beside === undefined) return [];
  const is = beside.near < range.low ? beside.near : beside.far;
  if (isUsual(range, Math.round(is * 1000) / 1000)) return [];
  const message = say`${row.name} stand ${printLength(is, pattern.unit)} from ${beside.edge.name} (${rangeInWords(range, pattern.unit)}). Lay the row parallel to the edge: eyelets ${row.name} = ${row.points.length} along (${beside.edge.name} parallel ${printLength((range.low + range.high) / 2, pattern.unit)} toward …).`;
  return [finding('eyelet-places', nameOfMark(row), message, { piece: piece.name })];
}
