/** Finds measurements of a body whose names are a slip of the pen for well-known ones: nothing ever asks for them. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { BodySheet, Pattern } from '../drafting/model';
import { nearest } from '../drafting/names/spelling';
import { measurementNamed } from '../drafting/values/measurements';
import { finding, type Judged } from './check';
import { ofSheets, whose } from './measurements';

export const mistypedMeasurement: Judged = {
  code: 'mistyped-measurement',
  severity: 'warning',
  title: 'A measurement whose name is nearly another',
  by: 'judgement',
  ofPattern: ofSheets(mistyped),
};

function mistyped(sheet: BodySheet, pattern: Pattern): readonly Finding[] {
  const { ownMeasurements, body } = pattern;
  // all names of the pattern are looked through for it: asked only where a measurement is not known
  const isNeeded = (name: string): boolean => pattern.needs.includes(name);
  const found: Finding[] = [];
  const isDraftedFor = body?.name === sheet.name && body.size === sheet.size;
  for (const [name, { statement, at }] of sheet.measures) {
    if (measurementNamed.has(name) || ownMeasurements.has(name) || isNeeded(name)) continue;
    const meant = nearest(name, [...measurementNamed.keys(), ...ownMeasurements.keys()]);
    // beside the one it is like, it is one of the maker's own
    if (meant === undefined || sheet.measures.has(meant)) continue;
    // where it is missed, that says what was written instead
    if (isDraftedFor && isNeeded(meant)) continue;
    const message = say`${name} is no measurement that is known, and ${whose(sheet)} has no ${meant}. Write ${meant}, if that is meant; one of your own is declared first (measure ${name} "how it is taken" in … .. …).`;
    found.push(
      finding('mistyped-measurement', { statement, at }, message, {
        fixes: [{ title: say`Write ${meant}`, edits: [{ statement, at, text: meant }] }],
      }),
    );
  }
  return found;
}
