/**
 * Lays written sheets out on pages: folds words and cells, breaks between rows, says again on every page what it belongs
 * to. Answers the operators of each page, in millimetres from the upper left corner, y down.
 */
import { say } from '../../../grammar/say';
import { number, words, type Font } from '../paper/content';
import type { Paper } from '../paper/papers';
import { columnWidths, folded, harmless, leastWidths } from './plain';
import type { Column, Row, Table, WrittenSheet } from './sheet';

const MARGIN_MM = 18;
/** Sizes of type, mm: about 15, 11, 10 and 9 points. */
const HEADING = 5.2;
const PART = 3.9;
const PLAIN = 3.5;
const CELL = 3.15;
const LEADING = 1.36;
const BETWEEN = 3.5;
/** Room to write in by hand: lines of a school exercise book are 8 mm apart. */
const BLANK_HIGH = 8;
const BLANK_WIDE = 22;
/** A column to write sentences into. */
const ROOMY = 60;
const NARROWEST = 14;
const FRAME_HIGH = 92;
const THIN = '0.18 w [] 0 d';
const FINE = '0.1 w [] 0 d';

export function pagesOf(sheets: readonly WrittenSheet[], paper: Paper, font: Font): readonly string[] {
  const pages = sheets.flatMap((sheet) => {
    const flow = new Flow(sheet, paper, font);
    flow.set();
    return flow.pages.map((content) => ({ content, heading: sheet.heading }));
  });
  const foot = paper.height - MARGIN_MM / 2;
  const right = paper.width - MARGIN_MM;
  return pages.map(({ content, heading }, i) => {
    const count = say`page ${i + 1} of ${pages.length}`;
    const room = right - MARGIN_MM - font.widthOf(count) * CELL - BETWEEN;
    const [name = ''] = folded(shown(heading), room, (text) => font.widthOf(text) * CELL);
    return [
      ...content,
      words({ text: name, x: MARGIN_MM, y: foot, size: CELL }, font),
      words({ text: count, x: right - font.widthOf(count) * CELL, y: foot, size: CELL }, font),
    ].join('\n');
  });
}

const shown = (text: string): string => harmless(text).replace(/\s+/g, ' ');

/** One sheet on its way down the pages. */
class Flow {
  readonly pages: string[][] = [[]];
  private y = MARGIN_MM;
  private readonly left = MARGIN_MM;
  private readonly width: number;
  private readonly bottom: number;

  constructor(
    private readonly sheet: WrittenSheet,
    paper: Paper,
    private readonly font: Font,
  ) {
    this.width = paper.width - 2 * MARGIN_MM;
    this.bottom = paper.height - MARGIN_MM;
  }

  set(): void {
    this.paragraph(this.sheet.heading, HEADING);
    this.y += 1.5;
    for (const text of this.sheet.words) this.paragraph(text, PLAIN);
    for (const table of this.sheet.tables) this.table(table);
    if (this.sheet.frames !== undefined) this.frames(this.sheet.frames);
    this.y += 2;
    for (const text of this.sheet.after) this.paragraph(text, PLAIN);
  }

  private put(...content: readonly string[]): void {
    this.pages.at(-1)!.push(...content);
  }

  private turnOver(): void {
    this.pages.push([]);
    this.y = MARGIN_MM;
  }

  private fold(text: string, width: number, size: number): string[] {
    return folded(shown(text), width, (part) => this.font.widthOf(part) * size);
  }

  private paragraph(text: string, size: number): void {
    for (const line of this.fold(text, this.width, size)) {
      if (this.y + size * LEADING > this.bottom) {
        this.turnOver();
        this.paragraph(this.sheet.heading, PLAIN);
      }
      this.y += size * LEADING;
      this.put(words({ text: line, x: this.left, y: this.y, size }, this.font));
    }
    this.y += size * 0.55;
  }

  private table(table: Table): void {
    const widths = this.widthsOf(table);
    const rows = table.rows.map((row) => this.rowOf(row, table, widths));
    const head = this.rowOf({ cells: table.columns.map((column) => column.head) }, table, widths);
    this.y += 4;
    this.tableHead(table, head, rows[0]?.high ?? 0, '');
    for (const row of rows) {
      if (this.y + row.high > this.bottom) {
        this.turnOver();
        this.paragraph(this.sheet.heading, PLAIN);
        this.tableHead(table, head, row.high, say`, continued`);
      }
      this.put(...row.at(this.y));
      this.y += row.high;
      if (row.ruled) this.put(FINE, this.rule());
    }
  }

  private tableHead({ heading }: Table, head: Laid, first: number, more: string): void {
    const high = (heading === undefined ? 0 : PART * LEADING + 1.2) + head.high + first;
    if (this.y + high > this.bottom && this.y > MARGIN_MM + HEADING * 3) this.turnOver();
    if (heading !== undefined) this.paragraph(heading + more, PART);
    this.put(...head.at(this.y));
    this.y += head.high;
    this.put(THIN, this.rule());
  }

  private rule(): string {
    return stroke(this.left, this.y, this.left + this.width, this.y);
  }

  /** What the columns would like, fitted into the page; what is left goes to those that are written into. */
  private widthsOf({ columns, rows }: Table): number[] {
    const wide = (text: string): number => this.font.widthOf(text) * CELL;
    const texts = (i: number): string[] => [
      columns[i]!.head,
      ...rows.map(({ cells }) => shown(cells[i] ?? '')),
    ];
    const blank = (i: number): number =>
      !rows.some(({ cells }) => cells[i] === null) ? 0 : columns[i]!.figures === true ? BLANK_WIDE : ROOMY;
    const liked = columns.map((_, i) => Math.max(blank(i), ...texts(i).map(wide)));
    const room = this.width - BETWEEN * (columns.length - 1);
    const floor = (i: number): number => Math.min(liked[i]!, Math.max(blank(i) / 2, NARROWEST));
    const least = leastWidths(
      columns.map((_, i) => texts(i)),
      wide,
      floor,
      room,
    );
    const widths = columnWidths(liked, least, room);
    const over = room - widths.reduce((a, b) => a + b, 0);
    const open = columns.flatMap((column, i) => (blank(i) > 0 && column.figures !== true ? [i] : []));
    return widths.map((one, i) => (open.includes(i) ? one + over / open.length : one));
  }

  private rowOf({ cells, beneath = [] }: Row, { columns }: Table, widths: readonly number[]): Laid {
    const lines = columns.map((_, i) => this.fold(cells[i] ?? '', widths[i]!, CELL));
    const under = beneath.filter(Boolean).flatMap((text) => this.fold(text, this.width - 6, CELL));
    const blank = columns.some((_, i) => cells[i] === null);
    const text = Math.max(...lines.map(({ length }) => length)) * CELL * LEADING;
    const top = Math.max(text + 2, blank ? BLANK_HIGH : 0);
    const high = top + (under.length > 0 ? under.length * CELL * LEADING + 1.5 : 0);
    const rows = Math.max(...lines.map(({ length }) => length));
    const base = blank && rows === 1 ? top - 2 : CELL * LEADING;
    return {
      high,
      ruled: !blank || under.length > 0,
      at: (y) => [
        ...columns.flatMap((column, i) =>
          this.cell(lines[i]!, cells[i] === null, column, { i, widths, y, top, base }),
        ),
        ...under.map((line, i) =>
          words(
            { text: line, x: this.left + 6, y: y + top + (i + 0.85) * CELL * LEADING, size: CELL },
            this.font,
          ),
        ),
      ],
    };
  }

  private cell(lines: readonly string[], blank: boolean, { figures }: Column, place: CellPlace): string[] {
    const { i, widths, y, top, base } = place;
    const x = this.left + widths.slice(0, i).reduce((a, b) => a + b + BETWEEN, 0);
    const wide = widths[i]!;
    if (blank) return [FINE, stroke(x, y + top - 1.6, x + wide, y + top - 1.6)];
    const first = y + base;
    return lines
      .filter((line) => line !== '')
      .map((text, n) => {
        const at = figures === true ? x + wide - this.font.widthOf(text) * CELL : x;
        return words({ text, x: at, y: first + n * CELL * LEADING, size: CELL }, this.font);
      });
  }

  /** Boxes beside each other, to sketch in; higher on a page of their own. */
  private frames({ heading, names }: NonNullable<WrittenSheet['frames']>): void {
    this.y += 4;
    const fresh = this.y + FRAME_HIGH + 3 * PART * LEADING > this.bottom;
    if (fresh) this.turnOver();
    if (fresh) this.paragraph(this.sheet.heading, PLAIN);
    this.paragraph(heading, PART);
    const high = fresh ? FRAME_HIGH * 1.5 : FRAME_HIGH;
    const wide = (this.width - BETWEEN * (names.length - 1)) / names.length;
    names.forEach((name, i) => {
      const x = this.left + i * (wide + BETWEEN);
      const below = this.y + high + PLAIN * LEADING;
      this.put(
        `${FINE} ${[x, this.y, wide, high].map(number).join(' ')} re S`,
        words({ text: name, x: x + wide / 2, y: below, size: PLAIN, middle: true }, this.font),
      );
    });
    this.y += high + 2 * PLAIN * LEADING;
  }
}

interface Laid {
  readonly high: number;
  /** A line below it; a row that ends in lines to write on needs none. */
  readonly ruled: boolean;
  at(y: number): readonly string[];
}

interface CellPlace {
  readonly i: number;
  readonly widths: readonly number[];
  readonly y: number;
  /** Height of the cells, and of the first base line in them. */
  readonly top: number;
  readonly base: number;
}

const stroke = (x1: number, y1: number, x2: number, y2: number): string =>
  `${number(x1)} ${number(y1)} m ${number(x2)} ${number(y2)} l S`;
