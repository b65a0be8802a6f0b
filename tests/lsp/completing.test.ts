/** Completion as an editor gets it: whole statements with places to fill in, and the paths of files. */
import assert from 'node:assert/strict';
import type { CompletionItem } from 'vscode-languageserver';
import { nothingBehind } from '../../server/lsp/files';
import { TestClient, type Start } from '../support/client';

const FOLDER = 'file:///wardrobe';
const URI = `${FOLDER}/skirts/ferry.draft`;
const SNIPPETS = { textDocument: { completion: { completionItem: { snippetSupport: true } } } };
const FILES = ['skirts/block.draft', 'bodies/company.draft', 'skirts/ferry.draft'];

/** What is offered at the end of a text. */
async function offered(
  text: string,
  start: Start = {},
  uri = URI,
  triggerCharacter?: string,
): Promise<readonly CompletionItem[]> {
  const behind = { ...nothingBehind, list: () => FILES.map((file) => `${FOLDER}/${file}`) };
  const client = await TestClient.start({ behind, folders: [FOLDER], ...start });
  try {
    await client.open(uri, text);
    const lines = text.split('\n');
    const position = { line: lines.length - 1, character: lines.at(-1)!.length };
    const context = triggerCharacter === undefined ? undefined : { triggerKind: 2, triggerCharacter };
    const asked = { textDocument: { uri }, position, context };
    return await client.ask<CompletionItem[]>('textDocument/completion', asked);
  } finally {
    await client.leave();
  }
}

const labels = (items: readonly CompletionItem[]) => items.map(({ label }) => label);

describe('completing in an editor', () => {
  it('writes a whole statement with its places to fill in, for a client that can', async () => {
    const items = await offered('dra', { capabilities: SNIPPETS });
    const [word, whole] = items.filter(
      ({ label }) => label.startsWith('draft '.trim()) && !label.startsWith('drafted'),
    );
    assert.deepEqual([word?.label, word?.insertTextFormat], ['draft', undefined]);
    assert.deepEqual(whole, {
      label: 'draft NAME {',
      kind: 15,
      detail: 'A draft',
      documentation: 'draft skirt {',
      sortText: whole?.sortText,
      filterText: 'draft draft NAME {',
      insertTextFormat: 2,
      insertTextMode: 2,
      textEdit: {
        range: { start: { line: 0, character: 0 }, end: { line: 0, character: 3 } },
        newText: 'draft ${1:name} {\n  $0\n}',
      },
    });
  });

  it('offers words alone to a client that could not fill anything in', async () => {
    const items = await offered('');
    assert.ok(labels(items).includes('draft'));
    assert.ok(
      items.every(
        ({ insertTextFormat, textEdit }) =>
          insertTextFormat === undefined && !textEdit!.newText.includes('$'),
      ),
    );
  });

  it('offers the ways to the other files of the workspace in a use line, and replaces what is written of one', async () => {
    const items = await offered('use "bo');
    assert.deepEqual(labels(items), ['block.draft', '../bodies/company.draft']);
    assert.deepEqual(items[1]?.textEdit, {
      range: { start: { line: 0, character: 5 }, end: { line: 0, character: 7 } },
      newText: '../bodies/company.draft',
    });
    assert.deepEqual(labels(await offered('use "', {}, 'untitled:Untitled-1')), [
      'bodies/company.draft',
      'skirts/block.draft',
      'skirts/ferry.draft',
    ]);
    assert.deepEqual(labels(await offered('pattern "')), []);
    assert.deepEqual(labels(await offered('let half = 1cm /', {}, URI, '/')), []);
  });
});
