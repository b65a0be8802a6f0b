/** What is found in the pages' examples and in the planted faults: every word of it can be said in another language. */
import assert from 'node:assert/strict';
import { FORMS } from '../grammar/forms';
import { HEADS } from '../grammar/words';
import { catalogue, ranges } from '../server/checks';
import type { PlacedFinding } from '../server/drafting/model';
import { measurements } from '../server/drafting/values/measurements';
import { withoutAnnotations } from './support/annotations';
import { drafts, findingsIn, sampleText } from './support/faults';
import { hushed, inLanguage } from './support/in-language';
import { pageText, pagedCodes, readPage, tried } from './support/pages';

const wordsIn = (text: string): readonly string[] => text.match(/[A-Za-z]{2,}/g) ?? [];

/** Words of the language, which every pattern shares: a message may tell how something is written. */
const language = new Set(
  [
    ...Object.values(FORMS).flatMap(({ form, example }) => [form, example]),
    ...Object.values(HEADS).flatMap((heads) => Object.keys(heads)),
    ...[...catalogue.map(({ code }) => code), ...ranges.map(({ name }) => name)],
    ...measurements.map(({ name }) => name),
    'raw edges easing within sin cos cm mm in deg',
  ].flatMap(wordsIn),
);

/** What stands in a finding in letters that neither the pattern nor the language brought. */
function bare({ code, message, related, fixes }: PlacedFinding, own: ReadonlySet<string>): readonly string[] {
  const told = [message, ...related.map((one) => one.message), ...fixes.map(({ title }) => title)];
  return told.flatMap((text) => {
    const left = wordsIn(text).filter((word) => !own.has(word) && !language.has(word));
    return left.length === 0 ? [] : [`${code}: ${left.join(' ')} (${text})`];
  });
}

describe('every word of a finding is asked for in the person’s language', () => {
  for (const code of pagedCodes()) {
    it(`on the page of ${code}`, () => {
      const left = readPage(pageText(code)).examples.flatMap((example) => {
        const text = withoutAnnotations(example.text);
        const own = new Set([text, ...example.beside.values()].flatMap(wordsIn));
        return inLanguage(hushed(), () => tried(example, text).findings.flatMap((found) => bare(found, own)));
      });
      assert.deepEqual(left, []);
    });
  }

  it('in the planted faults', () => {
    const left = drafts('faults').flatMap((path) => {
      const own = new Set(wordsIn(withoutAnnotations(sampleText(path))));
      return inLanguage(hushed(), () => findingsIn(path).flatMap((found) => bare(found, own)));
    });
    assert.deepEqual(left, []);
  });
});
