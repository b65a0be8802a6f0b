/** What stands on paper beside the drawing: the test square, the heading of a large sheet, the frame and crosses of a small one. */
import { say } from '../../../grammar/say';
import { lineTypeOf, lineTypes } from '../lines';
import type { Drawing } from '../model';
import { titleOf } from '../told';
import { number, stroke, words, type Font } from './content';
import { crossContent } from './crosses';
import { MARGIN_MM, OVERLAP_MM, type Tile, type Tiling } from './tiles';

/** What is told of the whole print. */
export interface Told {
  /** 5 for one to five; 1 unless told. */
  readonly scale?: number;
  /** As the person gives them: nothing is taken from a clock. */
  readonly date?: string;
  readonly revision?: string;
  /** What is not whole, in sentences. */
  readonly notes?: readonly string[];
}

/** Side of the test square in full size, mm; its frame is drawn so that the middle of the line is measured. */
export const SQUARE_MM = 100;
const INCH_MM = 25.4;

export const THIN = '0.25 w [] 0 d';
const FINE = '0.13 w [] 0 d';

export const box = (x: number, y: number, wide: number, high: number): string =>
  `${[x, y, wide, high].map(number).join(' ')} re S`;

/** "2026-11-28, revision 3"; empty where neither is given. */
export const datedWords = ({ date, revision }: Told): string =>
  [date, revision && say`revision ${revision}`].filter(Boolean).join(', ');

/** What the small square of a smaller print is good for; empty in full size. */
export const squareWords = ({ scale = 1 }: Told): string =>
  scale === 1
    ? ''
    : say`The square is ${number(SQUARE_MM / scale)} mm wide on paper and stands for 100 mm of cloth.`;

export const scaleWords = ({ scale = 1 }: Told): string => say`scale 1:${number(scale)}, not for cutting`;

/** On the paper of one tile, from its top left corner, mm. */
export function tileContent(drawing: Drawing, tiling: Tiling, tile: Tile, told: Told, font: Font): string {
  const { paper, tiles, marks } = tiling;
  const own = marks.filter(({ between }) => between.includes(tile.name));
  // in the white below the frame, where no line of a piece is; most printers leave less than 5 mm (*common practice*)
  const right = paper.width - MARGIN_MM - font.widthOf(tile.name) * 5;
  const line = [
    titleOf(drawing),
    datedWords(told),
    say`sheet ${tile.name}`,
    say`${tiles.indexOf(tile) + 1} of ${tiles.length}`,
    ...((told.scale ?? 1) === 1 ? [] : [scaleWords(told)]),
  ].filter((part) => part !== '');
  return [
    FINE,
    ...frameLines(tiling, tile),
    THIN,
    ...own.map((mark) => crossContent(mark, tile, font)),
    words({ text: line.join(', '), x: MARGIN_MM, y: paper.height - MARGIN_MM + 4.2, size: 3 }, font),
    words({ text: tile.name, x: right, y: paper.height - MARGIN_MM + 4.6, size: 5 }, font),
  ].join('\n');
}

/**
 * The frame on the sides that another sheet lies on, and where that one will end on this. On the others there is none, so
 * that it is not taken for a line of a piece.
 */
function frameLines({ paper, tiles }: Tiling, { row, column }: Tile): string[] {
  const has = (r: number, c: number): boolean => tiles.some((one) => one.row === r && one.column === c);
  const [left, top] = [MARGIN_MM, MARGIN_MM];
  const [right, bottom] = [paper.width - MARGIN_MM, paper.height - MARGIN_MM];
  const upright = (x: number): string => stroke(x, top, x, bottom);
  const level = (y: number): string => stroke(left, y, right, y);
  return [
    ...(has(row, column - 1) ? [upright(left)] : []),
    ...(has(row - 1, column) ? [level(top)] : []),
    ...(has(row, column + 1) ? [upright(right), upright(right - OVERLAP_MM)] : []),
    ...(has(row + 1, column) ? [level(bottom), level(bottom - OVERLAP_MM)] : []),
  ];
}

/** In full size 100 mm; made smaller with the drawing, its side on paper and what it stands for. */
export function squareContent(x: number, y: number, { scale = 1 }: Told, font: Font): string {
  const side = SQUARE_MM / scale;
  const line = `${number(lineTypes.sewing.weight)} w [] 0 d`;
  if (scale === 1) {
    const middle = x + side / 2;
    return [
      line,
      box(x, y, side, side),
      words({ text: say`100 mm by 100 mm`, x: middle, y: y + 48, size: 7, middle: true }, font),
      words({ text: say`measure before you cut`, x: middle, y: y + 57, size: 4.5, middle: true }, font),
    ].join('\n');
  }
  return [line, box(x, y, side, side)].join('\n');
}

/** For papers in inches, beside the other. */
export const inchContent = (x: number, y: number, font: Font): string =>
  [
    `${number(lineTypes.sewing.weight)} w [] 0 d`,
    box(x, y, INCH_MM, INCH_MM),
    words({ text: say`1 in by 1 in`, x: x + INCH_MM / 2, y: y + 14, size: 3.2, middle: true }, font),
  ].join('\n');

/** Which line is which: in a nest every size has a look of its own. */
export const lineWords = ({ sizes }: Pick<Drawing, 'sizes'>): string =>
  sizes === undefined
    ? say`The finished size is the thin dashed line; the thick line is where the shears go.`
    : say`Each size is cut along its own line; a reader of PDF shows and hides the sizes as layers.`;

export const printWords = (): string =>
  say`Print at 100 %, never fitted to the page. Measure the square before you cut.`;

const [KEY_MM, KEY_LINE_MM] = [36, 18];

/** How the line of each size looks, side by side. */
export function sizeKey(
  { sizes = [] }: Pick<Drawing, 'sizes'>,
  at: { readonly x: number; readonly y: number; readonly wide: number },
  font: Font,
): { readonly content: readonly string[]; readonly end: number } {
  if (sizes.length === 0) return { content: [], end: at.y };
  const across = Math.max(1, Math.floor(at.wide / KEY_MM));
  const content = sizes.flatMap((size, i) => {
    const x = at.x + (i % across) * KEY_MM;
    const y = at.y + 2 + Math.floor(i / across) * 6;
    const { weight, dash } = lineTypeOf({ role: 'cutting', ofSize: size }, sizes);
    return [
      `${number(weight)} w [${dash.map(number).join(' ')}] 0 d`,
      stroke(x, y - 1.2, x + KEY_LINE_MM, y - 1.2),
      words({ text: size, x: x + KEY_LINE_MM + 2, y, size: 3.6 }, font),
    ];
  });
  return { content, end: at.y + 2 + Math.ceil(sizes.length / across) * 6 };
}

export type Line = readonly [text: string, size: number];

/** Lines of text, each folded to a width; `end` is where the next would begin. */
export function paragraph(
  lines: readonly Line[],
  at: { readonly x: number; readonly y: number; readonly wide: number },
  font: Font,
): { readonly content: readonly string[]; readonly end: number } {
  let y = at.y;
  const content = lines.flatMap(([text, size]) =>
    wrapped(text, size, at.wide, font).map((one) => {
      const drawn = words({ text: one, x: at.x, y, size }, font);
      y += size * 1.5;
      return drawn;
    }),
  );
  return { content, end: y };
}

export function wrapped(text: string, size: number, wide: number, font: Font): string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const longer = [lines[lines.length - 1]!, word].filter(Boolean).join(' ');
    if (lines[lines.length - 1] !== '' && font.widthOf(longer) * size > wide) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}

/** Of what is not whole so much is told, and how much more there is. */
const MOST_NOTES = 6;

export const noteLines = ({ notes = [] }: Told): readonly string[] =>
  notes.length <= MOST_NOTES
    ? notes
    : [...notes.slice(0, MOST_NOTES), say`and ${notes.length - MOST_NOTES} more: see draftwright check.`];

const BESIDE_MM = 10;
/** Room for words beside the test square, at least. */
const WORDS_MM = 80;

/** How wide the heading of a sheet is that is as wide as its drawing. */
export const headingWide = ({ frame }: Drawing, { scale = 1 }: Told): number =>
  Math.max(SQUARE_MM / scale + BESIDE_MM + WORDS_MM, frame.right - frame.left);

/** How high the heading is, mm. */
export function headingHigh(drawing: Drawing, told: Told, wide: number, font: Font): number {
  const side = SQUARE_MM / (told.scale ?? 1);
  const at = wordsAt(0, 0, wide, side);
  const { end: y } = paragraph(headingLines(drawing, told, say`sheet ${1} of ${1}`), at, font);
  return Math.max(side, sizeKey(drawing, { ...at, y }, font).end);
}

const wordsAt = (x: number, y: number, wide: number, side: number) => ({
  x: x + side + BESIDE_MM,
  y: y + 7,
  wide: wide - side - BESIDE_MM,
});

function headingLines(
  drawing: Pick<Drawing, 'title' | 'body' | 'pieces' | 'sizes'>,
  told: Told,
  which: string,
): readonly Line[] {
  const notes = noteLines(told).map((note): Line => [note, 3.6]);
  const lines: Line[] =
    (told.scale ?? 1) === 1
      ? [
          [titleOf(drawing), 7],
          [datedWords(told), 4],
          [which, 4],
          [pieceWords(drawing), 3.6],
          [printWords(), 3.6],
          [lineWords(drawing), 3.6],
          ...notes,
        ]
      : [
          [titleOf(drawing), 5],
          [[scaleWords(told), datedWords(told), which].filter(Boolean).join('; '), 4],
          [pieceWords(drawing), 3],
          [squareWords(told), 3],
          [lineWords(drawing), 3],
          ...notes,
        ];
  return lines.filter(([text]) => text !== '');
}

export function pieceWords({ pieces }: Pick<Drawing, 'pieces'>): string {
  const names = pieces.map(({ name }) => name).join(', ');
  return pieces.length === 1 ? say`1 piece: ${names}` : say`${pieces.length} pieces: ${names}`;
}

/** The test square and, beside it, what is printed: for a sheet as large as the drawing. */
export function headingContent(
  drawing: Drawing,
  told: Told,
  {
    x,
    y,
    wide,
    which,
  }: { readonly x: number; readonly y: number; readonly wide: number; readonly which: string },
  font: Font,
): string {
  const side = SQUARE_MM / (told.scale ?? 1);
  const at = wordsAt(x, y, wide, side);
  const { content, end } = paragraph(headingLines(drawing, told, which), at, font);
  const key = sizeKey(drawing, { ...at, y: end }, font);
  return [squareContent(x, y, told, font), ...content, ...key.content].join('\n');
}
