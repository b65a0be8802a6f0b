/** Units that people write out or mark, touching their number or not; feet, which become inches; numbers with slips before them. */
import assert from 'node:assert/strict';
import { parse } from '../../grammar';
import { applied } from '../support/naming';

/** The line after its fix, whose edits must not overlap, as editors demand; undefined where none is offered. */
function mended(line: string): string | undefined {
  const { offset, statement } = parse(line).items[0]!;
  const edits = statement.problems[0]?.fixes[0]?.edits;
  const start = offset + statement.start;
  if (edits === undefined) return undefined;
  const puts = edits.map(({ at, text }) => ({ from: start + at.from, to: start + at.to, text }));
  for (const [i, { to }] of puts.entries()) assert.ok(!puts[i + 1] || to <= puts[i + 1]!.from, line);
  return applied(line, puts);
}

const told = (line: string): string => parse(line).items[0]!.statement.problems[0]!.message;

describe('a length in feet', () => {
  it('is mended into inches, with a space before the unit or none', () => {
    assert.equal(mended('let a = 5ft'), 'let a = 60in');
    assert.equal(mended('let a = 5.5feet / 2'), 'let a = 66in / 2');
    assert.equal(mended('let a = 3 ft'), 'let a = 36in');
    assert.equal(mended('let a = 1/2ft'), 'let a = 6in');
    assert.equal(mended('let a = 1,5ft'), 'let a = 18in');
    assert.equal(mended('let a = 12 inches'), 'let a = 12in');
  });

  it('leaves a name alone that is called so', () => {
    assert.equal(parse('let a = 2 * feet').items[0]!.statement.problems.length, 0);
    assert.equal(parse('let ft = 3cm').items[0]!.statement.problems.length, 0);
  });

  it('is not guessed at where the letters are no unit', () => {
    assert.equal(mended('let a = 5constructor'), undefined);
    assert.equal(mended('let a = 5px'), undefined);
  });
});

describe('feet and inches as one length', () => {
  const lengths: Record<string, string> = {
    '5 ft 3 in': '63in', '5ft 3in': '63in', '5ft3in': '63in', [`5' 3"`]: '63in', [`5'3"`]: '63in', '5’ 3”': '63in',
    '5′3″': '63in', [`5'3''`]: '63in', [`5' 3`]: '63in', '5ft3': '63in', '5 feet 3 inches': '63in', '5 foot 3': '63in',
    [`5' 3 1/2"`]: '63.5in', '5ft3½in': '63.5in', '5ft 3.5 in': '63.5in', '5ft 0in': '60in',
  }; // prettier-ignore

  it('are mended into inches by one edit, wherever they stand', () => {
    for (const [written, meant] of Object.entries(lengths)) {
      for (const line of ['let a = *', 'let a = hip + * / 2', 'let a = (-*)'])
        assert.equal(mended(line.replace('*', written)), line.replace('*', meant), written);
    }
  });

  it('are told in one message, which says what to write', () => {
    for (const [written, meant] of Object.entries(lengths)) {
      const { node, problems } = parse(`let a = ${written} + 1cm`).items[0]!.statement;
      assert.deepEqual([node.kind, problems.length, problems[0]?.code], ['let', 1, 'unknown-unit'], written);
      assert.equal(
        problems[0]!.message,
        `\`${written}\` is feet and inches; a length is one number and one unit, so write \`${meant}\`.`,
      );
      assert.equal(problems[0]!.fixes[0]!.title, `Write \`${meant}\``);
    }
  });

  it('are mended in a range, before its word and behind it', () => {
    const meant = 'choose a = 63in in 60in .. 74in';
    assert.equal(mended(`choose a = 5' 3" in 5' .. 6' 2"`), meant);
    assert.equal(mended('choose a = 5 ft 3 in 5 ft .. 6 ft 2 in'), meant);
    assert.equal(mended('choose a = 5 ft 3 in in 5ft .. 6ft2in'), meant);
  });

  it('are not guessed at where the second is a foot or more, or no inches', () => {
    assert.equal(mended('let a = 5ft 12in'), undefined);
    assert.equal(mended('let a = 5ft 3cm'), undefined);
  });

  it('hold the sum of both', () => {
    const amount = (line: string) =>
      JSON.stringify(parse(line).items[0]!.statement.node).match(/"amount":[\d.]+/)?.[0];
    assert.equal(amount(`let a = 5' 3"`), amount('let a = 63in'));
    assert.notEqual(amount('let a = 63in'), amount('let a = 60in'));
  });
});

describe('a mark for feet', () => {
  it('is mended into inches', () => {
    for (const mark of ["'", '’', '′']) assert.equal(mended(`let a = 5${mark} / 2`), 'let a = 60in / 2');
  });

  it('stays a quote where a text begins behind a number', () => {
    const line = parse("measure a3 'how it is taken'").items[0]!.statement;
    assert.deepEqual(
      line.problems.map(({ code }) => code),
      ['unusual-sign'],
    );
    assert.doesNotMatch(told("label 5'front' 4cm"), /feet/);
  });
});

describe('a number with a slip of its own before a unit with another', () => {
  it('is mended by one edit, with a space before the unit or none', () => {
    const lengths: Record<string, string> = {
      '2,5 inches': '2.5in', '2,5inches': '2.5in', '½ ft': '6in', '½ft': '6in', '2½ ft': '30in', '2½ inches': '2 1/2in',
      '2½inches': '2 1/2in', '1,5 ft': '18in', '1,5ft': '18in', '.5 inches': '0.5in', '2,5 cm': '2.5cm', '5 IN': '5in',
      '2,5 IN': '2.5in', '½ in': '1/2in', '2½ yards': '2 1/2yd', '1,5 m': '1.5m',
    }; // prettier-ignore
    for (const [written, meant] of Object.entries(lengths)) {
      assert.equal(mended(`let a = ${written}`), `let a = ${meant}`);
      assert.equal(mended(`let a = hip + ${written} / 2`), `let a = hip + ${meant} / 2`);
    }
  });

  it('is told as the length that is meant', () => {
    assert.equal(told('let a = 2,5 inches'), '`2,5 inches`: the unit is written `in`, so `2.5in`.');
    assert.equal(told('let a = 2,5 cm'), '`2,5 cm` has a decimal comma; numbers take a point: `2.5cm`.');
  });

  it('leaves its own mend where the unit needs none', () => {
    assert.equal(mended('let a = 2,5cm + 4 cm'), 'let a = 2.5cm + 4cm');
    assert.equal(mended('let hip_a b = 2,5 cm'), 'let hip-a-b = 2.5cm');
    assert.equal(mended('let a = 2 * ½'), 'let a = 2 * (1/2)');
  });
});

describe('a whole number and a fraction before a unit that is written out', () => {
  it('are one number', () => {
    const lengths: Record<string, string> = {
      '1 1/2 inch': '1 1/2in', '1 1/2inch': '1 1/2in', '1  1/2 inches': '1 1/2in', '1 ½ inches': '1 1/2in',
      '1 ½"': '1 1/2in', '1 1/2 IN': '1 1/2in', '1 1/2 feet': '18in', '1 1/2ft': '18in', '1 ½ft': '18in', '2 3/4 yards': '2 3/4yd',
    }; // prettier-ignore
    for (const [written, meant] of Object.entries(lengths)) {
      assert.equal(mended(`let a = ${written}`), `let a = ${meant}`);
      const { node, problems } = parse(`let a = ${written}`).items[0]!.statement;
      assert.deepEqual([node.kind, problems.length], ['let', 1], written);
    }
  });

  it('hold the same amount as the length that is written for them', () => {
    const amount = (line: string) =>
      JSON.stringify(parse(line).items[0]!.statement.node).match(/"amount":[\d.]+/)?.[0];
    assert.equal(amount('let a = 1 1/2 inch'), amount('let a = 1 1/2in'));
    assert.equal(amount('let a = 1 1/2 feet'), amount('let a = 18in'));
    assert.notEqual(amount('let a = 18in'), undefined);
  });

  it('are quoted as they are written where another length touches them', () => {
    const words = (line: string) => told(line).split(' touch')[0];
    assert.equal(words('let a = 5 ft 3 cm'), '`5 ft` and `3 cm`');
    assert.equal(words('let a = 1 1/2 feet 3 IN'), '`1 1/2 feet` and `3 IN`');
    assert.equal(words('let a = 5ft 13inches'), '`5ft` and `13inches`');
  });
});
