/** Cuts one line of text into tokens; never fails, and notes the slips it could read through. */
import type { TokenType } from 'chevrotain';
import { own } from './own';
import type { Unit } from './syntax';
import * as t from './tokens';
import { Token, typeOfWord } from './tokens';
import { markOfConflict } from './conflict';
import { feetMark, inchMark, unitLetters } from './feet-marks';
import { unitMeant } from './unit-names';
import { isFunction, isUnit } from './words';

/** One line: its text is `[from, to)`, the next one begins at `next`; `comment` is where its `#` stands, or -1. */
export interface Line {
  readonly from: number;
  readonly to: number;
  readonly next: number;
  readonly tokens: readonly Token[];
  readonly comment: number;
}

const LF = 10;
const CR = 13;

/** Where the line that contains `at` ends, without its line end; and where the next one begins. */
export function lineEnd(text: string, at: number): { to: number; next: number } {
  let to = at;
  while (to < text.length) {
    const code = text.charCodeAt(to);
    if (code === LF || code === CR) break;
    to++;
  }
  const pair = text.charCodeAt(to) === CR && text.charCodeAt(to + 1) === LF;
  return { to, next: Math.min(text.length, to + (pair ? 2 : 1)) };
}

/** Most tokens of one line: far beyond a statement that is read. What follows them is one without a meaning. */
const MOST_TOKENS = 100_000;

/** Reads the line that begins at `from`. */
export function readLine(text: string, from: number): Line {
  const { to, next } = lineEnd(text, from);
  const mark = markOfConflict(text, from, to);
  if (mark !== undefined) return { from, to, next, tokens: [mark], comment: -1 };
  const cursor = new Cursor(text, from, to);
  while (cursor.tokens.length < MOST_TOKENS && cursor.step()) continue;
  cursor.leaveRest();
  return { from, to, next, tokens: cursor.tokens, comment: cursor.comment };
}

const VULGAR: Record<string, number> = {
  '½': 1 / 2, '¼': 1 / 4, '¾': 3 / 4, '⅓': 1 / 3, '⅔': 2 / 3, '⅛': 1 / 8, '⅜': 3 / 8, '⅝': 5 / 8, '⅞': 7 / 8,
}; // prettier-ignore
const VULGAR_WRITTEN: Record<string, string> = {
  '½': '1/2', '¼': '1/4', '¾': '3/4', '⅓': '1/3', '⅔': '2/3', '⅛': '1/8', '⅜': '3/8', '⅝': '5/8', '⅞': '7/8',
}; // prettier-ignore

/** Signs that a keyboard or a word processor puts in place of ours. */
const UNUSUAL: Record<string, [TokenType, string]> = {
  '–': [t.Minus, '-'], '—': [t.Minus, '-'], '−': [t.Minus, '-'], '‐': [t.Minus, '-'], '‑': [t.Minus, '-'],
  '×': [t.Times, '*'], '·': [t.Times, '*'], '∗': [t.Times, '*'], '÷': [t.Over, '/'], '∕': [t.Over, '/'],
  '≤': [t.LessEqual, '<='], '≥': [t.MoreEqual, '>='], '…': [t.Dots, '..'], '[': [t.Open, '('], ']': [t.Close, ')'],
}; // prettier-ignore
const QUOTES: Record<string, string> = {
  '“': '”"“',
  '”': '”"',
  '„': '“”"',
  '«': '»',
  "'": "'",
  '‘': '’',
  '’': '’',
};

const SIMPLE: Record<string, TokenType> = {
  '(': t.Open, ')': t.Close, '{': t.OpenBrace, '}': t.CloseBrace, ',': t.Comma, '+': t.Plus, '-': t.Minus,
  '*': t.Times, '/': t.Over,
}; // prettier-ignore

const DATE = /\d{4}-\d{2}-\d{2}(?!\d)/y;
const DATE_TURNED = /(\d{1,2})([./-])(\d{1,2})\2(\d{4})(?![\d./-])/y;
const RATIO = /\d+:\d+/y;
const MIXED = /(\d+) +(\d+)\/(\d+)(?=(?:cm|mm|m|in|yd|deg)(?![A-Za-z0-9_])|["%″”])/y;
const MIXED_APART = /(\d+) +(\d+)\/(\d+)(?= (?:cm|mm|in|yd|deg)(?![A-Za-z0-9_]))/y;
const PLAIN = /(\d+)\/(\d+)|\d+(?:\.\d+)?/y;
const DECIMAL_COMMA = /\d+,\d+(?=(?: ?(?:cm|mm|yd|deg)|m|in)(?![A-Za-z0-9_])|%)/y;
const BARE_DECIMAL_COMMA = /\d+,\d+(?![\d.,)])/y;
const WIDE_NAME = /\p{L}[\p{L}\p{M}\p{Nd}_]*(?:-\p{L}[\p{L}\p{M}\p{Nd}_]*)*/uy;
const SPACE = /\s|[\u200b\u2060\ufeff]/;
const CONTROL = /[\u0000-\u001f]/;

function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}
function isLetter(code: number): boolean {
  return (code >= 97 && code <= 122) || (code >= 65 && code <= 90);
}

/** Walks over one line. */
class Cursor {
  readonly tokens: Token[] = [];
  comment = -1;
  private depth = 0;

  constructor(
    private readonly text: string,
    private at: number,
    private readonly to: number,
  ) {}

  /** Reads one token; false at the line's end. */
  step(): boolean {
    if (this.at >= this.to) return false;
    const code = this.text.charCodeAt(this.at);
    if (code === 32 || code === 9) return this.at++ >= 0;
    if (isLetter(code)) return this.word();
    if (isDigit(code)) return this.number();
    if (code === 35) return this.remark();
    return this.sign(this.text[this.at]!, code);
  }

  leaveRest(): void {
    if (this.tokens.length >= MOST_TOKENS && this.at < this.to) this.push(t.Odd, this.to - this.at);
  }

  private push(type: TokenType, length: number): Token {
    const image = own(this.text.slice(this.at, this.at + length));
    const token = new Token(type, image, this.at, this.at + length - 1);
    this.tokens.push(token);
    this.at += length;
    return token;
  }

  private match(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.text);
    return found && this.at + found[0].length <= this.to ? found : undefined;
  }

  private remark(): false {
    this.comment = this.at;
    this.at = this.to;
    return false;
  }

  /** A word of plain letters; anything else goes the slow way. */
  private word(): boolean {
    const { text, to } = this;
    let i = this.at + 1;
    for (; i < to; i++) {
      const code = text.charCodeAt(i);
      if (isLetter(code) || isDigit(code)) continue;
      if (code === 45 && i + 1 < to && isLetter(text.charCodeAt(i + 1))) continue;
      if (code === 95 || code > 126 || (code === 45 && text.charCodeAt(i + 1) > 126)) return this.wideWord();
      break;
    }
    const image = text.slice(this.at, i);
    const call = text.charCodeAt(i) === 40 && i < to && isFunction(image);
    this.push(call ? t.Func : typeOfWord(image), i - this.at);
    return true;
  }

  private wideWord(): boolean {
    const found = this.match(WIDE_NAME);
    if (!found) return this.odd();
    const text = own(found[0].normalize('NFC'));
    const mended = text.includes('_') ? withoutUnderscores(text) : text;
    const token = this.push(typeOfWord(mended), found[0].length);
    token.text = mended;
    if (mended !== text) token.slip = { code: 'name-with-underscore', written: found[0], meant: mended };
    return true;
  }

  /** The sign after its digits tells what a number can be besides a plain one. */
  private number(): boolean {
    let end = this.at + 1;
    while (isDigit(this.text.charCodeAt(end))) end++;
    const sign = this.text[end] ?? '';
    const known =
      sign === ',' ? this.decimalComma() : sign === ' ' ? this.mixed() : '-./:'.includes(sign) && this.date();
    return known || this.plain();
  }

  private date(): boolean {
    const { text, at } = this;
    if (text.charCodeAt(at + 4) === 45 && this.match(DATE)) return this.push(t.Date, 10) !== undefined;
    const turned = this.match(DATE_TURNED);
    if (turned) {
      const [written, one, , two, year] = turned;
      const americanOrder = Number(two) > 12;
      const [day, month] = americanOrder ? [two!, one!] : [one!, two!];
      const token = this.push(t.Date, written.length);
      token.text = `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
      token.slip = { code: 'date-order', written, meant: token.text };
      return true;
    }
    const ratio = this.match(RATIO);
    return ratio ? this.push(t.Ratio, ratio[0].length) !== undefined : false;
  }

  /** `9,5cm`, and `9,5` where no bracket makes a list of it. */
  private decimalComma(): boolean {
    const found =
      this.match(DECIMAL_COMMA) ?? (this.depth === 0 ? this.match(BARE_DECIMAL_COMMA) : undefined);
    if (!found) return false;
    const token = this.push(t.Number, found[0].length);
    token.amount = Number(found[0].replace(',', '.'));
    token.slip = { code: 'comma-in-number', written: found[0], meant: found[0].replace(',', '.') };
    return this.unitOf(token);
  }

  private mixed(): boolean {
    const found = this.match(MIXED) ?? this.match(MIXED_APART);
    if (!found) return false;
    const token = this.push(t.Number, found[0].length);
    token.amount = Number(found[1]) + Number(found[2]) / Number(found[3]);
    token.fractional = true;
    return this.unitOf(token);
  }

  private plain(): boolean {
    const found = this.match(PLAIN)!;
    const fraction = found[1] !== undefined;
    const token = this.push(fraction ? t.Fraction : t.Number, found[0].length);
    token.amount = fraction ? Number(found[1]) / Number(found[2]) : Number(found[0]);
    token.fractional = fraction;
    const vulgar = VULGAR[this.text[this.at] ?? ''];
    if (vulgar !== undefined && this.at < this.to && !fraction) this.vulgar(token, vulgar);
    return this.unitOf(token);
  }

  /** `2½in`: the little fraction belongs to the number. */
  private vulgar(token: Token, amount: number): void {
    const sign = this.text[this.at]!;
    token.slip = {
      code: 'unusual-sign',
      written: token.image + sign,
      meant: `${token.image} ${VULGAR_WRITTEN[sign]}`,
    };
    token.amount = token.amount! + amount;
    token.fractional = true;
    this.grow(token, 1);
  }

  private grow(token: Token, by: number): void {
    this.at += by;
    token.endOffset += by;
    token.image = own(this.text.slice(token.startOffset, this.at));
    token.text = token.image;
  }

  /** Takes the unit that touches a number, an inch mark among them. */
  private unitOf(token: Token): boolean {
    const sign = this.at < this.to ? this.text[this.at]! : '';
    if (sign === '%') return this.withUnit(token, '%', 1);
    const inches = inchMark(this.text, this.at, this.to);
    if (inches > 0) {
      const meant = (token.slip?.meant ?? token.image) + 'in';
      const written = token.image + this.text.slice(this.at, this.at + inches);
      token.slip = { code: 'unusual-sign', written, meant };
      return this.withUnit(token, 'in', inches);
    }
    const letters = unitLetters(this.text, this.at, this.to) ?? feetMark(this.text, this.at, this.to);
    if (letters === undefined) return true;
    if (isUnit(letters)) return this.withUnit(token, letters as Unit, letters.length);
    const number = token.slip?.meant ?? token.image;
    this.grow(token, letters.length);
    token.tokenType = t.Length;
    token.tokenTypeIdx = t.Length.tokenTypeIdx!;
    const meant = unitMeant(number, token.amount!, letters);
    token.amount = meant?.amount ?? token.amount;
    token.unit = meant?.unit ?? 'cm';
    token.slip = { code: 'unknown-unit', written: token.image, meant: meant?.text ?? '' };
    return true;
  }

  private withUnit(token: Token, unit: Unit, length: number): boolean {
    const slip = token.slip;
    this.grow(token, length);
    token.unit = unit;
    token.tokenType = t.Length;
    token.tokenTypeIdx = t.Length.tokenTypeIdx!;
    if (slip && !slip.meant.endsWith(unit)) {
      token.slip = { code: slip.code, written: token.image, meant: slip.meant + unit };
    }
    return true;
  }

  private sign(char: string, code: number): boolean {
    const simple = SIMPLE[char];
    if (simple) {
      if (char === '(') this.depth++;
      if (char === ')') this.depth--;
      return this.push(simple, 1) !== undefined;
    }
    if (char === '"') return this.quoted('"');
    if (char === '=' || char === '<' || char === '>' || char === ':' || char === '!')
      return this.comparison(char);
    if (char === '.') return this.dots();
    if (code > 126 && SPACE.test(char)) return this.at++ >= 0;
    const unusual = UNUSUAL[char];
    if (unusual) return this.unusual(char, unusual);
    if (QUOTES[char]) return this.quoted(QUOTES[char]);
    if (VULGAR[char] !== undefined) return this.loneVulgar(char);
    if (code > 126) return this.wideWord();
    if (char === ';') return this.push(t.Odd, 1) !== undefined;
    return this.odd();
  }

  private unusual(char: string, [type, meant]: [TokenType, string]): boolean {
    if (type === t.Open) this.depth++;
    if (type === t.Close) this.depth--;
    const token = this.push(type, 1);
    token.slip = { code: 'unusual-sign', written: char, meant };
    return true;
  }

  private loneVulgar(char: string): boolean {
    const token = this.push(t.Fraction, 1);
    token.amount = VULGAR[char];
    token.fractional = true;
    token.slip = { code: 'unusual-sign', written: char, meant: VULGAR_WRITTEN[char]! };
    return this.unitOf(token);
  }

  private comparison(char: string): boolean {
    const next = this.text[this.at + 1];
    if (char === '=') {
      if (next !== '=') return this.push(t.Equals, 1) !== undefined;
      return this.slipped(t.Equals, 2, '=');
    }
    if (char === ':') return next === '=' ? this.slipped(t.Equals, 2, '=') : this.odd();
    if (char === '!') return this.odd();
    const wide = next === '=';
    const type = char === '<' ? (wide ? t.LessEqual : t.Less) : wide ? t.MoreEqual : t.More;
    return this.push(type, wide ? 2 : 1) !== undefined;
  }

  private slipped(type: TokenType, length: number, meant: string): boolean {
    const token = this.push(type, length);
    token.slip = { code: 'unusual-sign', written: token.image, meant };
    return true;
  }

  /** `..`, `.`, `...` for `..`, and `.5cm` for `0.5cm`. */
  private dots(): boolean {
    const { text, at } = this;
    if (text[at + 1] === '.')
      return text[at + 2] === '.' ? this.slipped(t.Dots, 3, '..') : this.push(t.Dots, 2) !== undefined;
    const before = at > 0 ? text.charCodeAt(at - 1) : 32;
    const follows = isDigit(text.charCodeAt(at + 1)) && (before === 32 || before === 9 || before === 40);
    if (!follows) return this.push(t.Dot, 1) !== undefined;
    let length = 1;
    while (isDigit(text.charCodeAt(at + length))) length++;
    const token = this.push(t.Number, length);
    token.amount = Number('0' + token.image);
    token.slip = { code: 'number-without-zero', written: token.image, meant: '0' + token.image };
    return this.unitOf(token);
  }

  /** A text in quotes; an open one ends where its line does, and gives back the `{` it swallowed. */
  private quoted(closers: string): boolean {
    const { text, at, to } = this;
    let i = at + 1;
    while (i < to && !closers.includes(text[i]!)) i += text[i] === '\\' && i + 1 < to ? 2 : 1;
    if (i < to) {
      const token = this.push(t.Text, i + 1 - at);
      token.text = token.image.slice(1, -1).replace(/\\(["\\])/g, '$1');
      if (text[at] !== '"')
        token.slip = { code: 'unusual-sign', written: token.image, meant: `"${token.text}"` };
      return true;
    }
    if (text[at] !== '"' && text[at] !== '“') return this.odd();
    const rest = text.slice(at, to).replace(/\s*(?:\d{4}-\d{2}-\d{2})?\s*\{?\s*$/, '');
    const token = this.push(t.Text, Math.max(1, rest.length));
    token.text = token.image.slice(1);
    token.slip = { code: 'missing-quote', written: token.image, meant: `"${token.text}"` };
    return true;
  }

  /** Signs without a meaning; a run of them is one token, so that a file of noise stays small. */
  private odd(): boolean {
    const { text, at, to } = this;
    let length = isHighSurrogate(text.charCodeAt(at)) ? 2 : 1;
    while (at + length < to && text[at + length] === text[at]) length++;
    while (at + length < to && CONTROL.test(text[at]!) && CONTROL.test(text[at + length]!)) length++;
    this.push(t.Odd, Math.min(length, to - at));
    return true;
  }
}

const isHighSurrogate = (code: number): boolean => code >= 0xd800 && code <= 0xdbff;

/** `hip_cf` to `hip-cf`; before a digit the underscore just goes, because a hyphen there would be a minus. */
export function withoutUnderscores(name: string): string {
  return name
    .replace(/_+(?=\p{L})/gu, '-')
    .replace(/_+/g, '')
    .replace(/-+/g, '-');
}
