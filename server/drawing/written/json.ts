/** Written sheets as plain data for other programs: what stands in the tables, `null` for a blank. */
import type { WrittenSheet } from './sheet';

const VERSION = 1;

export const sheetsJson = (sheets: readonly WrittenSheet[]): unknown => ({
  version: VERSION,
  sheets: sheets.map(({ kind, heading, words, tables, after }) => ({
    kind,
    heading,
    words,
    tables: tables.map((table) => ({
      heading: table.heading ?? null,
      columns: [...table.columns.map(({ head }) => head), ...(table.beneath ?? [])],
      rows: table.rows.map((row) => [
        ...row.cells,
        ...(table.beneath ?? []).map((_, i) => row.beneath?.[i] ?? ''),
      ]),
    })),
    after,
  })),
});
