/** A written sheet as plain lines for a terminal or a text file. */
import { columnsOf, columnWidths, folded, harmless } from './plain';
import type { Column, Row, Table, WrittenSheet } from './sheet';

/** A blank for a pencil, in characters. */
const BLANK = '________';
const BETWEEN = 2;
const BENEATH = '   ';
/** A column is not folded narrower than this: a name would be broken into syllables nobody speaks. */
const NARROWEST = 12;

export function toText(sheet: WrittenSheet, width: number): string {
  const paragraph = (text: string): string => folded(harmless(text), width, columnsOf).join('\n');
  return (
    [
      [sheet.heading, ...sheet.words.slice(0, 1)]
        .map(harmless)
        .filter(Boolean)
        .join('. ')
        .replace(/\.?$/, '.'),
      ...sheet.words.slice(1),
    ]
      .map(paragraph)
      .concat(sheet.tables.flatMap((table) => tableBlocks(table, width)))
      .concat(sheet.after.map(paragraph))
      .join('\n\n') + '\n'
  );
}

/** Blocks with an empty line between them: a table is one, or one a row where sentences stand beneath its rows. */
function tableBlocks({ heading, columns, rows }: Table, width: number): string[] {
  const cells = rows.map((row) => row.cells.map((cell) => (cell === null ? BLANK : harmless(cell))));
  const widths = fitted([columns.map(({ head }) => head), ...cells], width);
  const [head, ...lines] = [columns.map((column) => column.head), ...cells].map((row) =>
    lined(row, columns, widths),
  );
  const title = heading === undefined ? [] : folded(harmless(heading), width, columnsOf);
  if (!rows.some((row) => row.beneath !== undefined))
    return [[...title, ...head!, ...lines.flat()].join('\n')];
  const beneath = ({ beneath: words = [] }: Row): string[] =>
    words
      .filter(Boolean)
      .flatMap((text) =>
        folded(harmless(text), width - BENEATH.length, columnsOf).map((line) => BENEATH + line),
      );
  return [
    [...title, ...head!].join('\n'),
    ...lines.map((line, i) => [...line, ...beneath(rows[i]!)].join('\n')),
  ];
}

function fitted(rows: readonly (readonly string[])[], width: number): number[] {
  const count = Math.max(...rows.map((row) => row.length));
  const each = (of: (text: string) => number): number[] =>
    Array.from({ length: count }, (_, i) => Math.max(0, ...rows.map((row) => of(row[i] ?? ''))));
  const liked = each(columnsOf);
  const longest = each((text) => Math.max(0, ...text.split(/\s+/).map(columnsOf)));
  const least = longest.map((word, i) => Math.min(liked[i]!, Math.max(word, NARROWEST)));
  const room = width - BETWEEN * (count - 1);
  return columnWidths(liked, least, room).map((one) => Math.max(1, Math.floor(one + 1e-9)));
}

/** The lines of one row: each cell folded within its column. */
function lined(row: readonly string[], columns: readonly Column[], widths: readonly number[]): string[] {
  const cells = row.map((cell, i) => folded(cell, widths[i]!, columnsOf));
  const high = Math.max(1, ...cells.map((lines) => lines.length));
  return Array.from({ length: high }, (_, line) =>
    cells
      .map((lines, i) => padded(lines[line] ?? '', widths[i]!, columns[i]?.figures === true))
      .join(' '.repeat(BETWEEN))
      .trimEnd(),
  );
}

function padded(text: string, width: number, right: boolean): string {
  const room = ' '.repeat(Math.max(0, width - columnsOf(text)));
  return right ? room + text : text + room;
}
