/** Where the names of the pieces stand on the map of the sheets: within their outlines, or beside with a line that leads there. */
import type { DrawnLine, PieceDrawing, Spot } from '../model';
import type { Font } from './content';
import { chordsOf, within } from './space';

/** Type, mm: read with the sheet in the hand. */
const NAME = 3.2;
/** Capital height and the depth of a p, as shares of the type's size. */
export const CAPITAL = 0.714;
const DEPTH = 0.25;

export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
}

/** Words and the place that they take. */
export interface Said extends Rect {
  readonly text: string;
  readonly size: number;
  /** Read from the right, where a piece is narrow. */
  readonly upright: boolean;
}

export const said = (text: string, size: number, { x, y }: Spot, font: Font): Said => ({
  ...{ text, size, x, y, upright: false },
  wide: font.widthOf(text) * size + 1,
  high: (CAPITAL + DEPTH) * size + 1,
});

/** What a piece is cut along; without an allowance, its finished size. */
export function outlineOf({ lines }: Pick<PieceDrawing, 'lines'>): readonly DrawnLine[] {
  const cutting = lines.filter(({ role }) => role === 'cutting');
  if (cutting.length > 0) return cutting;
  return lines.filter(({ role }) => role === 'sewing' || role === 'fold');
}

export interface Laid {
  readonly piece: PieceDrawing;
  readonly by: Spot;
}

/** From the side of a name to a place within the piece. */
export interface Leader {
  readonly from: Spot;
  readonly to: Spot;
}

export interface Names {
  readonly within: readonly Said[];
  readonly beside: readonly Said[];
  readonly leaders: readonly Leader[];
}

interface Ground {
  /** The names of the papers. */
  readonly letters: readonly Said[];
  readonly edges: readonly Rect[];
  /** What may be written on. */
  readonly room: Rect;
}

/** Names of pieces within their outlines, clear of the papers' names; beside those that have no room. */
export function namesOn(
  laid: readonly Laid[],
  { letters, edges, room }: Ground,
  { scale, move }: { readonly scale: number; readonly move: Spot },
  font: Font,
): Names {
  const taken: Rect[] = [...letters];
  const [inside, beside, leaders]: [Said[], Said[], Leader[]] = [[], [], []];
  const all = laid.flatMap(({ piece: { name, lines }, by }) => {
    const spots = outlineOf({ lines }).flatMap(chordsOf);
    // nothing of it is on the map that a name could lead to
    if (spots.length === 0) return [];
    const ring = spots.map(({ x, y }) => ({
      x: move.x + (x + by.x) * scale,
      y: move.y + (y + by.y) * scale,
    }));
    return [{ base: said(name, NAME, { x: 0, y: 0 }, font), ring: thinned(ring) }];
  });
  const unnamed = all.filter(({ base, ring }) => {
    const upright = { ...base, wide: base.high, high: base.wide, upright: true };
    const found = roomFor([base, upright], ring, taken, edges);
    if (found === undefined) return true;
    inside.push(found);
    taken.push(found);
    return false;
  });
  for (const { base, ring } of unnamed) {
    const place = { room, taken, edges, rings: all.map((one) => one.ring) };
    const [name, leader] = besideOf(base, ring, place);
    beside.push(name);
    leaders.push(leader);
    taken.push(name);
  }
  return { within: inside, beside, leaders };
}

interface Place {
  readonly room: Rect;
  readonly taken: readonly Rect[];
  readonly edges: readonly Rect[];
  readonly rings: readonly (readonly Spot[])[];
}

/** Places for a name beside its piece are tried so far apart, mm. */
const GRID_MM = 2;

/** As near as can be: off all pieces and the papers' sides, else off the pieces, else off other names alone. */
function besideOf(
  base: Said,
  ring: readonly Spot[],
  { room, taken, edges, rings }: Place,
): readonly [Said, Leader] {
  const ends = spotsIn(ring).filter((at) => within(ring, at) && !taken.some((one) => holds(one, at)));
  const middle = ends[0] ?? ring[0]!;
  const places: Said[] = [];
  for (let y = room.y; y + base.high <= room.y + room.high; y += GRID_MM)
    for (let x = room.x; x + base.wide <= room.x + room.wide; x += GRID_MM) places.push({ ...base, x, y });
  const far = (one: Said): number => awayFrom(one, middle);
  const free = places
    .filter((one) => !taken.some((other) => meet(one, other)))
    .sort((a, b) => far(a) - far(b));
  const offPieces = (one: Said): boolean => rings.every((other) => !covers(other, one));
  const found = free.find(
    (one) => far(one) > 1 && offPieces(one) && !edges.some((edge) => meet(one, edge)),
  ) ??
    free.find((one) => far(one) > 1 && offPieces(one)) ??
    free.find((one) => far(one) > 1) ?? { ...base, x: middle.x, y: middle.y };
  const [to] = [...ends].sort((a, b) => awayFrom(found, a) - awayFrom(found, b));
  const end = to ?? middle;
  return [found, { from: nearestOn(found, end), to: end }];
}

const nearestOn = ({ x, y, wide, high }: Rect, at: Spot): Spot => ({
  x: Math.min(Math.max(at.x, x), x + wide),
  y: Math.min(Math.max(at.y, y), y + high),
});

function awayFrom(rect: Rect, at: Spot): number {
  const near = nearestOn(rect, at);
  return Math.hypot(near.x - at.x, near.y - at.y);
}

const holds = (rect: Rect, at: Spot): boolean => awayFrom(rect, at) === 0;

/** Whether a ring and a rectangle share a place. */
const covers = (ring: readonly Spot[], rect: Rect): boolean =>
  cornersOf(rect).some((at) => within(ring, at)) || ring.some((at) => holds(rect, at));

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
export const sidesOf = ({ x, y, wide, high }: Rect): readonly Rect[] => [
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
