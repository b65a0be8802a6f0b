/** Lays the pieces of a drawing so that they need few papers, or little of a roll: many ways are tried, the best is kept. */
import type { Drawing, Frame, PieceDrawing, Placement } from '../model';
import { rounded } from '../path';
import { inkOf } from './ink';
import { quarterTurned } from './mapped';
import { nudged } from './nudge';
import { packed, type Item, type Packing, type Strip, type Turning } from './pack';
import { LONGEST_MM, turned, type Paper, type Roll } from './papers';
import { MARGIN_MM, MOST_PAPERS, OVERLAP_MM, papersOver, tiled, tilingFor, type Tiling } from './tiles';

/** Rows of up to so many papers are tried: a table of that length is rare. */
const MOST_ACROSS = 8;
/** Between two pieces on paper, mm: room for the shears. */
export const GAP_MM = 10;
/** From the outermost lines to the sheets' frame, mm: a thick line is not cut in half. */
export const EDGE_MM = 1;
const TURNINGS: readonly Turning[] = ['never', 'freely', 'standing', 'lying'];

export interface Arranged {
  readonly drawing: Drawing;
  readonly tiling: Tiling;
}

/** How a piece is drawn that lies a quarter turned. */
export type Turn = (piece: PieceDrawing) => PieceDrawing;

/** So many of the best ways are mended piece by piece. */
const MENDED = 8;

/** The drawing as laid, or laid anew where that saves a paper. */
export function arranged(drawing: Drawing, paper: Paper, turn: Turn = quarterTurned): Arranged {
  const laid = edged(drawing);
  const few = ({ frame }: Drawing, one: Paper): boolean => papersOver(frame, one) <= MOST_PAPERS;
  const asLaid: Arranged = { drawing: laid, tiling: tilingFor(laid, paper) };
  const ways = few(laid, paper) ? [asLaid] : [];
  for (const [one, packing] of packings(itemsOf(drawing.pieces, turn), paper)) {
    const anew = edged(laidBy(drawing, packing, turn));
    if (few(anew, one)) ways.push({ drawing: anew, tiling: tiled(anew.frame, inkOf(anew), one) });
  }
  const best = fewestFirst(ways).slice(0, MENDED);
  const lying = new Map(drawing.pieces.map((piece) => [piece.name, [piece, turn(piece)]]));
  const mended = best.map(({ drawing: one, tiling }): Arranged => {
    const anew = nudged(one, tiling.paper, { gap: GAP_MM, edge: EDGE_MM, lying });
    return { drawing: anew, tiling: tiled(anew.frame, inkOf(anew), tiling.paper) };
  });
  // of as many papers what was mended: its pieces lie on fewer each
  return fewestFirst([...mended, ...best])[0] ?? asLaid;
}

/** Those of as many papers stay in their order. */
const fewestFirst = (ways: readonly Arranged[]): readonly Arranged[] =>
  [...ways].sort((a, b) => a.tiling.tiles.length - b.tiling.tiles.length);

/** White round the outermost lines. */
export function edged(drawing: Drawing): Drawing {
  const { left, top, right, bottom } = drawing.frame;
  const frame: Frame = {
    left: left - EDGE_MM,
    top: top - EDGE_MM,
    right: right + EDGE_MM,
    bottom: bottom + EDGE_MM,
  };
  return { ...drawing, frame };
}

/** Every way that is tried, each once, with the paper upright and on its side. */
function* packings(items: readonly Item[], paper: Paper): Generator<readonly [Paper, Packing]> {
  const seen = new Set<string>();
  for (const one of [paper, turned(paper)]) {
    for (const strip of stripsFor(one)) {
      for (const order of ordersOf(items)) {
        const packing = packed(items, order, strip);
        const key = `${one.width} ${JSON.stringify(packing.spots)}`;
        if (packing.spots.includes(undefined) || seen.has(key)) continue;
        seen.add(key);
        yield [one, packing];
      }
    }
  }
}

const itemsOf = (pieces: readonly PieceDrawing[], turn: Turn): readonly Item[] =>
  pieces.map((piece) => ({ ...sizeOf(piece), turned: sizeOf(turn(piece)) }));

const sizeOf = ({ frame }: PieceDrawing): Room => ({
  wide: frame.right - frame.left,
  high: frame.bottom - frame.top,
});

/** In file order, and the largest first in several senses. */
function ordersOf(items: readonly Item[]): readonly (readonly number[])[] {
  const numbers = items.map((_, i) => i);
  const by = (size: (item: Item) => number): readonly number[] =>
    [...numbers].sort((a, b) => size(items[b]!) - size(items[a]!) || a - b);
  return [
    numbers,
    by(({ wide, high }) => wide * high),
    by(({ high }) => high),
    by(({ wide }) => wide),
    by(({ wide, high }) => Math.max(wide, high)),
  ];
}

function stripsFor({ width, height }: Paper): Strip[] {
  const [across, down] = [width, height].map((side) => side - 2 * MARGIN_MM - OVERLAP_MM) as [number, number];
  const lap = OVERLAP_MM - 2 * EDGE_MM;
  const strips: Strip[] = [];
  for (let count = 1; count <= MOST_ACROSS; count++)
    for (const turning of TURNINGS) {
      const strip = { wide: count * across + lap, gap: GAP_MM, turning };
      strips.push(strip, { ...strip, steps: { across, down, lap } });
    }
  return strips;
}

/** The pieces where a packing puts them, in their own order. */
function laidBy(drawing: Drawing, { spots, width, height }: Packing, turn: Turn): Drawing {
  const pieces: PieceDrawing[] = [];
  const placements: Placement[] = [];
  drawing.pieces.forEach((piece, i) => {
    const spot = spots[i];
    if (spot === undefined) return;
    const lying = spot.turned ? turn(piece) : piece;
    pieces.push(lying);
    placements.push({
      piece: lying.name,
      by: { x: rounded(spot.x - lying.frame.left), y: rounded(spot.y - lying.frame.top) },
    });
  });
  return {
    ...drawing,
    pieces,
    placements,
    frame: { left: 0, top: 0, right: rounded(width), bottom: rounded(height) },
  };
}

/** What lies between the margins of a paper. */
export interface Room {
  readonly wide: number;
  readonly high: number;
}

/** The strip with the test square takes so much of a length at least, mm. */
const STRIP_MM = 250;

export const roomOn = ({ width }: Roll): Room => ({
  wide: width - 2 * (MARGIN_MM + EDGE_MM),
  high: LONGEST_MM - STRIP_MM,
});

export const fits = (piece: PieceDrawing, room: Room, turn: Turn = quarterTurned): boolean =>
  [sizeOf(piece), sizeOf(turn(piece))].some(
    ({ wide, high }) => wide <= room.wide + 1e-6 && high <= room.high + 1e-6,
  );

/**
 * The pieces on sheets of which each has this room, on few of them and high up; those that fit no way are left out.
 *
 * @param gap between two pieces, mm
 */
export function onSheets(
  drawing: Drawing,
  room: Room,
  turn: Turn = quarterTurned,
  gap = GAP_MM,
): readonly Drawing[] {
  const pieces = drawing.pieces.filter((piece) => fits(piece, room, turn));
  if (pieces.length === 0) return [];
  const items = itemsOf(pieces, turn);
  const rules = TURNINGS.flatMap((turning) => ordersOf(items).map((order) => ({ turning, order })));
  type Rule = (typeof rules)[number];
  const packedBy = ({ turning, order }: Rule, left: readonly number[]): Packing =>
    packed(
      items,
      order.filter((one) => left.includes(one)),
      { ...room, gap, turning },
    );
  const best = (left: readonly number[]): Packing =>
    rules.map((rule) => packedBy(rule, left)).reduce((a, b) => (worth(b, left) < worth(a, left) ? b : a));
  const ways = [best, ...rules.map((rule) => (left: readonly number[]) => packedBy(rule, left))];
  const filled = ways
    .map((way) => sheetsBy(way, items))
    .reduce((a, b) => (cost(b, items) < cost(a, items) ? b : a));
  return filled.map((packing) => edged(laidBy({ ...drawing, pieces }, packing, turn)));
}

/** Sheet after sheet with what the ones before it left over. */
function sheetsBy(way: (left: readonly number[]) => Packing, items: readonly Item[]): readonly Packing[] {
  const sheets: Packing[] = [];
  let left = items.map((_, i) => i);
  while (left.length > 0) {
    const packing = way(left);
    const rest = left.filter((one) => packing.spots[one] === undefined);
    if (rest.length === left.length) break;
    sheets.push(packing);
    left = rest;
  }
  return sheets;
}

/** A sheet more costs more than any length, and a piece that is left over more than any sheet. */
function cost(sheets: readonly Packing[], { length }: readonly Item[]): number {
  const laid = sheets.flatMap(({ spots }) => spots.filter((spot) => spot !== undefined)).length;
  const high = sheets.reduce((sum, { height }) => sum + height, 0);
  return ((length - laid) * (length + 2) + sheets.length) * LONGEST_MM + high;
}

/** Every piece that is left over costs more than any length. */
const worth = ({ spots, height }: Packing, left: readonly number[]): number =>
  left.filter((one) => spots[one] === undefined).length * LONGEST_MM + height;

/** The pieces on lengths of a roll. */
export const onRoll = (drawing: Drawing, roll: Roll, turn: Turn = quarterTurned): readonly Drawing[] =>
  onSheets(drawing, roomOn(roll), turn);
