/** Finds rows of buttons and of buttonholes of one name that do not meet when the garment is closed. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { Mark, Pattern, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { nameOfMark } from './places';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const OVER_BUTTON: Usual = {
  name: 'buttonhole-over-button',
  kind: 'length',
  low: 1,
  high: 6,
  standing: 'common practice: by the thickness of the button',
};

/** A row and the piece it is marked on. */
interface Row {
  readonly piece: Piece;
  readonly mark: Mark;
}

export const unlikeButtons: Judged = {
  code: 'unlike-buttons',
  severity: 'warning',
  title: 'Buttons and buttonholes of one name that do not meet',
  by: 'judgement',
  usual: [OVER_BUTTON],
  ofPattern: (pattern) => {
    const rows = rowsOf(pattern);
    return rows.flatMap((row) => {
      const other = row.mark.word === 'buttonhole' ? partnerOf(row, rows) : undefined;
      const message = other && unlike(row.mark, other.mark, pattern);
      return other === undefined || message === undefined ? [] : [told(row, other, message)];
    });
  },
};

const rowsOf = ({ pieces }: Pattern): readonly Row[] =>
  pieces.flatMap((piece) =>
    piece.marks
      .filter(({ word, row }) => row !== undefined && (word === 'button' || word === 'buttonhole'))
      .map((mark) => ({ piece, mark })),
  );

/** The buttons that bear the same name, on another piece. */
const partnerOf = (holes: Row, rows: readonly Row[]): Row | undefined =>
  rows.find(({ mark }) => mark.word === 'button' && mark.name === holes.mark.name);

/** Further apart than this from one to the next, the row puckers, mm (common practice). */
const ALLOWED = 1;

function unlike(holes: Mark, buttons: Mark, pattern: Pattern): string | undefined {
  const { unit } = pattern;
  const [one, other] = [buttons.points.length, holes.points.length];
  const what = say`${buttons.name} are ${one} buttons`;
  if (one !== other)
    return say`${what}, but ${other} buttonholes: what is buttoned must be the same number. Count them by one value: let button-count = ${one}.`;
  const [a, b] = [buttons.row!.apart, holes.row!.apart];
  if (Math.abs(a - b) <= ALLOWED) return unfit(holes, buttons, pattern);
  return say`${what} ${printLength(a, unit)} apart, and their buttonholes ${printLength(b, unit)} apart (${printLength(ALLOWED, unit)} is allowed): the closed edge puckers. Begin and end both rows at the same levels.`;
}

/** Where both sizes are stated: whether the button goes through. */
function unfit({ size: hole }: Mark, { name, size }: Mark, pattern: Pattern): string | undefined {
  if (hole === undefined || size === undefined) return undefined;
  const range = usualRange(pattern, OVER_BUTTON);
  if (isUsual(range, hole - size)) return undefined;
  const [long, across] = [printLength(hole, pattern.unit), printLength(size, pattern.unit)];
  const why = hole - size < range.low ? say`the button does not go through` : say`the button slips out`;
  return say`The buttonholes of ${name} are ${long} long, and the buttons ${across} across: ${why}. A buttonhole is the longer by the thickness of the button; ${rangeInWords(range, pattern.unit)}.`;
}

const told = (row: Row, other: Row, message: string): SourcedFinding => ({
  source: row.piece.source,
  finding: finding('unlike-buttons', nameOfMark(row.mark), message, {
    piece: row.piece.name,
    related: [
      { source: other.mark.source, message: say`The buttons of ${other.piece.name} are marked here.` },
    ],
  }),
});
