/** Grace for half-typed words: no error comes and goes while somebody types, and none is kept from who has typed. */
import assert from 'node:assert/strict';
import type { DocumentDiagnosticReport } from 'vscode-languageserver';
import { methods, type Sheet } from '../../client/preview/protocol';
import { Lines } from '../../server/features/lines';
import { Grace, GRACE_MS } from '../../server/lsp/grace';
import { apron } from '../support/apron';
import { TestClient, type Start } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const HEM = 'point hem-left = waist-left down 50cm\n';
/** Longer than a round waits for silence, so that each letter is drafted; shorter than a hand rests. */
const BETWEEN_KEYS_MS = 25;

const pause = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Strikes the keys of a text one by one, from the end of `after` on. */
async function strike(client: TestClient, after: string, keys: string): Promise<void> {
  let at = client.texts.get(uri)!.indexOf(after) + after.length;
  for (const key of keys) {
    const text = client.texts.get(uri)!;
    await client.change(uri, new Lines(text).range(at, at), key, text.slice(0, at) + key + text.slice(at));
    at += key.length;
    await pause(BETWEEN_KEYS_MS);
  }
}

async function withClient(start: Start, story: (client: TestClient) => Promise<void>): Promise<void> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'], ...start });
  try {
    await client.open(uri, apron);
    await story(client);
  } finally {
    await client.leave();
  }
}

const place = { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } };

/** Whether a new problem waits after a change that put in this text. */
function waitsAfter(text: string, found: readonly string[] = ['unknown-name']): boolean {
  const grace = new Grace();
  grace.follow([{ range: place, text }]);
  const waits = grace.waits(['unused'], found);
  grace.stop();
  return waits;
}

describe('grace for half-typed words', () => {
  it('tells nothing of a line that is typed letter by letter, in the list nor in the drawing', () =>
    withClient({}, async (client) => {
      assert.deepEqual(await client.diagnostics(uri), []);
      await client.ask<Sheet>(methods.openPreview, { uri });
      await strike(client, HEM, '  point knee = waist-left down 50cm - width / 4\n');
      assert.deepEqual(await client.diagnostics(uri), []);
      assert.ok(client.published.length > 2, 'problems were told only once');
      assert.deepEqual(
        client.published.flatMap(({ diagnostics }) => diagnostics.map(({ message }) => message)),
        [],
      );
      assert.deepEqual(
        client.sheets.flatMap(({ problems, stale }) => [...problems, ...stale]),
        [],
      );
    }));

  it('tells of a word when the hand has rested, and not before', () =>
    withClient({}, async (client) => {
      await client.diagnostics(uri);
      await strike(client, HEM, '  point knee = waist-left down wid');
      const typed = performance.now() - BETWEEN_KEYS_MS;
      const [found] = await client.diagnostics(uri);
      assert.equal(found?.code, 'unknown-name');
      assert.ok(performance.now() - typed > GRACE_MS * 0.9);
    }));

  it('draws on while nothing is amiss, letter by letter', () =>
    withClient({}, async (client) => {
      await client.diagnostics(uri);
      await client.ask<Sheet>(methods.openPreview, { uri });
      await strike(client, 'waist-right down 50', '.25');
      await client.sheetAfter(1);
      assert.ok(client.sheets.length > 1, 'a round for each digit');
    }));

  it('lets a client that asks keep what it has until the hand rests, and has it ask again then', () =>
    withClient(
      {
        capabilities: {
          textDocument: { diagnostic: {} },
          workspace: { diagnostics: { refreshSupport: true } },
        },
      },
      async (client) => {
        const pulled = (previousResultId?: string) =>
          client.ask<DocumentDiagnosticReport>('textDocument/diagnostic', {
            textDocument: { uri },
            previousResultId,
          });
        const { resultId } = await pulled();
        const heard = client.asked.length;
        await strike(client, HEM, '  point knee = waist-left down wid');
        assert.equal((await pulled(resultId)).kind, 'unchanged');
        await client.heard('workspace/diagnostic/refresh', heard);
        const told = await pulled(resultId);
        assert.deepEqual(told.kind === 'full' && told.items.map(({ code }) => code), ['unknown-name']);
      },
    ));

  it('is for a key, and neither for a word put in whole nor after the end of a line', () => {
    assert.equal(waitsAfter('w'), true);
    assert.equal(waitsAfter('{}'), true);
    assert.equal(waitsAfter(''), true);
    assert.equal(waitsAfter('width'), false);
    assert.equal(waitsAfter('\n'), false);
  });

  it('keeps nothing back that is mended, nor a problem whose figures alone are others', () => {
    assert.equal(waitsAfter('w', []), false);
    assert.equal(waitsAfter('w', ['unused']), false);
    assert.equal(waitsAfter('w', ['unused', 'unused']), true);
  });
});
