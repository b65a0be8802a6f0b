/** Naming an expression, writing a value where its name stood, and mending all of a kind. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks';
import { fixAll } from '../../server/features/fixes';
import { Names } from '../../server/features/names';
import { shapings } from '../../server/features/shaping';
import { draftOf, uri } from '../support/features';
import { applied } from '../support/naming';

/** The text after what is offered for the words between bars (or at one bar); undefined: nothing is offered. */
function checkShaping(marked: string, kind: 'extract' | 'inline', expected: string | undefined): void {
  const from = marked.indexOf('|');
  const to = marked.lastIndexOf('|') - (marked.lastIndexOf('|') > from ? 1 : 0);
  const text = marked.replaceAll('|', '');
  const { pattern, workshop, files } = draftOf(text);
  const names = new Names(uri, files, (one) => workshop.source(one)).upToDate();
  const found = shapings(pattern, names, text, { from, to }).find((one) => one.kind === kind);
  assert.equal(found && applied(text, found.edits), expected);
  if (found === undefined) return;
  const after = draftOf(applied(text, found.edits)).pattern;
  const seen = [...pattern.shapes].map(([path, shape]) => [path, JSON.stringify(shape)]);
  assert.deepEqual(
    [...after.shapes].map(([path, shape]) => [path, JSON.stringify(shape)]),
    seen,
  );
}

describe('naming an expression', () => {
  it('writes a let before the line it stands in, and its name in its place', () =>
    checkShaping(
      'draft d {\n  point a = origin down |2cm * 3|\n}\n',
      'extract',
      'draft d {\n  let new-value = 2cm * 3\n  point a = origin down new-value\n}\n',
    ));

  it('takes a bracket without its brackets, and another name where one is taken', () =>
    checkShaping(
      'let new-value = 1cm\nlet b = |(2cm + 1cm)| * 2\n',
      'extract',
      'let new-value = 1cm\nlet new-value2 = 2cm + 1cm\nlet b = new-value2 * 2\n',
    ));

  it('is not offered for half of an expression, a whole let, or a point', () => {
    checkShaping('let b = 2cm |+ 1cm| * 2\n', 'extract', undefined);
    checkShaping('let b = |2cm + 1cm|\n', 'extract', undefined);
    checkShaping('draft d {\n  point a = |origin|\n}\n', 'extract', undefined);
  });
});

describe('writing a value where its name stood', () => {
  it('takes its line away and puts brackets round a sum', () =>
    checkShaping(
      'draft d {\n  let h|alf = 2cm + 1cm\n  point a = origin down half * 2\n}\n',
      'inline',
      'draft d {\n  point a = origin down (2cm + 1cm) * 2\n}\n',
    ));

  it('is not offered for a choice, nor where nothing rests on it', () => {
    checkShaping('choose a| = 2cm\nlet b = a\n', 'inline', undefined);
    checkShaping('let a| = 2cm\n', 'inline', undefined);
  });

  it('is not offered where the draft is spoken of from outside', () =>
    checkShaping('draft d {\n  let a| = 2cm\n}\nlet b = d.a\n', 'inline', undefined));
});

describe('mending all of a kind', () => {
  it('makes every repair of that code at once', () => {
    const text = 'let a = 4 cm\nlet b = 5 cm\nlet c = 2cm\n';
    const { pattern } = draftOf(text);
    const found = fixAll(check(pattern), uri, 'space-before-unit');
    assert.equal(found?.count, 2);
    const edits = found.fix.edits.map(({ place: { from, to }, text: put }) => ({ from, to, text: put }));
    assert.equal(applied(text, edits), 'let a = 4cm\nlet b = 5cm\nlet c = 2cm\n');
  });

  it('is not offered for one alone', () => {
    const { pattern } = draftOf('let a = 4 cm\n');
    assert.equal(fixAll(check(pattern), uri, 'space-before-unit'), undefined);
  });
});
