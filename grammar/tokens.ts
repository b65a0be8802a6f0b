/** The kinds of token, and the one token object that lexer and parser share. */
import { createToken, Lexer, type IToken, type TokenType } from 'chevrotain';
import type { Unit } from './syntax';
import { allWords, isReserved, type Word } from './words';

function kind(name: string, label: string, categories: TokenType[] = []): TokenType {
  return createToken({ name, label, pattern: Lexer.NA, categories });
}

/** A length, number or fraction. */
export const Measure = kind('Measure', 'a length or a number');
export const Length = kind('Length', 'a length', [Measure]);
export const Number = kind('Number', 'a number', [Measure]);
export const Fraction = kind('Fraction', 'a fraction', [Measure]);
export const Ratio = kind('Ratio', 'a ratio');
export const Date = kind('Date', 'a date');
export const Text = kind('Text', 'a text in quotes');
/** What may follow the dot of a path. */
export const Member = kind('Member', 'a name');
export const Name = kind('Name', 'a name', [Member]);
export const Func = kind('Func', 'a function');

export const Sign = kind('Sign', 'a sign');
export const Plus = kind('Plus', '+', [Sign]);
export const Minus = kind('Minus', '-', [Sign]);
export const Times = kind('Times', '*', [Sign]);
export const Over = kind('Over', '/', [Sign]);
export const Comparison = kind('Comparison', 'a comparison');
export const Equals = kind('Equals', '=', [Comparison]);
export const Less = kind('Less', '<', [Comparison]);
export const LessEqual = kind('LessEqual', '<=', [Comparison]);
export const More = kind('More', '>', [Comparison]);
export const MoreEqual = kind('MoreEqual', '>=', [Comparison]);
export const Open = kind('Open', '(');
export const Close = kind('Close', ')');
export const OpenBrace = kind('OpenBrace', '{');
export const CloseBrace = kind('CloseBrace', '}');
export const Comma = kind('Comma', ',');
export const Dots = kind('Dots', '..');
export const Dot = kind('Dot', '.');
/** A whole line that git left where two versions could not be put together. */
export const Conflict = kind('Conflict', 'a mark of two versions');
/** A character that the language has no use for. */
export const Odd = kind('Odd', 'an unknown sign');

const MEMBERS = new Set(['start', 'end', 'left', 'right']);

function wordType(word: Word): TokenType {
  const categories = isReserved(word) ? (MEMBERS.has(word) ? [Member] : []) : [Name];
  return kind('Word_' + word.replace(/-/g, '_'), word, categories);
}

/** The token type of each word of the language. */
export const W = Object.fromEntries(allWords().map((word) => [word, wordType(word)])) as Record<
  Word,
  TokenType
>;

const wordTypes: ReadonlyMap<string, TokenType> = new Map(Object.entries(W));

/** The type of a name-like word: its own when the language knows it, else `Name`. */
export function typeOfWord(word: string): TokenType {
  return wordTypes.get(word) ?? Name;
}

export const vocabulary: TokenType[] = [
  Measure, Length, Number, Fraction, Ratio, Date, Text, Member, Name, Func, Sign, Plus, Minus, Times, Over,
  Comparison, Equals, Less, LessEqual, More, MoreEqual, Open, Close, OpenBrace, CloseBrace, Comma, Dots, Dot, Odd,
  Conflict,
  ...Object.values(W),
]; // prettier-ignore

/** A slip that the lexer could read through: the code of the catalogue and what should have been written. */
export interface Slip {
  readonly code: string;
  readonly written: string;
  readonly meant: string;
}

/** One token. `endOffset` is inclusive, as the parser's library wants it. */
export class Token implements IToken {
  tokenTypeIdx: number;
  /** The name in NFC, or the text without its quotes; else as written. */
  text: string;
  amount: number | undefined = undefined;
  unit: Unit | undefined = undefined;
  /** A fraction or a mixed length, which may not stand straight after `*` or `/`. */
  fractional = false;
  slip: Slip | undefined = undefined;

  constructor(
    public tokenType: TokenType,
    public image: string,
    public startOffset: number,
    public endOffset: number,
  ) {
    this.tokenTypeIdx = tokenType.tokenTypeIdx!;
    this.text = image;
  }

  /** The same place read as another kind of token. */
  as(type: TokenType, text: string): Token {
    const token = new Token(type, text, this.startOffset, this.endOffset);
    token.amount = this.amount;
    token.unit = this.unit;
    token.fractional = this.fractional;
    return token;
  }

  get end(): number {
    return this.endOffset + 1;
  }
}

/** Whether a token is a word at all, reserved or not. */
export function isWord(token: Token | undefined): boolean {
  return token !== undefined && (isName(token) || isReserved(token.text));
}

const nameIndexes = new Set<number>([Name.tokenTypeIdx!]);
for (const [word, type] of Object.entries(W)) if (!isReserved(word)) nameIndexes.add(type.tokenTypeIdx!);

/** Whether a token may stand as a name. */
export function isName(token: Token | undefined): boolean {
  return token !== undefined && nameIndexes.has(token.tokenTypeIdx);
}

export function isMeasure(token: Token | undefined): boolean {
  return (
    token !== undefined &&
    (token.tokenType === Length || token.tokenType === Number || token.tokenType === Fraction)
  );
}
