/**
 * Packs rectangles into a strip of a certain width: each goes where its top comes to lie highest, on the skyline of those
 * that lie already (the "bottom-left" rule of Baker, Coffman and Rivest, SIAM J. Comput. 9, 1980, upside down).
 */

interface Size {
  readonly wide: number;
  readonly high: number;
}

export interface Item extends Size {
  /** A quarter turned, where that is not the same the other way about: words may stand below it. */
  readonly turned?: Size;
}

export interface Laid {
  readonly x: number;
  readonly y: number;
  readonly turned: boolean;
}

export interface Packing {
  /** In the order of the items; undefined for one that found no room. */
  readonly spots: readonly (Laid | undefined)[];
  readonly width: number;
  readonly height: number;
}

/** Whether items may be turned: never, whenever that is better, or so that their longer side stands or lies. */
export type Turning = 'never' | 'freely' | 'standing' | 'lying';

export interface Strip {
  readonly wide: number;
  /** Undefined: as high as is needed. */
  readonly high?: number;
  /** Between two items. */
  readonly gap: number;
  readonly turning: Turning;
  /** Items begin at these places where that spares them a crossing: the papers' left and upper sides. */
  readonly steps?: { readonly across: number; readonly down: number; readonly lap: number };
}

/** A stretch of the skyline: what is above `y` is taken. */
interface Ledge {
  readonly x: number;
  readonly y: number;
  readonly wide: number;
}

/** @param order the items' numbers in the order in which they are laid */
export function packed(items: readonly Item[], order: readonly number[], strip: Strip): Packing {
  const spots: (Laid | undefined)[] = items.map(() => undefined);
  let skyline: readonly Ledge[] = [{ x: 0, y: 0, wide: strip.wide + strip.gap }];
  let [width, height] = [0, 0];
  for (const index of order) {
    const item = items[index]!;
    const best = bestSpot(item, skyline, strip);
    if (best === undefined) continue;
    const { wide, high } = asLaid(item, best.turned);
    spots[index] = best;
    skyline = raised(skyline, best.x, best.y + high + strip.gap, wide + strip.gap);
    width = Math.max(width, best.x + wide);
    height = Math.max(height, best.y + high);
  }
  return { spots, width, height };
}

const asLaid = (item: Item, turned: boolean): Size => {
  const { wide, high } = item;
  return turned ? (item.turned ?? { wide: high, high: wide }) : { wide, high };
};

function turnsFor({ wide, high }: Item, turning: Turning): readonly boolean[] {
  if (turning === 'never') return [false];
  if (turning === 'freely') return [false, true];
  return [turning === 'standing' ? wide > high : high > wide];
}

function bestSpot(item: Item, skyline: readonly Ledge[], strip: Strip): Laid | undefined {
  let best: Laid | undefined;
  let lowest = Infinity;
  for (const turned of turnsFor(item, strip.turning)) {
    const size = asLaid(item, turned);
    for (const ledge of skyline) {
      const x = along(ledge.x, size, strip);
      if (x + size.wide > strip.wide + 1e-6) continue;
      const y = down(topAt(skyline, x, size.wide + strip.gap), size, strip);
      const foot = y + size.high;
      if (strip.high !== undefined && foot > strip.high + 1e-6) continue;
      if (foot < lowest - 1e-6) [best, lowest] = [{ x, y, turned }, foot];
    }
  }
  return best;
}

/** Where the skyline lets something of this width come to lie. */
function topAt(skyline: readonly Ledge[], x: number, wide: number): number {
  let top = 0;
  for (const ledge of skyline)
    if (ledge.x < x + wide - 1e-6 && ledge.x + ledge.wide > x + 1e-6) top = Math.max(top, ledge.y);
  return top;
}

const along = (x: number, { wide }: Size, { steps }: Strip): number =>
  steps === undefined ? x : onStep(x, wide, steps.across, steps.lap);

const down = (y: number, { high }: Size, { steps }: Strip): number =>
  steps === undefined ? y : onStep(y, high, steps.down, steps.lap);

/** The next step, where the item then crosses fewer papers than from where it would begin. */
function onStep(at: number, long: number, step: number, lap: number): number {
  const next = Math.ceil(at / step - 1e-9) * step;
  return crossed(next, long, step, lap) < crossed(at, long, step, lap) ? next : at;
}

/** How many papers a stretch lies on: each reaches a lap beyond the next one's beginning. */
function crossed(at: number, long: number, step: number, lap: number): number {
  const first = Math.floor(at / step + 1e-9);
  return Math.max(1, Math.ceil((at + long - lap) / step - 1e-9) - first);
}

function raised(skyline: readonly Ledge[], x: number, y: number, wide: number): Ledge[] {
  const end = x + wide;
  const rest = skyline.flatMap((ledge): Ledge[] => {
    const right = ledge.x + ledge.wide;
    if (right <= x + 1e-9 || ledge.x >= end - 1e-9) return [ledge];
    return [
      ...(ledge.x < x - 1e-9 ? [{ ...ledge, wide: x - ledge.x }] : []),
      ...(right > end + 1e-9 ? [{ ...ledge, x: end, wide: right - end }] : []),
    ];
  });
  return [...rest, { x, y, wide }].sort((a, b) => a.x - b.x);
}
