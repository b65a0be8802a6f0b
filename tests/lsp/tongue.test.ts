/** What the server says in the language of its client's person. */
import assert from 'node:assert/strict';
import { speak } from '../../grammar/say';
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
  return outlines.map(({ message }) => (typeof message === 'string' ? message : message.value));
}

describe('the language of the server', () => {
  afterEach(() => speak(undefined));

  it('is that of the client where it is German, whatever the country', async () => {
    for (const locale of ['de', 'de-AT'])
      assert.deepEqual(await messages(locale), [
        'Der Umriss von tab kommt nicht an seinen Anfang zurück: Nach hem ist eine Lücke von 9cm, und der Anfang liegt oberhalb.',
      ]);
  });

  it('is English for everybody else', async () => {
    for (const locale of [undefined, 'en-GB', 'fr', 'deu'])
      assert.deepEqual(await messages(locale), [
        'The outline of tab does not come back to its start: after hem there is a gap of 9cm, and the start lies above.',
      ]);
  });
});
