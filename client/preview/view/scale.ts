/** Where the ticks of a ruler stand, in the pattern's own unit. Knows no DOM. */
import type { Sheet } from '../protocol';

export interface Tick {
  /** Place on the sheet, mm. */
  readonly at: number;
  /** Numbered ticks are long and carry words. */
  readonly words: string;
  readonly size: 'long' | 'middle' | 'short';
}

/** Steps of a ruler: distance of its numbers, and into how many parts it is divided by middle and by short ticks. */
interface Step {
  readonly every: number;
  readonly middles: number;
  readonly shorts: number;
}

/** Numbers stand at least this far apart, so that they can be read. */
const ROOM_FOR_NUMBERS_PX = 64;
/** Ticks closer than this run together. */
const ROOM_FOR_TICKS_PX = 4;

const unitMm = { cm: 10, mm: 1, in: 25.4 } as const;

const tens = (every: number): Step => ({ every, middles: 2, shorts: 10 });
const metric: readonly Step[] = [0.1, 1, 10, 100, 1000, 10000].flatMap((power) => [
  tens(power),
  { every: 2 * power, middles: 2, shorts: 10 },
  { every: 5 * power, middles: 5, shorts: 5 },
]);
/** Inches are halved below one, and counted by dozens above: 12 in is a foot, 36 in a yard. */
const inches: readonly Step[] = [
  { every: 0.25, middles: 2, shorts: 4 },
  { every: 0.5, middles: 2, shorts: 8 },
  { every: 1, middles: 2, shorts: 16 },
  { every: 2, middles: 2, shorts: 8 },
  { every: 4, middles: 4, shorts: 8 },
  { every: 6, middles: 6, shorts: 12 },
  { every: 12, middles: 4, shorts: 12 },
  { every: 36, middles: 3, shorts: 12 },
  { every: 72, middles: 2, shorts: 6 },
  { every: 144, middles: 4, shorts: 12 },
  { every: 720, middles: 5, shorts: 10 },
];

/** The ticks from `from` over `pixels` of screen at `zoom` pixels a millimetre. */
export function ticks(unit: Sheet['unit'], zoom: number, from: number, pixels: number): Tick[] {
  const mm = unitMm[unit];
  const step = stepFor(unit, zoom * mm);
  const parts =
    [step.shorts, step.middles, 1].find((n) => (step.every * mm * zoom) / n >= ROOM_FOR_TICKS_PX) ?? 1;
  const each = (step.every * mm) / parts;
  const first = Math.ceil(from / each - 1e-9);
  const last = Math.floor((from + pixels / zoom) / each + 1e-9);
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => tickAt(first + i, parts, step, mm));
}

function tickAt(count: number, parts: number, step: Step, mm: number): Tick {
  const at = (count * step.every * mm) / parts;
  if (count % parts === 0) return { at, words: words((count / parts) * step.every), size: 'long' };
  const middle = (count * step.middles) % parts === 0;
  return { at, words: '', size: middle ? 'middle' : 'short' };
}

function stepFor(unit: Sheet['unit'], pixelsAUnit: number): Step {
  const steps = unit === 'in' ? inches : metric;
  return steps.find(({ every }) => every * pixelsAUnit >= ROOM_FOR_NUMBERS_PX) ?? steps[steps.length - 1]!;
}

function words(value: number): string {
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded).replace('-', '\u2212');
}
