/** One helper for each editor feature: a marked text in, what the feature says out. No test drafts a pattern itself. */
import assert from 'node:assert/strict';
import { parse } from '../../grammar/index';
import { Workshop } from '../../server/drafting/workshop';
import { completions } from '../../server/features/completion';
import { definition } from '../../server/features/definition';
import { folds } from '../../server/features/folding';
import { hover } from '../../server/features/hover';
import { Lines } from '../../server/features/lines';
import { Names } from '../../server/features/names';
import { usedFiles } from '../../server/features/used-names';
import { outline, type OutlineSymbol } from '../../server/features/outline';
import { Files, nothingBehind } from '../../server/lsp/files';
import { marked } from './marks';

const folder = 'file:///wardrobe';
export const uri = `${folder}/under-test.draft`;

/** A pattern of texts that lie beside each other; the one under test is drafted. */
export function draftOf(text: string, beside: Readonly<Record<string, string>> = {}) {
  const files = new Files(nothingBehind);
  files.setFolders([folder]);
  Object.entries(beside).forEach(([name, other]) => files.setBuffer(`${folder}/${name}`, other));
  const workshop = new Workshop(files);
  workshop.setText(uri, text);
  return { pattern: workshop.pattern(uri), workshop, files };
}

/** The names of one of the texts that lie beside each other. */
export const namesOf = ({ workshop, files }: ReturnType<typeof draftOf>, of = uri): Names =>
  new Names(of, files, (one) => workshop.source(one)).upToDate();

/** The hover at the mark, as its Markdown; undefined: none. */
export function checkHover(
  text: string,
  expected: string | undefined,
  beside?: Record<string, string>,
): void {
  const place = marked(text);
  const draft = draftOf(place.text, beside);
  assert.equal(hover(draft.pattern, namesOf(draft), place.text, place.offset)?.markdown, expected);
}

/** The line that the definition of the marked name stands on, and the name there; undefined: none is known. */
export function checkDefinition(
  text: string,
  expected: string | undefined,
  beside: Record<string, string> = {},
): void {
  const place = marked(text);
  const draft = draftOf(place.text, beside);
  const { pattern, workshop, files } = draft;
  const read = pattern.files.flatMap((each) => ({ uri: each, file: workshop.source(each)! }));
  const tied = () =>
    [uri, ...Object.keys(beside).map((name) => `${folder}/${name}`)].map((one) => namesOf(draft, one));
  const found = definition(pattern, uri, place.text, place.offset, read, { names: namesOf(draft), tied });
  const there = found && new Lines(files.read(found.uri) ?? place.text);
  const line = there?.line(there.position(found!.from).line).trim();
  const name = there?.text.slice(found!.from, found!.to);
  const file = found?.uri === uri ? '' : `${found?.uri.split('/').pop()}: `;
  assert.equal(found && `${file}${line} (${name})`, expected);
}

/** Asserts that the completions at the mark begin with `first`, hold `also` and lack `never`. */
export function checkCompletions(
  text: string,
  {
    first = [],
    also = [],
    never = [],
  }: { first?: readonly string[]; also?: readonly string[]; never?: readonly string[] },
  beside?: Record<string, string>,
): void {
  const place = marked(text);
  const { pattern, workshop } = draftOf(place.text, beside);
  const read = pattern.files.flatMap((one) => {
    const file = workshop.source(one);
    return file === undefined ? [] : [{ uri: one, file }];
  });
  const used = () => usedFiles(read, (_, path) => `${folder}/${path}`);
  const sources = read.map(({ file }) => file);
  const around = { paths: () => [], used };
  const { items } = completions(pattern, sources, place.text, place.offset, around);
  const labels = items.map(({ label }) => label);
  assert.deepEqual(labels.slice(0, first.length), first);
  assert.deepEqual(
    also.filter((label) => !labels.includes(label)),
    [],
  );
  assert.deepEqual(
    never.filter((label) => labels.includes(label)),
    [],
  );
}

/** The outline as indented lines: kind, name, detail. */
export function checkOutline(text: string, expected: readonly string[]): void {
  const written = (symbols: readonly OutlineSymbol[], indent: string): string[] =>
    symbols.flatMap((symbol) => {
      assert.equal(text.slice(symbol.nameFrom, symbol.nameTo), symbol.name);
      assert.ok(symbol.from <= symbol.nameFrom && symbol.nameTo <= symbol.to);
      return [
        `${indent}${symbol.kind} ${symbol.name}: ${symbol.detail}`,
        ...written(symbol.children, `${indent}  `),
      ];
    });
  assert.deepEqual(written(outline(parse(text)), ''), expected);
}

/** The folds as `first-last kind`, lines counted from one. */
export function checkFolds(text: string, expected: readonly string[]): void {
  const found = folds(parse(text), new Lines(text));
  assert.deepEqual(
    found.map(({ startLine, endLine, kind }) => `${startLine + 1}-${endLine + 1} ${kind}`),
    expected,
  );
}
