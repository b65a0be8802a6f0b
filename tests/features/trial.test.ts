/** What was tried in the preview, written into the text. */
import assert from 'node:assert/strict';
import type { Trial } from '../../client/preview/protocol';
import { writeTrial, triedChoices } from '../../server/features/trial';
import { Workshop } from '../../server/drafting/workshop';
import { doorTo, MAIN, patternIn } from '../support/drafts';

const TEXT = `pattern "Sail bag"
drafted for small

# how deep it is
choose depth = 30cm in 20cm .. 50cm
choose closing = cord among cord, hooks

body small {
  waist 70cm
}
sizes crew {
  size S "Tall M"
  waist 70cm 80cm
}
`;

function checkWritten(text: string, trial: Trial, expected: string): void {
  const workshop = new Workshop(doorTo(text));
  const { edits } = writeTrial(workshop.pattern(MAIN), workshop.source(MAIN)!, trial);
  const last = [...edits].sort((a, b) => b.place.from - a.place.from);
  const result = last.reduce(
    (now, { place, text: words }) => now.slice(0, place.from) + words + now.slice(place.to),
    text,
  );
  assert.equal(result, expected);
}

describe('a trial', () => {
  it('changes the value of a choice and nothing else', () =>
    checkWritten(TEXT, { set: { depth: '32.5cm' } }, TEXT.replace('30cm in', '32.5cm in')));

  it('changes whom the pattern is drafted for, a size of two words in quotes', () =>
    checkWritten(
      TEXT,
      { for: { name: 'crew', size: 'Tall M' }, set: {} },
      TEXT.replace('for small', 'for crew "Tall M"'),
    ));

  it('says whom the pattern is drafted for where it did not say so', () => {
    const without = TEXT.replace('drafted for small\n', '');
    checkWritten(without, { for: { name: 'small' }, set: {} }, TEXT);
  });

  it('writes nothing for a choice that the text no longer has', () =>
    checkWritten(TEXT, { for: { name: 'gone' }, set: { width: '3cm' } }, TEXT));

  it('writes nothing for the value that stands there', () =>
    checkWritten(TEXT, { set: { depth: '30cm' } }, TEXT));

  it('offers every choice with its range, its words and its remark', () => {
    const pattern = patternIn(TEXT);
    assert.deepEqual(triedChoices(pattern), [
      {
        path: 'depth',
        doc: 'how deep it is',
        value: '30cm',
        written: '30cm',
        low: '20cm',
        high: '50cm',
        among: [],
      },
      { path: 'closing', doc: '', value: 'cord', written: 'cord', among: ['cord', 'hooks'] },
    ]);
  });

  it('offers every body and every size', () => {
    const pattern = patternIn(TEXT);
    assert.deepEqual(pattern.everybody, [
      { name: 'small' },
      { name: 'crew', size: 'S' },
      { name: 'crew', size: 'Tall M' },
    ]);
  });
});
