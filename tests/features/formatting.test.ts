/** The smallest replacement that brings a text into its layout. */
import assert from 'node:assert/strict';
import { layoutEdits } from '../../server/features/formatting';

function checkEdits(text: string, laid: string, expected: number): void {
  const edits = layoutEdits(text, laid);
  assert.equal(edits.length, expected);
  const after = edits.reduce(
    (was, { from, to, text: put }) => was.slice(0, from) + put + was.slice(to),
    text,
  );
  assert.equal(after, laid);
}

describe('bringing a text into its layout', () => {
  it('replaces nothing where nothing differs', () => checkEdits('let a = 1cm\n', 'let a = 1cm\n', 0));

  it('replaces one stretch, whether text is added, taken away or changed', () => {
    checkEdits('let a=1cm\n', 'let a = 1cm\n', 1);
    checkEdits('a\n\n\nb\n', 'a\n\nb\n', 1);
    checkEdits('', 'a\n', 1);
    checkEdits('\n\na\n', 'a\n', 1);
    checkEdits('aaaa', 'aa', 1);
    checkEdits('x\n  y\nz\n', 'x\ny\nz\n', 1);
  });

  it('leaves the lines round the stretch alone', () => {
    const [edit] = layoutEdits('one\nlet  b = 2cm\nthree\n', 'one\nlet b = 2cm\nthree\n');
    assert.ok(edit!.from >= 4 && edit!.to <= 16);
  });

  it('takes no line end of two characters apart', () => {
    checkEdits('a\nb\r\n', 'a\nb\n', 1);
    const [edit] = layoutEdits('a\r\nb\nc\r\n', 'a\r\nb\r\nc\r\n');
    assert.deepEqual(edit, { from: 3, to: 5, text: 'b\r\n' });
  });
});
