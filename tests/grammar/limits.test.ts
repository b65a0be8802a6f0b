/** Whatever the text is, it is read to its end, in time, and without an error thrown. */
import assert from 'node:assert/strict';
import { edit, parse, type SourceFile } from '../../grammar';
import { FLOODS } from '../support/floods';
import { random } from '../support/random';
import { everyProblem, everyStatement, samples } from './support';

/** As the page of `too-long` says: what is read of one file. */
const MOST_STATEMENTS = 100_000;
const MOST_PROBLEMS = 5000;

/** Statements outside every block that a keystroke is tried in, of a text that holds more than is read. */
const TOO_MANY = 6000;

function milliseconds(work: () => void): number {
  const before = process.cpuUsage().user;
  work();
  return (process.cpuUsage().user - before) / 1000;
}

/** The tree with every line end one character, for comparing texts that differ in them. */
function withoutPlaces(file: SourceFile): unknown {
  return everyStatement(file).map(({ statement }) =>
    JSON.stringify([statement.node, statement.doc, statement.problems], (key, value) =>
      key === 'at' || key === 'stepAt' ? 0 : value,
    ),
  );
}

describe('limits of what is read', () => {
  for (const [title, text] of Object.entries(FLOODS)) {
    it(`of a megabyte of ${title} no more is worked on than is promised`, () => {
      const written = text();
      const file = parse(written);
      const problems = everyProblem(file);
      const worked = everyStatement(file).filter(({ statement }) => statement.node.kind !== 'broken');
      assert.ok(worked.length <= MOST_STATEMENTS, `${worked.length} statements`);
      assert.ok(problems.length <= MOST_PROBLEMS + 2, `${problems.length} problems`);
      const unread = problems.filter(({ message }) => message.includes('left unread: no more'));
      assert.ok(unread.length <= 1, `${unread.length} times`);
      if (unread.length === 0) assert.ok(problems.length <= MOST_PROBLEMS + 1);
      const last = file.items[file.items.length - 1];
      if (unread.length > 0) assert.equal(last!.offset + last!.text.length, written.length);
    }).timeout(60000);
  }

  for (const [name, text] of Object.entries({ 'an empty text': '', 'a byte order mark alone': '\ufeff' })) {
    it(`${name} is read as a file without statements`, () => assert.deepEqual(parse(text).items, []));
  }

  for (const [name, inside] of Object.entries({ 'the file': false, 'one block': true })) {
    it(`an edit of more mistakes than are read in ${name} gives the tree of a text read anew`, () => {
      const faults = 'poimt a b\n'.repeat(TOO_MANY);
      const before = inside ? `draft a {\n${faults}}\nlet b = 1cm\n` : `let a = 1cm\n${faults}let b = 1cm\n`;
      const half = before.slice(0, before.length / 2);
      for (const [from, to, put] of [
        [before.length - 4, before.length - 4, '1'],
        [4, 5, 'c'],
        [half.length, before.length, ''],
        [0, 0, '}\n'.repeat(200)],
      ] as const) {
        const after = before.slice(0, from) + put + before.slice(to);
        const edited = edit(parse(before), { from, to, text: put }).file;
        assert.deepEqual(edited.items, parse(after).items);
        const back = edit(edited, { from, to: from + put.length, text: before.slice(from, to) }).file;
        assert.deepEqual(back.items, parse(before).items);
      }
    }).timeout(60000);
  }

  it('what is left unread says so once, at its first word, with what may be read', () => {
    const problems = everyProblem(parse('}\n'.repeat(TOO_MANY)));
    const { code, from, to, message } = problems.at(-1)!;
    assert.deepEqual([code, from, to], ['too-long', 2 * (problems.length - 1), 2 * problems.length - 1]);
    assert.match(message, /^From here on this file is left unread: no more than 100000 statements/);
    assert.ok(problems.length < TOO_MANY);
  });

  it('brackets nested a hundred deep are read, deeper ones reported once', () => {
    const nested = (depth: number) => `let a = ${'('.repeat(depth)}b${')'.repeat(depth)}\n`;
    assert.deepEqual(everyProblem(parse(nested(100))), []);
    assert.deepEqual(
      everyProblem(parse(nested(101))).map(({ code }) => code),
      ['too-deep'],
    );
  });

  it('a statement of more than three thousand words is reported once', () => {
    const text = `let a = b${' + b'.repeat(1600)}\n`;
    assert.deepEqual(
      everyProblem(parse(text)).map(({ code }) => code),
      ['too-long'],
    );
  });

  for (const [name, end] of Object.entries({
    'carriage return and line feed': '\r\n',
    'carriage return': '\r',
  })) {
    it(`lines that end in ${name} give the same tree`, () => {
      for (const { text } of samples()) {
        const other = parse(text.replace(/\n/g, end));
        assert.deepEqual(withoutPlaces(other), withoutPlaces(parse(text)));
        for (const { offset, text: own } of other.items)
          assert.equal(other.text.slice(offset, offset + own.length), own);
      }
    });
  }

  it('a byte order mark is passed over', () => {
    assert.deepEqual(everyProblem(parse('\ufeffpattern "Harbour skirt"\n')), []);
  });

  it('names of any script are read and compared in composed form', () => {
    const decomposed =
      'draft a {\n  point taille-de\u0301but = origin\n  point Ärmel = origin\n  point 腰 = origin\n}\n';
    const file = parse(decomposed);
    const names = everyStatement(file).map(({ statement }) =>
      'name' in statement.node ? statement.node.name?.text : '',
    );
    assert.deepEqual(everyProblem(file), []);
    assert.deepEqual(names, ['a', 'taille-d\u00e9but', 'Ärmel', '腰']);
  });
});

describe('speed of reading', () => {
  const all = samples()
    .map(({ text }) => text)
    .join('\n');
  const lines = all
    .repeat(Math.ceil(10000 / all.split('\n').length))
    .split('\n')
    .slice(0, 10000);
  const text = lines.join('\n');

  // On two quiet cores ten thousand lines take 70 to 130 ms and one letter a fifth of a millisecond. A busy machine takes
  // longer over everything, so both are held to other work in the same run.
  let wholeMs = Infinity;

  it('ten thousand lines are read in less than six times the time that copying their tree takes', () => {
    let copyMs = Infinity;
    for (let i = 0; i < 8; i++) {
      let file = parse('');
      wholeMs = Math.min(
        wholeMs,
        milliseconds(() => (file = parse(text))),
      );
      copyMs = Math.min(
        copyMs,
        milliseconds(() => JSON.parse(JSON.stringify(file.items)) as unknown),
      );
    }
    assert.ok(wholeMs <= 6 * copyMs, `${wholeMs} ms, and ${copyMs} ms for the copy`);
  }).timeout(120000);

  it('one letter in ten thousand lines is read in a fiftieth of the time of them all', () => {
    const below = random(7);
    let file = parse(text);
    const times = Array.from({ length: 200 }, () => {
      const from = text.indexOf('cm', below(text.length - 4000));
      return milliseconds(() => (file = edit(file, { from, to: from, text: '1' }).file));
    });
    const median = times.sort((a, b) => a - b)[100]!;
    assert.ok(median <= wholeMs / 50, `${median} ms at the median, ${wholeMs} ms for all`);
  }).timeout(120000);
});
