/** The measuring sheet on paper: a line a measurement with left and right, blanks for the next time, and how it is taken. */
import { harmless, table, wrapped } from './ink';
import { lengthText } from './measure-text';
import type { MeasuringSheet, SheetLine } from './sheet';

const BLANK = '________';
const HEADS = ['', 'left or whole', 'right', 'next: left', 'right'];

export function sheetText(sheet: MeasuringSheet, { width }: { readonly width: number }): string {
  const { lines } = sheet;
  if (lines.length === 0) return `${titleOf(sheet)} needs no measurements.\n`;
  const rows = table([HEADS, ...lines.map((line, i) => row(line, i, sheet))]);
  const blocks = lines.map((line, i) => [rows[i + 1]!, ...words(line, width)].join('\n'));
  return (
    [
      wrapped(headline(sheet), width),
      `Taken over ${BLANK.repeat(2)}  on ${BLANK}  by ${BLANK}`,
      rows[0]!,
      ...blocks,
    ].join('\n\n') + '\n'
  );
}

const titleOf = ({ title }: MeasuringSheet): string => (title === '' ? 'This pattern' : harmless(title));

function headline(sheet: MeasuringSheet): string {
  const { body, taken, unit } = sheet;
  const whom = body === null ? ', for nobody yet' : `, for ${harmless(body)}`;
  const when = taken === null ? '' : `, last taken ${taken}`;
  return `Measuring sheet${sheet.title === '' ? '' : ` of ${titleOf(sheet)}`}${whom}${when}. Lengths in ${unit}.`;
}

function row(
  { name, left, right, sided }: SheetLine,
  index: number,
  { unit }: MeasuringSheet,
): readonly string[] {
  const shown = (mm: number | null): string => (mm === null ? BLANK : lengthText(mm, unit));
  return [`${index + 1}. ${name}`, shown(left), sided || left === null ? shown(right) : '', BLANK, BLANK];
}

/** What it is and how it is taken; the words of the pattern's author as they are. */
function words({ definition, how }: SheetLine, width: number): readonly string[] {
  return [definition, how].filter(Boolean).map((text) => wrapped(harmless(text), width, '   '));
}
