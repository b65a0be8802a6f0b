/** Random typing: no request breaks, and what is said in the end is what a fresh server says of the same text. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { LSPErrorCodes, ResponseError, type Diagnostic } from 'vscode-languageserver';
import { methods, type Sheet } from '../../client/preview/protocol';
import { Lines } from '../../server/features/lines';
import { diskBehind, uriOfPath } from '../../server/lsp/disk';
import { services } from '../../server/lsp/services';
import { TestClient } from '../support/client';
import { random } from '../support/random';
import { root } from '../support/sources';

const samples = join(root, 'samples');
const path = join(samples, 'harbour-skirt.draft');
const uri = uriOfPath(path);
const text = readFileSync(path, 'utf8');

const start = () => TestClient.start({ behind: diskBehind(root), folders: [uriOfPath(samples)] });

/** Letters and words that break, mend and rename things. */
const TYPED = ['', '', 'x', ' ', '\n', '}', '{', '"', '#', '.', '5cm', 'hip', '= ', '(', '\n\n', 'seam '];

/** One random edit of a text: a stretch of up to six characters, and what comes in its place. */
function edit(was: string, next: (limit: number) => number) {
  const from = next(was.length + 1);
  const to = Math.min(was.length, from + next(7));
  const typed = TYPED[next(TYPED.length)]!;
  return { range: new Lines(was).range(from, to), typed, after: was.slice(0, from) + typed + was.slice(to) };
}

/** Asks everything that the table of requests offers at a random place. */
async function askAll(client: TestClient, next: (limit: number) => number): Promise<void> {
  const position = new Lines(client.texts.get(uri)!).position(next(client.texts.get(uri)!.length));
  const range = { start: position, end: position };
  const params = { textDocument: { uri }, position, range, context: { diagnostics: [] } };
  const more = {
    ...{ uri, source: 'front/side', piece: 'front', code: 'missing-bracket' },
    ...{ newName: 'other', query: 'a', files: [], positions: [position], amounts: [1], trial: { set: {} } },
    ...{
      seat: 'preview',
      from: { piece: 'front', at: { x: 0, y: 0 } },
      to: { piece: 'front', at: { x: 9, y: 9 } },
    },
    ...{ ch: '\n', item: { name: 'hip-b', uri, range, selectionRange: range } },
  };
  const [pin, item] = [
    { piece: 'front', at: { x: 10, y: 10 } },
    { uri, selectionRange: range, name: 'front' },
  ];
  const whole = { ...params, ...more, from: pin, to: pin, item };
  const asked = services.filter(({ method }) => method !== methods.openPreview);
  await Promise.all(asked.map(({ method }) => client.ask(method, whole).catch(refusal)));
}

/** A refusal with its reason is an answer; anything else that is thrown is a fault. */
function refusal(error: unknown): void {
  if (!(error instanceof ResponseError) || error.code !== LSPErrorCodes.RequestFailed) throw error;
}

/** All that a client is told of a text: diagnostics, and the drawings and places of a preview begun anew. */
async function said(
  client: TestClient,
): Promise<{ diagnostics: readonly Diagnostic[]; pieces: Sheet['pieces'] }> {
  const diagnostics = await client.diagnostics(uri);
  const { pieces } = await client.ask<Sheet>(methods.openPreview, { uri });
  return { diagnostics, pieces };
}

describe('random typing', () => {
  for (const seed of [1, 2, 3]) {
    it(`breaks no request and leaves nothing behind, by seed ${seed}`, async () => {
      const next = random(seed);
      const client = await start();
      await client.open(uri, text);
      await client.ask(methods.openPreview, { uri });
      for (let i = 0; i < 40; i++) {
        const { range, typed, after } = edit(client.texts.get(uri)!, next);
        await client.change(uri, range, typed, after);
        if (i % 4 === 0) await askAll(client, next);
      }
      await client.connection.sendNotification(methods.closePreview, { uri });
      const fresh = await start();
      await fresh.open(uri, client.texts.get(uri)!);
      assert.deepEqual(await said(client), await said(fresh));
      assert.deepEqual([...client.faults, ...fresh.faults], []);
      await Promise.all([client.leave(), fresh.leave()]);
    }).timeout(60000);
  }
});
