/** The process that exports for an editor: it answers, it can be stopped, and it ends with whoever started it. */
import assert from 'node:assert/strict';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { inLanguageOf } from '../../client/export/answers';
import { drawn } from '../../client/export/copy';
import { Exporter, Stopped } from '../../client/export/exporter';
import { inFolder, type CommandFolder } from '../support/command';
import { root } from '../support/sources';

const program = { module: join(root, 'server', 'cli', 'main.ts'), execArgv: ['--import', 'tsx'] };
const desk = (folder: CommandFolder) => ({ folder: folder.path, texts: [] });

const skirt = `draft d {
  point a = origin
  point b = a right 20cm
  point c = b down 10cm
}
piece flap of d {
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

describe('the exporter', function () {
  this.timeout(60_000);

  it('says what can be made, makes it, and draws for the clipboard without leaving anything behind', () =>
    inFolder({ 'flap.draft': skirt }, async (folder) => {
      const exporter = new Exporter(program);
      try {
        const file = join(folder.path, 'flap.draft');
        const [first] = await exporter.targets(file, desk(folder));
        assert.equal(first?.id, 'print');
        const ran = await exporter.run(['print', file, `--out=${folder.path}`], desk(folder));
        assert.equal(ran.exit, 0);
        assert.ok(existsSync(join(folder.path, 'flap.pdf')));
        const copied = await drawn(exporter, 'svg', {
          ...{ file, trial: { set: {} }, desk: desk(folder), language: inLanguageOf('de') },
        });
        assert.ok('bytes' in copied && new TextDecoder().decode(copied.bytes).includes('>Schnittlinie<'));
        const none = await drawn(exporter, 'svg', {
          file,
          trial: { for: { name: 'nobody-known' }, set: {} },
          desk: desk(folder),
          language: {},
        });
        assert.ok('reason' in none && /nobody-known/.test(none.reason));
        assert.deepEqual(readdirSync(folder.path).sort(), ['flap.draft', 'flap.pdf']);
      } finally {
        exporter.stop();
      }
    }));

  it('that is stopped says so, and leaves no half file', () =>
    inFolder({ 'flap.draft': skirt }, async (folder) => {
      const exporter = new Exporter(program);
      const running = exporter.run(['print', join(folder.path, 'flap.draft')], desk(folder));
      exporter.stop(folder.path);
      await assert.rejects(running, Stopped);
      assert.deepEqual(readdirSync(folder.path), ['flap.draft']);
    }));

  it('that can’t start says why', () =>
    inFolder({}, async (folder) => {
      const exporter = new Exporter({ module: join(folder.path, 'gone.js') });
      await assert.rejects(exporter.run(['check'], desk(folder)), /Cannot find module|gone\.js/);
    }));
});
