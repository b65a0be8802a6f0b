/** A written sheet as plain lines for a terminal or a text file. */
import { columnsOf, columnWidths, folded, harmless, leastWidths } from './plain';
import { inWordsThroughout, type Column, type Row, type Table, type WrittenSheet } from './sheet';

/** A blank for a pencil, in characters. */
const BLANK = '________';
const BETWEEN = 2;
const BENEATH = '   ';
/** A column of words is not folded narrower than this: two short words stand beside each other. */
const NARROWEST = 11;

export function toText(made: WrittenSheet, width: number): string {
  const sheet = inWordsThroughout(made);
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

/** Columns in which nothing stands take no room that others lack. */
function filled(table: Table, width: number): Table {
  const { columns, rows } = table;
  const texts = (i: number): number => Math.max(...rows.map(({ cells }) => columnsOf(cells[i] ?? BLANK)), 0);
  const sum = columns.reduce((all, { head }, i) => all + Math.max(columnsOf(head), texts(i)) + BETWEEN, 0);
  if (sum - BETWEEN <= width) return table;
  const kept = columns.map(({ figures }, i) => figures === true || rows.some(({ cells }) => cells[i] !== ''));
  return {
    ...table,
    columns: columns.filter((_, i) => kept[i]),
    rows: rows.map((row) => ({ ...row, cells: row.cells.filter((_, i) => kept[i]) })),
  };
}

/** Blocks with an empty line between them: a table is one, or one a row where sentences stand beneath its rows. */
function tableBlocks(table: Table, width: number): string[] {
  const { heading, columns, rows } = filled(table, width);
  const cells = rows.map((row) => row.cells.map((cell) => (cell === null ? BLANK : harmless(cell))));
  const widths = fitted(columns, cells, width);
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

/** Figures are folded between two of them, names where they must be. */
function fitted(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
): readonly number[] {
  const cells = columns.map((_, i) => rows.map((row) => row[i] ?? ''));
  const texts = columns.map(({ head }, i) => [head, ...cells[i]!]);
  const widest = (all: readonly string[]): number => Math.max(0, ...all.map(columnsOf));
  const liked = texts.map(widest);
  const figures = cells.map((one) => widest(one.flatMap((text) => text.split(/(?<=,) /))));
  const room = width - BETWEEN * (columns.length - 1);
  const floor = (i: number): number =>
    columns[i]!.figures === true ? figures[i]! : Math.min(liked[i]!, NARROWEST);
  const least = leastWidths(texts, columnsOf, floor, room);
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
