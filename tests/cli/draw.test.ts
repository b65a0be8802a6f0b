/** `draftwright draw` with sizes on one another and with some pieces only. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { apron } from '../support/apron';
import { inFolder } from '../support/command';
import { graded } from '../support/sheets-of-sizes';

const files = { 'bucket.draft': graded, 'apron.draft': apron };

describe('draftwright draw --sizes', () => {
  it('draws every size of the table, or those that are asked for in the order of the table', () =>
    inFolder(files, async (folder) => {
      const all = await folder.run('draw', 'bucket.draft', '--sizes', 'all');
      assert.deepEqual(all, {
        exit: 0,
        out: 'bucket.svg: 2 pieces, sizes S, M, L on one another\n',
        err: '',
      });
      const some = await folder.run('draw', 'bucket.draft', '--sizes', 'L, S', '--pieces', 'front');
      assert.equal(some.out, 'bucket.svg: 1 piece, sizes S, L on one another\n');
      assert.match(readFileSync(join(folder.path, 'bucket.svg'), 'utf8'), /<title>front, size L<\/title>/);
    }));

  it('draws one size as it stands', () =>
    inFolder(files, async (folder) => {
      const { out } = await folder.run('draw', 'bucket.draft', '--sizes', 'L');
      assert.equal(out, 'bucket.svg: 2 pieces\n');
    }));

  it('says which sizes there are when one is asked for that is not', () =>
    inFolder(files, async (folder) => {
      const { exit, err } = await folder.run('draw', 'bucket.draft', '--sizes', 'S,XXL');
      assert.deepEqual([exit, err], [2, 'hands has no size XXL. Sizes are S, M, L, or all.\n']);
    }));

  it('says that a pattern of one body has no sizes', () =>
    inFolder(files, async (folder) => {
      const { exit, err } = await folder.run('draw', 'apron.draft', '--sizes', 'all');
      assert.equal(exit, 2);
      assert.match(err, /^apron\.draft has no table of sizes behind it/);
    }));
});

describe('draftwright draw --pieces', () => {
  it('draws the pieces that are named, and says which there are when one is not', () =>
    inFolder(files, async (folder) => {
      assert.match((await folder.run('draw', 'apron.draft', '--pieces', 'bib')).out, /1 piece\n$/);
      const { exit, err } = await folder.run('draw', 'apron.draft', '--pieces', 'sleeve');
      assert.deepEqual([exit, err], [2, 'No piece is called sleeve. Pieces are skirt, bib.\n']);
    }));
});
