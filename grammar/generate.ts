/** Makes the editor's colours and brackets from the word table, so that no word can drift: `npx tsx grammar/generate.ts`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { allHeads, CONTEXTUAL, FUNCTIONS, GIVEN, OFTEN_NAMES, RESERVED, UNITS } from './words';

const NAME = String.raw`\p{L}[\p{L}\p{M}\p{Nd}]*(?:-\p{L}[\p{L}\p{M}\p{Nd}]*)*`;
const BEFORE = String.raw`(?<![\p{L}\p{M}\p{Nd}_.-])`;
const AFTER = String.raw`(?![\p{L}\p{M}\p{Nd}_]|-\p{L})`;
const NUMBER = String.raw`\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?`;

const SCOPE = 'source.draftwright';

/** Words as alternatives, longest first, so that no word hides behind its own beginning. */
function either(words: readonly string[]): string {
  return [...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).join('|');
}

const word = (words: readonly string[]): string => `${BEFORE}(?:${either(words)})${AFTER}`;
const scoped = (match: string, name: string) => ({ match, name: `${name}.draftwright` });
const group = (name: string) => ({ name: `${name}.draftwright` });

/** Heads that are followed by the name they define. */
const DEFINING = allHeads().filter(
  (head) => !['pattern', 'use', 'label', 'grain', 'allow', 'cut', 'fold', 'corner'].includes(head),
);

/** The colours. */
export function textmate(): object {
  const contextual = CONTEXTUAL.filter((one) => !(OFTEN_NAMES as readonly string[]).includes(one));
  return {
    name: 'Draftwright',
    scopeName: SCOPE,
    fileTypes: ['draft'],
    patterns: [
      scoped('#.*$', 'comment.line.number-sign'),
      {
        begin: '"',
        end: '"|$',
        ...group('string.quoted.double'),
        patterns: [scoped(String.raw`\\["\\]`, 'constant.character.escape')],
      },
      {
        match: `^\\s*(${either(DEFINING)})\\s+(?!(?:${either(RESERVED)})${AFTER})(${NAME})`,
        captures: { 1: group('keyword.declaration'), 2: group('entity.name.definition') },
      },
      {
        match: `^\\s*(?!grain\\s)(${NAME})\\s+(along|straight|curve|dart)(?=\\s)`,
        captures: { 1: group('entity.name.edge'), 2: group('keyword.other') },
      },
      scoped(`^\\s*(?:${either(allHeads())})${AFTER}`, 'keyword.declaration'),
      scoped(String.raw`\b\d{4}-\d{2}-\d{2}\b`, 'constant.other.date'),
      {
        match: `${BEFORE}(${NUMBER})(?:(${either(UNITS.filter((unit) => unit !== '%'))})${AFTER}|(%))?`,
        captures: {
          1: group('constant.numeric'),
          2: group('keyword.other.unit'),
          3: group('keyword.other.unit'),
        },
      },
      scoped(`${BEFORE}(?:${either(FUNCTIONS)})(?=\\()`, 'support.function'),
      scoped(word(RESERVED), 'keyword.control'),
      scoped(word(contextual), 'keyword.other'),
      scoped(word(GIVEN), 'variable.language'),
      scoped(String.raw`\.\.|[-+*/=<>]=?`, 'keyword.operator'),
      scoped(`${BEFORE}${NAME}`, 'variable.other'),
    ],
  };
}

/** Comments, brackets, words and indentation. */
export function languageConfiguration(): object {
  const pairs = [
    ['{', '}'],
    ['(', ')'],
  ];
  return {
    comments: { lineComment: '#' },
    brackets: pairs,
    autoClosingPairs: [
      ...pairs.map(([open, close]) => ({ open, close, notIn: ['string', 'comment'] })),
      { open: '"', close: '"', notIn: ['string', 'comment'] },
    ],
    surroundingPairs: [...pairs, ['"', '"']],
    wordPattern: { pattern: `${NAME}|\\d+(?:\\.\\d+)?(?:${either(UNITS)})?`, flags: 'u' },
    indentationRules: {
      increaseIndentPattern: String.raw`^(?:[^#"]|"(?:[^"\\]|\\.)*")*\{\s*(?:#.*)?$`,
      decreaseIndentPattern: String.raw`^\s*\}`,
    },
    onEnterRules: [
      {
        beforeText: String.raw`^\s*#.*$`,
        afterText: String.raw`\S`,
        action: { indent: 'none', appendText: '# ' },
      },
    ],
  };
}

/** Most signs of a line in this repository. */
const WIDTH = 110;

/** JSON as the repository lays it out: a list of words stays on one line where it fits there. */
function laidOut(value: unknown, indent: string, column: number): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const deeper = `${indent}  `;
  const block = (open: string, lines: readonly string[], close: string): string =>
    `${open}\n${lines.map((line) => deeper + line).join(',\n')}\n${indent}${close}`;
  if (Array.isArray(value)) {
    const words = `[${value.map((one) => JSON.stringify(one)).join(', ')}]`;
    const isFlat = value.every((one) => typeof one !== 'object') && column + words.length < WIDTH;
    if (isFlat) return words;
    return block(
      '[',
      value.map((one) => laidOut(one, deeper, deeper.length)),
      ']',
    );
  }
  const lines = Object.entries(value).map(([key, one]) => {
    const head = `${JSON.stringify(key)}: `;
    return head + laidOut(one, deeper, deeper.length + head.length);
  });
  return block('{', lines, '}');
}

/** The files that are made, by their path from the top of the repository. */
export function generated(): Record<string, string> {
  return {
    'grammar/textmate/draftwright.tmLanguage.json': `${JSON.stringify(textmate(), null, 2)}\n`,
    'grammar/language-configuration.json': `${laidOut(languageConfiguration(), '', 0)}\n`,
  };
}

if (process.argv[1]?.endsWith('generate.ts')) {
  for (const [path, text] of Object.entries(generated())) {
    mkdirSync(dirname(join(process.cwd(), path)), { recursive: true });
    writeFileSync(join(process.cwd(), path), text);
  }
}
