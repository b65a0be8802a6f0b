/** Rounds of drafting: one after a burst, the touched file first, and a newer text overtakes. */
import assert from 'node:assert/strict';
import { Rounds } from '../../server/lsp/rounds';

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

/** Waits until so many updates came, however busy the machine, and a moment more for any that should not. */
async function settled(done: readonly string[], count: number): Promise<void> {
  for (let i = 0; i < 500 && done.length < count; i++) await pause(10);
  await pause(30);
}

describe('a round of drafting', () => {
  it('follows a burst of edits once, with the file touched last before the others', async () => {
    const done: string[] = [];
    const rounds = new Rounds({ files: () => ['a', 'b', 'c'], update: (uri) => void done.push(uri) }, 5);
    rounds.touch('a');
    rounds.touch('c');
    rounds.touch('b');
    await settled(done, 3);
    assert.deepEqual(done, ['b', 'a', 'c']);
  });

  it('is given up between two files when something newer was typed, and begins again with that', async () => {
    const done: string[] = [];
    const rounds: Rounds = new Rounds(
      {
        files: () => ['a', 'b', 'c'],
        update(uri) {
          done.push(uri);
          if (done.length === 1) rounds.touch('c');
        },
      },
      2,
    );
    rounds.touch('a');
    await settled(done, 4);
    assert.deepEqual(done, ['a', 'c', 'a', 'b']);
  });

  it('does not come once the server is stopped', async () => {
    const done: string[] = [];
    const rounds = new Rounds({ files: () => ['a'], update: (uri) => void done.push(uri) }, 2);
    rounds.touch('a');
    rounds.stop();
    await pause(20);
    assert.deepEqual(done, []);
  });
});
