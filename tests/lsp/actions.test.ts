/** Code actions over the protocol: which change of several places is shown to the person before it is made. */
import assert from 'node:assert/strict';
import type {
  AnnotatedTextEdit,
  ClientCapabilities,
  CodeAction,
  TextDocumentEdit,
} from 'vscode-languageserver';
import { apronWith } from '../support/apron';
import { TestClient } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const far = apronWith('draft bib-sheet {', 'let spare = 2cm\n\ndraft bib-sheet {')
  .replace('down 50cm', 'down 50cm + spare')
  .replace('top-left right 30cm', 'top-left right 30cm + spare');
const shows: ClientCapabilities = {
  workspace: { workspaceEdit: { documentChanges: true, changeAnnotationSupport: {} } },
};

/** The actions offered at a stretch of an open text. */
async function offered(text: string, words: string, capabilities: ClientCapabilities): Promise<CodeAction[]> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'], capabilities });
  try {
    await client.open(uri, text);
    const { position } = client.at(uri, words, 1);
    const range = { start: position, end: position };
    const params = { textDocument: { uri }, range, context: { diagnostics: [] } };
    return await client.ask<CodeAction[]>('textDocument/codeAction', params);
  } finally {
    await client.leave();
  }
}

const inlining = async (text: string, capabilities: ClientCapabilities) =>
  (await offered(text, 'spare', capabilities)).find(({ kind }) => kind === 'refactor.inline')!.edit!;

describe('a code action that touches several places', () => {
  it('waits for the person’s consent, in the version of the text that it was made for', async () => {
    const { changeAnnotations = {}, documentChanges = [] } = await inlining(far, shows);
    const [id, annotation] = Object.entries(changeAnnotations)[0]!;
    assert.equal(annotation.needsConfirmation, true);
    const change = documentChanges[0] as TextDocumentEdit;
    assert.equal(change.textDocument.version, 1);
    const edits = change.edits as AnnotatedTextEdit[];
    assert.ok(edits.length === 3 && edits.every(({ annotationId }) => annotationId === id));
  });

  it('is one plain change for a client that could not show it', async () => {
    const edit = await inlining(far, {});
    assert.deepEqual(Object.keys(edit.changes ?? {}), [uri]);
    assert.equal(edit.documentChanges, undefined);
  });

  it('keeps the line ends of the file', async () => {
    const text = far.replaceAll('\n', '\r\n');
    const client = await TestClient.start({ folders: ['file:///wardrobe'] });
    try {
      await client.open(uri, text);
      const start = client.at(uri, '50cm + spare', 0).position;
      const range = { start, end: { line: start.line, character: start.character + '50cm + spare'.length } };
      const params = { textDocument: { uri }, range, context: { diagnostics: [] } };
      const actions = await client.ask<CodeAction[]>('textDocument/codeAction', params);
      const { edit } = actions.find(({ kind }) => kind === 'refactor.extract')!;
      const written = edit!.changes![uri]!.map(({ newText }) => newText);
      assert.ok(written.some((one) => one.startsWith('let new-value = 50cm + spare\r\n')));
    } finally {
      await client.leave();
    }
  });

  it('needs no consent where all of it is in sight', async () => {
    const near = apronWith(
      '  line diagonal',
      '  let spare = 2cm\n  point e = top-left down spare\n  line diagonal',
    );
    assert.equal((await inlining(near, shows)).documentChanges, undefined);
  });
});

describe('two versions that git left in a text', () => {
  it('are chosen from under the light bulb of their mark', async () => {
    const text = 'let a = 1cm\n<<<<<<< HEAD\nlet b = 2cm\n=======\nlet b = 3cm\n>>>>>>> fitting\n';
    const found = (await offered(text, '=======', {})).filter(({ kind }) => kind === 'quickfix');
    assert.deepEqual(
      found.map(({ title }) => title),
      [
        'Keep the first version (HEAD)',
        'Keep the second version (fitting)',
        'Keep both versions, one after the other',
      ],
    );
    assert.deepEqual(
      found[0]!.edit!.changes![uri]!.map(({ range }) => [range.start.line, range.end.line]),
      [
        [1, 2],
        [3, 6],
      ],
    );
  });
});
