/** The table of finished measurements: what the garment measures when it is made up, beside the body, with the ease. */
import { say } from '../../../grammar/say';
import type { DisplayUnit, Pattern } from '../../drafting/model';
import { easeText, lengthText } from './lengths';
import { extentWords, girthsOf, lengthsOf, untold, type Measured } from './measured';
import { columnsFor, headingOf, leftOut, whom, type Given, type Row, type WrittenSheet } from './sheet';

export function finishedSheet(pattern: Pattern, given: Given): WrittenSheet {
  const { unit } = pattern;
  const girths = girthsOf(pattern);
  const lengths = lengthsOf(pattern, girths);
  const columns = columnsFor(['', 'where', 'told of', 'finished', 'body', 'ease'], (_, i) => i > 2);
  const table = (heading: string, rows: readonly Measured[]) =>
    rows.length === 0 ? [] : [{ heading, columns, rows: rows.flatMap((one) => rowsOf(one, unit)) }];
  return {
    kind: 'finished',
    heading: headingOf(titled(pattern), pattern, given),
    words: [
      say`Lengths in ${unit}, on the sewing line, darts and pleats closed. Ease is what the garment has more than the body.`,
      say`A length told of each side (or limb) is there twice, once on each side of the wearer; one of the whole is there once.`,
    ],
    tables: [...table(say`Girths`, girths), ...table(say`Lengths`, lengths)],
    after: [
      ...(whom(pattern) === undefined ? [say`Drafted for nobody, so there is no body to compare with.`] : []),
      ...(girths.length === 0
        ? [say`No girth can be told: no balance line and no edges close round the body.`]
        : []),
      ...untold(pattern, girths),
      ...leftOut(pattern),
    ],
  };
}

const titled = ({ title }: Pattern): string =>
  title === '' ? say`Finished measurements` : say`Finished measurements of ${title}`;

/** Nearer than this two sides are alike, mm. */
const ALIKE = 0.05;

/** One row, or one for each side of the wearer where they differ. */
export function rowsOf({ name, where, of, left, right, body }: Measured, unit: DisplayUnit): readonly Row[] {
  const row = (called: string, finished: number, own: number | undefined): Row => ({
    cells: [
      called,
      where,
      extentWords(of),
      lengthText(finished, unit),
      ...(own === undefined ? ['', ''] : [lengthText(own, unit), easeText(finished - own, unit)]),
    ],
  });
  const sided =
    Math.abs(left - right) > ALIKE || (body !== undefined && Math.abs(body.left - body.right) > ALIKE);
  if (!sided) return [row(name, left, body?.left)];
  return [row(say`${name}, left`, left, body?.left), row(say`${name}, right`, right, body?.right)];
}
