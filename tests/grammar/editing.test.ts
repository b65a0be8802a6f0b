/** An edit re-reads what it touched and nothing else, and yields the tree that reading the whole would yield. */
import assert from 'node:assert/strict';
import { edit, parse, type SourceFile } from '../../grammar';
import { random } from '../support/random';
import { everyProblem, everyStatement, samples } from './support';

/** What gets typed, pasted or lost; braces, brackets and line ends above all, because they move the most. */
const TYPED = [
  '', '\n', '{', '}', ' {', '}\n', '(', ')', ',', '#', '"', ' ', '\n\n', 'then ', '  ', ';', 'a', '-', '1', ' = ',
  '\r\n', '\r', 'draft x {', 'piece a of b {', 'let q = 3cm', 'point p = origin\n', 'seam a b.c = d.e\n',
  'outline from a {\n', '# said of it\n', '\nlet z = 1cm\n', '  hem straight to a\n',
  '<<<<<<< HEAD\n', '=======\n', '\n>>>>>>> fitting\n',
]; // prettier-ignore

function randomChange(text: string, below: (limit: number) => number) {
  const from = below(text.length + 1);
  const line = text.indexOf('\n', from) + 1 || text.length;
  const length = [0, 0, 1, below(8), line - from, below(200)][below(6)]!;
  const to = Math.min(text.length, from + length);
  const start = below(text.length + 1);
  const pasted = below(10) === 0 ? text.slice(start, start + below(300)) : TYPED[below(TYPED.length)]!;
  return { from, to, text: pasted };
}

function applied(text: string, change: { from: number; to: number; text: string }): string {
  return text.slice(0, change.from) + change.text + text.slice(change.to);
}

function edited(file: SourceFile, find: string, replacement: string) {
  const from = file.text.indexOf(find);
  return edit(file, { from, to: from + find.length, text: replacement });
}

const SKIRT = samples().find(({ name }) => name === 'harbour-skirt.draft')!.text;

describe('edits', () => {
  it('random edits give the same tree as reading the whole text', () => {
    const below = random(20260914);
    const files = samples();
    for (let round = 0; round < 25; round++) {
      let { text } = files[below(files.length)]!;
      if (below(3) === 0) text = text.replace(/\n/g, '\r\n');
      let file = parse(text);
      for (let i = 0; i < 10; i++) {
        const change = randomChange(text, below);
        text = applied(text, change);
        file = edit(file, change).file;
        assert.equal(file.text, text);
        assert.deepEqual(file, parse(text), `round ${round}, edit ${i}: ${JSON.stringify(change)}`);
      }
    }
  });

  it('a mark of two versions that moves out of column 1 and back is read as the whole text is', () => {
    const texts = [
      'draft x {\n=======\n  point a = origin\n}\n',
      'let a = 1cm\n\n=======\n\nlet b = 2cm\n',
      '# said of it\n<<<<<<< HEAD\nlet a = 1cm\n=======\nlet a = 2cm\n>>>>>>> fitting\n',
      '======= {\n  point a = origin\n}\n',
      'draft x {\n<<<<<<< HEAD {\n  point a = origin\n}\n}\n',
    ];
    for (const text of texts) {
      for (const { index: from } of text.matchAll(/^[<=>]{7}/gm)) {
        const out = edit(parse(text), { from, to: from, text: ' ' }).file;
        assert.deepEqual(out, parse(out.text), `a space before ${from} of ${JSON.stringify(text)}`);
        const back = edit(out, { from, to: from + 1, text: '' }).file;
        assert.equal(back.text, text);
        assert.deepEqual(back, parse(text), `the space before ${from} taken away of ${JSON.stringify(text)}`);
      }
    }
  });

  it('random edits of lines that look like marks of two versions give the tree of the whole text', () => {
    const below = random(20260921);
    const typed = [
      '=======\n',
      '<<<<<<< HEAD\n',
      '>>>>>>> fitting\n',
      ' ',
      '\n',
      'draft x {\n',
      '}\n',
      '# said\n',
    ];
    for (let round = 0; round < 60; round++) {
      let file = parse('draft x {\n=======\n=======\n}\n =======\n<<<<<<< HEAD\n <<<<<<< HEAD\n');
      for (let i = 0; i < 12; i++) {
        const starts = [0, ...[...file.text.matchAll(/\n/g)].map(({ index }) => index + 1)];
        const from = starts[below(starts.length)]!;
        const spaced = file.text[from] === ' ' && below(2) === 0;
        const text = spaced ? '' : typed[below(typed.length)]!;
        file = edit(file, { from, to: spaced ? from + 1 : from, text }).file;
        assert.deepEqual(file, parse(file.text), `round ${round}, edit ${i}`);
      }
    }
  });

  it('a mark of two versions is told whatever line that looks like it stood before', () => {
    for (const line of ['=======', '<<<<<<< HEAD', '>>>>>>> fitting']) {
      const text = ` ${line}\n\n${line}\n\n ${line}\n`;
      const codes = everyProblem(parse(text)).map(({ code }) => code);
      assert.deepEqual(
        codes.map((code) => code === 'conflict-mark'),
        [false, true, false],
        line,
      );
    }
  });

  it('typing a garment letter by letter gives its tree', () => {
    const text = SKIRT.slice(0, 2200);
    let file = parse('');
    for (let i = 0; i < text.length; i++) file = edit(file, { from: i, to: i, text: text[i]! }).file;
    assert.deepEqual(file, parse(text));
  });

  it('an edit keeps every other top-level statement, object for object', () => {
    const before = parse(SKIRT);
    const kept = new Set(before.items);
    const { file, changed, removed } = edited(before, '14cm long', '13.5cm long');
    assert.deepEqual(
      changed.map(({ statement }) => statement.node.kind),
      ['piece'],
    );
    assert.deepEqual(
      removed.map(({ statement }) => statement.node.kind),
      ['piece'],
    );
    const fresh = file.items.filter((item) => !kept.has(item));
    assert.deepEqual(fresh, changed);
  });

  it('an edit keeps the other statements of its block, object for object', () => {
    const before = parse(SKIRT);
    const kept = new Set(everyStatement(before).map(({ statement }) => statement.node));
    const { file } = edited(before, '14cm long', '13.5cm long');
    const fresh = everyStatement(file).filter(({ statement }) => !kept.has(statement.node));
    assert.deepEqual(
      fresh.map(({ statement }) => statement.text.slice(0, 10)),
      ['dart inner'],
    );
  });

  it('a change in a comment above a statement changes its documentation alone', () => {
    const before = parse(SKIRT);
    const { file, changed } = edited(before, '# finished length from the waist', '# the finished length');
    assert.equal(changed.length, 1);
    assert.equal(changed[0]!.statement.doc, 'the finished length');
    assert.deepEqual(file, parse(file.text));
  });

  it('a line put in above moves what follows without reading it again', () => {
    const before = parse(SKIRT);
    const last = before.items[before.items.length - 1]!;
    const { offset } = last;
    const { file } = edited(before, 'drafted for', 'units cm\ndrafted for');
    assert.equal(file.items[file.items.length - 1], last);
    assert.equal(last.offset, offset + 'units cm\n'.length);
  });
});
