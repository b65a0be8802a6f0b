/** The language server as an editor meets it: on unsaved text, over the protocol. */
import assert from 'node:assert/strict';
import type { CodeAction, Hover, Location } from 'vscode-languageserver';
import { CancellationTokenSource } from 'vscode-languageserver/node';
import { methods, type Sheet } from '../../client/preview/protocol';
import { diskBehind } from '../../server/lsp/disk';
import { nothingBehind } from '../../server/lsp/files';
import { services } from '../../server/lsp/services';
import { apron, apronWith } from '../support/apron';
import { TestClient, type Start } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const bodies = 'file:///wardrobe/bodies.draft';
const folders = ['file:///wardrobe'];

/** A client that can all that decides what is announced. */
const everything = {
  textDocument: { diagnostic: {} },
  workspace: { diagnostics: { refreshSupport: true } },
};

/** Runs a story with a client that has left again afterwards, however the story ends. */
async function withClient(start: Start, story: (client: TestClient) => Promise<void>): Promise<void> {
  const client = await TestClient.start({ folders, ...start });
  try {
    await story(client);
  } finally {
    await client.leave();
  }
}

const codes = (found: readonly { code?: unknown }[]) => found.map(({ code }) => code);

describe('the language server', () => {
  it('announces exactly what its table of requests holds', () =>
    withClient({ capabilities: everything }, async ({ answer: { capabilities } }) => {
      const announced = services.flatMap(({ announces }) => Object.keys(announces));
      assert.deepEqual(
        Object.keys(capabilities)
          .filter((name) => name.endsWith('Provider'))
          .sort(),
        announced.sort(),
      );
    }));

  it('finds nothing in a clean text, and what breaks while it is typed', () =>
    withClient({}, async (client) => {
      await client.open(uri, apron);
      assert.deepEqual(await client.diagnostics(uri), []);
      await client.type(uri, 'right width', 'right wdith');
      assert.deepEqual(codes(await client.diagnostics(uri)), ['unknown-name']);
    }));

  it('tells a thousand findings of a text and how many more there are', () =>
    withClient({}, async (client) => {
      await client.open(uri, '}\n'.repeat(1003));
      const told = await client.diagnostics(uri);
      assert.equal(told.length, 1001);
      assert.deepEqual(
        [told[1000]!.message, told[1000]!.range.start.line],
        ['3 more are not told here: mend what is told first.', 999],
      );
    }));

  it('leads from a code to its page where the client can show one', () =>
    withClient({ behind: diskBehind('/'), pages: 'page:/' }, async (client) => {
      await client.open(uri, apronWith('right width', 'right wdith'));
      const [found] = await client.diagnostics(uri);
      assert.equal(found!.codeDescription?.href, 'page:/unknown-name.md');
      const page = await client.ask<string>(methods.explain, { code: 'missing-bracket' });
      assert.match(page, /^# /);
      assert.equal(await client.ask(methods.explain, { code: 'no-such-code' }), null);
    }));

  it('offers a repair that makes the finding go away', () =>
    withClient({}, async (client) => {
      await client.open(uri, apronWith('right width', 'right wdith'));
      const diagnostics = [...(await client.diagnostics(uri))];
      const params = { ...client.at(uri, 'wdith'), range: diagnostics[0]!.range, context: { diagnostics } };
      const actions = await client.ask<CodeAction[]>('textDocument/codeAction', params);
      assert.equal(actions[0]!.diagnostics?.length, 1);
      const [edit] = actions[0]!.edit!.changes![uri]!;
      await client.change(uri, edit!.range, edit!.newText, apron);
      assert.deepEqual(await client.diagnostics(uri), []);
    }));

  it('says the same of a text typed letter by letter as of one opened whole', () =>
    withClient({}, async (client) => {
      await client.open(uri, '');
      for (let i = 0; i < apron.length; i++) {
        const position = linesEnd(client.texts.get(uri)!);
        await client.change(uri, { start: position, end: position }, apron[i]!, apron.slice(0, i + 1));
      }
      assert.deepEqual(await client.diagnostics(uri), []);
      const preview = await client.ask<Sheet>(methods.openPreview, { uri });
      await withClient({}, async (other) => {
        await other.open(uri, apron);
        assert.deepEqual(preview, await other.ask<Sheet>(methods.openPreview, { uri }));
      });
    })).timeout(60000);

  it('checks an open pattern again when an open file that it uses is changed', () =>
    withClient({}, async (client) => {
      await client.open(bodies, 'body ferrywoman {\n  waist 74cm\n}\n');
      await client.open(uri, apronWith('= 60cm in 40cm .. 80cm', '= waist').replace('# how', bodyLines));
      assert.deepEqual(await client.diagnostics(uri), []);
      const told = client.published.length;
      await client.type(bodies, 'waist 74', 'hip 99');
      const after = await client.until('a new check of the apron', () =>
        client.published.slice(told).find((params) => params.uri === uri),
      );
      assert.deepEqual(codes(after.diagnostics), ['missing-measurement']);
    }));

  it('takes back what it said of a text that is closed', () =>
    withClient({}, async (client) => {
      await client.open(uri, 'let a = 4 cm\n');
      assert.equal((await client.diagnostics(uri)).length, 1);
      await client.close(uri);
      const last = await client.until('the clearing', () => {
        const { version, diagnostics } = client.published.at(-1)!;
        return version === undefined ? diagnostics : undefined;
      });
      assert.deepEqual(last, []);
    }));

  it('works on texts that were never saved and on those of a virtual workspace', () =>
    withClient({}, async (client) => {
      for (const address of ['untitled:Untitled-1', 'vscode-vfs://host/w/apron.draft']) {
        await client.open(address, apron);
        assert.deepEqual(await client.diagnostics(address), []);
        const hover = await client.ask<Hover>('textDocument/hover', client.at(address, 'width'));
        assert.match(JSON.stringify(hover), /60cm/);
      }
    }));

  it('reads a used file from disk, and again when it changed or went', () => {
    const disk = new Map([[bodies, 'body ferrywoman {\n  waist 74cm\n}\n']]);
    return withClient(
      { behind: { ...nothingBehind, read: (address) => disk.get(address) } },
      async (client) => {
        await client.open(uri, apronWith('= 60cm in 40cm .. 80cm', '= waist').replace('# how', bodyLines));
        assert.deepEqual(await client.diagnostics(uri), []);
        const said = async () => {
          const told = client.published.length;
          await client.fileChanged(bodies);
          return client.until('a new check', () => client.published[told]);
        };
        disk.set(bodies, 'body ferrywoman {\n  hip 99cm\n}\n');
        assert.deepEqual(codes((await said()).diagnostics), ['missing-measurement']);
        disk.delete(bodies);
        assert.ok(codes((await said()).diagnostics).includes('missing-file'));
        disk.set(bodies, 'body ferrywoman {\n  waist 74cm\n}\n');
        assert.deepEqual((await said()).diagnostics, []);
      },
    );
  });

  it('leads from a name to its definition in another file', () =>
    withClient({}, async (client) => {
      await client.open(bodies, 'body ferrywoman {\n  waist 74cm\n}\n');
      await client.open(uri, `pattern "A"\nuse "bodies.draft"\ndrafted for ferrywoman\n`);
      const at = client.at(uri, 'ferrywoman', 2);
      const found = await client.ask<Location>('textDocument/definition', at);
      assert.deepEqual([found.uri, found.range.start], [bodies, { line: 0, character: 5 }]);
    }));

  it('answers null about a text that is not open, and never fails on a position beyond it', () =>
    withClient({}, async (client) => {
      await client.open(uri, apron);
      const nowhere = { textDocument: { uri: 'file:///no.draft' }, position: { line: 0, character: 0 } };
      assert.equal(await client.ask('textDocument/hover', nowhere), null);
      const beyond = { textDocument: { uri }, position: { line: 9999, character: 9999 } };
      assert.equal(await client.ask('textDocument/hover', beyond), null);
    }));

  it('does no work for a request that is cancelled while it waits', () =>
    withClient({}, async (client) => {
      await client.open(uri, apron);
      const source = new CancellationTokenSource();
      const first = client.ask('textDocument/hover', client.at(uri, 'width'));
      const second = client.ask('textDocument/hover', client.at(uri, 'width'), source.token);
      source.cancel();
      await first;
      await assert.rejects(second, { code: -32800 });
    }));
});

const bodyLines = 'use "bodies.draft"\ndrafted for ferrywoman\n\n# how';

function linesEnd(text: string): { line: number; character: number } {
  const lines = text.split('\n');
  return { line: lines.length - 1, character: lines.at(-1)!.length };
}
