/** Ranges that checks judge by: each a default of the trade, which a pattern may put its own in place of. */
import { say } from '../../grammar/say';
import type { DisplayUnit, Pattern } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';

/** Lengths in mm, angles in degrees, shares as plain numbers. */
export interface Usual {
  /** By which a pattern names it: `usual dart-angle in 0deg .. 25deg`. Unique over the catalogue. */
  readonly name: string;
  readonly kind: 'length' | 'angle' | 'ratio';
  readonly low: number;
  readonly high: number;
  /** `common practice`, or where it was read. */
  readonly standing: string;
}

export interface UsualRange {
  readonly low: number;
  readonly high: number;
  /** The pattern gave a range of its own. */
  readonly stated: boolean;
  readonly kind: Usual['kind'];
}

/** A length that has a least and no most. */
export const atLeast = (name: string, low: number, standing = 'common practice'): Usual => ({
  ...{ name, low, high: Infinity, standing },
  kind: 'length',
});

/** The range to judge by: the pattern's own, else the usual one. */
export function usualRange(pattern: Pick<Pattern, 'usual'>, usual: Usual): UsualRange {
  const own = pattern.usual.get(usual.name);
  const { kind, low, high } = usual;
  return own === undefined || own.kind !== kind
    ? { low, high, kind, stated: false }
    : { ...own, kind, stated: true };
}

/** Computed amounts miss what was written by a rounding: mm, degrees, shares. */
const HAIR: Readonly<Record<Usual['kind'], number>> = { length: 0.01, angle: 1e-3, ratio: 1e-6 };

export const isUsual = (range: UsualRange, amount: number, hair = HAIR[range.kind]): boolean =>
  amount >= range.low - hair && amount <= range.high + hair;

export function amountInWords(kind: Usual['kind'], amount: number, unit: DisplayUnit): string {
  if (kind === 'length') return printLength(amount, unit);
  if (kind === 'angle') return `${Math.round(amount * 10) / 10}°`;
  return `${Math.round(amount * 1000) / 10}%`;
}

/** For the end of a message: "usual are 8mm to 12mm", "this pattern asks for 5mm to 20mm". */
export function rangeInWords(range: UsualRange, unit: DisplayUnit): string {
  const print = (amount: number): string => amountInWords(range.kind, amount, unit);
  const { low, high, stated } = range;
  if (high === Infinity) return say`usual is at least ${print(low)}`;
  if (low === high) return stated ? say`this pattern asks for ${print(low)}` : say`usual are ${print(low)}`;
  return stated
    ? say`this pattern asks for ${print(low)} to ${print(high)}`
    : say`usual are ${print(low)} to ${print(high)}`;
}
