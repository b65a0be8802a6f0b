/** Finds measurements outside any body: a slip of the tape, the unit or the pen. */
import { inWords, say } from '../../grammar/say';
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

function outOfRange(sheet: BodySheet, pattern: Pattern): readonly Finding[] {
  const { unit } = pattern;
  const found: Finding[] = [];
  for (const [name, { left, right, statement, at }] of sheet.measures) {
    const known = rangeOf(name, pattern);
    if (known === undefined) continue;
    const wrong = [left, right].find(
      ({ kind, amount }) => kind !== 'length' || amount < known.low || amount > known.high,
    );
    if (wrong === undefined) continue;
    const is = wrong.kind === 'length' ? printLength(wrong.amount, unit) : say`no length`;
    const [low, high] = [printLength(known.low, unit), printLength(known.high, unit)];
    const message = say`${name} of ${whose(sheet)} is ${is}; ${known.whose} from ${low} to ${high}. Look at the unit and the digits, or measure again: ${known.how}`;
    found.push(finding('implausible-measurement', { statement, at }, message));
  }
  return found;
}

/** The range of a well-known measurement, or that which the pattern declares for its own. */
function rangeOf(
  name: string,
  { ownMeasurements }: Pattern,
): { low: number; high: number; whose: string; how: string } | undefined {
  const own = ownMeasurements.get(name);
  if (own?.low !== undefined && own.high !== undefined) {
    return {
      low: own.low,
      high: own.high,
      whose: say`its own line has it`,
      how: `${own.words.replace(/[.?!]$/, '')}.`,
    };
  }
  const known = measurementNamed.get(name);
  return known && { low: known.low, high: known.high, whose: say`bodies run`, how: inWords(known.howToTake) };
}
