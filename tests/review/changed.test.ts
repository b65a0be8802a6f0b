/** Which patterns of two trees are compared. */
import assert from 'node:assert/strict';
import { changedFiles } from '../../server/lsp/versions/changed';
import type { Tree } from '../../server/lsp/versions/tree';

const treeOf = (files: Readonly<Record<string, string>>): Tree => ({
  name: 'a tree',
  list: () => Object.keys(files),
  readAhead: () => undefined,
  read: (path) => (files[path] === undefined ? { fault: 'missing' } : { text: files[path] }),
});

describe('patterns to compare', () => {
  for (const line of ['use "cast/bodies.draft"', 'use„cast/bodies.draft“', '\ufeffuse  "cast/bodies.draft"'])
    it(`hold those whose bodies changed, also where they say ${JSON.stringify(line)}`, () => {
      const skirt = `${line}\npiece front of skirt {\n}\n`;
      const wornAt = (waist: string) =>
        treeOf({ 'skirt.draft': skirt, 'cast/bodies.draft': `body dresser {\n  waist ${waist}\n}\n` });
      const same = { was: 'skirt.draft', now: 'skirt.draft' };
      assert.deepEqual(changedFiles(wornAt('70cm'), wornAt('72cm')), [same]);
    });
});
