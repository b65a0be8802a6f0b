/** `draftwright draw` with sizes on one another, with some pieces only, as DXF, and where nothing can be written. */
import assert from 'node:assert/strict';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { apron } from '../support/apron';
import { notWritten } from '../../server/cli/write';
import { inFolder } from '../support/command';
import { readDxf, textsOf } from '../support/dxf';
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
      assert.match(
        err,
        /^apron\.draft is drafted for nobody, so --sizes has nothing to draw\. A table is written/,
      );
    }));

  it('names a table that the pattern knows where one body has no sizes', () =>
    inFolder(
      { 'hat.draft': `${graded}body bosun {\n  bust 92cm\n  waist 80cm\n  hip 100cm\n}\n` },
      async (folder) => {
        const { exit, err } = await folder.run('draw', 'hat.draft', '--for', 'bosun', '--sizes', 'all');
        assert.deepEqual(
          [exit, err],
          [
            2,
            'hat.draft is drafted for bosun, one body, so --sizes has nothing to draw. ' +
              'Name a size of a table as well: --for "hands S".\n',
          ],
        );
      },
    ));
});

describe('draftwright draw --pieces', () => {
  it('draws the pieces that are named, and says which there are when one is not', () =>
    inFolder(files, async (folder) => {
      assert.match((await folder.run('draw', 'apron.draft', '--pieces', 'bib')).out, /1 piece\n$/);
      const { exit, err } = await folder.run('draw', 'apron.draft', '--pieces', 'sleeve');
      assert.deepEqual([exit, err], [2, 'No piece is called sleeve. Pieces are skirt, bib.\n']);
    }));
});

describe('draftwright draw --format dxf', () => {
  const textIn = (folder: { readonly path: string }, name: string): string =>
    readFileSync(join(folder.path, name), 'utf8');

  it('writes every size of every piece that is asked for, each as a block', () =>
    inFolder(files, async (folder) => {
      const { exit, out } = await folder.run(
        ...['draw', 'bucket.draft', '--format', 'dxf', '--sizes', 'all', '--pieces', 'patch'],
      );
      assert.deepEqual([exit, out], [0, 'bucket.dxf: 1 piece, each in S, M, L\n']);
      const { blocks } = readDxf(textIn(folder, 'bucket.dxf'));
      assert.deepEqual([...blocks.keys()], ['patch_S', 'patch_M', 'patch_L']);
    }));

  it('writes the body that the pattern is drafted for, and the plain drawing beside it', () =>
    inFolder(files, async (folder) => {
      await folder.run('draw', 'bucket.draft', '--format', 'dxf', '--for', 'hands L');
      const { out } = await folder.run('draw', 'bucket.draft', '--format', 'dxf-drawing');
      assert.equal(out, 'bucket-drawing.dxf: 2 pieces\n');
      assert.deepEqual(readdirSync(folder.path).sort(), [
        ...['apron.draft', 'bucket-drawing.dxf', 'bucket.draft', 'bucket.dxf'],
      ]);
      assert.ok(textsOf(readDxf(textIn(folder, 'bucket.dxf')).entities).includes('SAMPLE SIZE: L'));
    }));

  it('draws what is whole of a pattern with an error, and says in the file what is not', () =>
    inFolder(
      { 'apron.draft': apron.replace('straight to foot-right', 'straight to nowhere') },
      async (folder) => {
        const { exit, err } = await folder.run('draw', 'apron.draft', '--format', 'dxf');
        assert.equal(exit, 1);
        const [said] = err.split('\n');
        assert.match(said!, /^bib is not drawn: /);
        const { blocks, entities } = readDxf(textIn(folder, 'apron.dxf'));
        assert.deepEqual([...blocks.keys()], ['skirt']);
        assert.ok(textsOf(entities).some((words) => words.startsWith('ANNOTATION: bib is not drawn: ')));
      },
    ));

  it('says for which sizes a piece could not be drawn, and ends with 1', () =>
    inFolder(
      { 'bucket.draft': graded.replace('bust - 80cm', 'sqrt((bust - 90cm) / 1cm) * 1cm') },
      async (folder) => {
        const { exit, err } = await folder.run('draw', 'bucket.draft', '--format', 'dxf', '--sizes', 'all');
        assert.equal(exit, 1);
        assert.match(err, /^front is not drawn for size S: it has an error there\.$/m);
      },
    ));
});

describe('a file that can’t be written', () => {
  it('leaves what was there, and says why in words', () =>
    inFolder(files, async (folder) => {
      mkdirSync(join(folder.path, 'bucket.svg'));
      const { exit, err } = await folder.run('draw', 'bucket.draft');
      assert.equal(exit, 2);
      assert.match(err, /^bucket\.svg can't be written: a folder of that name lies there\./);
      assert.deepEqual(readdirSync(folder.path).sort(), ['apron.draft', 'bucket.draft', 'bucket.svg']);
    }));

  it('is told at once where no folder can be made', () =>
    inFolder(files, async (folder) => {
      assert.match(notWritten('a.dxf', 'ENOENT'), /no folder can be made there/);
      if (!existsSync('/proc/self')) return; // only Linux has a folder that takes none and says so in this way
      const { exit, err } = await folder.run('draw', 'bucket.draft', '--out', '/proc/nowhere');
      assert.equal(exit, 2);
      assert.match(err, /can't be written: no folder can be made there/);
    }));

  it('is explained for a full disk, a folder that may not be written to, and what nobody foresaw', () => {
    assert.equal(
      notWritten('out/a.dxf', 'ENOSPC'),
      "out/a.dxf can't be written: the disk is full. Make room, or write elsewhere (ENOSPC).",
    );
    assert.match(notWritten('a.dxf', 'EROFS'), /nothing may be written there/);
    assert.match(notWritten('a.dxf', 'EACCES'), /nothing may be written there/);
    assert.equal(notWritten('a.dxf', 'EIO'), "a.dxf can't be written (EIO).");
    assert.equal(notWritten('a.dxf', undefined), "a.dxf can't be written (unknown reason).");
  });
});
