/** Hints, lenses, forms, links, selections, symbols and colours as an editor asks for them. */
import assert from 'node:assert/strict';
import type {
  CodeLens,
  DocumentLink,
  Hover,
  InlayHint,
  MarkupContent,
  SelectionRange,
  SemanticTokens,
  SemanticTokensDelta,
  SignatureHelp,
  SymbolInformation,
} from 'vscode-languageserver';
import { DidChangeConfigurationNotification } from 'vscode-languageserver/node';
import { Lines } from '../../server/features/lines';
import { apron, apronWith } from '../support/apron';
import { TestClient, type Start } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const textDocument = { uri };

async function withApron(story: (client: TestClient) => Promise<void>, text = apron): Promise<void> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'] });
  try {
    await client.open(uri, text);
    await story(client);
  } finally {
    await client.leave();
  }
}

const reckoned = `${apronWith('draft bib-sheet {', 'let spare = 1cm * 2\n\ndraft bib-sheet {')}seam waistline skirt.waist = bib.foot
`;

const whole = (text: string) => new Lines(text).range(0, text.length);

describe('looking at a text in an editor', () => {
  it('shows hints, and those alone that are set', () =>
    withApron(async (client) => {
      const ask = () =>
        client.ask<InlayHint[]>('textDocument/inlayHint', { textDocument, range: whole(apron) });
      const all = await ask();
      assert.ok(all.some(({ label }) => label === '30cm'));
      const set = (inlayHints: object) =>
        client.connection.sendNotification(DidChangeConfigurationNotification.type, {
          settings: { draftwright: { inlayHints } },
        });
      await set({ edges: false });
      assert.ok((await ask()).length < all.length);
      await set({ enabled: false });
      assert.deepEqual(await ask(), []);
      await set({});
      assert.deepEqual(await ask(), all);
    }));

  it('leaves out each kind of hint by itself, and no other', () =>
    withApron(async (client) => {
      const ask = async () => {
        const asked = { textDocument, range: whole(reckoned) };
        const found = await client.ask<InlayHint[]>('textDocument/inlayHint', asked);
        return found.map(({ position, label }) => `${position.line}:${position.character} ${String(label)}`);
      };
      const without = (kind: string) =>
        client.connection.sendNotification(DidChangeConfigurationNotification.type, {
          settings: { draftwright: { inlayHints: { [kind]: false } } },
        });
      const all = await ask();
      const left: string[] = [];
      for (const kind of ['edges', 'seams', 'values']) {
        await without(kind);
        const kept = await ask();
        assert.ok(kept.length < all.length, kind);
        left.push(...all.filter((label) => !kept.includes(label)));
      }
      assert.deepEqual(left.sort(), [...all].sort());
    }, reckoned));

  it('shows how pieces are cut above them', () =>
    withApron(async (client) => {
      const found = await client.ask<CodeLens[]>('textDocument/codeLens', { textDocument });
      assert.ok(found.some(({ command }) => command?.title.startsWith('cut 1')));
    }));

  it('shows the form of a statement when asked, and only that of a call while it is typed', () =>
    withApron(async (client) => {
      const ask = (triggerKind: number) =>
        client.ask<SignatureHelp | null>('textDocument/signatureHelp', {
          ...client.at(uri, 'width = 60cm', 3),
          context: { triggerKind, isRetrigger: false },
        });
      assert.equal((await ask(1))?.signatures[0]?.label, 'choose NAME = VALUE in LOW .. HIGH');
      assert.equal(await ask(2), null);
    }));

  it('leads from a use line to its file where there is one', () =>
    withApron(async (client) => {
      const bodies = 'file:///wardrobe/bodies.draft';
      await client.open(bodies, 'body ferrywoman {\n  waist 74cm\n}\n');
      const found = await client.ask<DocumentLink[]>('textDocument/documentLink', { textDocument });
      assert.deepEqual(
        found.map(({ target }) => target),
        [bodies],
      );
    }, 'use "bodies.draft"\nuse "gone.draft"\n'));

  it('widens a selection at each of several places', () =>
    withApron(async (client) => {
      const positions = [
        { line: 0, character: 5 },
        { line: 0, character: 12 },
      ];
      const found = await client.ask<SelectionRange[]>('textDocument/selectionRange', {
        textDocument,
        positions,
      });
      assert.equal(found.length, 2);
      assert.ok(found.every(({ parent }) => parent !== undefined));
    }));

  it('finds a name in every open text', () =>
    withApron(async (client) => {
      const found = await client.ask<SymbolInformation[]>('workspace/symbol', { query: 'width' });
      assert.deepEqual(
        found.map(({ name, location }) => [name, location.uri]),
        [['width', uri]],
      );
    }));

  it('sends colours whole, in part, and what changed of them', () =>
    withApron(async (client) => {
      const full = await client.ask<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
      const range = { start: { line: 0, character: 0 }, end: { line: 3, character: 0 } };
      const part = await client.ask<SemanticTokens>('textDocument/semanticTokens/range', {
        textDocument,
        range,
      });
      assert.deepEqual(part.data, full.data.slice(0, part.data.length));
      assert.ok(part.data.length > 0 && part.data.length < full.data.length);
      await client.type(uri, 'width = 60cm', 'width = 160cm');
      const delta = await client.ask<SemanticTokensDelta>('textDocument/semanticTokens/full/delta', {
        textDocument,
        previousResultId: full.resultId,
      });
      const [edit] = delta.edits;
      assert.ok(edit!.deleteCount <= 10 && edit!.data!.length <= 10);
      const after = [...full.data];
      after.splice(edit!.start, edit!.deleteCount, ...edit!.data!);
      const again = await client.ask<SemanticTokens>('textDocument/semanticTokens/full', { textDocument });
      assert.deepEqual(after, again.data);
    }));

  it('forgets the colours of a text that was closed, as soon as another is coloured', () =>
    withApron(async (client) => {
      const method = 'textDocument/semanticTokens/full';
      const { resultId: previousResultId } = await client.ask<SemanticTokens>(method, { textDocument });
      const other = 'file:///wardrobe/other.draft';
      await client.close(uri);
      await client.open(other, apron);
      await client.ask(method, { textDocument: { uri: other } });
      await client.open(uri, apron);
      const found = await client.ask<SemanticTokens>(`${method}/delta`, { textDocument, previousResultId });
      assert.ok(found.data.length > 0);
    }));

  it('sends all colours where it does not know what was sent before', () =>
    withApron(async (client) => {
      const found = await client.ask<SemanticTokens>('textDocument/semanticTokens/full/delta', {
        textDocument,
        previousResultId: 'of another server',
      });
      assert.ok(found.data.length > 0);
    }));
});

describe('a hover', () => {
  const asked = async (start: Start): Promise<string> => {
    const client = await TestClient.start({ folders: ['file:///wardrobe'], ...start });
    try {
      await client.open(uri, apron);
      const found = await client.ask<Hover>('textDocument/hover', client.at(uri, 'bib of'));
      return (found.contents as MarkupContent).value;
    } finally {
      await client.leave();
    }
  };

  it('holds a picture for a client that says how it reads Markdown, and for no other', async () => {
    const general = { markdown: { parser: 'of a test' } };
    assert.match(await asked({ capabilities: { general } }), /!\[.*\]\(data:image/);
    assert.doesNotMatch(await asked({}), /data:/);
  });

  it('comes in plain words to a client that shows no Markdown', async () => {
    const capabilities = { textDocument: { hover: { contentFormat: ['plaintext' as const] } } };
    assert.equal(
      await asked({ capabilities }),
      'bib · piece\n\ncut 1\n750 square centimetres within the sewing line\nedges top, near-side, foot, far-side',
    );
  });
});
