/** The words of the trade at a terminal: British, or American where they are asked for. */
import assert from 'node:assert/strict';
import { inFolder } from '../support/command';

describe('the option --words', () => {
  it('has a page explained in American, its examples as they are written', () =>
    inFolder({}, async (folder) => {
      const { out: british } = await folder.run('explain', 'unusual-fork');
      const { exit, out } = await folder.run('explain', 'unusual-fork', '--words', 'american');
      assert.equal(exit, 0);
      assert.match(british, /^# Trousers with an unusual fork/);
      assert.match(out, /^# Pants with an unusual crotch/);
      const fenced = (page: string) => page.match(/^```draft[\s\S]*?^```$/gm);
      assert.deepEqual(fenced(out), fenced(british));
    }));

  it('has a sheet written in American, and leaves the words of the pattern', () =>
    inFolder({ 'legs.draft': 'let reach = inside-leg\n' }, async (folder) => {
      const [british, american] = await Promise.all(
        ['british', 'american'].map((words) => folder.run('sheet', 'legs.draft', '--words', words)),
      );
      assert.match(british!.out, /inside-leg[\s\S]*From the fork/);
      assert.match(american!.out, /inside-leg[\s\S]*From the crotch/);
    }));

  it('is told to check as well, and refuses every other dialect in a sentence', () =>
    inFolder({ 'a.draft': 'pattern "A"\n' }, async (folder) => {
      const told = await folder.run('check', 'a.draft', '--words', 'american');
      assert.deepEqual([told.exit, told.err], [0, '']);
      const refused = await folder.run('check', 'a.draft', '--words', 'welsh');
      assert.equal(refused.exit, 2);
      assert.match(refused.err, /Allowed choices are british, american\./);
    }));
});
