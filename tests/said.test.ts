/** What is found in the pages' examples and in the planted faults: every word of it can be said in another language. */
import assert from 'node:assert/strict';
import type { PlacedFinding } from '../server/drafting/model';
import { withoutAnnotations } from './support/annotations';
import { bareWords, wordsIn } from './support/bare';
import { drafts, findingsIn, sampleText } from './support/faults';
import { hushed, inLanguage } from './support/in-language';
import { pageText, pagedCodes, readPage, tried } from './support/pages';

/** What stands in a finding in letters that neither the pattern nor the language brought. */
function bare({ code, message, related, fixes }: PlacedFinding, own: ReadonlySet<string>): readonly string[] {
  const told = [message, ...related.map((one) => one.message), ...fixes.map(({ title }) => title)];
  return told.flatMap((text) => {
    const left = bareWords(text, own);
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
