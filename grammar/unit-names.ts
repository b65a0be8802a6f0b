/** Units as people write them out, and what of ours they stand for. */
import type { Unit } from './syntax';
import { isUnit } from './words';

const UNIT_NAMES: Record<string, string> = {
  inch: 'in', inches: 'in', centimetre: 'cm', centimetres: 'cm', centimeter: 'cm', centimeters: 'cm', metre: 'm',
  metres: 'm', meter: 'm', meters: 'm', millimetre: 'mm', millimetres: 'mm', yard: 'yd', yards: 'yd', yds: 'yd',
  degree: 'deg', degrees: 'deg', degs: 'deg', cms: 'cm', mms: 'mm', ins: 'in',
}; // prettier-ignore

const FEET = new Set(['ft', 'foot', 'feet', "'", '′', '’']);

export const isFeet = (letters: string): boolean => FEET.has(letters.toLowerCase());

/** What a number with a unit that is written otherwise stands for; feet have no unit here, and become inches. */
export function unitMeant(
  number: string,
  amount: number,
  letters: string,
): { readonly amount: number; readonly unit: Unit; readonly text: string } | undefined {
  const lower = letters.toLowerCase();
  if (isFeet(letters)) {
    const inches = Number((amount * 12).toFixed(4));
    return { amount: inches, unit: 'in', text: `${inches}in` };
  }
  const unit = isUnit(lower) ? lower : Object.hasOwn(UNIT_NAMES, lower) ? UNIT_NAMES[lower] : undefined;
  return unit === undefined ? undefined : { amount, unit: unit as Unit, text: number + unit };
}
