/** The first of the papers that are taped together: test square, map of the others, how to tape them. */
import type { Drawing } from '../model';
import { words, type Font } from './content';
import { inInches } from './papers';
import {
  box,
  datedWords,
  inchContent,
  lineWords,
  noteLines,
  paragraph,
  pieceWords,
  scaleWords,
  sizeKey,
  SQUARE_MM,
  squareContent,
  squareWords,
  THIN,
  titleOf,
  type Line,
  type Told,
} from './sheet-content';
import { MARGIN_MM, OVERLAP_MM, type Tiling } from './tiles';

const LEFT_MM = MARGIN_MM + 5;
const INCH_MM = 25.4;

export function firstContent(drawing: Drawing, tiling: Tiling, told: Told, font: Font): string {
  const { paper } = tiling;
  const wide = paper.width - 2 * LEFT_MM;
  const at = { x: LEFT_MM, y: MARGIN_MM + 12, wide };
  const { content, end } = paragraph(lines(drawing, tiling, told), at, font);
  const key = sizeKey(drawing, { ...at, y: end }, font);
  const top = key.end + 3;
  const side = SQUARE_MM / (told.scale ?? 1);
  const beside = LEFT_MM + side + 15;
  const lying = paper.width > paper.height;
  const inch = inInches(paper) && side === SQUARE_MM;
  const inchRoom = inch ? INCH_MM + 10 : 0;
  const map = lying
    ? { x: beside + inchRoom, y: top, wide: paper.width - beside - inchRoom - LEFT_MM, high: SQUARE_MM }
    : { x: LEFT_MM, y: top + side + 12, wide, high: paper.height - MARGIN_MM - top - side - 18 };
  return [
    ...content,
    ...key.content,
    squareContent(LEFT_MM, top, told, font),
    ...(inch ? [inchContent(LEFT_MM + side + 10, top, font)] : []),
    mapContent(tiling, lying && side < SQUARE_MM ? { ...map, y: top + side + 8, x: LEFT_MM } : map, font),
  ].join('\n');
}

function lines(drawing: Drawing, { tiles, paper }: Tiling, told: Told): readonly Line[] {
  const full = (told.scale ?? 1) === 1;
  const sheets = tiles.length === 1 ? '1 sheet' : `${tiles.length} sheets`;
  const lapping = tiles.length === 1 ? '.' : `, each ${OVERLAP_MM} mm over its neighbour.`;
  const said: readonly Line[] = [
    [titleOf(drawing), 7],
    [full ? '' : scaleWords(told), 10],
    [datedWords(told), 4],
    [pieceWords(drawing), 3.6],
    [`${sheets} of ${paper.name} after this one${lapping}`, 3.6],
    [squareWords(told), 3.6],
    [full ? 'Print at 100 %, never fitted to the page. Measure the square before you cut.' : '', 3.6],
    [
      tiles.length === 1
        ? ''
        : 'Cut each sheet at the frame on its left and upper side, lay it on the line of the one before, cross on cross.',
      3.6,
    ],
    [lineWords(drawing), 3.6],
    ...noteLines(told).map((note): Line => [note, 3.6]),
  ];
  return said.filter(([text]) => text !== '');
}

interface Room {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
}

/** How the papers lie: each with its name, those that stay empty left out. */
function mapContent({ paper, rows, columns, tiles }: Tiling, { x, y, wide, high }: Room, font: Font): string {
  const scale = Math.min(wide / (columns * paper.width), Math.max(high, 20) / (rows * paper.height), 0.12);
  const [w, h] = [paper.width * scale, paper.height * scale];
  const size = Math.min(4.5, h / 2.2, w / 2.2);
  return [
    THIN,
    ...tiles.flatMap(({ row, column, name }) => {
      const middle = { x: x + (column + 0.5) * w, y: y + (row + 0.5) * h + size / 3 };
      return [
        box(x + column * w, y + row * h, w, h),
        words({ text: name, ...middle, size, middle: true }, font),
      ];
    }),
  ].join('\n');
}
