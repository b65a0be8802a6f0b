/** The map on the first sheet: how the papers lie, with the pieces small on them, so that each is found and none is missed. */
import type { Drawing, Frame, PieceDrawing, Spot } from '../model';
import { number, pathContent, stroke, words, type Font } from './content';
import { CAPITAL, namesOn, outlineOf, said, sidesOf, type Leader, type Rect, type Said } from './map-names';
import { box } from './sheet-content';
import { nameOf, OVERLAP_MM, type Tile, type Tiling } from './tiles';

/** What may be written on. */
export type Room = Rect;

/** Larger than a fifth a map tells no more. */
const MOST_SCALE = 0.2;
/** Cloth on the map: dark enough to be told from paper, light enough for words. */
const CLOTH = '0.92 g';
const PAPER = '1 g';
const INK = '0 g';
const SHEET = '0.3 w [] 0 d';
const LEFT_OUT = '0.18 w [1.6 1.2] 0 d';
const LEADER = '0.15 w [] 0 d';
const OUTLINE_MM = 0.2;
/** Type, mm: read with the sheet in the hand. */
const [LETTER_LEAST, LETTER_MOST] = [3.2, 5];
export const mapScale = ({ tiles }: Tiling, { wide, high }: Room): number => {
  const { left, top, right, bottom } = extentOf(tiles);
  return Math.min(wide / (right - left), Math.max(high, 20) / (bottom - top), MOST_SCALE);
};

export function mapContent(drawing: Drawing, tiling: Tiling, room: Room, font: Font): string {
  if (tiling.tiles.length === 0) return '';
  const { left, top } = extentOf(tiling.tiles);
  const scale = mapScale(tiling, room);
  const onMap = (frame: Frame): Rect => ({
    x: room.x + (frame.left - left) * scale,
    y: room.y + (frame.top - top) * scale,
    wide: (frame.right - frame.left) * scale,
    high: (frame.bottom - frame.top) * scale,
  });
  const has = new Set(tiling.tiles.map(({ row, column }) => `${row} ${column}`));
  const cells = tiling.tiles.map(({ name, frame, row, column }) => {
    const last = { row: !has.has(`${row + 1} ${column}`), column: !has.has(`${row} ${column + 1}`) };
    return { name, ...onMap(seenOf(frame, last)) };
  });
  const letters = cells.map((cell) => letterOf(cell, font));
  const move = { x: room.x - left * scale, y: room.y - top * scale };
  const laid = drawing.placements.flatMap(({ piece: name, by }) => {
    const piece = drawing.pieces.find((one) => one.name === name);
    return piece === undefined ? [] : [{ piece, by }];
  });
  const named = namesOn(laid, { letters, edges: cells.flatMap(sidesOf), room }, { scale, move }, font);
  return [
    ...laid.map(({ piece, by }) =>
      outlineContent(piece, { x: move.x + by.x * scale, y: move.y + by.y * scale }, scale),
    ),
    SHEET,
    ...cells.map(({ x, y, wide, high }) => box(x, y, wide, high)),
    LEFT_OUT,
    ...leftOut(tiling).map(({ frame }) => {
      const { x, y, wide, high } = onMap(seenOf(frame, { row: false, column: false }));
      return box(x + 0.6, y + 0.6, wide - 1.2, high - 1.2);
    }),
    ...named.leaders.flatMap(leaderContent),
    ...letters.map((letter) => patched(letter, PAPER, font)),
    ...named.within.map((name) => patched(name, CLOTH, font)),
    ...named.beside.map((name) => patched(name, PAPER, font)),
  ].join('\n');
}

/** From a name to its piece, which a dot marks. */
const leaderContent = ({ from, to }: Leader): readonly string[] => [
  LEADER,
  stroke(from.x, from.y, to.x, to.y),
  `1 J 0.9 w ${stroke(to.x, to.y, to.x, to.y)} 0 J`,
];

/** What all the papers cover. */
const extentOf = (tiles: readonly Tile[]): Frame => ({
  left: Math.min(...tiles.map(({ frame }) => frame.left)),
  top: Math.min(...tiles.map(({ frame }) => frame.top)),
  right: Math.max(...tiles.map(({ frame }) => frame.right)),
  bottom: Math.max(...tiles.map(({ frame }) => frame.bottom)),
});

/** What is seen of a paper once the next ones lie on it. */
const seenOf = (frame: Frame, last: { readonly row: boolean; readonly column: boolean }): Frame => ({
  ...frame,
  right: frame.right - (last.column ? 0 : OVERLAP_MM),
  bottom: frame.bottom - (last.row ? 0 : OVERLAP_MM),
});

type Grid = Pick<Tiling, 'tiles' | 'rows' | 'columns'>;

/** Papers amid the others that would come out empty. */
export function leftOut({ tiles, rows, columns }: Grid): readonly Pick<Tile, 'frame' | 'row' | 'column'>[] {
  const across = Array.from({ length: columns }, (_, column) => tiles.filter((one) => one.column === column));
  const down = Array.from({ length: rows }, (_, row) => tiles.filter((one) => one.row === row));
  return down.flatMap((beside, row) =>
    across.flatMap((above, column) => {
      const [inRow, inColumn] = [beside.map((one) => one.column), above.map((one) => one.row)];
      if (inRow.includes(column) || !isAmid(inRow, column) || !isAmid(inColumn, row)) return [];
      const [{ left, right }, { top, bottom }] = [above[0]!.frame, beside[0]!.frame];
      return [{ row, column, frame: { left, top, right, bottom } }];
    }),
  );
}

/** The name of the first paper that whoever counts them would miss, and does not see on the map: of a row that is left out, or before the last of its row. */
export function missedOut(grid: Grid): string | undefined {
  const seen = [...grid.tiles, ...leftOut(grid)];
  const last = Math.max(...grid.tiles.map(({ row }) => row));
  for (let row = 0; row <= last; row++) {
    const columns = seen.filter((one) => one.row === row).map((one) => one.column);
    const all = Array.from({ length: Math.max(0, ...columns) + 1 }, (_, column) => column);
    const missed = all.find((column) => !columns.includes(column));
    if (missed !== undefined) return nameOf(row, missed);
  }
  return undefined;
}

const isAmid = (numbers: readonly number[], one: number): boolean =>
  numbers.some((other) => other < one) && numbers.some((other) => other > one);

function letterOf({ name, x, y, wide }: Rect & { readonly name: string }, font: Font): Said {
  const size = Math.min(LETTER_MOST, Math.max(LETTER_LEAST, wide * 0.3), (wide - 1.5) / font.widthOf(name));
  return said(name, size, { x: x + 0.5, y: y + 0.5 }, font);
}

/** Words on a ground of their own: lines end at them. */
function patched({ text, size, x, y, wide, high, upright }: Said, ground: string, font: Font): string {
  const patch = `${ground} ${[x, y, wide, high].map(number).join(' ')} re f ${INK}`;
  const down = 0.5 + CAPITAL * size;
  const at = upright ? { x: x + down, y: y + high - 0.5, turn: -90 } : { x: x + 0.5, y: y + down };
  return `${patch}\n${words({ text, size, ...at }, font)}`;
}

function outlineContent(piece: PieceDrawing, at: Spot, scale: number): string {
  const whole = piece.lines.some(({ role }) => role === 'cutting');
  const paths = outlineOf(piece).map(
    (line) => `${pathContent(line)} ${!whole ? 'S' : line.closed ? 'b' : 'B'}`,
  );
  const place = [scale, 0, 0, scale, at.x, at.y].map(number).join(' ');
  return `q ${place} cm ${CLOTH} ${number(OUTLINE_MM / scale)} w [] 0 d\n${paths.join('\n')}\nQ`;
}
