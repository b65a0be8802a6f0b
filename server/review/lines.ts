/** The statements of a pattern as they are held against each other: by words, without comments and layout. */
import { FUNCTIONS, tokensOf } from '../../grammar';
import { keptFor } from '../../grammar/kept';
import type { Statement, TopLevel } from '../../grammar/syntax';
import type { FileRange } from '../drafting/model';
import type { TakenFile } from './take';

export interface Line {
  readonly kind: string;
  /** The name it defines or speaks of; '' for lines without one. */
  readonly name: string;
  readonly words: readonly string[];
  /** Its words with those of its block: equal for two that say the same. */
  readonly whole: string;
  /** Comments above it and its layout, which say nothing to the drafting. */
  readonly looks: string;
  readonly children: readonly Line[];
  /** Its block is told in an order that matters. */
  readonly ordered: boolean;
  /** Characters from the beginning of the top-level statement. */
  readonly from: number;
  readonly to: number;
  /** Does it read as the language has it. */
  readonly sound: boolean;
}

/** A line with its place in a file. */
export interface Placed {
  readonly line: Line;
  readonly file: TakenFile;
  readonly offset: number;
}

export const placeOf = ({ line, file, offset }: Placed): FileRange => ({
  uri: file.uri,
  from: offset + line.from,
  to: offset + line.to,
});

/** Every top-level statement of the files; a statement that did not change keeps its line, object for object. */
export const topLines = (files: readonly TakenFile[]): Placed[] =>
  files.flatMap((file) =>
    file.source.items.map((item, i) => ({ line: topLine(item), file, offset: file.offsets[i]! })),
  );

const topLine = keptFor(({ statement }: TopLevel): Line => lineOf(statement));

/** Blocks in which the order of the lines is part of what they say. */
const ORDERED: ReadonlySet<string> = new Set(['outline', 'hole']);

function lineOf(statement: Statement): Line {
  const { node, text, doc, block, start } = statement;
  const words = tokensOf(text)
    .filter(({ kind }) => kind !== 'comment')
    .map(({ from, to }) => text.slice(from, to));
  const children = (block ?? []).map(lineOf);
  return {
    kind: node.kind === 'shape' ? node.form : node.kind,
    name: nameOf(statement),
    words,
    whole: [words.join(' '), ...children.map(({ whole }) => whole)].join('\n'),
    looks: [doc, text, ...children.map(({ looks }) => looks)].join('\n'),
    children,
    ordered: ORDERED.has(node.kind),
    from: start,
    to: start + text.trimEnd().length,
    sound: statement.problems.length === 0 && node.kind !== 'broken',
  };
}

function nameOf({ node }: Statement): string {
  const named = node as { name?: { text?: string }; code?: { text: string } };
  return named.name?.text ?? named.code?.text ?? '';
}

/** Words as they are written in a message: brackets, points and commas hang on what they belong to. */
export function written(words: readonly string[]): string {
  let out = '';
  words.forEach((word, i) => {
    const before = words[i - 1];
    const hangs = before === undefined || before === '(' || before === '.' || [')', ',', '.'].includes(word);
    out += hangs || (word === '(' && (FUNCTIONS as readonly string[]).includes(before)) ? word : ` ${word}`;
  });
  return out.replace(/ ?\{$/, '');
}
