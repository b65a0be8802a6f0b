/** The setting for severities, as a client sends it or is asked for it. */
import assert from 'node:assert/strict';
import { apronWith } from '../support/apron';
import { TestClient, type Start } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
/** A draft's own height hides that of the file. */
const text = apronWith('draft sheet {', 'draft sheet {\n  let bib-height = 1cm');

async function withClient(start: Start, story: (client: TestClient) => Promise<void>): Promise<void> {
  const client = await TestClient.start(start);
  try {
    await story(client);
  } finally {
    await client.leave();
  }
}

/** Code and severity (1 error, 2 warning, 3 note) of what was told last. */
const told = ({ published }: TestClient): readonly string[] =>
  (published.at(-1)?.diagnostics ?? []).map(({ code, severity }) => `${code} ${severity}`);

const until = (client: TestClient, wanted: readonly string[]) =>
  client.until(`the problems ${wanted.join(', ')}`, () =>
    client.published.length > 0 && told(client).join() === wanted.join() ? true : undefined,
  );

describe('the setting for severities', () => {
  it('holds from the greeting on, and follows a client that sends it anew', () =>
    withClient({ severity: { 'hidden-name': 'error' } }, async (client) => {
      await client.open(uri, text);
      await until(client, ['hidden-name 1']);
      await client.configure({ 'hidden-name': 'off' });
      await until(client, []);
      await client.configure({});
      await until(client, ['hidden-name 2']);
    }));

  it('is asked for where the client can be asked, at the start and whenever something changed', async () => {
    let severity: unknown = { 'hidden-name': 'note' };
    await withClient({ settings: () => severity }, async (client) => {
      await client.open(uri, text);
      await until(client, ['hidden-name 3']);
      severity = null;
      await client.configure();
      await until(client, ['hidden-name 2']);
    });
  });

  it('is told in the log where it can’t be followed, and the rest of it holds', () =>
    withClient({}, async (client) => {
      await client.open(uri, text);
      await until(client, ['hidden-name 2']);
      await client.configure({ 'hiden-name': 'off', 'unclosed-outline': 'off', 'hidden-name': 'note' });
      await until(client, ['hidden-name 3']);
      assert.deepEqual(client.faults, [
        'draftwright.severity: No problem is called hiden-name. Did you mean hidden-name?',
        "draftwright.severity: unclosed-outline can't be set: where it is found, something can't be read or drawn, " +
          'and what rests on it is not checked.',
      ]);
    }));
});
