/** Finds room for a label inside a piece, clear of its outline and its grain line. */
import type { Hole, Mark, Piece } from '../drafting/model';
import { boxOfPaths, type Point } from '../geometry';
import type { DrawnLine } from './model';

/** A straight line that a label should not lie across. */
type Stretch = readonly [Point, Point];

/** The middle of the label, and how much smaller it must be set to fit. */
export interface Room extends Point {
  readonly scale: number;
}

/** Places tried across and down: enough for a label to find the wide part of a sleeve. */
const TRIES = 15;
/** A label is set no smaller than this share of its usual size; then it may cross a line. */
const SMALLEST = 0.45;

export function roomFor(piece: Piece, wide: number, high: number, grain: readonly DrawnLine[]): Room {
  const ring = piece.edges.flatMap(({ path }) => path.polyline(2));
  const inTheWay: Stretch[] = [
    ...piece.balance.map(({ path }): Stretch => [path.start, path.end]),
    ...piece.marks.flatMap(markStretches),
    ...piece.holes.flatMap(({ edges }) => sidesOf(edges.flatMap(({ path }) => path.polyline(2)))),
    ...piece.darts.flatMap(({ from, to, tip }): Stretch[] => [
      [from, tip],
      [to, tip],
    ]),
    ...(piece.shaping?.fishDarts ?? []).flatMap(({ from, to, left, right }): Stretch[] => [
      [from, to],
      [left, right],
    ]),
    ...grain.flatMap(({ start, stretches }) => stretches.map(([x, y]): Stretch => [start, { x, y }])),
  ];
  const box = boxOfPaths(piece.edges.map(({ path }) => path));
  const middle = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const free = new Map<Point, boolean>();
  const isFree = (spot: Point): boolean => {
    const known = free.get(spot);
    if (known !== undefined) return known;
    const is = inside(spot, ring) && !piece.holes.some((hole) => inHole(spot, hole));
    free.set(spot, is);
    return is;
  };
  const spots = SPOTS.map(({ x, y }): Point => ({
    x: box.minX + x * (box.maxX - box.minX),
    y: box.minY + y * (box.maxY - box.minY),
  }));
  const lines = [...sidesOf(ring), ...inTheWay];
  const pleats = pleatStretches(piece);
  // a piece full of pleats has no room between them: its label then lies across them
  for (const all of pleats.length === 0 ? [lines] : [[...lines, ...pleats], lines]) {
    for (const scale of [1, 0.8, 0.6, SMALLEST]) {
      const at = spots.find(
        (spot) => isFree(spot) && fits(spot, (wide * scale) / 2, (high * scale) / 2, all),
      );
      if (at !== undefined && (all === lines || scale > SMALLEST)) return { ...at, scale };
    }
  }
  return { ...middle, scale: SMALLEST };
}

const pleatStretches = ({ shaping }: Piece): readonly Stretch[] =>
  (shaping?.pleats ?? []).flatMap(({ pleats }) =>
    pleats.flatMap(({ start, end }): Stretch[] => [
      [start.start, start.end],
      [end.start, end.end],
    ]),
  );

const inHole = (spot: Point, { edges }: Hole): boolean =>
  inside(
    spot,
    edges.flatMap(({ path }) => path.polyline(2)),
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

/** Whether a rectangle, the middle of which lies inside the outline, is crossed by nothing. */
function fits(at: Point, halfWide: number, halfHigh: number, lines: readonly Stretch[]): boolean {
  const [left, right, top, bottom] = [at.x - halfWide, at.x + halfWide, at.y - halfHigh, at.y + halfHigh];
  for (const [p, q] of lines) if (meets(p, q, left, right, top, bottom)) return false;
  return true;
}

/** Even-odd rule. */
function inside(at: Point, ring: readonly Point[]): boolean {
  let odd = false;
  ring.forEach((p, i) => {
    const q = ring[(i + 1) % ring.length]!;
    if (p.y > at.y !== q.y > at.y && at.x < p.x + ((at.y - p.y) / (q.y - p.y)) * (q.x - p.x)) odd = !odd;
  });
  return odd;
}

/** Whether a straight stretch meets a rectangle: clipped against its four sides (Liang & Barsky, ACM TOG 3, 1984). */
export function meets(p: Point, q: Point, left: number, right: number, top: number, bottom: number): boolean {
  // most stretches lie all to one side
  if ((p.x < left && q.x < left) || (p.x > right && q.x > right)) return false;
  if ((p.y < top && q.y < top) || (p.y > bottom && q.y > bottom)) return false;
  let [from, to] = [0, 1];
  const [dx, dy] = [q.x - p.x, q.y - p.y];
  for (const [step, room] of [
    [-dx, p.x - left],
    [dx, right - p.x],
    [-dy, p.y - top],
    [dy, bottom - p.y],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
      continue;
    }
    const t = room / step;
    if (step < 0) from = Math.max(from, t);
    else to = Math.min(to, t);
  }
  return from <= to;
}
