/** The table of finished measurements: what the garment measures when it is made up, beside the body, with the ease. */
import type { DisplayUnit, Pattern } from '../../drafting/model';
import { easeText, lengthText } from './lengths';
import { girthsOf, lengthsOf, untold, type Measured } from './measured';
import { headingOf, leftOut, whom, type Given, type Row, type WrittenSheet } from './sheet';

export function finishedSheet(pattern: Pattern, given: Given): WrittenSheet {
  const { unit } = pattern;
  const girths = girthsOf(pattern);
  const lengths = lengthsOf(pattern, girths);
  const columns = ['', 'where', 'told of', 'finished', 'body', 'ease'].map((head, i) => ({
    ...{ head },
    ...(i > 2 && { figures: true }),
  }));
  const table = (heading: string, rows: readonly Measured[]) =>
    rows.length === 0 ? [] : [{ heading, columns, rows: rows.flatMap((one) => rowsOf(one, unit)) }];
  return {
    kind: 'finished',
    heading: headingOf('Finished measurements', pattern, given),
    words: [
      `Lengths in ${unit}, on the sewing line, darts and pleats closed. Ease is what the garment has more than the body.`,
      'A length told of each side (or limb) is there twice, once on each side of the wearer; one of the whole is there once.',
    ],
    tables: [...table('Girths', girths), ...table('Lengths', lengths)],
    after: [
      ...(whom(pattern) === undefined ? ['Drafted for nobody, so there is no body to compare with.'] : []),
      ...(girths.length === 0
        ? ['No girth can be told: no balance line and no edges close round the body.']
        : []),
      ...untold(pattern, girths),
      ...leftOut(pattern),
    ],
  };
}

/** Nearer than this two sides are alike, mm. */
const ALIKE = 0.05;

/** One row, or one for each side of the wearer where they differ. */
export function rowsOf({ name, where, of, left, right, body }: Measured, unit: DisplayUnit): readonly Row[] {
  const row = (called: string, finished: number, own: number | undefined): Row => ({
    cells: [
      called,
      where,
      of,
      lengthText(finished, unit),
      ...(own === undefined ? ['', ''] : [lengthText(own, unit), easeText(finished - own, unit)]),
    ],
  });
  const sided =
    Math.abs(left - right) > ALIKE || (body !== undefined && Math.abs(body.left - body.right) > ALIKE);
  if (!sided) return [row(name, left, body?.left)];
  return [row(`${name}, left`, left, body?.left), row(`${name}, right`, right, body?.right)];
}
