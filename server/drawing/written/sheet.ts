/**
 * A written sheet as a small document: a heading, words, and tables with blanks to write in. Whoever makes one (cutting
 * list, fit sheet) knows no printer; the printers (text, Markdown, CSV, JSON, PDF) know no pattern.
 */
import { inWords, say } from '../../../grammar/say';
import type { Pattern } from '../../drafting/model';

export const SHEET_KINDS = ['measuring', 'cutting', 'finished', 'fit', 'sewing'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

/**
 * Heads of columns: English for programs that read a table by them, put into the person's words by whatever prints for a
 * person.
 */
export const HEADS = [
  ...(['piece', 'cut', 'how', 'right side up', 'grain', 'area each', 'area', 'notes'] as const),
  ...(['where', 'told of', 'finished', 'body', 'ease', 'toile', 'body now', 'change to'] as const),
  ...(['look at', 'seen, and what to change', 'allowance', 'inlay', 'let out by'] as const),
  ...(['date', 'by whom', 'what was changed', 'step', 'edges', 'long', 'mind', 'why here'] as const),
  ...(['measurement', 'left or whole', 'right', 'next: left', 'next: right'] as const),
  ...(['what it is', 'how it is taken'] as const),
] as const;
export type Head = (typeof HEADS)[number] | '';

/** A cell; `null` is a blank for a pencil. */
export type Cell = string | null;

export interface Column {
  readonly head: string;
  /** Figures stand to the right, words to the left. */
  readonly figures?: boolean;
}

/** Columns of words, and of figures where `isFigures` says so. */
export const columnsFor = (
  heads: readonly Head[],
  isFigures: (head: Head, index: number) => boolean = () => false,
): readonly Column[] => heads.map((head, i) => ({ head, ...(isFigures(head, i) && { figures: true }) }));

/** The sheet with its heads in the person's words. */
export const inWordsThroughout = (sheet: WrittenSheet): WrittenSheet => ({
  ...sheet,
  tables: sheet.tables.map(({ columns, beneath, ...table }) => ({
    ...table,
    columns: columns.map((column) => ({ ...column, head: inWords(column.head) })),
    ...(beneath && { beneath: beneath.map(inWords) }),
  })),
});

export interface Row {
  readonly cells: readonly Cell[];
  /** Sentences that stand below the row where there is room, and in columns of their own where there is not. */
  readonly beneath?: readonly string[];
}

export interface Table {
  readonly heading?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
  /** What the sentences beneath a row are, for printers that put them into columns. */
  readonly beneath?: readonly string[];
}

export interface WrittenSheet {
  readonly kind: SheetKind;
  /** `Cutting list of Harbour skirt, for ferrywoman`: stands on every page. */
  readonly heading: string;
  /** Sentences below the heading. */
  readonly words: readonly string[];
  readonly tables: readonly Table[];
  /** Sentences at the end: what was left out, and why. */
  readonly after: readonly string[];
  /** Frames to sketch in, each with its name below, before what stands at the end; only where a sheet is printed. */
  readonly frames?: { readonly heading: string; readonly names: readonly string[] };
}

/** What a sheet is given besides the pattern. */
export interface Given {
  /** A day as its author writes it; there is no clock. */
  readonly date?: string;
}

/** `ferrywoman`, `standard M`; undefined where the pattern is drafted for nobody. */
export function whom({ body }: Pick<Pattern, 'body'>): string | undefined {
  if (body === undefined) return undefined;
  return body.size === undefined ? body.name : `${body.name} ${body.size}`;
}

/** What the sheet is (`Cutting list of Harbour skirt`), for whom, of which day. */
export function headingOf(name: string, pattern: Pattern, { date }: Given): string {
  const body = whom(pattern);
  return `${name}${body === undefined ? '' : say`, for ${body}`}${date === undefined ? '' : `, ${date}`}`;
}

/** Says which pieces the text names and the sheet lacks, because an error keeps them from being drawn. */
export function leftOut({ pieceNames, pieces }: Pattern): readonly string[] {
  const sound = new Set(pieces.map(({ source }) => source));
  const lost = pieceNames.filter((name) => !sound.has(name));
  if (lost.length === 0) return [];
  const names = lost.join(', ');
  return [
    lost.length === 1
      ? say`Left out, because it has an error or rests on one: ${names}. See draftwright check.`
      : say`Left out, because they have an error or rest on one: ${names}. See draftwright check.`,
  ];
}

/** Blank rows that a person fills in. */
export const blankRows = (count: number, columns: number): readonly Row[] =>
  Array.from({ length: count }, () => ({ cells: Array.from({ length: columns }, () => null) }));
