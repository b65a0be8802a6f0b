/** Problems and faded names, sent to a client that waits for them and answered to one that asks. */
import assert from 'node:assert/strict';
import type { ClientCapabilities, Diagnostic, DocumentDiagnosticReport } from 'vscode-languageserver';
import { apron, apronWith } from '../support/apron';
import { TestClient, type Start } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const textDocument = { uri };
const tagSupport = { valueSet: [1 as const] };
const asks: ClientCapabilities = {
  textDocument: { diagnostic: { tagSupport } },
  workspace: { diagnostics: { refreshSupport: true } },
};
const waits: ClientCapabilities = { textDocument: { publishDiagnostics: { tagSupport } } };
const idle = apronWith('  line diagonal', '  let spare = 2cm\n  line diagonal');

async function withClient(start: Start, story: (client: TestClient) => Promise<void>): Promise<void> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'], ...start });
  try {
    await story(client);
  } finally {
    await client.leave();
  }
}

const pulled = (client: TestClient, previousResultId?: string): Promise<DocumentDiagnosticReport> =>
  client.ask('textDocument/diagnostic', { textDocument, previousResultId });

/** The codes of the problems; names that are faded have none. */
const codes = (report: DocumentDiagnosticReport): unknown =>
  report.kind === 'full'
    ? report.items.flatMap(({ code }) => (code === undefined ? [] : [code]))
    : report.kind;

describe('a client that asks for problems', () => {
  it('is answered of the present text, and sent nothing', () =>
    withClient({ capabilities: asks }, async (client) => {
      assert.ok(client.answer.capabilities.diagnosticProvider !== undefined);
      await client.open(uri, apronWith('  line diagonal = top-left to foot-right\n', ''));
      assert.deepEqual(codes(await pulled(client)), []);
      await client.type(uri, 'right width', 'right wdith');
      assert.deepEqual(codes(await pulled(client)), ['unknown-name']);
      await client.close(uri);
      assert.deepEqual(codes(await pulled(client)), []);
      assert.deepEqual(client.published, []);
    }));

  it('hears shortly that nothing changed since it asked last', () =>
    withClient({ capabilities: asks }, async (client) => {
      await client.open(uri, apron);
      const first = await pulled(client);
      const again = await pulled(client, first.resultId);
      assert.deepEqual(again, { kind: 'unchanged', resultId: first.resultId });
      assert.equal((await pulled(client, 'of another server')).kind, 'full');
      await client.type(uri, 'right width', 'right wdith');
      assert.deepEqual(codes(await pulled(client, first.resultId)), ['unknown-name']);
    }));

  it('is told to ask again when a file that its text uses was changed', () =>
    withClient({ capabilities: asks }, async (client) => {
      const bodies = 'file:///wardrobe/bodies.draft';
      await client.open(bodies, 'body ferrywoman {\n  waist 74cm\n}\n');
      await client.open(uri, 'use "bodies.draft"\ndrafted for ferrywoman\nlet half = waist / 2\n');
      assert.deepEqual(codes(await pulled(client)), []);
      await client.ask('textDocument/codeLens', { textDocument }); // the first round is over after this
      const before = client.asked.length;
      await client.type(bodies, 'waist 74', 'hip 99');
      await client.heard('workspace/diagnostic/refresh', before);
      assert.deepEqual(codes(await pulled(client)), ['missing-measurement']);
    }));

  it('is sent them all the same where it could not be told to ask again', () =>
    withClient({ capabilities: { textDocument: { diagnostic: {} } } }, async (client) => {
      assert.equal(client.answer.capabilities.diagnosticProvider, undefined);
      await client.open(uri, apron);
      assert.deepEqual(await client.diagnostics(uri), []);
    }));
});

describe('a name that nothing uses', () => {
  it('is faded, and no problem', () =>
    withClient({ capabilities: waits }, async (client) => {
      await client.open(uri, idle);
      const found = await client.diagnostics(uri);
      assert.deepEqual(
        found.map(({ message, severity, tags }) => ({ message, severity, tags })),
        ['spare', 'diagonal'].map((name) => ({
          message: `Nothing uses ${name}: no line of the pattern speaks of it.`,
          severity: 4,
          tags: [1],
        })),
      );
    }));

  it('is not told to a client that could not fade it', () =>
    withClient({}, async (client) => {
      await client.open(uri, idle);
      assert.deepEqual(await client.diagnostics(uri), []);
    }));

  it('comes back as soon as another open file speaks of it', () =>
    withClient({ capabilities: waits }, async (client) => {
      await client.open(uri, idle);
      assert.equal((await client.diagnostics(uri)).length, 2);
      const told = client.published.length;
      await client.open(
        'file:///wardrobe/other.draft',
        'use "apron.draft" as apron\nlet more = apron.bib-sheet.spare\n',
      );
      const after = await client.until('the apron again', () =>
        client.published.slice(told).find((params) => params.uri === uri),
      );
      assert.equal(after.diagnostics.length, 1);
    }));

  it('is left as it is where the setting says so', () =>
    withClient({ capabilities: waits }, async (client) => {
      await client.open(uri, idle);
      assert.equal((await client.diagnostics(uri)).length, 2);
      const told = client.published.length;
      await client.set({ fadeUnused: false });
      const after = await client.until('the setting', () => client.published[told]);
      assert.deepEqual(after.diagnostics, []);
    }));
});

describe('the other places of a problem', () => {
  const bodies = 'file:///wardrobe/the%20bodies.draft';
  const text = 'use "the bodies.draft"\nlet a = 1cm\nlet a = 2cm\nlet b = 3cm\n';
  const publishDiagnostics = { relatedInformation: true };

  async function told(capabilities: ClientCapabilities): Promise<readonly Diagnostic[]> {
    let found: readonly Diagnostic[] = [];
    await withClient({ capabilities }, async (client) => {
      await client.open(bodies, 'let b = 1cm\n');
      await client.open(uri, text);
      const report = capabilities.workspace === undefined ? undefined : await pulled(client);
      found = report?.kind === 'full' ? report.items : await client.diagnostics(uri);
    });
    return found;
  }

  const places = (problems: readonly Diagnostic[]): unknown =>
    problems.map(({ relatedInformation }) =>
      relatedInformation?.map(({ location }) => [location.uri, location.range.start.line]),
    );

  it('stand beside it for a client that shows them, whether it waits or asks', async () => {
    const sent = await told({ textDocument: { publishDiagnostics } });
    assert.deepEqual(places(sent), [[[uri, 1]], [[bodies, 0]]]);
    assert.ok(sent.every(({ message }) => !String(message).includes('\n')));
    const { workspace } = asks;
    for (const diagnostic of [{ relatedInformation: true }, {}]) {
      const answered = await told({ workspace, textDocument: { diagnostic, publishDiagnostics } });
      assert.deepEqual(places(answered), places(sent));
    }
  });

  it('are lines of its words for a client that doesn’t, with the file where it is another', async () => {
    for (const capabilities of [waits, asks]) {
      const problems = await told(capabilities);
      assert.deepEqual(places(problems), [undefined, undefined]);
      assert.deepEqual(
        problems.map(({ message }) => String(message).split('\n').slice(1)),
        [
          ['Line 2: a is defined first here.'],
          ['the bodies.draft, line 1: b of the bodies.draft is defined here.'],
        ],
      );
    }
  });
});
