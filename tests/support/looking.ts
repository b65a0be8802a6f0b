/** What an editor shows round and between the words of a text: one helper for each, a text in, words out. */
import assert from 'node:assert/strict';
import { parse } from '../../grammar/index';
import { check } from '../../server/checks';
import { colours } from '../../server/features/colours';
import { ALL_HINTS, hints, type HintKinds } from '../../server/features/hints';
import { lenses } from '../../server/features/lenses';
import { Lines } from '../../server/features/lines';
import { links } from '../../server/features/links';
import { selections } from '../../server/features/selection';
import { formAt, functionAt } from '../../server/features/signature';
import { workspaceSymbols } from '../../server/features/workspace-symbols';
import { draftOf, uri } from './features';
import { marked } from './marks';

/** The text with every hint in it, each between ‹ and ›. */
export function checkHints(text: string, expected: string, kinds: Partial<HintKinds> = {}): void {
  const { pattern, workshop } = draftOf(text);
  const whole = { from: 0, to: text.length };
  const found = hints(pattern, workshop.source(uri)!, whole, { ...ALL_HINTS, ...kinds });
  const written = [...found]
    .reverse()
    .reduce((now, { offset, words }) => `${now.slice(0, offset)}‹${words}›${now.slice(offset)}`, text);
  assert.equal(written, expected);
}

/** The hints between two lines, both included, counted from one. */
export function checkHintsBetween(text: string, [first, last]: [number, number], expected: string[]): void {
  const { pattern, workshop } = draftOf(text);
  const lines = new Lines(text);
  const from = lines.offset({ line: first - 1, character: 0 });
  const to = lines.offset({ line: last - 1, character: Infinity });
  const found = hints(pattern, workshop.source(uri)!, { from, to }, ALL_HINTS);
  assert.deepEqual(
    found.map(({ words }) => words),
    expected,
  );
}

/** The lenses as `name: words`. */
export function checkLenses(text: string, expected: readonly string[]): void {
  const { pattern } = draftOf(text);
  const found = lenses(pattern, check(pattern));
  assert.deepEqual(
    found.map(({ from, to, words }) => `${text.slice(from, to)}: ${words}`),
    expected,
  );
}

/** The selections at the mark, the narrowest first, line ends as `/`. */
export function checkSelections(text: string, expected: readonly string[]): void {
  const place = marked(text);
  const found = selections(parse(place.text), place.text, place.offset);
  assert.deepEqual(
    found.map(({ from, to }) => place.text.slice(from, to).replaceAll('\n', '/')),
    expected,
  );
}

/** The stretches that lead to a file. */
export function checkLinks(text: string, expected: readonly string[]): void {
  const found = links(parse(text));
  assert.deepEqual(
    found.map(({ from, to }) => text.slice(from, to)),
    expected,
  );
  assert.deepEqual(
    found.map(({ path }) => path),
    expected,
  );
}

/** The form at the mark, with the parameter that is at hand between brackets; undefined: none. */
export function checkSignature(text: string, expected: string | undefined): void {
  const place = marked(text);
  const found = functionAt(place.text, place.offset) ?? formAt(parse(place.text), place.text, place.offset);
  const [from, to] = (found?.active !== undefined && found.parameters[found.active]) || [0, 0];
  const label = found?.label ?? '';
  const written = to === 0 ? label : `${label.slice(0, from)}[${label.slice(from, to)}]${label.slice(to)}`;
  assert.equal(found && written, expected);
}

/** The symbols found in texts by some letters, as `kind name in container`. */
export function checkSymbols(
  texts: Readonly<Record<string, string>>,
  query: string,
  expected: readonly string[],
): void {
  const read = Object.entries(texts).map(([name, text]) => ({ uri: name, file: parse(text) }));
  const found = workspaceSymbols(read, query);
  assert.deepEqual(
    found.map(({ uri: file, symbol, container }) => {
      return `${symbol.kind} ${symbol.name}${container === '' ? '' : ` in ${container}`} (${file})`;
    }),
    expected,
  );
}

/** The coloured words as `word colour`, those that define with a star. */
export function checkColours(text: string, expected: readonly string[]): void {
  const found = colours(parse(text));
  assert.deepEqual(
    found.map(({ from, to, colour, defines }) => `${text.slice(from, to)} ${colour}${defines ? '*' : ''}`),
    expected,
  );
}
