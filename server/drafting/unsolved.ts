/** Says of an unknown (`solve`) why no value was found for it. */
import { say } from '../../grammar/say';
import type { Name } from '../../grammar/syntax';
import type { Solved } from '../geometry';
import type { Finding } from './finding';
import type { DisplayUnit, Quantity } from './model';
import type { DefinitionReader } from './definition-reader';
import { print } from './values/quantity';
import { report } from './values/reader';

/**
 * From this jump on the two sides never agree: as much as an outline may gape, in mm (or mm², degrees, plain). Smaller ones
 * are roundings of a drawing, which nobody cuts; a smooth equation never comes near it.
 */
export const LEAP = 0.05;

/** What the trials of an unknown came to. */
interface Tried {
  readonly complained: boolean;
  /** Why the two sides can't be compared at all, whatever the value. */
  readonly fault?: Finding;
  readonly kind?: Quantity['kind'];
}

export function unsolved(
  reader: DefinitionReader,
  { text: name, at }: Name,
  ends: readonly [Quantity, Quantity],
  found: Solved,
  { complained, fault, kind = 'length' }: Tried,
): undefined {
  const { unit } = reader;
  if (found.kind === 'root') {
    const root = print({ kind: ends[0].kind, amount: found.x }, unit);
    return report(reader, 'no-solution', at, leaped(name, root, print({ kind, amount: found.jump }, unit)));
  }
  const residuals = [found.fLo, found.fHi] as const;
  if (!residuals.some(Number.isNaN))
    return report(reader, 'no-solution', at, noRoot(name, ends, residuals, kind, unit));
  if (!complained) return undefined;
  if (fault !== undefined) {
    reader.findings.push(fault);
    return undefined;
  }
  const end = print(ends[Number.isNaN(residuals[0]) ? 0 : 1], unit);
  const message = say`${name} can't be tried over its whole range: the two sides can't both be had at ${end}.`;
  return report(reader, 'no-solution', at, message);
}

/** An unknown at which the two sides change places without ever being equal: a rounding, or an `if`. */
const leaped = (name: string, at: string, by: string): string =>
  say`No ${name} makes both sides equal: at ${at} their difference jumps by ${by}, from one side being the larger to the other. Look for a round or an if in what the two sides measure.`;

/** Both residuals of a `solve` that does not bracket its equation. */
function noRoot(
  name: string,
  [low, high]: readonly [Quantity, Quantity],
  residuals: readonly [number, number],
  kind: Quantity['kind'],
  unit: DisplayUnit,
): string {
  const size = (amount: number) => print({ kind, amount: Math.abs(amount) }, unit);
  const [over, under] =
    kind === 'length' ? [say`too long`, say`too short`] : [say`too much`, say`too little`];
  const word = residuals[0] > 0 ? over : under;
  return say`No ${name} between ${print(low, unit)} and ${print(high, unit)} makes both sides equal: the left side is ${size(residuals[0])} ${word} at one end and ${size(residuals[1])} ${word} at the other. Widen the range, or look at what the two sides measure.`;
}
