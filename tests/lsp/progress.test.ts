/** Long work: told step by step, given up when it is no longer wanted, and never answered of a text that has changed. */
import assert from 'node:assert/strict';
import { CancellationTokenSource } from 'vscode-languageserver/node';
import { SWEEP, type Swept } from '../../client/preview/protocol';
import { nothingBehind, type Behind } from '../../server/lsp/files';
import { apron, apronWith } from '../support/apron';
import { TestClient, type Start } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const told = { window: { workDoneProgress: true } };

async function withClient(start: Start, story: (client: TestClient) => Promise<void>): Promise<void> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'], ...start });
  try {
    await story(client);
  } finally {
    await client.leave();
  }
}

/** A workspace of so many files, and which of them were read. */
function wardrobe(
  count: number,
): Behind & { readonly read: (address: string) => string; readonly seen: string[] } {
  const seen: string[] = [];
  const all = Array.from({ length: count }, (_, i) => `file:///wardrobe/piece-${i}.draft`);
  const read = (address: string) => {
    seen.push(address);
    return 'let wide = 3cm\n';
  };
  return { ...nothingBehind, list: () => all, read, seen };
}

function sweep(client: TestClient, token?: CancellationTokenSource['token']): Promise<Swept> {
  client.follow('a sweep');
  const params = { command: SWEEP, arguments: [uri], workDoneToken: 'a sweep' };
  return client.ask('workspace/executeCommand', params, token);
}

/** An apron with so many choices that trying both ends of each takes its time. */
const undecided = apronWith(
  '# how wide',
  `${Array.from({ length: 150 }, (_, i) => `choose c${i} = 1cm in 0cm .. 2cm\n`).join('')}\n# how wide`,
);

describe('opening a large workspace', () => {
  it('reads its patterns before anybody asks, and tells how far it is', async () => {
    const behind = wardrobe(60);
    await withClient({ behind, capabilities: told }, async (client) => {
      await client.until('the end', () => (client.progress.includes('end') ? true : undefined));
      assert.equal(client.progress[0], 'begin Reading patterns');
      assert.ok(client.progress.includes('report 20 of 60'));
      assert.equal(new Set(behind.seen).size, 60);
    });
  });

  it('tells nothing of a small one, nor a client that shows no progress', async () => {
    for (const [count, capabilities] of [
      [12, told],
      [60, {}],
    ] as const) {
      await withClient({ behind: wardrobe(count), capabilities }, async (client) => {
        await client.open(uri, apron);
        await client.diagnostics(uri);
        assert.deepEqual(client.progress, []);
      });
    }
  });
});

describe('a check for every size', () => {
  it('tells each step, and what is found at the ends of choices', () =>
    withClient({}, async (client) => {
      await client.open(
        uri,
        `${apron}expect width > 45cm
`,
      );
      const { variants, findings } = await sweep(client);
      assert.equal(variants, 5);
      assert.deepEqual(client.progress, [
        'begin Checking for every size and both ends of every choice',
        ...[1, 2, 3, 4, 5].map((at) => `report ${at} of 5`),
        'end',
      ]);
      assert.deepEqual(
        findings.map(({ code, uri: where, range }) => [code, where, range.start.line]),
        [['expectation-missed', uri, apron.split('\n').length - 1]],
      );
      assert.match(findings[0]!.message, /width 40cm/);
    }));

  it('is given up when it is no longer wanted', () =>
    withClient({}, async (client) => {
      await client.open(uri, undecided);
      const source = new CancellationTokenSource();
      const asked = sweep(client, source.token);
      await client.until('the first step', () => (client.progress.length > 1 ? true : undefined));
      source.cancel();
      await assert.rejects(asked, { code: -32800 });
      assert.equal(client.progress.at(-1), 'end');
    }));

  it('is given up when the text is changed meanwhile, and says so', () =>
    withClient({}, async (client) => {
      await client.open(uri, undecided);
      const asked = sweep(client);
      await client.until('the first step', () => (client.progress.length > 1 ? true : undefined));
      await client.type(uri, 'down 50cm', 'down 51cm');
      await assert.rejects(asked, { code: -32801, message: /changed while it was being checked/ });
    }));

  it('is no work for a pattern that is not open, nor for a command of another', () =>
    withClient({}, async (client) => {
      assert.equal(await sweep(client), null);
      await client.open(uri, apron);
      const other = { command: 'another', arguments: [uri] };
      assert.equal(await client.ask('workspace/executeCommand', other), null);
    }));
});
