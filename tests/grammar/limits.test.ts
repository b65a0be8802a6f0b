/** Whatever the text is, it is read to its end, in time, and without an error thrown. */
import assert from 'node:assert/strict';
import { edit, parse, type SourceFile } from '../../grammar';
import { random } from '../support/random';
import { everyProblem, everyStatement, samples } from './support';

const MEGABYTE = 1_000_000;
/** Milliseconds of the processor for a megabyte, whatever it holds: half of it on a quiet machine. */
const BUDGET = 4000;

const filled = (part: string): string => part.repeat(Math.ceil(MEGABYTE / part.length)).slice(0, MEGABYTE);

function noise(highest: number): string {
  const below = random(5);
  return Array.from({ length: MEGABYTE }, () => String.fromCharCode(below(highest))).join('');
}

const TEXTS: Record<string, () => string> = {
  'a megabyte of letters on one line': () => filled('let a = b + '),
  'a megabyte of words on one line': () => filled('straight to '),
  'a megabyte of opening brackets': () => filled('('),
  'a megabyte of opening braces': () => filled('{'),
  'a megabyte of quotes': () => filled('"'),
  'a megabyte of minus signs': () => `let a = ${filled('-')}`,
  'a megabyte of steps in one statement': () => `point a = b ${filled('down 1cm ')}`,
  'a megabyte of line ends': () => filled('\n'),
  'a megabyte of carriage returns': () => filled('\r'),
  'a megabyte of binary noise': () => noise(256),
  'a megabyte of characters from all planes': () => noise(65536),
  'a megabyte of points in a block that is never closed': () =>
    `draft a {\n${filled('  point p = origin\n')}`,
  'ten thousand nested brackets': () => `let a = ${'('.repeat(10000)}b${')'.repeat(10000)}`,
  'ten thousand nested calls': () => `let a = ${'min('.repeat(10000)}b${')'.repeat(10000)}`,
  'ten thousand nested blocks': () => `${'draft a {'.repeat(10000)}${'}'.repeat(10000)}`,
  'an empty text': () => '',
  'a byte order mark alone': () => '\ufeff',
};

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
  parse(samples()[0]!.text);
  for (const [title, text] of Object.entries(TEXTS)) {
    it(`${title} is read in time`, () => {
      const written = text();
      const spent = milliseconds(() => parse(written));
      assert.ok(spent <= BUDGET, `${Math.round(spent)} ms`);
    }).timeout(60000);
  }

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
