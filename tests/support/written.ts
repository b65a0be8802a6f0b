/** Written sheets for the tests: of a text or of a sample, as the model, and their cells row by row. */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Pattern } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';
import { writtenSheet, type Given, type SheetKind, type WrittenSheet } from '../../server/drawing/written';
import { diskDoor } from './door';
import { drafted } from './drafted';
import { root } from './sources';

export const sheetOfText = (kind: SheetKind, text: string, given: Given = {}): WrittenSheet =>
  writtenSheet(kind, drafted(text), given);

export const sheetOfSample = (kind: SheetKind, name: string): WrittenSheet =>
  writtenSheet(kind, patternIn('samples', `${name}.draft`));

/** A pattern of a folder of the repository. */
export function patternIn(folder: string, file: string): Pattern {
  const path = join(root, folder);
  return new Workshop(diskDoor(path)).pattern(pathToFileURL(join(path, file)).href);
}

export const patternsIn = (folder: string): readonly string[] =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.draft'))
    .sort();

/** The cells of all tables of a sheet, row by row, blanks as `_`. */
export const rowsOf = ({ tables }: WrittenSheet): string[][] =>
  tables.flatMap(({ rows }) => rows.map(({ cells }) => cells.map((cell) => cell ?? '_')));

/** Columns of one table by their heads, of the row whose first cell has this name. */
export function rowNamed({ tables }: WrittenSheet, name: string): Readonly<Record<string, string>> {
  for (const { columns, rows } of tables) {
    const row = rows.find(({ cells }) => cells[0] === name);
    if (row !== undefined)
      return Object.fromEntries(columns.map(({ head }, i) => [head, row.cells[i] ?? '_']));
  }
  throw new Error(`no row is called ${name}`);
}
