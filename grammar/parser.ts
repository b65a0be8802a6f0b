/** One statement in, one node out: the grammar's entry rules behind a single door. */
import type { TokenType } from 'chevrotain';
import { Later } from './later';
import type { Bare } from './statements';
import type * as s from './syntax';
import type { Refusal } from './refusals';
import type { Note } from './values';
import type { Token } from './tokens';

export class Parser extends Later {
  constructor(validate = false) {
    super(validate);
    this.performSelfAnalysis();
  }
}

export interface Reading {
  /** Undefined where the rule could not read the tokens to their end. */
  readonly node: s.StatementNode | undefined;
  readonly notes: readonly Note[];
  readonly refusal: Refusal | undefined;
}

/** Made with the module: the grammar is worked out while an editor and its server greet, not when the first text comes. */
const parser = new Parser();
type Entry = () => Bare<s.StatementNode>;

/** Reads a statement's tokens by the named rule; spans count from `base`. */
export function readStatement(rule: string, tokens: Token[], base: number): Reading {
  parser.input = tokens;
  parser.base = base;
  parser.notes = [];
  parser.refusal = undefined;
  const node = withoutTraces(() => (parser as unknown as Record<string, Entry>)[rule]!());
  const { notes, refusal } = parser;
  if (parser.errors.length > 0) return { node: undefined, notes, refusal };
  const at = { from: 0, to: tokens[tokens.length - 1]!.end - base };
  return { node: Object.assign(node, { at }) as s.StatementNode, notes, refusal };
}

/** The kinds of token that may come after these, which a statement of the named rule begins with; none where it can't. */
export function mayFollow(rule: string, tokens: Token[]): readonly TokenType[] {
  const found = parser.computeContentAssist(rule, tokens).map(({ nextTokenType }) => nextTokenType);
  return [...new Set(found)];
}

/** The library refuses by throwing to itself; a stack trace for each refusal would cost more than the reading. */
function withoutTraces<T>(read: () => T): T {
  const limit = Error.stackTraceLimit;
  Error.stackTraceLimit = 0;
  try {
    return read();
  } finally {
    Error.stackTraceLimit = limit;
  }
}
