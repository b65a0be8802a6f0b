/** Quantities: units, kinds, arithmetic that checks the kinds, and how a number is printed for a person. */
import { say } from '../../../grammar/say';
import type * as syntax from '../../../grammar/syntax';
import type { DisplayUnit, Kind, Quantity } from '../model';

/** Millimetres in a unit of length. Inch exact since the international yard and pound agreement, 1959. */
const MILLIMETRES: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: 25.4, yd: 914.4 };

/** What a person reads for a kind. */
export const kindWords = (kind: Kind): string =>
  ({
    length: say`a length`,
    area: say`an area`,
    angle: say`an angle`,
    ratio: say`a plain number`,
    text: say`a word`,
  })[kind];

export const length = (amount: number): Quantity => ({ kind: 'length', amount });
export const ratio = (amount: number): Quantity => ({ kind: 'ratio', amount });
export const angle = (amount: number): Quantity => ({ kind: 'angle', amount });
export const area = (amount: number): Quantity => ({ kind: 'area', amount });

/** A written number in the kind its unit gives it: lengths in mm, `%` as a share of one, angles in degrees. */
export function written(number: syntax.Quantity): Quantity {
  const { amount, unit } = number;
  if (unit === undefined) return ratio(amount);
  if (unit === 'deg') return angle(amount);
  if (unit === '%') return ratio(amount / 100);
  return length(amount * MILLIMETRES[unit]!);
}

/** a + b or a − b; undefined when the kinds differ. */
export function added(a: Quantity, b: Quantity, sign: 1 | -1): Quantity | undefined {
  return a.kind === b.kind ? { kind: a.kind, amount: a.amount + sign * b.amount } : undefined;
}

/** a × b; undefined when the product has no kind of ours (an area times a length). */
export function multiplied(a: Quantity, b: Quantity): Quantity | undefined {
  const amount = a.amount * b.amount;
  if (a.kind === 'ratio') return { kind: b.kind, amount };
  if (b.kind === 'ratio') return { kind: a.kind, amount };
  if (a.kind === 'length' && b.kind === 'length') return area(amount);
  return undefined;
}

/** a ÷ b; undefined when the quotient has no kind of ours. Division by zero gives an infinite amount. */
export function divided(a: Quantity, b: Quantity): Quantity | undefined {
  const amount = a.amount / b.amount;
  if (b.kind === 'ratio') return { kind: a.kind, amount };
  if (a.kind === b.kind) return ratio(amount);
  if (a.kind === 'area' && b.kind === 'length') return length(amount);
  return undefined;
}

const trimmed = (amount: number, digits: number): string => {
  const text = amount.toFixed(digits);
  const short = text.endsWith('0') && text.includes('.') ? text.replace(/\.?0+$/, '') : text;
  return short === '-0' ? '0' : short;
};

/**
 * A length as the file writes it: `68.4cm`, `3mm`, `2.125in`. Under a centimetre a metric file speaks in millimetres,
 * because that is how a cutter says it.
 */
export function printLength(mm: number, unit: DisplayUnit): string {
  if (!Number.isFinite(mm)) return say`no length at all`;
  if (unit === 'in') return `${trimmed(mm / 25.4, 3)}in`;
  if (unit === 'mm' || Math.abs(mm) < 9.995) return `${trimmed(mm, Math.abs(mm) < 1 ? 2 : 1)}mm`;
  return `${trimmed(mm / 10, 2)}cm`;
}

/** A length with a tenth of a millimetre more than `printLength`, where two of them must be told apart. */
export function printLengthFine(mm: number, unit: DisplayUnit): string {
  if (unit === 'in') return `${trimmed(mm / 25.4, 4)}in`;
  if (unit === 'mm' || Math.abs(mm) < 9.995) return `${trimmed(mm, 3)}mm`;
  return `${trimmed(mm / 10, 3)}cm`;
}

export const printAngle = (degrees: number): string => `${trimmed(degrees, 2)}deg`;

/** Any quantity as a person reads it. */
/** A quantity as it may be written in a pattern, to 5 digits behind the point; nothing writes an area. */
export function plainly({ kind, amount }: Quantity, unit: DisplayUnit): string | undefined {
  const number = (of: number): string => String(Number(of.toFixed(5)));
  if (kind === 'length') return `${number(amount / MILLIMETRES[unit]!)}${unit}`;
  if (kind === 'angle') return `${number(amount)}deg`;
  return kind === 'ratio' ? number(amount) : undefined;
}

export function print(quantity: Quantity, unit: DisplayUnit): string {
  switch (quantity.kind) {
    case 'length':
      return printLength(quantity.amount, unit);
    case 'angle':
      return printAngle(quantity.amount);
    case 'area':
      return unit === 'in'
        ? say`${trimmed(quantity.amount / 645.16, 1)} square inches`
        : say`${trimmed(quantity.amount / 100, 1)} square centimetres`;
    case 'ratio':
      return trimmed(quantity.amount, 4);
  }
}
