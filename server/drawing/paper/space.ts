/** What is taken on a piece by lines and words, and whether a rectangle of words finds room between them. */
import type { DrawnLine, DrawnText, PieceDrawing, Spot } from '../model';

/** A rectangle by its middle; turned clockwise as seen, degrees. */
export interface Rect {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
  readonly high: number;
  readonly turn: number;
}

/** Letters above and below their base line, in heights of a capital: the accent of a capital is let stand out. */
const ABOVE = 1.07;
const BELOW = 0.35;
/** White that is kept round words, mm. */
const CLEAR_MM = 0.8;
/** A curve is tested by so many chords. */
const CHORDS = 12;

export const textHigh = (size: number): number => (ABOVE + BELOW) * size;

/** From the middle of a text's rectangle down to its base line. */
const downTo = (size: number): number => ((ABOVE - BELOW) / 2) * size;

export const rectOfText = (
  { at, size, turn }: Pick<DrawnText, 'at' | 'size' | 'turn'>,
  wide: number,
): Rect => {
  const angle = (turn * Math.PI) / 180;
  const down = downTo(size);
  return {
    x: at.x + Math.sin(angle) * down,
    y: at.y - Math.cos(angle) * down,
    wide,
    high: textHigh(size),
    turn,
  };
};

/** Where the base line of a text lies whose rectangle has its middle there. */
export function baseOf(middle: Spot, size: number, turn: number): Spot {
  const angle = (turn * Math.PI) / 180;
  const down = downTo(size);
  return { x: middle.x - Math.sin(angle) * down, y: middle.y + Math.cos(angle) * down };
}

export class Space {
  /** x1 y1 x2 y2 of every straight stretch in the way. */
  private readonly taken: number[] = [];

  constructor({ lines, dots }: Pick<PieceDrawing, 'lines' | 'dots'>) {
    for (const line of lines) this.addRun(chordsOf(line));
    for (const line of lines) if (line.arrows !== 'none') this.addHeads(chordsOf(line));
    for (const { at } of dots) this.addStretch({ x: at.x - 0.6, y: at.y }, { x: at.x + 0.6, y: at.y });
  }

  copy(): Space {
    const other = new Space({ lines: [], dots: [] });
    for (const value of this.taken) other.taken.push(value);
    return other;
  }

  /** Its sides and what lies between them: nothing finds room within words. */
  add(rect: Rect): void {
    const at = cornersOf(rect);
    const middle = (a: Spot, b: Spot): Spot => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
    this.addRun([...at, at[0]!]);
    this.addStretch(middle(at[0]!, at[3]!), middle(at[1]!, at[2]!));
    this.addStretch(at[0]!, at[2]!);
    this.addStretch(at[1]!, at[3]!);
  }

  free({ x, y, wide, high, turn }: Rect): boolean {
    const angle = (turn * Math.PI) / 180;
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    const [w, h] = [wide / 2 + CLEAR_MM, high / 2 + CLEAR_MM];
    const reach = Math.hypot(w, h);
    const { taken } = this;
    for (let i = 0; i < taken.length; i += 4) {
      const [ax, ay, bx, by] = [taken[i]! - x, taken[i + 1]! - y, taken[i + 2]! - x, taken[i + 3]! - y];
      if ((ax > reach && bx > reach) || (ax < -reach && bx < -reach)) continue;
      if ((ay > reach && by > reach) || (ay < -reach && by < -reach)) continue;
      if (meets(ax * cos + ay * sin, ay * cos - ax * sin, bx * cos + by * sin, by * cos - bx * sin, w, h))
        return false;
    }
    return true;
  }

  /** How far it is from a spot to the nearest thing in the way. */
  clearance({ x, y }: Spot): number {
    let least = Infinity;
    const { taken } = this;
    for (let i = 0; i < taken.length; i += 4)
      least = Math.min(least, distanceTo(x, y, taken[i]!, taken[i + 1]!, taken[i + 2]!, taken[i + 3]!));
    return least;
  }

  private addRun(spots: readonly Spot[]): void {
    spots.slice(1).forEach((spot, i) => this.addStretch(spots[i]!, spot));
  }

  addStretch(a: Spot, b: Spot): void {
    this.taken.push(a.x, a.y, b.x, b.y);
  }

  /** An arrow head is a little wider than its line. */
  private addHeads(spots: readonly Spot[]): void {
    for (const { x, y } of [spots[0]!, spots[spots.length - 1]!]) {
      this.addStretch({ x: x - 1.5, y: y - 1.5 }, { x: x + 1.5, y: y + 1.5 });
      this.addStretch({ x: x - 1.5, y: y + 1.5 }, { x: x + 1.5, y: y - 1.5 });
    }
  }
}

function cornersOf({ x, y, wide, high, turn }: Rect): Spot[] {
  const angle = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [
    [-1, -1],
    [1, -1],
    [1, 1],
    [-1, 1],
  ].map(([a, b]) => {
    const [dx, dy] = [(a! * wide) / 2, (b! * high) / 2];
    return { x: x + dx * cos - dy * sin, y: y + dx * sin + dy * cos };
  });
}

/** A drawn line as a run of short straight stretches. */
export function chordsOf({ start, stretches, closed }: DrawnLine): readonly Spot[] {
  const spots: Spot[] = [start];
  for (const stretch of stretches) {
    const from = spots[spots.length - 1]!;
    if (stretch.length === 2) {
      spots.push({ x: stretch[0], y: stretch[1] });
      continue;
    }
    const [x1, y1, x2, y2, x, y] = stretch;
    for (let i = 1; i <= CHORDS; i++) {
      const [t, u] = [i / CHORDS, 1 - i / CHORDS];
      const [a, b, c, d] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
      spots.push({ x: a * from.x + b * x1 + c * x2 + d * x, y: a * from.y + b * y1 + c * y2 + d * y });
    }
  }
  return closed ? [...spots, start] : spots;
}

/** Whether a stretch meets a rectangle about the origin: clipped against its sides (Liang & Barsky, ACM TOG 3, 1984). */
function meets(ax: number, ay: number, bx: number, by: number, w: number, h: number): boolean {
  let [from, to] = [0, 1];
  const [dx, dy] = [bx - ax, by - ay];
  const clip = (step: number, room: number): boolean => {
    if (step === 0) return room >= 0;
    if (step < 0) from = Math.max(from, room / step);
    else to = Math.min(to, room / step);
    return from <= to;
  };
  return clip(-dx, ax + w) && clip(dx, w - ax) && clip(-dy, ay + h) && clip(dy, h - ay);
}

export function distanceTo(x: number, y: number, ax: number, ay: number, bx: number, by: number): number {
  const [dx, dy] = [bx - ax, by - ay];
  const long = dx * dx + dy * dy;
  const t = long === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / long));
  return Math.hypot(x - ax - t * dx, y - ay - t * dy);
}

/** Whether a spot lies within a ring, by the even-odd rule. */
export function within(ring: readonly Spot[], { x, y }: Spot): boolean {
  let odd = false;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x)) odd = !odd;
  });
  return odd;
}
