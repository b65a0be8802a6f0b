/** Papers that a pattern is printed on. Millimetres, upright. */
import { say } from '../../../grammar/say';

export interface Paper {
  readonly name: string;
  readonly width: number;
  readonly height: number;
}

/** A roll: as wide as it is, as long as it is needed. */
export interface Roll {
  readonly name: string;
  readonly width: number;
  readonly roll: true;
}

const INCH_MM = 25.4;

/** The longest side that a page of a PDF may have without a unit of its own (ISO 32000-1, annex C): 14,400 points. */
export const LONGEST_MM = (14_400 / 72) * INCH_MM;

/** A series: ISO 216. Letter and Legal: ANSI/ASME Y14.1 has Letter (8½ by 11 in) as size A; Legal (8½ by 14 in) *from memory*. */
export const papers: readonly Paper[] = [
  { name: 'A4', width: 210, height: 297 },
  { name: 'A3', width: 297, height: 420 },
  { name: 'Letter', width: 8.5 * INCH_MM, height: 11 * INCH_MM },
  { name: 'Legal', width: 8.5 * INCH_MM, height: 14 * INCH_MM },
];

/** Papers of a series in inches bear a square of an inch beside the one of 100 mm. */
export const inInches = ({ name }: Paper): boolean => name === 'Letter' || name === 'Legal';

/** A paper by its name, whatever the case. */
export const paperNamed = (name: string): Paper | undefined =>
  papers.find((paper) => paper.name.toLowerCase() === name.toLowerCase());

const UNITS: Readonly<Record<string, number>> = { mm: 1, cm: 10, m: 1000, in: INCH_MM };
/** Narrower is no roll, wider no plotter's: what is meant is another unit. */
const [NARROWEST_MM, WIDEST_MM] = [150, 3000];

/** `roll 914mm`, `roll 36in`: a roll; a sentence where it is none; undefined where no roll is meant. */
export function rollNamed(name: string): Roll | string | undefined {
  const [, rest] = /^roll(?![a-z])[\s:]*(.*)$/i.exec(name.trim()) ?? [];
  if (rest === undefined) return undefined;
  const [, amount, unit] = /^(\d+(?:\.\d+)?)\s*(mm|cm|m|in)$/i.exec(rest.trim()) ?? [];
  if (amount === undefined || unit === undefined)
    return say`A roll wants its width with a unit: "roll 914mm", "roll 91.4cm" or "roll 36in".`;
  const width = Number(amount) * UNITS[unit.toLowerCase()]!;
  const wide = `${amount}${unit}`;
  if (width < NARROWEST_MM)
    return say`A roll of ${wide} is narrower than any that is printed on (${NARROWEST_MM}mm to ${WIDEST_MM}mm). Look at the unit.`;
  if (width > WIDEST_MM)
    return say`A roll of ${wide} is wider than any that is printed on (${NARROWEST_MM}mm to ${WIDEST_MM}mm). Look at the unit.`;
  return { name: say`roll of ${amount}${unit.toLowerCase()}`, width, roll: true };
}

export const turned = ({ name, width, height }: Paper): Paper => ({ name, width: height, height: width });
