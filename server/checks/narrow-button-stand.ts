/** Finds rows of buttons so near an edge that the button reaches over it. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Mark, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { besideEdge, closingRows } from './beside';
import { finding, type Judged, type Judging } from './check';
import { nameOfMark } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const STAND: Usual = {
  name: 'button-stand',
  kind: 'length',
  low: 6,
  high: Infinity,
  standing: 'common practice: beyond half the button',
};

export const narrowButtonStand: Judged = {
  code: 'narrow-button-stand',
  severity: 'warning',
  title: 'Buttons so near an edge that they reach over it',
  by: 'judgement',
  usual: [STAND],
  ofPiece: (piece, pattern) =>
    closingRows(piece, 'button').flatMap((row) => narrowStand(piece, row, pattern) ?? []),
};

/** Farther from an edge than this a row is none that closes it, mm. */
const A_STAND = 120;

function narrowStand(piece: Piece, row: Mark, pattern: Judging): Finding | undefined {
  const beside = besideEdge(piece, row, A_STAND);
  if (row.size === undefined || beside === undefined || beside.edge.name === piece.fold?.edge)
    return undefined;
  const over = beside.near - row.size / 2;
  const range = usualRange(pattern, STAND);
  if (isUsual(range, over + 1e-6)) return undefined;
  const { unit } = pattern;
  const message = say`${row.name} stand ${printLength(beside.near, unit)} from ${beside.edge.name}; a button of ${printLength(row.size, unit)} leaves ${printLength(over, unit)} of cloth beyond it (${rangeInWords(range, unit)}). Widen the stand to ${printLength(row.size / 2 + range.low, unit)}, or take smaller buttons.`;
  return finding('narrow-button-stand', nameOfMark(row), message, { piece: piece.name });
}
