/**
 * Written sheets as comma-separated values by RFC 4180: lines end in CR LF, every record has the same number of fields, a
 * field with a comma, a quote or a line end stands in quotes. The sheet and its part lead each record, so that several
 * tables can stand in one file; each table begins with its own heads.
 */
import type { Table, WrittenSheet } from './sheet';

export function toCsv(sheets: readonly WrittenSheet[]): string {
  const records = sheets.flatMap((sheet) => sheet.tables.flatMap((table) => recordsOf(sheet, table)));
  const wide = Math.max(0, ...records.map((fields) => fields.length));
  return records
    .map((fields) => [...fields, ...Array<string>(wide - fields.length).fill('')])
    .map((fields) => `${fields.map(field).join(',')}\r\n`)
    .join('');
}

function recordsOf(sheet: WrittenSheet, { heading = '', columns, rows, beneath = [] }: Table): string[][] {
  return [
    ['sheet', 'part', ...columns.map(({ head }) => head), ...beneath],
    ...rows.map((row) => [
      sheet.heading,
      heading,
      ...columns.map((_, i) => row.cells[i] ?? ''),
      ...beneath.map((_, i) => row.beneath?.[i] ?? ''),
    ]),
  ];
}

const NUMBER = /^[-+]?\d+(\.\d+)?$/;

/**
 * A table program reads a field that begins with one of these signs as something to compute: an apostrophe before it keeps
 * a label a label. Numbers stay numbers.
 */
const COMPUTED = /^[=+\-@\t\r]/;

function field(text: string): string {
  const plain = COMPUTED.test(text) && !NUMBER.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(plain) ? `"${plain.replace(/"/g, '""')}"` : plain;
}
