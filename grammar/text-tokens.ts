/** The words and signs of a text by what they are: for colours in an editor, and for the formatter. */
import { readLine } from './lexer';
import * as t from './tokens';
import type { Token } from './tokens';
import { isReserved } from './words';

/** `keyword` is a reserved word; `word` one that the language knows and that may be a name elsewhere. */
export type TokenKind =
  | 'keyword'
  | 'word'
  | 'name'
  | 'function'
  | 'number'
  | 'date'
  | 'text'
  | 'sign'
  | 'bracket'
  | 'brace'
  | 'comment'
  | 'unknown';

export interface TextToken {
  readonly kind: TokenKind;
  readonly from: number;
  readonly to: number;
}

/** Every token and comment of the text between two offsets, in order; no token crosses a line. */
export function tokensOf(text: string, from = 0, to = text.length): TextToken[] {
  const out: TextToken[] = [];
  for (let at = lineStart(text, from); at < to;) {
    const line = readLine(text, at);
    for (const token of line.tokens)
      out.push({ kind: kindOf(token), from: token.startOffset, to: token.end });
    if (line.comment >= 0) out.push({ kind: 'comment', from: line.comment, to: line.to });
    at = line.next;
  }
  return out;
}

export function lineStart(text: string, at: number): number {
  let start = Math.min(at, text.length);
  while (start > 0 && text[start - 1] !== '\n' && text[start - 1] !== '\r') start--;
  return start;
}

function kindOf(token: Token): TokenKind {
  switch (token.tokenType) {
    case t.Length:
    case t.Number:
    case t.Fraction:
    case t.Ratio:
      return 'number';
    case t.Date:
      return 'date';
    case t.Text:
      return 'text';
    case t.Func:
      return 'function';
    case t.Name:
      return 'name';
    case t.Open:
    case t.Close:
      return 'bracket';
    case t.OpenBrace:
    case t.CloseBrace:
      return 'brace';
    case t.Odd:
    case t.Conflict:
      return 'unknown';
    default:
      if (!token.tokenType.name.startsWith('Word_')) return 'sign';
      return isReserved(token.text) ? 'keyword' : 'word';
  }
}
