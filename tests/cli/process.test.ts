/** The command line as a process: what it ends with, what it prints where, and the server that it starts. */
import assert from 'node:assert/strict';
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';
import { apron, apronWith } from '../support/apron';
import { TestClient } from '../support/client';
import { CommandFolder } from '../support/command';
import { root } from '../support/sources';

const program = ['--import', 'tsx', join(root, 'server', 'cli', 'main.ts')];

describe('the command line as a process', () => {
  let folder: CommandFolder;
  before(
    () =>
      void (folder = new CommandFolder({
        'apron.draft': apron,
        'broken.draft': apronWith('width', 'wdith'),
      })),
  );
  after(() => folder.remove());

  const draftwright = (...args: string[]) =>
    spawnSync(process.execPath, [...program, ...args.map((arg) => arg.replace('@', `${folder.path}/`))], {
      cwd: root,
      encoding: 'utf8',
    });

  it('ends with 1 or 2 as it promises, and prints no colour into a pipe', () => {
    const faulty = draftwright('check', '@broken.draft');
    assert.deepEqual([faulty.status, faulty.stderr], [1, '']);
    assert.ok(faulty.stdout.endsWith(' in 1 file.\n') && !faulty.stdout.includes('\u001b'));
    assert.equal(draftwright('check', '@gone.draft').status, 2);
  }).timeout(60000);

  it('serves an editor on its standard streams and ends when told to', async () => {
    const child = spawn(process.execPath, [...program, 'lsp', '--stdio'], { cwd: root });
    const ended = once(child, 'exit');
    const client = await TestClient.connect(child.stdout, child.stdin);
    await client.open('untitled:apron', apronWith('width', 'wdith'));
    assert.equal((await client.diagnostics('untitled:apron')).length > 0, true);
    await client.dismiss();
    assert.deepEqual(await ended, [0, null]);
  }).timeout(60000);
});
