/** Finds measurements whose two sides lie further apart than bodies do: measured wrongly, or worth measuring again. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { ofSheets, whose } from './measurements';

export const unevenSides: Judged = {
  code: 'uneven-sides',
  severity: 'warning',
  title: 'Left and right further apart than on most bodies',
  by: 'judgement',
  ofPattern: ofSheets(uneven),
};

/** Sides further apart than this are measured again before anything is cut (common practice), mm. */
const MEASURE_AGAIN = 25;

function uneven(sheet: BodySheet, { unit }: Pattern): readonly Finding[] {
  const found: Finding[] = [];
  for (const [name, { left, right, sided, statement, at }] of sheet.measures) {
    const apart = Math.abs(left.amount - right.amount);
    if (!sided || left.kind !== 'length' || apart <= MEASURE_AGAIN) continue;
    const message = say`${name} of ${whose(sheet)} is ${printLength(left.amount, unit)} on the left and ${printLength(right.amount, unit)} on the right, ${printLength(apart, unit)} apart. Measure again before cutting.`;
    found.push(finding('uneven-sides', { statement, at }, message));
  }
  return found;
}
