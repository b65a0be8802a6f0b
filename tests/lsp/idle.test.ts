/** Memory is given back while nobody works, and never while somebody does. */
import assert from 'node:assert/strict';
import { COLLECTIONS, Idle } from '../../server/lsp/idle';
import { machine } from '../../server/lsp/machine';
import { apron } from '../support/apron';
import { TestClient } from '../support/client';

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));
const SHORT = { idle: 40, between: 10 };

describe('giving memory back', () => {
  it('is done a few times once work has rested, and then no more', async () => {
    let collected = 0;
    new Idle(() => collected++, SHORT).stir();
    await pause(250);
    assert.equal(collected, COLLECTIONS);
  });

  it('is put off by every piece of work', async () => {
    let collected = 0;
    const idle = new Idle(() => collected++, { idle: 400, between: 10 });
    for (let i = 0; i < 8; i++) {
      idle.stir();
      await pause(10);
    }
    assert.equal(collected, 0);
    idle.stop();
    await pause(500);
    assert.equal(collected, 0);
  });

  it('follows an edit in a running server, which outlives a failure of it and answers as before', async () => {
    let collected = 0;
    let done = (): void => undefined;
    const given = new Promise<void>((resolve) => (done = resolve));
    const collect = () => {
      if (++collected === COLLECTIONS) done();
      if (collected === 1) throw new Error('the collector is not there');
    };
    const client = await TestClient.start({ folders: ['file:///wardrobe'], collect });
    try {
      const uri = 'file:///wardrobe/apron.draft';
      await client.open(uri, apron);
      const before = await client.diagnostics(uri);
      await client.type(uri, 'down 50cm', 'down 51cm');
      assert.equal(collected, 0);
      await given;
      assert.match(client.faults.join('\n'), /^Giving memory back broke\. .*the collector is not there/);
      await client.type(uri, 'down 51cm', 'down 50cm');
      assert.deepEqual(await client.diagnostics(uri), before);
    } finally {
      await client.leave();
    }
  });

  it('reaches the collector of this machine', () => {
    const kept = new WeakRef({ piece: 'sleeve' });
    return pause(0).then(() => {
      machine('/').collect?.();
      assert.equal(kept.deref(), undefined);
    });
  });
});
