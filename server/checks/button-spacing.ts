/** Finds rows of buttons that stand unusually close or far apart. */
import { say } from '../../grammar/say';
import { printLength } from '../drafting/values/quantity';
import { closingRows } from './beside';
import { finding, type Judged } from './check';
import { nameOfMark } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const SPACING: Usual = {
  name: 'button-spacing',
  kind: 'length',
  low: 60,
  high: 100,
  standing: 'common practice',
};

export const buttonSpacing: Judged = {
  code: 'button-spacing',
  severity: 'note',
  title: 'Buttons unusually close or far apart',
  by: 'judgement',
  usual: [SPACING],
  ofPiece: (piece, pattern) => {
    const range = usualRange(pattern, SPACING);
    return closingRows(piece, 'button')
      .filter(({ row }) => !isUsual(range, row!.apart))
      .map((row) => {
        const { unit } = pattern;
        const gapes =
          row.row!.apart > range.high
            ? say`the opening gapes between them`
            : say`they are more than it needs`;
        const message = say`${row.name} stand ${printLength(row.row!.apart, unit)} apart (${rangeInWords(range, unit)}): ${gapes}. Change the number, or where the row begins and ends.`;
        return finding('button-spacing', nameOfMark(row), message, { piece: piece.name });
      });
  },
};
