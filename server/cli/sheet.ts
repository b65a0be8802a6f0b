/** `draftwright sheet`: what is written beside a pattern: measuring sheet, cutting list, finished sizes, fitting, sewing order. */
import { say } from '../../grammar/say';
import { basename } from 'node:path';
import { inDialect } from '../../grammar/dialect';
import { check } from '../checks';
import type { Pattern } from '../drafting/model';
import { paperNamed, papers } from '../drawing/paper/papers';
import { SHEET_KINDS, writtenSheet, type SheetKind, type WrittenSheet } from '../drawing/written';
import { toCsv } from '../drawing/written/csv';
import { sheetsJson } from '../drawing/written/json';
import { toMarkdown } from '../drawing/written/markdown';
import { measuresOf } from '../drawing/written/measuring';
import { toText } from '../drawing/written/text';
import { absolute, CLEAN, FAULTY, Unable, type Exit, type Io } from './io';
import { dialectIn } from './language';
import { Bench, type Choice } from './open';
import { pagesIn, sheetsIn } from './print/counts';
import { jsonText } from './print/json';
import { sheetJson } from './print/sheet-json';
import { writeWhole } from './write';

export interface SheetOptions extends Choice {
  readonly kind: SheetKind | 'all';
  readonly format: 'text' | 'json' | 'markdown' | 'csv' | 'pdf';
  readonly paper: string;
  readonly date?: string;
  /** The dialect of the trade. */
  readonly words: string;
  /** The file to write; without it, all but PDF goes to the terminal. */
  readonly output?: string;
}

/** Faults that a measuring sheet is there to mend. */
const EXPECTED: ReadonlySet<string> = new Set(['missing-measurement', 'nobody-to-draft-for']);

export async function runSheet(path: string, options: SheetOptions, io: Io): Promise<Exit> {
  const bench = new Bench(io);
  const { pattern } = bench.open(path, options);
  const { kind } = options;
  const given = options.date === undefined ? {} : { date: options.date };
  const dialect = dialectIn(options.words, io);
  const said = (words: string) => inDialect(dialect, words, () => bench.textsOf(pattern));
  const sheets = (kind === 'all' ? SHEET_KINDS : [kind]).map((one) =>
    everyWord(writtenSheet(one, pattern, given), said),
  );
  if (options.format === 'pdf') await writePdf(path, sheets, options, io);
  else if (options.output === undefined) io.out(printed(sheets, pattern, options, io.width));
  else write(options.output, printed(sheets, pattern, options, FILE_WIDTH), sheets, io);
  const expected = kind === 'measuring' ? EXPECTED : new Set<string>();
  const errors = check(pattern).filter(
    ({ severity, code }) => severity === 'error' && !expected.has(code),
  ).length;
  if (errors === 0) return CLEAN;
  io.err(`${kind === 'measuring' ? mayNeedMore(path, errors) : mayBeWrong(path, errors)}\n`);
  return FAULTY;
}

const mayNeedMore = (path: string, errors: number): string =>
  errors === 1
    ? say`${path} has 1 error; what rests on it may need more. See draftwright check ${path}.`
    : say`${path} has ${errors} errors; what rests on them may need more. See draftwright check ${path}.`;

const mayBeWrong = (path: string, errors: number): string =>
  errors === 1
    ? say`${path} has 1 error; what rests on it is missing or may be wrong. See draftwright check ${path}.`
    : say`${path} has ${errors} errors; what rests on them is missing or may be wrong. See draftwright check ${path}.`;

/** The same with every text in it said otherwise. */
function everyWord<T>(part: T, said: (words: string) => string): T {
  if (typeof part === 'string') return said(part) as T;
  if (Array.isArray(part)) return part.map((one: unknown) => everyWord(one, said)) as T;
  if (typeof part !== 'object' || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([key, one]) => [key, everyWord(one, said)])) as T;
}

/** Columns of a text file: as many as a printer in fixed type puts on an upright page. */
const FILE_WIDTH = 80;

function printed(
  sheets: readonly WrittenSheet[],
  pattern: Pattern,
  { kind, format }: SheetOptions,
  width: number,
): string {
  switch (format) {
    case 'json':
      return jsonText(kind === 'measuring' ? sheetJson(measuresOf(pattern)) : sheetsJson(sheets));
    case 'markdown':
      return sheets.map(toMarkdown).join('\n');
    case 'csv':
      return toCsv(sheets);
    default:
      return sheets.map((sheet) => toText(sheet, width)).join('\n\n');
  }
}

async function writePdf(
  path: string,
  sheets: readonly WrittenSheet[],
  { kind, paper: name, output }: SheetOptions,
  io: Io,
): Promise<void> {
  const paper = paperNamed(name);
  if (paper === undefined)
    throw new Unable(
      say`No paper is called ${name}. Papers are ${papers.map((one) => one.name).join(', ')}.`,
    );
  // the PDF library takes a while to load, and no other format needs it
  const { sheetsPdf } = await import('../drawing/written/pdf');
  const { value, pages } = await sheetsPdf(sheets, paper);
  const file = output ?? `${basename(path).replace(/\.draft$/, '')}-${kind === 'all' ? 'sheets' : kind}.pdf`;
  writeWhole(absolute(io, file), value, file);
  io.out(`${file.split('\\').join('/')}: ${say`${sheetsIn(sheets.length)} on ${pagesIn(pages)}`}\n`);
}

function write(file: string, text: string, sheets: readonly WrittenSheet[], io: Io): void {
  writeWhole(absolute(io, file), text, file);
  io.out(`${file.split('\\').join('/')}: ${sheetsIn(sheets.length)}\n`);
}
