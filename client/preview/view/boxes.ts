/** Boxes of words, upright and turned: whether they lie on one another or on a line. Knows no DOM. */
import type { Frame, Spot } from '../../../server/drawing/model';

/** A box about its middle, turned by its own angle. */
export interface WordBox {
  readonly middle: Spot;
  readonly halfWide: number;
  readonly halfHigh: number;
  /** Cosine and sine of its turn. */
  readonly turn: readonly [number, number];
}

export const uprightBox = (middle: Spot, wide: number, high: number): WordBox => ({
  ...{ middle, halfWide: wide / 2, halfHigh: high / 2 },
  turn: [1, 0],
});

/** Two boxes lie apart when a line along a side of either keeps them apart. */
export function overlap(a: WordBox, b: WordBox): boolean {
  return !(keptApart(a, b, a) || keptApart(a, b, b));
}

function keptApart(a: WordBox, b: WordBox, { turn: [cos, sin] }: WordBox): boolean {
  const [x, y] = [b.middle.x - a.middle.x, b.middle.y - a.middle.y];
  const along = (way: number, by: number) =>
    Math.abs(x * way + y * by) >= reachAlong(a, way, by) + reachAlong(b, way, by);
  return along(cos, sin) || along(-sin, cos);
}

/** How far a box reaches from its middle along a direction. */
function reachAlong({ halfWide, halfHigh, turn: [cos, sin] }: WordBox, x: number, y: number): number {
  return halfWide * Math.abs(cos * x + sin * y) + halfHigh * Math.abs(-sin * x + cos * y);
}

/** A line of short chords, and what holds it. */
export interface Course {
  readonly spots: readonly Spot[];
  readonly frame: Frame;
}

/** Whether a line runs through a box. */
export function crossedBy(box: WordBox, { spots, frame }: Course): boolean {
  const { middle, halfWide, halfHigh, turn } = box;
  const [cos, sin] = turn;
  const [wide, high] = [reachAlong(box, 1, 0), reachAlong(box, 0, 1)];
  if (middle.x + wide < frame.left || middle.x - wide > frame.right) return false;
  if (middle.y + high < frame.top || middle.y - high > frame.bottom) return false;
  for (let i = 1; i < spots.length; i++) {
    const [p, q] = [spots[i - 1]!, spots[i]!];
    const [x, y] = [p.x - middle.x, p.y - middle.y];
    const [dx, dy] = [q.x - p.x, q.y - p.y];
    const [across, down] = [dx * cos + dy * sin, dy * cos - dx * sin];
    if (within(x * cos + y * sin, across, halfWide, y * cos - x * sin, down, halfHigh)) return true;
  }
  return false;
}

/** Whether a chord, by where it begins and how far it goes, is within half a width and half a height at once. */
function within(x: number, dx: number, wide: number, y: number, dy: number, high: number): boolean {
  const from = Math.max(0, entry(x, dx, wide), entry(y, dy, high));
  return from <= Math.min(1, -entry(x, -dx, wide), -entry(y, -dy, high));
}

/** At which share of its way a chord comes within half a width of nothing. */
function entry(from: number, by: number, half: number): number {
  if (by === 0) return Math.abs(from) <= half ? -Infinity : Infinity;
  return (-from - Math.sign(by) * half) / by;
}

/** Whether a place lies within lines that together go round it: a way out crosses them an odd number of times. */
export function enclosed({ x, y }: Spot, lines: readonly (readonly Spot[])[]): boolean {
  let within = false;
  for (const chords of lines) {
    for (let i = 1; i < chords.length; i++) {
      const [p, q] = [chords[i - 1]!, chords[i]!];
      if (p.y > y !== q.y > y && x < p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x)) within = !within;
    }
  }
  return within;
}
