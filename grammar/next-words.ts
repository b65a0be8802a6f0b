/** What may stand after the beginning of a statement: for whoever writes on. */
import { readLine } from './lexer';
import { mayFollow } from './parser';
import { ruleFor } from './reading';
import * as t from './tokens';
import type { Token } from './tokens';
import type { BlockKind } from './words';

export interface Next {
  /** Words of the language, in the order of the grammar. */
  readonly words: readonly string[];
  /** A name, that of a thing there is or, after a head, of the one that is made. */
  readonly name: boolean;
  /** A value: a length, a number, a function. */
  readonly value: boolean;
  /** Nothing stands before it but the word that the statement begins with. */
  readonly second: boolean;
}

/** Undefined where the words before it can't begin a statement of such a block. */
export function nextWords(kind: BlockKind, before: string): Next | undefined {
  const tokens = tokensIn(before);
  const rule = tokens.length === 0 ? undefined : ruleFor(kind, tokens);
  if (rule === undefined) return undefined;
  const types = mayFollow(rule, tokens);
  if (types.length === 0) return undefined;
  const words = types.filter(({ name }) => name.startsWith('Word_')).map(({ LABEL }) => LABEL!);
  return {
    words,
    name: types.includes(t.Name) || types.includes(t.Member),
    value: types.includes(t.Measure) || types.includes(t.Func) || types.includes(t.Length),
    second: tokens.length === 1,
  };
}

function tokensIn(text: string): Token[] {
  const tokens: Token[] = [];
  for (let at = 0; at < text.length;) {
    const line = readLine(text, at);
    tokens.push(...line.tokens);
    at = line.next;
  }
  return tokens;
}
