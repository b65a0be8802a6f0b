/** The indentation of the line under the hands, as it comes while somebody types. */
import assert from 'node:assert/strict';
import { parse } from '../../grammar';
import { indentation } from '../../server/features/indenting';

/** The text after the key that stands before the bar was typed. */
function checkTyped(before: string, expected: string): void {
  const offset = before.indexOf('|');
  const text = before.replace('|', '');
  const edits = indentation(parse(text), offset, text[offset - 1]!);
  const after = edits.reduce(
    (now, { from, to, text: put }) => now.slice(0, from) + put + now.slice(to),
    text,
  );
  assert.equal(after, expected);
}

describe('the indentation of a line that is begun', () => {
  it('is two spaces more within each brace, closed or not', () => {
    checkTyped('draft d {\n|', 'draft d {\n  ');
    checkTyped('draft d {\n|\n}\n', 'draft d {\n  \n}\n');
    checkTyped(
      'piece p of d {\n  outline from a {\n|\n  }\n}\n',
      'piece p of d {\n  outline from a {\n    \n  }\n}\n',
    );
  });

  it('is none after the closing brace of a block', () => checkTyped('draft d {\n}\n  |', 'draft d {\n}\n'));

  it('keeps the words of a line that is broken in two, and stands in further where the statement goes on', () => {
    checkTyped(
      'draft d {\n  point a = origin\n|point b = origin\n}\n',
      'draft d {\n  point a = origin\n  point b = origin\n}\n',
    );
    checkTyped('let a = 1cm +\n|2cm\n', 'let a = 1cm +\n  2cm\n');
    checkTyped(
      'piece p of d {\n  outline from a {\n    side along c to b\n|then straight to d\n  }\n}\n',
      'piece p of d {\n  outline from a {\n    side along c to b\n      then straight to d\n  }\n}\n',
    );
  });

  it('counts no brace that stands in a text or a remark', () => {
    checkTyped('pattern "a {"\n|', 'pattern "a {"\n');
    checkTyped('let a = 1cm # not a {\n|', 'let a = 1cm # not a {\n');
  });

  it('comes at the level of its block for a closing brace, and not for one in mid-line', () => {
    checkTyped('draft d {\n  point a = origin\n  }|\n', 'draft d {\n  point a = origin\n}\n');
    checkTyped('    draft d { }|\n', '    draft d { }\n');
  });

  it('begins anew after a blank line, whatever stood before', () =>
    checkTyped('let a = 1cm +\n\n|', 'let a = 1cm +\n\n'));
});
