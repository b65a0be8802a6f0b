/** Two versions that git left in one text: what is said of them, what stays as it is, and how one is chosen. */
import assert from 'node:assert/strict';
import { format, parse } from '../../grammar';
import { choosings } from '../../server/features/conflicts';
import { Lines } from '../../server/features/lines';
import { applied } from '../support/naming';
import { saidOf } from '../support/drafts';

const pocket = (lines: string): string => `draft pocket {
  point top = origin
${lines}  line depth = top to foot
}
`;

const [ours, base, theirs] = [18, 19, 20].map((depth) => `  point foot = top down ${depth}cm\n`) as [
  string,
  string,
  string,
];
const two = pocket(`<<<<<<< HEAD\n${ours}=======\n${theirs}>>>>>>> fitting\n`);
const three = two.replace('=======', `||||||| before\n${base}=======`);

const codes = (text: string): string[] => saidOf(text).map((line) => line.split(':', 1)[0]!);

describe('two versions that were never put together', () => {
  it('are named at their marks, and the block round them stays one', () => {
    assert.deepEqual(codes(two), ['conflict-mark', 'conflict-mark', 'defined-twice', 'conflict-mark']);
    assert.equal(parse(two).items.length, 1);
    assert.equal(parse(three).items[0]!.statement.block!.length, 9);
  });

  it('are named between statements of the file as well, and at its beginning', () =>
    assert.deepEqual(codes('<<<<<<< HEAD\n=======\nlet a = 1cm\n>>>>>>> fitting\n'), [
      'conflict-mark',
      'conflict-mark',
      'conflict-mark',
    ]));

  it('keep their place in a block whose braces do not agree', () =>
    assert.equal(codes(two.replace(/\}\n$/, '')).filter((code) => code === 'conflict-mark').length, 3));

  it('are meant by seven signs in the first column alone', () => {
    for (const line of [' <<<<<<< HEAD', '<<<<<< HEAD', '<<<<<<<< HEAD', '<<<<<<<HEAD'])
      assert.ok(!codes(`let a = 1cm\n${line}\n`).includes('conflict-mark'), line);
    assert.ok(codes('let a = 1cm\r\n=======\r\n').includes('conflict-mark'));
  });

  it('are not laid out: a mark that is moved is none', () => {
    const text = two.replace('down 18cm', 'down   18cm');
    assert.equal(format(text), text);
  });
});

/** What each choice makes of a text, asked where `words` stand. */
function chosen(text: string, words: string): Record<string, string> {
  const offered = choosings(new Lines(text), text.indexOf(words));
  return Object.fromEntries(offered.map(({ title, edits }) => [title, applied(text, edits)]));
}

describe('choosing between two versions', () => {
  const choices = {
    'Keep the first version (HEAD)': pocket(ours),
    'Keep the second version (fitting)': pocket(theirs),
    'Keep both versions, one after the other': pocket(ours + theirs),
  };

  it('is offered on every line of them, and leaves no mark', () => {
    for (const words of ['<<<<', 'down 18cm', '=====', 'down 20cm', '>>>>'])
      assert.deepEqual(chosen(two, words), choices, words);
  });

  it('is named without brackets where the marks have no names', () =>
    assert.deepEqual(Object.keys(chosen(two.replace(' HEAD', '').replace(' fitting', ''), 'down 18cm')), [
      'Keep the first version',
      'Keep the second version',
      'Keep both versions, one after the other',
    ]));

  it('leaves out what both were made from', () => assert.deepEqual(chosen(three, 'down 19cm'), choices));

  it('is not offered beside them, nor where a mark is missing', () => {
    assert.deepEqual(chosen(two, 'point top'), {});
    assert.deepEqual(chosen(two, 'line depth'), {});
    assert.deepEqual(chosen(two.replace('=======\n', ''), 'down 18cm'), {});
    assert.deepEqual(chosen(two.replace('>>>>>>> fitting\n', ''), 'down 18cm'), {});
  });

  it('goes by the marks round the cursor where several versions were left', () => {
    const text = two + two;
    const kept = choosings(new Lines(text), text.lastIndexOf('down 18cm'))[0]!;
    assert.equal(applied(text, kept.edits), two + pocket(ours));
  });
});
