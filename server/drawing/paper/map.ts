/** The map on the first sheet: how the papers lie, with the pieces small on them, so that each is found and none is missed. */
import type { Drawing, DrawnLine, Frame, PieceDrawing, Spot } from '../model';
import { number, pathContent, words, type Font } from './content';
import { box } from './sheet-content';
import { chordsOf, within } from './space';
import { OVERLAP_MM, type Tile, type Tiling } from './tiles';

export interface Room {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
}

/** Larger than a fifth a map tells no more. */
const MOST_SCALE = 0.2;
/** Cloth on the map: dark enough to be told from paper, light enough for words. */
const CLOTH = '0.92 g';
const PAPER = '1 g';
const INK = '0 g';
const SHEET = '0.3 w [] 0 d';
const LEFT_OUT = '0.18 w [1.6 1.2] 0 d';
const OUTLINE_MM = 0.2;
/** Type, mm: read with the sheet in the hand. */
const [LETTER_LEAST, LETTER_MOST, NAME] = [3.2, 5, 3.2];
/** Capital height and the depth of a p, as shares of the type's size. */
const [CAPITAL, DEPTH] = [0.714, 0.25];

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
  const cells = tiling.tiles.map(({ name, frame, row, column }) => {
    const last = { row: row === tiling.rows - 1, column: column === tiling.columns - 1 };
    return { name, ...onMap(seenOf(frame, last)) };
  });
  const letters = cells.map((cell) => letterOf(cell, font));
  const move = { x: room.x - left * scale, y: room.y - top * scale };
  const laid = drawing.placements.flatMap(({ piece: name, by }) => {
    const piece = drawing.pieces.find((one) => one.name === name);
    return piece === undefined ? [] : [{ piece, by }];
  });
  return [
    ...laid.map(({ piece, by }) =>
      outlineContent(piece, { x: move.x + by.x * scale, y: move.y + by.y * scale }, scale),
    ),
    SHEET,
    ...cells.map(({ x, y, wide, high }) => box(x, y, wide, high)),
    LEFT_OUT,
    ...leftOut(tiling).map((frame) => {
      const { x, y, wide, high } = onMap(seenOf(frame, { row: false, column: false }));
      return box(x + 0.6, y + 0.6, wide - 1.2, high - 1.2);
    }),
    ...letters.map((letter) => patched(letter, PAPER, font)),
    ...namesOf(laid, { letters, edges: cells.flatMap(sidesOf) }, { scale, move }, font).map((name) =>
      patched(name, CLOTH, font),
    ),
  ].join('\n');
}

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

/** Papers amid the others that would come out empty. */
export function leftOut({ tiles, rows, columns }: Tiling): readonly Frame[] {
  const across = Array.from({ length: columns }, (_, column) => tiles.filter((one) => one.column === column));
  return Array.from({ length: rows }, (_, row) => tiles.filter((one) => one.row === row)).flatMap(
    (beside, row) =>
      across.flatMap((above, column): Frame[] => {
        const there = beside.some((one) => one.column === column);
        if (
          there ||
          !isAmid(
            beside.map((one) => one.column),
            column,
          ) ||
          !isAmid(
            above.map((one) => one.row),
            row,
          )
        )
          return [];
        const [{ left, right }, { top, bottom }] = [above[0]!.frame, beside[0]!.frame];
        return [{ left, top, right, bottom }];
      }),
  );
}

const isAmid = (numbers: readonly number[], one: number): boolean =>
  numbers.some((other) => other < one) && numbers.some((other) => other > one);

interface Rect {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
}

/** Words and the place that they take. */
interface Said extends Rect {
  readonly text: string;
  readonly size: number;
  /** Read from the right, where a piece is narrow. */
  readonly upright: boolean;
}

const said = (text: string, size: number, { x, y }: Spot, font: Font): Said => ({
  ...{ text, size, x, y, upright: false },
  wide: font.widthOf(text) * size + 1,
  high: (CAPITAL + DEPTH) * size + 1,
});

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

/** What a piece is cut along; without an allowance, its finished size. */
function outlineOf({ lines }: PieceDrawing): readonly DrawnLine[] {
  const cutting = lines.filter(({ role }) => role === 'cutting');
  if (cutting.length > 0) return cutting;
  return lines.filter(({ role }) => role === 'sewing' || role === 'fold');
}

function outlineContent(piece: PieceDrawing, at: Spot, scale: number): string {
  const whole = piece.lines.some(({ role }) => role === 'cutting');
  const paths = outlineOf(piece).map(
    (line) => `${pathContent(line)} ${!whole ? 'S' : line.closed ? 'b' : 'B'}`,
  );
  const place = [scale, 0, 0, scale, at.x, at.y].map(number).join(' ');
  return `q ${place} cm ${CLOTH} ${number(OUTLINE_MM / scale)} w [] 0 d\n${paths.join('\n')}\nQ`;
}

type Laid = { readonly piece: PieceDrawing; readonly by: Spot };

/** Names of pieces within their outlines, clear of the papers' names; one that finds no room is left out. */
function namesOf(
  laid: readonly Laid[],
  { letters, edges }: { readonly letters: readonly Said[]; readonly edges: readonly Rect[] },
  { scale, move }: { readonly scale: number; readonly move: Spot },
  font: Font,
): readonly Said[] {
  const taken: Rect[] = [...letters];
  return laid.flatMap(({ piece, by }) => {
    const ring = outlineOf(piece)
      .flatMap(chordsOf)
      .map(({ x, y }) => ({ x: move.x + (x + by.x) * scale, y: move.y + (y + by.y) * scale }));
    const { wide, high, ...base } = said(piece.name, NAME, { x: 0, y: 0 }, font);
    const ways = [
      { ...base, wide, high },
      { ...base, wide: high, high: wide, upright: true },
    ];
    const name = roomFor(ways, thinned(ring), taken, edges);
    if (name === undefined) return [];
    taken.push(name);
    return [name];
  });
}

/** Clear of the papers' sides, else over one; undefined where there is no room. */
function roomFor(
  ways: readonly Said[],
  ring: readonly Spot[],
  taken: readonly Rect[],
  edges: readonly Rect[],
): Said | undefined {
  let over: Said | undefined;
  const spots = spotsIn(ring);
  for (const way of ways)
    for (const { x, y } of spots) {
      const one = { ...way, x: x - way.wide / 2, y: y - way.high / 2 };
      if (over !== undefined && edges.some((edge) => meet(one, edge))) continue;
      if (taken.some((other) => meet(one, other))) continue;
      if (!cornersOf(one).every((at) => within(ring, at))) continue;
      if (!edges.some((edge) => meet(one, edge))) return one;
      over ??= one;
    }
  return over;
}

/** As many corners as a map shows. */
const thinned = (ring: readonly Spot[]): readonly Spot[] =>
  ring.filter((_, i) => i % Math.max(1, Math.floor(ring.length / 60)) === 0);

/** The sides of a paper as thin rectangles. */
const sidesOf = ({ x, y, wide, high }: Rect): readonly Rect[] => [
  { x, y, wide, high: 0.1 },
  { x, y, wide: 0.1, high },
];

const TRIES = 15;

/** Places over a ring, its middle first. */
function spotsIn(ring: readonly Spot[]): readonly Spot[] {
  const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const [wide, high] = [Math.max(...xs) - left, Math.max(...ys) - top];
  const steps = Array.from({ length: TRIES }, (_, i) => (i + 0.5) / TRIES);
  const far = (u: number, v: number): number => (u - 0.5) ** 2 + (v - 0.5) ** 2;
  return steps
    .flatMap((u) => steps.map((v) => ({ x: left + u * wide, y: top + v * high, far: far(u, v) })))
    .sort((a, b) => a.far - b.far);
}

const cornersOf = ({ x, y, wide, high }: Rect): readonly Spot[] => [
  { x, y },
  { x: x + wide, y },
  { x: x + wide, y: y + high },
  { x, y: y + high },
  { x: x + wide / 2, y: y + high / 2 },
];

const meet = (a: Rect, b: Rect): boolean =>
  a.x < b.x + b.wide && b.x < a.x + a.wide && a.y < b.y + b.high && b.y < a.y + a.high;
