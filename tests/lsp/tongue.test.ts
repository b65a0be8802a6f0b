/** What the server says in the language of its client's person. */
import assert from 'node:assert/strict';
import type { CompletionItem } from 'vscode-languageserver';
import { methods } from '../../client/preview/protocol';
import { speak } from '../../grammar/say';
import { diskBehind } from '../../server/lsp/disk';
import { TestClient } from '../support/client';

const URI = 'file:///wardrobe/tab.draft';
const flap = `draft flap {
  point a = origin
  point b = a right 20cm
  point c = b down 10cm
  point d = a down 9cm
}
piece tab of flap {
  cut 1
  outline from a {
    top straight to b
    side straight to c
    hem straight to d
  }
  grain along side
  allow 1cm
}
`;

async function messages(locale?: string): Promise<readonly string[]> {
  const client = await TestClient.start({ locale });
  await client.open(URI, flap);
  const diagnostics = await client.diagnostics(URI);
  const outlines = diagnostics.filter(({ code }) => code === 'unclosed-outline');
  return outlines.map(
    ({ message }) => (typeof message === 'string' ? message : message.value).split('\n')[0]!,
  );
}

describe('the language of the server', () => {
  afterEach(() => speak(undefined));

  it('is that of the client where it is German, whatever the country', async () => {
    for (const locale of ['de', 'de-AT'])
      assert.deepEqual(await messages(locale), [
        'Der Umriss von tab kommt nicht an seinen Anfang zurück: Nach hem klafft eine Lücke von 9cm, und der Anfang liegt oberhalb.',
      ]);
  });

  it('has the page of a code, and the titles and ranges that are offered, in German', async () => {
    const client = await TestClient.start({ locale: 'de', behind: diskBehind('/') });
    assert.match(await client.ask<string>(methods.explain, { code: 'no-grain' }), /^## Warum es zählt$/m);
    const offered = async (line: string) => {
      const text = `${line} `;
      await client.open('file:///wardrobe/line.draft', text);
      const position = { line: 0, character: text.length };
      const asked = { textDocument: { uri: 'file:///wardrobe/line.draft' }, position };
      const answer = await client.ask<{ items: CompletionItem[] } | CompletionItem[]>(
        'textDocument/completion',
        asked,
      );
      return JSON.stringify(answer);
    };
    assert.match(await offered('accept'), /Ein Teil ohne Fadenlauf/);
    assert.match(await offered('usual'), /gängige Praxis/);
  });

  it('is English for everybody else', async () => {
    for (const locale of [undefined, 'en-GB', 'fr', 'deu'])
      assert.deepEqual(await messages(locale), [
        'The outline of tab does not come back to its start: after hem there is a gap of 9cm, and the start lies above.',
      ]);
  });
});
