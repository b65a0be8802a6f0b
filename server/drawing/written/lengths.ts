/** Lengths and areas in the columns of a table: in the pattern's own unit, which the head of the column names. */
import { say } from '../../../grammar/say';
import type { DisplayUnit } from '../../drafting/model';

/** Millimetres in a unit, and the digits that stand for a tenth of a millimetre or a little less. */
const UNITS: Readonly<Record<DisplayUnit, { readonly mm: number; readonly digits: number }>> = {
  mm: { mm: 1, digits: 1 },
  cm: { mm: 10, digits: 2 },
  in: { mm: 25.4, digits: 3 },
};

/** A length in the unit, without the unit's name; a dash for what has no length. */
export function lengthText(mm: number, unit: DisplayUnit): string {
  if (!Number.isFinite(mm)) return '-';
  const text = (mm / UNITS[unit].mm).toFixed(UNITS[unit].digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/** A difference with its sign, so that ease is never read as a length. */
export function easeText(mm: number, unit: DisplayUnit): string {
  const text = lengthText(mm, unit);
  return Number(text) > 0 ? `+${text}` : text;
}

/** What cloth is counted in: square metres, or square yards where the pattern speaks in inches. */
export const areaUnit = (unit: DisplayUnit): string => (unit === 'in' ? say`sq yd` : 'm²');

export const areaText = (mm2: number, unit: DisplayUnit): string =>
  Number.isFinite(mm2) ? (mm2 / (unit === 'in' ? 914.4 ** 2 : 1e6)).toFixed(3) : '-';
