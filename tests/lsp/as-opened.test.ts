/** What is kept of a text from edit to edit: every answer about it is that of the same text opened whole. */
import assert from 'node:assert/strict';
import { ENCODINGS, Lines, type Encoding } from '../../server/features/lines';
import { TestClient } from '../support/client';
import { random } from '../support/random';
import { read } from '../support/sources';

const typedIn = 'file:///wardrobe/typed.draft';
const opened = 'file:///wardrobe/opened.draft';

/** What is typed: lines come and go, statements move within their line, and signs take two bytes or two code units. */
const TYPED = ['', '', '\n', '\n\n', 'ä', '🧵', '# é\n', 'let ß = 2cm\n', '  ', '}', '{', 'hip', '\r\n'];

const EDITS = 30;

/** What no client sends: a sign cut in two. */
const HALF_A_SIGN = /\p{Cs}/u;

/** The answers to all requests that rest on the text alone. */
async function answers(client: TestClient, uri: string, place: object, range: object): Promise<unknown[]> {
  const textDocument = { uri };
  const options = { tabSize: 2, insertSpaces: true };
  const params = { textDocument, options, range, positions: [place], position: place, ch: '\n' };
  const asked = [
    ...['documentSymbol', 'foldingRange', 'semanticTokens/full', 'semanticTokens/range', 'formatting'],
    ...['rangeFormatting', 'onTypeFormatting', 'selectionRange', 'documentHighlight'],
  ].map((method) => client.ask<{ data?: unknown } | null>(`textDocument/${method}`, params));
  // the mark of colours is counted on from answer to answer
  return (await Promise.all(asked)).map((answer) => answer?.data ?? answer);
}

async function typeAndCompare(encoding: Encoding): Promise<void> {
  const client = await TestClient.start({
    capabilities: {
      general: { positionEncodings: [encoding] },
      textDocument: { documentSymbol: { hierarchicalDocumentSymbolSupport: true } },
    },
    folders: ['file:///wardrobe'],
  });
  const next = random(1897);
  let text = `# größe 🧵\n${read('samples/crew-shirt.draft')}`;
  await client.open(typedIn, text);
  for (let i = 0; i < EDITS; i++) {
    const from = next(text.length + 1);
    const to = Math.min(text.length, from + next(4));
    const words = TYPED[next(TYPED.length)]!;
    const after = text.slice(0, from) + words + text.slice(to);
    if (HALF_A_SIGN.test(after)) continue;
    await client.change(typedIn, new Lines(text, encoding).range(from, to), words, after);
    text = after;
    await client.open(opened, text);
    const lines = new Lines(text, encoding);
    const [place, range] = [lines.position(next(text.length)), lines.range(next(text.length), text.length)];
    const [typed, whole] = [
      await answers(client, typedIn, place, range),
      await answers(client, opened, place, range),
    ];
    assert.deepEqual(typed, whole, `after edit ${i}`);
    await client.close(opened);
  }
  await client.leave();
}

describe('answers about a text that was typed in', () => {
  for (const encoding of ENCODINGS)
    it(`are those of the text opened whole, counted in ${encoding}`, () => typeAndCompare(encoding)).timeout(
      60000,
    );
});
