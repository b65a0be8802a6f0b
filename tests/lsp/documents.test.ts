/** Open texts follow their editor: edits as offsets, one after another, with every kind of line end. */
import assert from 'node:assert/strict';
import { Documents, type TextEdit } from '../../server/lsp/documents';
import { Files, nothingBehind } from '../../server/lsp/files';
import { random } from '../support/random';

const uri = 'file:///w/a.draft';

/** A keeper that holds texts by applying the edits, as the workshop must. */
function keeper() {
  const texts = new Map<string, string>();
  const apply = (text: string, { from, to, text: put }: TextEdit) =>
    text.slice(0, from) + put + text.slice(to);
  return {
    texts,
    setText: (key: string, text: string) => void texts.set(key, text),
    edit: (key: string, changes: readonly TextEdit[]) =>
      void texts.set(key, changes.reduce(apply, texts.get(key)!)),
    close: (key: string) => void texts.delete(key),
  };
}

function opened(text: string) {
  const kept = keeper();
  const files = new Files(nothingBehind);
  const documents = new Documents(files, kept);
  documents.open({ uri, languageId: 'draftwright', version: 1, text });
  return { kept, files, documents };
}

const at = (line: number, character: number) => ({ line, character });

describe('an open text', () => {
  it('takes several changes of one message in their order', () => {
    const { kept, documents } = opened('let a = 1cm\r\nlet b = 2cm\r\n');
    documents.change({
      textDocument: { uri, version: 2 },
      contentChanges: [
        { range: { start: at(1, 4), end: at(1, 5) }, text: 'wide' },
        { range: { start: at(0, 0), end: at(1, 0) }, text: '' },
        { range: { start: at(0, 8), end: at(0, 8) }, text: '=' },
      ],
    });
    assert.equal(kept.texts.get(uri), 'let wide= = 2cm\r\n');
    assert.equal(documents.get(uri)!.text, kept.texts.get(uri));
  });

  it('may be replaced as a whole', () => {
    const { kept, files, documents } = opened('old');
    documents.change({ textDocument: { uri, version: 2 }, contentChanges: [{ text: 'new' }] });
    assert.equal(kept.texts.get(uri), 'new');
    assert.equal(files.read(uri), 'new');
  });

  it('is found under every spelling of its address, and tells the one its client gave', () => {
    const { documents } = opened('x');
    documents.open({ uri: 'file:///w/sea@quay.draft', languageId: 'draftwright', version: 1, text: 'y' });
    assert.equal(documents.get('file:///w/sea%40quay.draft')!.clientUri, 'file:///w/sea@quay.draft');
  });

  it('ignores a change of a text that was never opened', () => {
    const { documents } = opened('x');
    assert.equal(
      documents.change({ textDocument: { uri: 'file:///no', version: 1 }, contentChanges: [] }),
      undefined,
    );
  });

  it('stays the same as its editor over random edits', () => {
    const next = random(7);
    const { kept, documents } = opened('draft skirt {\r\n  point a = origin\n}\r');
    for (let version = 2; version < 300; version++) {
      const before = documents.get(uri)!;
      const [one, other] = [next(before.text.length + 1), next(before.text.length + 1)];
      const [from, to] = [Math.min(one, other, one + 4), Math.min(Math.max(one, other), one + 4)];
      const text = ['', 'x', '\n', '\r\n', 'ab\nc'][next(5)]!;
      const range = before.lines.range(from, Math.max(from, to));
      documents.change({ textDocument: { uri, version }, contentChanges: [{ range, text }] });
      assert.equal(kept.texts.get(uri), documents.get(uri)!.text);
    }
  });
});
