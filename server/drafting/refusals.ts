/** Why a definition has no value, in words: circles, and unknowns for which no value fits. */
import type { DisplayUnit, Quantity } from './model';
import { print } from './values/quantity';

/** @param unknowns where a circle leads through several `solve`s: their names */
export function circleWords(names: readonly string[], unknowns: readonly string[]): string {
  if (names.length === 1) return `${names[0]} needs itself, so it can't be computed.`;
  if (unknowns.length > 0) {
    return `${unknowns.slice(0, -1).join(', ')} and ${unknowns[unknowns.length - 1]} can only be found through each other, and a circle holds one unknown. Take something measured or chosen into one of their equations instead.`;
  }
  return `These need each other in a circle, so none can be computed: ${[...names, names[0]!].join(' needs ')}. Give one of them a value of its own.`;
}

/** Both residuals of a `solve` that does not bracket its equation. */
export function noRoot(
  name: string,
  [low, high]: readonly [Quantity, Quantity],
  residuals: readonly [number, number],
  kind: Quantity['kind'],
  unit: DisplayUnit,
): string {
  const [a, b] = residuals.map((amount) => print({ kind, amount: Math.abs(amount) }, unit));
  const [over, under] = kind === 'length' ? ['too long', 'too short'] : ['too much', 'too little'];
  const word = residuals[0] > 0 ? over : under;
  return `No ${name} between ${print(low, unit)} and ${print(high, unit)} makes both sides equal: the left side is ${a} ${word} at one end and ${b} ${word} at the other. Widen the range, or look at what the two sides measure.`;
}
