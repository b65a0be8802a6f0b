/** Finds measurements outside any body: a slip of the tape, the unit or the pen. */
import type { Finding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';
import { measurementNamed } from '../drafting/values/measurements';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { ofSheets, whose } from './measurements';

export const implausibleMeasurement: Judged = {
  code: 'implausible-measurement',
  severity: 'warning',
  title: 'A measurement that no body has',
  by: 'judgement',
  ofPattern: ofSheets(outOfRange),
};

function outOfRange(sheet: BodySheet, { unit }: Pattern): readonly Finding[] {
  const found: Finding[] = [];
  for (const [name, { left, right, statement, at }] of sheet.measures) {
    const known = measurementNamed.get(name);
    if (known === undefined) continue;
    const wrong = [left, right].find(({ kind, amount }) => kind !== 'length' || amount < known.low || amount > known.high);
    if (wrong === undefined) continue;
    const is = wrong.kind === 'length' ? printLength(wrong.amount, unit) : 'no length';
    const range = `${printLength(known.low, unit)} to ${printLength(known.high, unit)}`;
    const message = `${name} of ${whose(sheet)} is ${is}; bodies run from ${range}. Look at the unit and the digits, or measure again: ${known.howToTake}`;
    found.push(finding('implausible-measurement', { statement, at }, message));
  }
  return found;
}
