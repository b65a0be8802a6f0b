/** A server that has followed edits for long answers as a fresh one does, whatever was asked and called off between them. */
import assert from 'node:assert/strict';
import { CancellationTokenSource, type CancellationToken } from 'vscode-languageserver';
import { methods } from '../../client/preview/protocol';
import { Lines } from '../../server/features/lines';
import { GRACE_MS } from '../../server/lsp/grace';
import { services } from '../../server/lsp/services';
import { TestClient } from '../support/client';
import { everyRequest, type Ask } from '../support/every-request';
import { random } from '../support/random';
import { read } from '../support/sources';

const PATHS = ['bodies/company.draft', 'bodice-block.draft', 'sleeve.draft', 'faults/cannot-get-on.draft'];
const uriOf = (path: string): string => `file:///wardrobe/${path}`;

const EDITS = 48;

/** After so many edits both servers are asked. */
const EVERY = 16;

const TYPED = [
  '',
  '',
  '\r\n',
  '\n',
  'ä',
  '🧵',
  '# é 🧵\r\n',
  'let ß = 2cm\n',
  '  ',
  '}',
  '{',
  'hip',
  '"',
  ',',
  '0',
];
const TOKEN = /[\p{L}\p{M}\d]+(?:[-.][\p{L}\d]+)*|"[^"\r\n]*"|\r\n|[^\s]/gu;

interface Slip {
  readonly from: number;
  readonly to: number;
  readonly words: string;
}

/** A token goes, comes twice or becomes another one, or something is typed beside it. Signs and line ends stay whole. */
function slip(text: string, below: (limit: number) => number): Slip {
  const tokens = [...text.matchAll(TOKEN)];
  const one = () => tokens[below(tokens.length)]!;
  const [{ 0: word, index: from }, { 0: other }] = [one(), one()];
  const to = from + word.length;
  const ways: readonly Slip[] = [
    { from, to, words: '' },
    { from, to, words: other },
    { from: to, to, words: ` ${word}` },
    { from: to, to, words: TYPED[below(TYPED.length)]! },
    { from, to: from, words: TYPED[below(TYPED.length)]! },
  ];
  return ways[below(ways.length)]!;
}

/** Marks of answers are counted on, and so are versions of sheets. */
const plain = (answer: unknown): unknown =>
  JSON.parse(
    JSON.stringify(answer, (key, value: unknown) =>
      key === 'resultId' || (key === 'version' && typeof value === 'number') ? undefined : value,
    ),
  );

async function answered(client: TestClient, [method, params]: Ask, token?: CancellationToken) {
  try {
    return plain(await client.ask(method, params, token));
  } catch (refusal) {
    return { refused: (refusal as Error).message };
  }
}

const start = () =>
  TestClient.start({
    folders: ['file:///wardrobe'],
    capabilities: {
      textDocument: {
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
        rename: { prepareSupport: true },
      },
    },
  });

/** Asks for something and calls every third question off. */
function askBetween(
  client: TestClient,
  asks: readonly Ask[],
  below: (limit: number) => number,
): Promise<unknown> {
  const source = new CancellationTokenSource();
  const answer = answered(client, asks[below(asks.length)]!, source.token);
  if (below(3) === 0) source.cancel();
  return answer;
}

async function compare(client: TestClient, below: (limit: number) => number): Promise<void> {
  // what was held back while keys followed one another is told by then
  await new Promise((resolve) => setTimeout(resolve, GRACE_MS + 50));
  const fresh = await start();
  for (const [uri, text] of client.texts) await fresh.open(uri, text);
  for (const [uri, text] of client.texts) {
    for (const ask of everyRequest(uri, text, below)) {
      const [old, now] = [await answered(client, ask), await answered(fresh, ask)];
      assert.deepEqual(old, now, `${ask[0]} ${JSON.stringify(ask[1])}\n${text}`);
    }
    for (const one of [client, fresh])
      await one.connection.sendNotification(methods.closePreview, { uri, seat: 'asked' });
    const [old, now] = [client, fresh].map((one) => one.published.filter((told) => told.uri === uri).at(-1));
    assert.deepEqual(old?.diagnostics, now?.diagnostics, text);
  }
  assert.deepEqual([...client.faults, ...fresh.faults], []);
  await fresh.leave();
}

/** What is asked with an earlier answer in hand, or of no text. */
const ELSEWHERE = [
  'textDocument/semanticTokens/full/delta',
  'callHierarchy/incomingCalls',
  'callHierarchy/outgoingCalls',
  'workspace/executeCommand',
  ...[methods.grip, methods.pull, methods.locate, methods.measure, methods.explain],
];

describe('a server that has followed edits for long', () => {
  it('is asked everything that its table of requests holds', () => {
    const asked = everyRequest('file:///a.draft', 'let a = 1cm\n', () => 0).map(([method]) => method);
    assert.deepEqual([...asked, ...ELSEWHERE].sort(), services.map(({ method }) => method).sort());
  });

  it('answers everything as a fresh one does', async () => {
    const below = random(1907);
    const client = await start();
    for (const path of PATHS) {
      const text = read(`samples/${path}`).replace(/\n/g, () => (below(2) === 0 ? '\r\n' : '\n'));
      await client.open(uriOf(path), `# größe 🧵\r\n${text}`);
    }
    const between: Promise<unknown>[] = [];
    for (let i = 1; i <= EDITS; i++) {
      const uri = uriOf(PATHS[below(PATHS.length)]!);
      const text = client.texts.get(uri)!;
      const { from, to, words } = slip(text, below);
      const after = text.slice(0, from) + words + text.slice(to);
      await client.change(uri, new Lines(text).range(from, to), words, after);
      for (let k = 0; k < 3; k++) between.push(askBetween(client, everyRequest(uri, after, below), below));
      if (i % EVERY !== 0) continue;
      await Promise.all(between.splice(0));
      await compare(client, below);
    }
    await client.leave();
  }).timeout(60000);
});
