/** Colours over the protocol: all of a text, what is in sight, and only what changed since it was asked last. */
import {
  SemanticTokensDeltaRequest,
  SemanticTokensRangeRequest,
  SemanticTokensRequest,
  type SemanticTokens,
  type SemanticTokensDelta,
  type SemanticTokensDeltaParams,
  type SemanticTokensRangeParams,
} from 'vscode-languageserver';
import { keptFor } from '../../grammar/kept';
import type { SourceFile } from '../../grammar/syntax';
import { colouredParts, colours, type Colour, type Coloured } from '../features/colours';
import type { Encoding, Lines, Position } from '../features/lines';
import type { OpenDocument } from './documents';
import { aboutText, service, type AboutText, type Service } from './service';

/** Standard words of the protocol, so that every editor has a colour for them. */
const TYPES: Readonly<Record<Colour, string>> = {
  keyword: 'keyword',
  comment: 'comment',
  string: 'string',
  number: 'number',
  operator: 'operator',
  function: 'function',
  value: 'variable',
  measurement: 'parameter',
  shape: 'property',
  part: 'enumMember',
  block: 'class',
  seam: 'interface',
  body: 'struct',
  word: 'macro',
};

const LEGEND = [...Object.values(TYPES)];
const INDEX = new Map(Object.keys(TYPES).map((colour, i) => [colour as Colour, i]));
const MODIFIERS = ['declaration'];

/** Five numbers a word: lines and characters from the word before, length, type, modifiers. */
export function encoded(found: readonly Coloured[], lines: Lines, offset = 0): number[] {
  const data: number[] = [];
  let { line, character } = BEGINNING;
  const placeOf = lines.following(offset);
  for (const { from, to, colour, defines } of found) {
    const at = placeOf(offset + from);
    const length = lines.encoding === 'utf-16' ? to - from : placeOf(offset + to).character - at.character;
    const sameLine = at.line === line;
    data.push(
      at.line - line,
      sameLine ? at.character - character : at.character,
      length,
      INDEX.get(colour)!,
      defines ? 1 : 0,
    );
    ({ line, character } = at);
  }
  return data;
}

const BEGINNING: Position = { line: 0, character: 0 };

/** The numbers of a statement's words; the first two say where it stands, and all others hold wherever that is. */
interface Numbers {
  readonly encoding: Encoding;
  readonly ofFirst: readonly number[];
  readonly ofOthers: readonly number[];
}

const kept = new WeakMap<readonly Coloured[], Numbers>();

function numbersOf(words: readonly Coloured[], lines: Lines, offset: number): Numbers {
  const known = kept.get(words);
  if (known?.encoding === lines.encoding) return known;
  const data = encoded(words, lines, offset);
  const numbers = { encoding: lines.encoding, ofFirst: data.slice(2, 5), ofOthers: data.slice(5) };
  kept.set(words, numbers);
  return numbers;
}

/** All words of a file; of statements that stay what they are, the numbers are kept. */
function encodedWhole(file: SourceFile, lines: Lines): number[] {
  const parts: (readonly number[])[] = [];
  let before = BEGINNING;
  for (const { offset, words } of colouredParts(file)) {
    const [first] = words;
    if (first === undefined) continue;
    const { ofFirst, ofOthers } = numbersOf(words, lines, offset);
    const at = lines.position(offset + first.from);
    const character = at.line === before.line ? at.character - before.character : at.character;
    parts.push([at.line - before.line, character, ...ofFirst], ofOthers);
    before = lines.position(offset + words.at(-1)!.from);
  }
  return joined(parts);
}

/** As many lists as a call takes without trouble. */
const AT_ONCE = 10_000;

/** Lists in one, as the machine does it fastest. */
function joined(parts: readonly (readonly number[])[]): number[] {
  let data: number[] = [];
  for (let i = 0; i < parts.length; i += AT_ONCE) data = data.concat(...parts.slice(i, i + AT_ONCE));
  return data;
}

interface Last {
  readonly id: string;
  readonly data: readonly number[];
}

/** The last colours of each open text, to tell what changed; those of a closed one go when another is coloured. */
class Told {
  readonly #last = new Map<string, Last>();
  #count = 0;

  /** @param open the keys of the texts that are still open */
  take({ key }: OpenDocument, data: readonly number[], open: readonly string[]): string {
    const id = String(++this.#count);
    this.#last.set(key, { id, data });
    if (this.#last.size > open.length)
      for (const one of this.#last.keys()) if (!open.includes(one)) this.#last.delete(one);
    return id;
  }

  of({ key }: OpenDocument, id: string): Last | undefined {
    const last = this.#last.get(key);
    return last?.id === id ? last : undefined;
  }
}

const toldIn = keptFor((_desk: object) => new Told());

const whole = aboutText((document, _params: AboutText, desk): SemanticTokens | null => {
  const file = desk.workshop.source(document.key);
  if (file === undefined) return null;
  const data = encodedWhole(file, document.lines);
  return { resultId: toldIn(desk).take(document, data, desk.documents.keys()), data };
});

const within = aboutText((document, { range }: SemanticTokensRangeParams, desk): SemanticTokens | null => {
  const file = desk.workshop.source(document.key);
  if (file === undefined) return null;
  const { lines } = document;
  return { data: encoded(colours(file, lines.offset(range.start), lines.offset(range.end)), lines) };
});

const changed = aboutText(
  (document, params: SemanticTokensDeltaParams, desk): SemanticTokens | SemanticTokensDelta | null => {
    const file = desk.workshop.source(document.key);
    if (file === undefined) return null;
    const before = toldIn(desk).of(document, params.previousResultId);
    const data = encodedWhole(file, document.lines);
    const resultId = toldIn(desk).take(document, data, desk.documents.keys());
    return before === undefined ? { resultId, data } : { resultId, edits: difference(before.data, data) };
  },
);

/** One replacement, in numbers: what two lists begin and end with alike is left out. */
export function difference(
  before: readonly number[],
  after: readonly number[],
): SemanticTokensDelta['edits'] {
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before[start] === after[start]) start++;
  if (start === before.length && start === after.length) return [];
  let end = 0;
  while (end < shorter - start && before[before.length - 1 - end] === after[after.length - 1 - end]) end++;
  const data = after.slice(start, after.length - end);
  return [{ start, deleteCount: before.length - end - start, data }];
}

export const colouringServices: readonly Service[] = [
  service(
    SemanticTokensRequest.method,
    'text',
    {
      semanticTokensProvider: {
        legend: { tokenTypes: LEGEND, tokenModifiers: MODIFIERS },
        full: { delta: true },
        range: true,
      },
    },
    whole,
  ),
  service(SemanticTokensDeltaRequest.method, 'text', {}, changed),
  service(SemanticTokensRangeRequest.method, 'text', {}, within),
];
