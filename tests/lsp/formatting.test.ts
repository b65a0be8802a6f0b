/** The canonical layout as an editor asks for it: of a whole text, and of the lines that are chosen. */
import assert from 'node:assert/strict';
import type { TextEdit } from 'vscode-languageserver';
import { Lines } from '../../server/features/lines';
import { apron, apronWith } from '../support/apron';
import { TestClient } from '../support/client';

const uri = 'file:///wardrobe/apron.draft';
const options = { tabSize: 8, insertSpaces: false };
const textDocument = { uri };
const untidy = `\n\n${apronWith('  point hem-right = ', 'point hem-right=').replace('  allow 1.5cm', '    allow  1.5cm')}`;

/** Opens a text, asks for its layout, and leaves. */
async function asked(text: string, method: string, params: object): Promise<TextEdit[] | null> {
  const client = await TestClient.start({ folders: ['file:///wardrobe'] });
  try {
    await client.open(uri, text);
    return await client.ask<TextEdit[] | null>(method, { textDocument, options, ...params });
  } finally {
    await client.leave();
  }
}

function applied(text: string, edits: readonly TextEdit[]): string {
  const lines = new Lines(text);
  return [...edits]
    .reverse()
    .reduce(
      (now, { range, newText }) =>
        now.slice(0, lines.offset(range.start)) + newText + now.slice(lines.offset(range.end)),
      text,
    );
}

describe('formatting in an editor', () => {
  const whole = 'textDocument/formatting';
  const part = 'textDocument/rangeFormatting';

  it('brings a whole text into the canonical layout, whatever the editor’s tab size', async () => {
    for (const [text, laid] of [untidy, apron].map((one) => [one, apron] as const)) {
      assert.equal(applied(text, (await asked(text, whole, {}))!), laid);
    }
  });

  it('keeps the line ends of another system', async () => {
    const text = untidy.replaceAll('\n', '\r\n');
    assert.equal(applied(text, (await asked(text, whole, {}))!), apron.replaceAll('\n', '\r\n'));
  });

  it('changes nothing in a text that is neat, nor in one that lacks a brace', async () => {
    assert.deepEqual(await asked(apron, whole, {}), []);
    assert.deepEqual(await asked('draft a {\n    point p =   origin\n', whole, {}), []);
  });

  it('lays out the chosen lines and leaves the others', async () => {
    const from = untidy.indexOf('point hem-right');
    const range = new Lines(untidy).range(from + 3, from + 9);
    const edits = (await asked(untidy, part, { range }))!;
    assert.equal(applied(untidy, edits), untidy.replace('point hem-right=', '  point hem-right = '));
  });

  it('sets a new line in as far as its block while it is typed', async () => {
    const text = apronWith('  allow 1.5cm', '\n  allow 1.5cm');
    const position = new Lines(text).position(text.indexOf('\n\n  allow') + 1);
    const edits = (await asked(text, 'textDocument/onTypeFormatting', { position, ch: '\n' }))!;
    assert.equal(applied(text, edits), text.replace('\n\n  allow', '\n  \n  allow'));
  });

  it('answers null about a text that is not open here', async () => {
    const other = { textDocument: { uri: 'file:///wardrobe/gone.draft' } };
    assert.equal(await asked(apron, whole, other), null);
    const range = new Lines(apron).range(0, 5);
    assert.equal(await asked(apron, part, { ...other, range }), null);
  });
});
