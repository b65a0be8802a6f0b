/** Where two outlines differ: the areas that only one of them holds, cut into slabs between all corners and crossings. */
import type { Point } from './point';

/** Closed rings of straight stretches; what an odd number of them holds is inside. */
export type Rings = readonly (readonly Point[])[];

/** One area that only one of the outlines holds: bounded by the points in turn, mm². */
export interface Region {
  readonly points: readonly Point[];
  readonly area: number;
}

export interface Difference {
  /** Held by the first alone, and by the second alone. */
  readonly lost: readonly Region[];
  readonly gained: readonly Region[];
  readonly lostArea: number;
  readonly gainedArea: number;
  /** Held by both. */
  readonly commonArea: number;
}

/** A stretch that runs down the paper, and the outline it belongs to. */
interface Stretch {
  readonly owner: 0 | 1;
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** A slab's share of a region: level at top and bottom, between two stretches. */
interface Strip {
  readonly y0: number;
  readonly y1: number;
  readonly left0: number;
  readonly left1: number;
  readonly right0: number;
  readonly right1: number;
}

type Holder = 'lost' | 'gained' | 'common';

/**
 * Between two neighbouring heights at which a corner or a crossing lies no two stretches change places, so what lies
 * between them is made of strips whose areas are exact. Outlines that run along each other differ by strips of no width.
 */
export function difference(first: Rings, second: Rings): Difference {
  const stretches = [...stretchesOf(first, 0), ...stretchesOf(second, 1)].sort((a, b) => a.y0 - b.y0);
  const heights = heightsOf(stretches);
  const areas = { lost: 0, gained: 0, common: 0 };
  const growing = { lost: new Growing(), gained: new Growing() };
  let next = 0;
  let active: Stretch[] = [];
  for (let i = 0; i + 1 < heights.length; i++) {
    const [y0, y1] = [heights[i]!, heights[i + 1]!];
    while (next < stretches.length && stretches[next]!.y0 <= y0) active.push(stretches[next++]!);
    active = active.filter((one) => one.y1 >= y1);
    for (const [holder, strip] of stripsOf(active, y0, y1)) {
      areas[holder] += stripArea(strip);
      if (holder !== 'common') growing[holder].add(strip);
    }
  }
  const [lost, gained] = [growing.lost.regions(), growing.gained.regions()];
  return { lost, gained, lostArea: areas.lost, gainedArea: areas.gained, commonArea: areas.common };
}

function stretchesOf(rings: Rings, owner: 0 | 1): Stretch[] {
  return rings.flatMap((ring) =>
    ring.flatMap((a, i) => {
      const b = ring[(i + 1) % ring.length]!;
      const [top, low] = a.y <= b.y ? [a, b] : [b, a];
      // a level stretch bounds no slab from the side
      return top.y === low.y ? [] : [{ owner, x0: top.x, y0: top.y, x1: low.x, y1: low.y }];
    }),
  );
}

/** The heights of all corners and crossings, each once, downwards. */
function heightsOf(stretches: readonly Stretch[]): number[] {
  const heights = stretches.flatMap(({ y0, y1 }) => [y0, y1]);
  let open: Stretch[] = [];
  for (const one of stretches) {
    open = open.filter((other) => other.y1 > one.y0);
    for (const other of open) {
      const y = crossingHeight(one, other);
      if (y !== undefined) heights.push(y);
    }
    open.push(one);
  }
  return heights.sort((a, b) => a - b).filter((y, i, all) => i === 0 || y > all[i - 1]!);
}

const slope = (one: Stretch): number => (one.x1 - one.x0) / (one.y1 - one.y0);

function xAt(one: Stretch, y: number): number {
  if (y <= one.y0) return one.x0;
  return y >= one.y1 ? one.x1 : one.x0 + ((y - one.y0) / (one.y1 - one.y0)) * (one.x1 - one.x0);
}

/** Where two stretches change places within the heights that both have; nothing for those that only touch. */
function crossingHeight(a: Stretch, b: Stretch): number | undefined {
  const [top, low] = [Math.max(a.y0, b.y0), Math.min(a.y1, b.y1)];
  const [before, after] = [xAt(a, top) - xAt(b, top), xAt(a, low) - xAt(b, low)];
  if (!(before * after < 0)) return undefined;
  const y = top + before / (slope(b) - slope(a));
  return y > top && y < low ? y : undefined;
}

function stripsOf(active: readonly Stretch[], y0: number, y1: number): [Holder, Strip][] {
  const sides = active
    .map((one) => ({ owner: one.owner, top: xAt(one, y0), low: xAt(one, y1) }))
    .sort((a, b) => a.top + a.low - (b.top + b.low));
  const inside = [false, false];
  return sides.flatMap((side, i): [Holder, Strip][] => {
    inside[side.owner] = !inside[side.owner];
    const next = sides[i + 1];
    if (next === undefined || !(inside[0] || inside[1])) return [];
    const holder = inside[0] ? (inside[1] ? 'common' : 'lost') : 'gained';
    return [[holder, { y0, y1, left0: side.top, left1: side.low, right0: next.top, right1: next.low }]];
  });
}

const stripArea = ({ y0, y1, left0, left1, right0, right1 }: Strip): number =>
  ((right0 - left0 + right1 - left1) / 2) * (y1 - y0);

/** Two strips nearer than this, mm, hang together: the rounding of a crossing. */
const TOGETHER = 1e-6;

/**
 * A region thinner than this, mm, on average is not shown: two outlines of curves that run along each other stray by
 * their chords. Larger would hide a change that a cutter sees; smaller would draw threads that nobody cuts.
 */
const THINNEST = 0.02;

/** Regions that grow downwards strip by strip. */
class Growing {
  private readonly done: Strip[][] = [];
  private open: Strip[][] = [];
  private level = -Infinity;
  private reached: Strip[][] = [];

  add(strip: Strip): void {
    if (strip.y0 !== this.level) {
      // what did not go on from the slab above has ended there
      const goesOn = this.reached.filter((chain) => chain.at(-1)!.y1 === strip.y0);
      this.done.push(...[...this.open, ...this.reached].filter((chain) => !goesOn.includes(chain)));
      [this.open, this.reached, this.level] = [goesOn, [], strip.y0];
    }
    const at = this.open.findIndex((chain) => hangsOn(chain.at(-1)!, strip));
    if (at < 0) this.reached.push([strip]);
    else this.reached.push([...this.open.splice(at, 1)[0]!, strip]);
  }

  regions(): Region[] {
    return [...this.done, ...this.open, ...this.reached].map(regionOf).filter(isSeen);
  }
}

const hangsOn = (above: Strip, below: Strip): boolean =>
  above.y1 === below.y0 &&
  Math.abs(above.left1 - below.left0) < TOGETHER &&
  Math.abs(above.right1 - below.right0) < TOGETHER;

function regionOf(chain: readonly Strip[]): Region {
  const first = chain[0]!;
  const right = [{ x: first.right0, y: first.y0 }, ...chain.map(({ right1, y1 }) => ({ x: right1, y: y1 }))];
  const left = [{ x: first.left0, y: first.y0 }, ...chain.map(({ left1, y1 }) => ({ x: left1, y: y1 }))];
  const area = chain.reduce((sum, strip) => sum + stripArea(strip), 0);
  return { points: [...right, ...left.reverse()], area };
}

function isSeen({ points, area }: Region): boolean {
  const round = points.reduce((sum, p, i) => {
    const q = points[(i + 1) % points.length]!;
    return sum + Math.hypot(q.x - p.x, q.y - p.y);
  }, 0);
  return area > THINNEST * (round / 2);
}
