/** What stands on every paper beside its part of the drawing, and the first paper: test square, map, how to tape. */
import { lineTypes } from '../lines';
import type { Drawing } from '../model';
import { number, words, type Font } from './content';
import { MARGIN_MM, OVERLAP_MM, type MatchMark, type Tile, type Tiling } from './tiles';

/** Side of the test square, mm; its frame is drawn so that the middle of the line is measured. */
export const SQUARE_MM = 100;

const CROSS_MM = 4;
const THIN = '0.25 w [] 0 d';
const FINE = '0.13 w [] 0 d';

const box = (x: number, y: number, wide: number, high: number): string =>
  `${[x, y, wide, high].map(number).join(' ')} re S`;
const stroke = (x1: number, y1: number, x2: number, y2: number): string =>
  `${number(x1)} ${number(y1)} m ${number(x2)} ${number(y2)} l S`;

/** On the paper of one tile, from its top left corner, mm. */
export function tileContent(drawing: Drawing, tiling: Tiling, tile: Tile, font: Font): string {
  const { paper, tiles, marks } = tiling;
  const [wide, high] = [paper.width - 2 * MARGIN_MM, paper.height - 2 * MARGIN_MM];
  const own = marks.filter(({ between }) => between.includes(tile.name));
  // in the strip that the next sheet lies over: no printer cuts it off, and no line of a piece is hidden for long
  const right = paper.width - MARGIN_MM - 2 - font.widthOf(tile.name) * 7;
  const line = `${titleOf(drawing)}, sheet ${tile.name}, ${tiles.indexOf(tile) + 1} of ${tiles.length}`;
  return [
    FINE,
    box(MARGIN_MM, MARGIN_MM, wide, high),
    ...lapLines(tiling, tile),
    THIN,
    ...own.map((mark) => crossContent(mark, tile, font)),
    words({ text: line, x: MARGIN_MM + 2, y: paper.height - MARGIN_MM - 2, size: 3 }, font),
    words({ text: tile.name, x: right, y: paper.height - MARGIN_MM - 2, size: 7 }, font),
  ].join('\n');
}

/** Where the paper to the right and the one below will end on this one. */
function lapLines({ paper, tiles }: Tiling, { row, column }: Tile): string[] {
  const has = (r: number, c: number): boolean => tiles.some((one) => one.row === r && one.column === c);
  const [right, bottom] = [paper.width - MARGIN_MM - OVERLAP_MM, paper.height - MARGIN_MM - OVERLAP_MM];
  return [
    ...(has(row, column + 1) ? [stroke(right, MARGIN_MM, right, paper.height - MARGIN_MM)] : []),
    ...(has(row + 1, column) ? [stroke(MARGIN_MM, bottom, paper.width - MARGIN_MM, bottom)] : []),
  ];
}

function crossContent({ at, between }: MatchMark, { frame }: Tile, font: Font): string {
  const [x, y] = [at.x - frame.left + MARGIN_MM, at.y - frame.top + MARGIN_MM];
  return [
    stroke(x - CROSS_MM, y, x + CROSS_MM, y),
    stroke(x, y - CROSS_MM, x, y + CROSS_MM),
    words({ text: between.join(' '), x, y: y - CROSS_MM - 1, size: 2.4, middle: true }, font),
  ].join('\n');
}

const titleOf = ({ title, body }: Drawing): string =>
  [title || 'Pattern', body && `for ${body}`].filter(Boolean).join(', ');

/** The first paper. */
export function firstContent(drawing: Drawing, tiling: Tiling, font: Font): string {
  const { tiles, paper } = tiling;
  const left = MARGIN_MM + 5;
  const pieces = drawing.pieces.map(({ name }) => name).join(', ');
  const lines: readonly (readonly [string, number])[] = [
    [titleOf(drawing), 7],
    [`${drawing.pieces.length} pieces: ${pieces}`, 3.6],
    [
      `${tiles.length} sheets of ${paper.name} after this one, each ${OVERLAP_MM} mm over its neighbour.`,
      3.6,
    ],
    ['Print at 100 %, never fitted to the page. Measure the square before you cut.', 3.6],
    [
      'Cut each sheet at the frame on its left and upper side, lay it on the line of the one before, cross on cross.',
      3.6,
    ],
    ['The finished size is the thin dashed line; the thick line is where the shears go.', 3.6],
  ];
  let y = MARGIN_MM + 12;
  const texts = lines.flatMap(([text, size]) => {
    const folded = wrapped(text, size, paper.width - 2 * left, font);
    return folded.map((one) => {
      const drawn = words({ text: one, x: left, y, size }, font);
      y += size * 1.5;
      return drawn;
    });
  });
  const top = y + 3;
  const room = paper.height - MARGIN_MM - top - SQUARE_MM - 18;
  const beside = paper.width > paper.height;
  const map = beside
    ? mapContent(
        tiling,
        left + SQUARE_MM + 15,
        top,
        paper.width - left - SQUARE_MM - 15 - left,
        SQUARE_MM,
        font,
      )
    : mapContent(tiling, left, top + SQUARE_MM + 12, paper.width - 2 * left, room, font);
  return [...texts, squareContent(left, top, font), map].join('\n');
}

export function squareContent(x: number, y: number, font: Font): string {
  const middle = x + SQUARE_MM / 2;
  return [
    `${number(lineTypes.sewing.weight)} w [] 0 d`,
    box(x, y, SQUARE_MM, SQUARE_MM),
    words({ text: '100 mm by 100 mm', x: middle, y: y + 48, size: 7, middle: true }, font),
    words({ text: 'measure before you cut', x: middle, y: y + 57, size: 4.5, middle: true }, font),
  ].join('\n');
}

/** How the papers lie: each with its name, those that stay empty left out. */
function mapContent(
  { paper, rows, columns, tiles }: Tiling,
  x: number,
  y: number,
  wide: number,
  high: number,
  font: Font,
): string {
  const scale = Math.min(wide / (columns * paper.width), high / (rows * paper.height), 0.12);
  const [w, h] = [paper.width * scale, paper.height * scale];
  const size = Math.min(4.5, h / 2.2, w / 2.2);
  return [
    THIN,
    ...tiles.flatMap(({ row, column, name }) => [
      box(x + column * w, y + row * h, w, h),
      words(
        { text: name, x: x + (column + 0.5) * w, y: y + (row + 0.5) * h + size / 3, size, middle: true },
        font,
      ),
    ]),
  ].join('\n');
}

function wrapped(text: string, size: number, wide: number, font: Font): string[] {
  const lines: string[] = [''];
  for (const word of text.split(' ')) {
    const longer = [lines[lines.length - 1]!, word].filter(Boolean).join(' ');
    if (lines[lines.length - 1] !== '' && font.widthOf(longer) * size > wide) lines.push(word);
    else lines[lines.length - 1] = longer;
  }
  return lines;
}
