/** Units that people write out, touching their number or not; feet, which become inches. */
import assert from 'node:assert/strict';
import { parse } from '../../grammar';
import { applied } from '../support/naming';

/** The line after its fix; undefined where none is offered. */
function mended(line: string): string | undefined {
  const { offset, statement } = parse(line).items[0]!;
  const edits = statement.problems[0]?.fixes[0]?.edits;
  const start = offset + statement.start;
  if (edits === undefined) return undefined;
  const puts = edits.map(({ at, text }) => ({ from: start + at.from, to: start + at.to, text }));
  return applied(line, puts);
}

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
