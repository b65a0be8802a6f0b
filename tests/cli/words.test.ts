/** The words of the trade at a terminal: British, or American where they are asked for. */
import assert from 'node:assert/strict';
import { inFolder } from '../support/command';
import { sampleText } from '../support/faults';

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

  it('has a comparison tell problems in American, as check does', () =>
    inFolder(
      {
        'legs.draft': sampleText('faults/unusual-fork.draft')
          .replace(/"\.\.\//g, '"')
          .replace(/fork/g, 'hook'),
        'none.draft': 'pattern "None"\n',
        'bodies/company.draft': sampleText('bodies/company.draft'),
      },
      async (folder) => {
        const said = async (...more: string[]) =>
          (await folder.run('compare', 'none.draft', 'legs.draft', ...more)).out;
        assert.match(await said(), /new warning unusual-fork: [\s\S]*\bfork\b/);
        assert.match(await said('--words', 'american'), /new warning unusual-fork: [\s\S]*\bcrotch\b/);
      },
    ));

  it('does nothing in German, and says so', () =>
    inFolder({ 'a.draft': 'pattern "A"\n' }, async (folder) => {
      const { exit, out, err } = await folder.run(
        ...['check', 'a.draft', '--words', 'american', '--language', 'de'],
      );
      assert.deepEqual([exit, out], [0, 'Keine Probleme in 1 Datei.\n']);
      assert.match(err, /^--words wählt zwischen britischen und amerikanischen Wörtern/);
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
