/** What an editor is offered to export: read off the command line's own options, and run with the texts as they are open. */
import assert from 'node:assert/strict';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { argsFor, writtenFiles } from '../../client/export/answers';
import { answerEditor } from '../../server/cli/for-editors';
import { commandsFor } from '../../server/cli/commands';
import type { ExportTarget, OpenText, Ran } from '../../server/drawing/exporting';
import { inFolder, type CommandFolder } from '../support/command';

const patch = (wide: string): string => `pattern "Patch"
draft patch {
  point a = origin
  point b = a right ${wide}
  point c = b down 10cm
}
piece flap of patch {
  cut 1
  outline from a {
    top straight to b
    side straight to c
    slope straight to a
  }
  grain along side
  allow 1cm
}
`;

async function targets(
  folder: CommandFolder,
  texts: readonly OpenText[] = [],
): Promise<readonly ExportTarget[]> {
  const asked = { id: 1, folder: folder.path, texts, ask: 'targets' as const, language: 'en' };
  const answer = await answerEditor({ ...asked, file: join(folder.path, 'patch.draft') });
  assert.ok('targets' in answer);
  return answer.targets;
}

async function ran(
  folder: CommandFolder,
  texts: readonly OpenText[],
  ...args: readonly string[]
): Promise<Ran> {
  const answer = await answerEditor({ id: 2, folder: folder.path, texts, ask: 'run', args });
  assert.ok('ran' in answer);
  return answer.ran;
}

const silent = { cwd: '.', out: () => undefined, err: () => undefined, width: 80, colour: false };

describe('what can be exported', () => {
  it('has every option of the commands that print, draw and write, but where it goes', () =>
    inFolder({ 'patch.draft': patch('20cm') }, async (folder) => {
      const offered = await targets(folder);
      for (const command of commandsFor(silent).commands) {
        const own = offered.filter(({ args }) => args[0] === command.name());
        if (!['print', 'draw', 'sheet'].includes(command.name())) assert.deepEqual(own, []);
        for (const target of own) {
          const asked = [...target.options.map(({ flag }) => flag), target.place.flag];
          const fixed = target.args.slice(1).map((one) => one.split('=')[0]!);
          assert.deepEqual(
            new Set([...asked, ...fixed]),
            new Set(command.options.map(({ long }) => long)),
            target.id,
          );
        }
      }
    }));

  it('knows the pieces of the text as it is open, and the ways of answering', () =>
    inFolder({ 'patch.draft': patch('20cm') }, async (folder) => {
      const open = { path: join(folder.path, 'patch.draft'), text: patch('20cm').replace('flap', 'tab') };
      const [print] = await targets(folder, [open]);
      const option = (flag: string) => print!.options.find((one) => one.flag === flag);
      assert.deepEqual(option('--pieces')?.values, ['tab']);
      assert.equal(option('--pieces')?.answering, 'some');
      assert.equal(option('--as-laid')?.answering, 'switch');
      assert.equal(option('--language')?.answering, 'one');
      assert.deepEqual(option('--language')?.names, { en: 'English', de: 'Deutsch' });
      assert.deepEqual([option('--paper')?.answering, option('--paper')?.fallback], ['one', 'A4']);
    }));

  it('names the files that each of them writes where an editor looks for them', () =>
    inFolder({ 'patch.draft': patch('20cm') }, async (folder) => {
      const file = join(folder.path, 'patch.draft');
      for (const target of await targets(folder)) {
        const { out, err } = await ran(folder, [], ...argsFor(target, file, {}, folder.path));
        const files = writtenFiles(out);
        assert.equal(files.length, 1, `${target.id}: ${out}${err}`);
        assert.ok(existsSync(files[0]!), `${target.id}: ${files[0]}`);
      }
    }));

  it('offers every sheet by itself, as PDF unless something else is chosen', () =>
    inFolder({ 'patch.draft': patch('20cm') }, async (folder) => {
      const sheets = (await targets(folder)).filter(({ args }) => args[0] === 'sheet');
      assert.deepEqual(
        sheets.map(({ title }) => title),
        [
          'Measuring sheet',
          'Cutting list',
          'Finished measurements',
          'Fit sheet',
          'Sewing order',
          'All written sheets',
        ],
      );
      assert.ok(
        sheets.every(({ options }) => options.find(({ flag }) => flag === '--format')?.fallback === 'pdf'),
      );
    }));
});

describe('an export for an editor', () => {
  it('draws the text as it is open, not as it lies on the disk', () =>
    inFolder({ 'patch.draft': patch('20cm') }, async (folder) => {
      const file = join(folder.path, 'patch.draft');
      const open = { path: file, text: patch('34cm') };
      const out = join(folder.path, 'made');
      const { exit, out: said } = await ran(folder, [open], 'draw', file, `--out=${out}`, '--format=svg');
      assert.equal(exit, 0);
      assert.match(said, /patch\.svg: 1 piece$/m);
      assert.match(readFileSync(join(out, 'patch.svg'), 'utf8'), /34cm/);
    }));

  it('uses the open text of a file that another one uses', () =>
    inFolder(
      { 'patch.draft': `use "wide.draft"\n${patch('wide')}`, 'wide.draft': 'let wide = 20cm\n' },
      async (folder) => {
        const open = { path: join(folder.path, 'wide.draft'), text: 'let wide = 41cm\n' };
        const { out } = await ran(folder, [open], 'measure', join(folder.path, 'patch.draft'));
        assert.match(out, /top +41\.00/);
      },
    ));

  it('says what is in the way, and throws nothing', () =>
    inFolder({ 'patch.draft': patch('20cm'), taken: 'a file' }, async (folder) => {
      const file = join(folder.path, 'patch.draft');
      const { exit, err } = await ran(folder, [], 'draw', file, `--out=${join(folder.path, 'taken')}`);
      assert.equal(exit, 2);
      assert.match(err, /patch\.svg can't be written/);
      assert.match((await ran(folder, [], 'draw', join(folder.path, 'gone.draft'))).err, /There is no file/);
      const asked = (language: string) =>
        answerEditor({ id: 1, folder: folder.path, texts: [], ask: 'targets', file: 'gone.draft', language });
      await assert.rejects(() => asked('en'), /There is no file gone\.draft here\./);
      await assert.rejects(() => asked('de'), /Hier ist keine Datei gone\.draft\./);
    }));
});
