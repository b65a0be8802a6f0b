/** Finds measurements of one body that do not go together: one of them was taken or copied wrongly. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';
import { measurementNamed } from '../drafting/values/measurements';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { ofSheets, taken, whose } from './measurements';

export const unlikelyProportion: Judged = {
  code: 'unlikely-proportion',
  severity: 'warning',
  title: 'Two measurements of one body that do not go together',
  by: 'judgement',
  ofPattern: ofSheets(unlikely),
};

interface Rule {
  /** The measurement at which it is said, and what it is compared with. */
  readonly of: string;
  readonly less: readonly string[];
  readonly low: number;
  readonly high: number;
}

/** Differences in mm, *common practice*: wide enough for every body of the invented company. */
const RULES: readonly Rule[] = [
  { of: 'bust', less: ['under-bust'], low: 0, high: 400 },
  { of: 'front-length', less: ['nape-to-waist'], low: -10, high: 70 },
  { of: 'bust', less: ['across-back', 'across-front'], low: 200, high: 400 },
  { of: 'hip', less: ['waist'], low: -150, high: 450 },
  { of: 'waist-to-floor', less: ['inside-leg'], low: 150, high: 400 },
  { of: 'arm-length', less: ['shoulder-to-elbow'], low: 120, high: 350 },
];

function outside(name: string, mm: number): boolean {
  const known = measurementNamed.get(name);
  return known !== undefined && (mm < known.low || mm > known.high);
}

function unlikely(sheet: BodySheet, { unit }: Pattern): readonly Finding[] {
  return RULES.flatMap(({ of, less, low, high }): Finding[] => {
    const whole = taken(sheet, of);
    const parts = less.map((name) => taken(sheet, name));
    if (whole === undefined || parts.some((part) => part === undefined)) return [];
    // a measurement that no body has is said by itself
    if ([of, ...less].some((name) => outside(name, taken(sheet, name)!))) return [];
    const left = whole - parts.reduce<number>((sum, part) => sum + part!, 0);
    if (left >= low && left <= high) return [];
    const { statement, at } = sheet.measures.get(of)!;
    const message = say`${of} less ${less.join(say` less `)} is ${printLength(left, unit)} for ${whose(sheet)}; on bodies it lies between ${low === 0 ? say`nothing` : printLength(low, unit)} and ${printLength(high, unit)}. Measure both again.`;
    return [finding('unlikely-proportion', { statement, at }, message)];
  });
}
