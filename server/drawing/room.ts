/** Finds room for a label inside a piece, clear of its outline and its grain line. */
import type { Mark, Piece } from '../drafting/model';
import type { Box, Point } from '../geometry';
import type { DrawnLine } from './model';

/** A straight line that a label should not lie across. */
export type Stretch = readonly [Point, Point];

/** The middle of the label, and how much smaller it must be set to fit. */
export interface Room extends Point {
  readonly scale: number;
}

/** Places tried across and down: enough for a label to find the wide part of a sleeve. */
const TRIES = 15;
/** A label is set no smaller than this share of its usual size; then it may cross a line. */
const SMALLEST = 0.45;

/** @param box of the piece's edges */
export function roomFor(
  piece: Piece,
  box: Box,
  { wide, high }: { readonly wide: number; readonly high: number },
  grain: readonly DrawnLine[],
): Room {
  const rings = [piece, ...piece.holes].map(({ edges }) => edges.flatMap(({ path }) => path.polyline(2)));
  const [ring, ...holes] = rings as [Point[], ...Point[][]];
  const isFree = (at: Point): boolean => inside(at, ring) && !holes.some((hole) => inside(at, hole));
  const lines = [...rings.flatMap(sidesOf), ...stretchesWithin(piece, grain)];
  const pleats = pleatStretches(piece);
  // a piece full of pleats has no room between them: its label then lies across them
  for (const all of pleats.length === 0 ? [lines] : [[...lines, ...pleats], lines]) {
    for (const scale of [1, 0.8, 0.6, SMALLEST]) {
      const at = firstClear(box, (wide * scale) / 2, (high * scale) / 2, all, isFree);
      if (at !== undefined && (all === lines || scale > SMALLEST)) return { ...at, scale };
    }
  }
  return { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2, scale: SMALLEST };
}

/** What is drawn on a piece and should not be written over. */
export function stretchesWithin(
  { balance, marks, darts, shaping }: Piece,
  grain: readonly DrawnLine[],
): readonly Stretch[] {
  return [
    ...balance.map(({ path }): Stretch => [path.start, path.end]),
    ...marks.flatMap(markStretches),
    ...darts.flatMap(({ from, to, tip }): Stretch[] => [
      [from, tip],
      [to, tip],
    ]),
    ...(shaping?.fishDarts ?? []).flatMap(({ from, to, left, right }): Stretch[] => [
      [from, to],
      [left, right],
    ]),
    ...grain.flatMap(({ start, stretches }) => stretches.map(([x, y]): Stretch => [start, { x, y }])),
  ];
}

/** The first place at which a rectangle of this size is crossed by nothing and its middle is free. */
function firstClear(
  { minX, minY, maxX, maxY }: Box,
  halfWide: number,
  halfHigh: number,
  lines: readonly Stretch[],
  isFree: (at: Point) => boolean,
): Point | undefined {
  let crossed: Stretch | undefined;
  for (const spot of SPOTS) {
    const x = minX + spot.x * (maxX - minX);
    const y = minY + spot.y * (maxY - minY);
    const left = x - halfWide;
    const right = x + halfWide;
    const top = y - halfHigh;
    const bottom = y + halfHigh;
    // what holds the outline holds the label too
    if (left < minX || right > maxX || top < minY || bottom > maxY) continue;
    // what lies across one place often lies across the next
    if (crossed !== undefined && meets(crossed[0], crossed[1], left, right, top, bottom)) continue;
    crossed = firstMeeting(lines, left, right, top, bottom);
    if (crossed === undefined && isFree({ x, y })) return { x, y };
  }
  return undefined;
}

const pleatStretches = ({ shaping }: Piece): readonly Stretch[] =>
  (shaping?.pleats ?? []).flatMap(({ pleats }) =>
    pleats.flatMap(({ start, end }): Stretch[] => [
      [start.start, start.end],
      [end.start, end.end],
    ]),
  );

/** Room that the sign of a mark takes about its place, mm. */
const SIGN = 8;

function markStretches({ points, paths }: Mark): readonly Stretch[] {
  return [
    ...points.map(({ x, y }): Stretch => [
      { x: x - SIGN, y },
      { x: x + SIGN, y },
    ]),
    ...paths.flatMap((path) => {
      const spots = path.polyline(2);
      return spots.slice(1).map((spot, i): Stretch => [spots[i]!, spot]);
    }),
  ];
}

/** Where a label is tried, as shares of width and height: the upper middle first, where the eye begins. */
const SPOTS: readonly Point[] = Array.from({ length: TRIES }, (_, i) => (i + 0.5) / TRIES)
  .flatMap((x, _, steps) => steps.map((y): Point => ({ x, y })))
  .sort((a, b) => unrest(a) - unrest(b));

function unrest({ x, y }: Point): number {
  const [across, down] = [x - 0.5, y - 0.5 + 0.15];
  return across * across + down * down;
}

const sidesOf = (ring: readonly Point[]): Stretch[] => ring.map((p, i) => [p, ring[(i + 1) % ring.length]!]);

/** Even-odd rule. */
function inside(at: Point, ring: readonly Point[]): boolean {
  let odd = false;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    if (p.y > at.y !== q.y > at.y && at.x < p.x + ((at.y - p.y) / (q.y - p.y)) * (q.x - p.x)) odd = !odd;
  });
  return odd;
}

function firstMeeting(
  lines: readonly Stretch[],
  left: number,
  right: number,
  top: number,
  bottom: number,
): Stretch | undefined {
  for (const line of lines) if (meets(line[0], line[1], left, right, top, bottom)) return line;
  return undefined;
}

/** Whether a straight stretch meets a rectangle: unless it passes all four corners on one side. */
export function meets(p: Point, q: Point, left: number, right: number, top: number, bottom: number): boolean {
  // most stretches lie all to one side
  if ((p.x < left && q.x < left) || (p.x > right && q.x > right)) return false;
  if ((p.y < top && q.y < top) || (p.y > bottom && q.y > bottom)) return false;
  const dx = q.x - p.x;
  const dy = q.y - p.y;
  // of the two corners that lie furthest from the stretch's line, one is on either side
  const falls = dx > 0 === dy > 0;
  const one = dx * ((falls ? bottom : top) - p.y) - dy * (left - p.x);
  const other = dx * ((falls ? top : bottom) - p.y) - dy * (right - p.x);
  return one * other <= 0;
}
