/** The paths of `use` lines found by their words alone are those that the language reads. */
import assert from 'node:assert/strict';
import { parse, usedPaths } from '../../grammar';
import { links } from '../../server/features/links';

const LINES = [
  'use "a.draft"',
  'use"a.draft"',
  'use\u00a0"a.draft"',
  '\ufeffuse "a.draft"',
  'use “a.draft”',
  'use „a.draft“',
  'use «a.draft»',
  "use 'a.draft'",
  'USE "a.draft"',
  '\u3000use  "cast “one”/a.draft" as cast',
  'use "a \\"b\\".draft"',
  'use "a.draft" with ease = 5cm,\n  length = 60cm',
  'use "a.draft',
  '# of the company\r\nuse "a.draft"\r\nuse "b.draft"',
  'let used = 1cm\nuse "a.draft"',
];

describe('paths of use lines', () => {
  for (const text of LINES)
    it(`are found by their words as they are read: ${JSON.stringify(text)}`, () => {
      const read = links(parse(text)).map(({ path }) => path);
      assert.ok(read.length > 0);
      assert.deepEqual(usedPaths(text), read);
    });

  it('are not found in remarks, nor in names that begin like the word', () => {
    assert.deepEqual(usedPaths('# use "a.draft"\nuse-not = "b.draft"\nused "c.draft"\n'), []);
  });
});
