/** How grave each problem is, as the command line is told. */
import assert from 'node:assert/strict';
import { apronWith } from '../support/apron';
import { inFolder } from '../support/command';

const files = { 'apron.draft': apronWith('draft sheet {', 'draft sheet {\n  let bib-height = 1cm') };

describe('draftwright check --severity', () => {
  it('makes of a warning an error that ends with 1, a note, or nothing', () =>
    inFolder(files, async (folder) => {
      const counted = async (severity: string) => {
        const { exit, out } = await folder.run(
          'check',
          'apron.draft',
          '--severity',
          `hidden-name=${severity}`,
        );
        return [exit, out.trim().split('\n').at(-1)];
      };
      assert.deepEqual(await counted('error'), [1, '1 error in 1 file.']);
      assert.deepEqual(await counted('warning'), [0, '1 warning in 1 file.']);
      assert.deepEqual(await counted('note'), [0, '1 note in 1 file.']);
      assert.deepEqual(await counted('off'), [0, 'No problems in 1 file.']);
    }));

  it('says in a sentence why a setting can’t be followed', () =>
    inFolder(files, async (folder) => {
      const why = async (...words: string[]) => {
        const { exit, out, err } = await folder.run('check', 'apron.draft', ...words);
        assert.deepEqual([exit, out], [2, '']);
        return err.split('\n')[0]!;
      };
      assert.match(await why('--severity', 'hidden-name'), /isn't CODE=SEVERITY; for example/);
      assert.match(
        await why('--severity', 'hiden-name=off'),
        /No problem is called hiden-name\. Did you mean/,
      );
      assert.match(await why('--severity', 'hidden-name=loud'), /off, note, warning or error, not to loud\./);
      assert.match(await why('--severity', 'unclosed-outline=off'), /unclosed-outline can't be set/);
      const twice = ['--severity', 'hidden-name=off', '--severity', 'hidden-name=note'];
      assert.match(await why(...twice), /names hidden-name twice/);
    }));

  it('explains a code with the ranges that it judges by', () =>
    inFolder({}, async (folder) => {
      const { exit, out } = await folder.run('explain', 'unusual-ease');
      assert.equal(exit, 0);
      assert.match(out, /## Ranges\n[\s\S]*\| `hip-ease` \| at least 2cm \| common practice/);
    }));
});
