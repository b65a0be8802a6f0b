/** The first of the papers that are taped together: test square, map of the others, how to tape them. */
import { say } from '../../../grammar/say';
import type { Drawing, Spot } from '../model';
import type { Font } from './content';
import { leftOut, mapContent, mapScale, missedOut, type Room } from './map';
import { titleOf } from '../told';
import { inInches } from './papers';
import {
  datedWords,
  inchContent,
  lineWords,
  noteLines,
  paragraph,
  pieceWords,
  printWords,
  scaleWords,
  sizeKey,
  SQUARE_MM,
  squareContent,
  squareWords,
  type Line,
  type Told,
} from './sheet-content';
import { MARGIN_MM, OVERLAP_MM, type Tiling } from './tiles';

const LEFT_MM = MARGIN_MM + 5;
/** Between the test square and what stands beside or below it. */
const BETWEEN_MM = 10;
const INCH_MM = 25.4;

export function firstContent(drawing: Drawing, tiling: Tiling, told: Told, font: Font): string {
  const { paper } = tiling;
  const wide = paper.width - 2 * LEFT_MM;
  const at = { x: LEFT_MM, y: MARGIN_MM + 12, wide };
  const { content, end } = paragraph(lines(drawing, tiling, told), at, font);
  const key = sizeKey(drawing, { ...at, y: end }, font);
  const top = key.end + 3;
  const side = SQUARE_MM / (told.scale ?? 1);
  const { map, inch } = places(tiling, top, side, inInches(paper) && side === SQUARE_MM);
  return [
    ...content,
    ...key.content,
    squareContent(LEFT_MM, top, told, font),
    ...(inch === undefined ? [] : [inchContent(inch.x, inch.y, font)]),
    mapContent(drawing, tiling, map, font),
  ].join('\n');
}

/** The map below the test square or beside it, wherever it is largest; the square of an inch in another place. */
function places(
  tiling: Tiling,
  top: number,
  side: number,
  inches: boolean,
): { readonly map: Room; readonly inch: Spot | undefined } {
  const { width, height } = tiling.paper;
  const [right, foot] = [LEFT_MM + side + BETWEEN_MM, top + side + BETWEEN_MM];
  const bottom = height - MARGIN_MM - 4;
  const from = (x: number, y: number): Room => ({ x, y, wide: width - LEFT_MM - x, high: bottom - y });
  const [beside, below] = [
    { x: right, y: top },
    { x: LEFT_MM, y: foot },
  ];
  const ways = [
    { map: from(below.x, below.y), inch: beside },
    ...(!inches || foot + INCH_MM < bottom ? [{ map: from(beside.x, beside.y), inch: below }] : []),
    // on a low sheet the one square beside the other, and the map beside both
    { map: from(right + INCH_MM + BETWEEN_MM, top), inch: beside },
  ];
  const { map, inch } = ways.reduce((a, b) => (mapScale(tiling, b.map) > mapScale(tiling, a.map) ? b : a));
  return { map, inch: inches ? inch : undefined };
}

function lines(drawing: Drawing, tiling: Tiling, told: Told): readonly Line[] {
  const { tiles, paper } = tiling;
  const full = (told.scale ?? 1) === 1;
  const missed = missedOut(tiling);
  const sheets =
    tiles.length === 1
      ? say`1 sheet of ${paper.name} after this one.`
      : say`${tiles.length} sheets of ${paper.name} after this one, each ${OVERLAP_MM} mm over its neighbour.`;
  const said: readonly Line[] = [
    [titleOf(drawing), 7],
    [full ? '' : scaleWords(told), 10],
    [datedWords(told), 4],
    [pieceWords(drawing), 3.6],
    [sheets, 3.6],
    [squareWords(told), 3.6],
    [full ? printWords() : '', 3.6],
    [
      tiles.length === 1
        ? ''
        : say`Cut each sheet at the frame on its left and upper side, lay it on the line of the one before, cross on cross.`,
      3.6,
    ],
    [
      leftOut(tiling).length === 0
        ? ''
        : say`Sheets in a dashed frame on the map are empty and not printed: lay plain paper in, or leave a hole.`,
      3.6,
    ],
    [
      missed === undefined
        ? ''
        : say`Sheets that the map leaves out, such as ${missed}, would be empty and are not printed.`,
      3.6,
    ],
    [lineWords(drawing), 3.6],
    ...noteLines(told).map((note): Line => [note, 3.6]),
  ];
  return said.filter(([text]) => text !== '');
}
