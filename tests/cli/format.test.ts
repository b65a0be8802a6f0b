/** The canonical layout on the command line: what is written, what is left alone, what is only said. */
import assert from 'node:assert/strict';
import { chmodSync, lstatSync, readdirSync, readFileSync, statSync, symlinkSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { apron, apronWith } from '../support/apron';
import { inFolder, type CommandFolder } from '../support/command';

const untidy = apronWith('  cut 1\n', 'cut   1\n').replace(
  'waist-left right width',
  'waist-left  right width',
);
const textIn = ({ path }: CommandFolder, name: string) => readFileSync(join(path, name), 'utf8');

describe('draftwright format', () => {
  it('lays untidy files out, names each, and leaves nothing half written', () =>
    inFolder({ 'apron.draft': untidy, 'acts/two.draft': 'let  a=2cm' }, async (folder) => {
      assert.deepEqual(await folder.run('format', 'apron.draft', 'acts/two.draft', 'apron.draft'), {
        exit: 0,
        out: 'apron.draft: laid out anew\nacts/two.draft: laid out anew\n',
        err: '',
      });
      assert.equal(textIn(folder, 'apron.draft'), apron);
      assert.equal(textIn(folder, 'acts/two.draft'), 'let a = 2cm\n');
      assert.deepEqual(readdirSync(folder.path).sort(), ['acts', 'apron.draft']);
    }));

  it('does not touch a file that is in the layout already, and says nothing of it', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const path = join(folder.path, 'apron.draft');
      utimesSync(path, 1000, 1000);
      const before = statSync(path);
      assert.deepEqual(await folder.run('format', 'apron.draft'), { exit: 0, out: '', err: '' });
      assert.deepEqual([statSync(path).ino, statSync(path).mtimeMs], [before.ino, 1000000]);
    }));

  it('keeps line ends, the byte order mark and the permissions of a file', () =>
    inFolder({ 'a.draft': '\ufefflet  a = 3cm\r\n' }, async (folder) => {
      const path = join(folder.path, 'a.draft');
      if (process.platform !== 'win32') chmodSync(path, 0o640);
      const { mode } = statSync(path);
      await folder.run('format', 'a.draft');
      assert.equal(textIn(folder, 'a.draft'), '\ufefflet a = 3cm\r\n');
      assert.equal(statSync(path).mode, mode);
    }));

  it('writes to the file that a link leads to, and the link stays', () =>
    inFolder({ 'a.draft': 'let  a = 3cm\n' }, async (folder) => {
      symlinkSync(join(folder.path, 'a.draft'), join(folder.path, 'link.draft'));
      assert.equal((await folder.run('format', 'link.draft')).out, 'link.draft: laid out anew\n');
      assert.ok(lstatSync(join(folder.path, 'link.draft')).isSymbolicLink());
      assert.equal(textIn(folder, 'a.draft'), 'let a = 3cm\n');
    }));

  it('leaves a text alone in which a brace is missing', () =>
    inFolder({ 'a.draft': 'draft a {\n    point p =   origin\n' }, async (folder) => {
      assert.deepEqual(await folder.run('format', 'a.draft'), { exit: 0, out: '', err: '' });
    }));

  it('with --check writes nothing, names the files that would change and ends with 1', () =>
    inFolder({ 'apron.draft': untidy, 'neat.draft': apron }, async (folder) => {
      assert.deepEqual(await folder.run('format', '--check', 'neat.draft', 'apron.draft'), {
        exit: 1,
        out: 'apron.draft: not in the canonical layout\n',
        err: '',
      });
      assert.equal(textIn(folder, 'apron.draft'), untidy);
      assert.equal((await folder.run('format', 'neat.draft', '--check')).exit, 0);
    }));

  it('lays out what it can read and ends with 2 for the file it can’t', () =>
    inFolder({ 'apron.draft': untidy, 'photo.draft': new Uint8Array([137, 80, 0, 1]) }, async (folder) => {
      const { exit, out, err } = await folder.run('format', 'gone.draft', 'photo.draft', 'apron.draft');
      assert.deepEqual([exit, out], [2, 'apron.draft: laid out anew\n']);
      assert.match(err, /^There is no file gone\.draft here\.\nphoto\.draft isn't text/);
      assert.equal((await folder.run('format')).exit, 2);
    }));
});
