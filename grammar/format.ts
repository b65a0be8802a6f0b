/**
 * The canonical layout: two spaces a level, one space between words, one statement a line, `then` in front of its line.
 * Only the space between words changes; comments stay, and so do the author's line breaks after commas and operators.
 * A statement that can't be read keeps its words as they stand, and a block whose braces do not agree is left alone.
 */
import { parse } from './blocks';
import { lineEnd, readLine, type Line } from './lexer';
import { unaryMinuses } from './minus';
import { remarksOf } from './remarks';
import type { SourceFile, Statement, TopLevel } from './syntax';
import { lineStart, tokensOf } from './text-tokens';
import * as t from './tokens';
import { W, type Token } from './tokens';

/** A replacement in the text. */
export interface TextEdit {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/**
 * The text in canonical layout. Where braces do not agree, moving lines could change what they mean: then the text is
 * given back as it is, because a formatter that repairs is not to be trusted.
 */
export function format(text: string, file: SourceFile = parse(text)): string {
  const formatted = new Layout(file).whole();
  const part = stretchChanged(text, formatted, file.items);
  if (part === undefined) return text;
  return meaning(part.items) === meaning(parse(part.now).items) ? formatted : text;
}

/** Whether two files say the same, wherever it stands. */
export function sameMeaning(one: SourceFile, other: SourceFile): boolean {
  return meaning(one.items) === meaning(other.items);
}

/** What of a text is another after it was laid out, in whole statements with one more on either side. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly now: string;
  readonly items: readonly TopLevel[];
}

/** Undefined where nothing changed. A long text is looked at closely only where it did. */
function stretchChanged(text: string, now: string, items: readonly TopLevel[]): Stretch | undefined {
  if (text === now) return undefined;
  const shorter = Math.min(text.length, now.length);
  let first = 0;
  while (first < shorter && text.charCodeAt(first) === now.charCodeAt(first)) first++;
  let alike = 0;
  while (
    alike < shorter - first &&
    text.charCodeAt(text.length - 1 - alike) === now.charCodeAt(now.length - 1 - alike)
  )
    alike++;
  const last = text.length - alike;
  const at = items.findIndex(({ offset }) => offset >= first);
  const start = (at < 0 ? items.length : at) - 2;
  const after = items.findIndex(({ offset }) => offset > last) + 1;
  const end = after === 0 ? items.length : after;
  const from = start < 1 ? 0 : items[start]!.offset;
  const to = items[end]?.offset ?? text.length;
  const within = items.slice(Math.max(start, 0), end);
  return { from, to, now: now.slice(from, now.length - (text.length - to)), items: within };
}

function meaning(items: readonly TopLevel[]): string {
  const said = ({ inside, node, doc, problems, block }: Statement): unknown => [
    inside,
    node,
    doc,
    problems.map(({ code }) => code),
    block?.map(said),
  ];
  const places = new Set(['at', 'stepAt']);
  return JSON.stringify(
    items.map(({ statement }) => said(statement)),
    (key, value: unknown) => (places.has(key) ? undefined : value),
  );
}

/**
 * What to change for the canonical layout, as replacements of the space between words; with a range, only what lies
 * between its first line and its last.
 */
export function formatEdits(
  text: string,
  range: { from: number; to: number } = { from: 0, to: text.length },
  file: SourceFile = parse(text),
): TextEdit[] {
  const part = stretchChanged(text, format(text, file), file.items);
  if (part === undefined) return [];
  const before = text.slice(part.from, part.to);
  const [old, now] = [words(before), words(part.now)];
  if (old.length !== now.length) return [];
  const first = lineStart(text, range.from);
  const last = lineEnd(text, range.to).to;
  const edits: TextEdit[] = [];
  for (let i = 0; i <= old.length; i++) {
    const from = old[i - 1]?.to ?? 0;
    const to = old[i]?.from ?? before.length;
    const between = part.now.slice(now[i - 1]?.to ?? 0, now[i]?.from ?? part.now.length);
    for (const edit of byLine(part.from + from, before.slice(from, to), between)) {
      if (edit.from >= first && edit.to <= last) edits.push(edit);
    }
  }
  return edits;
}

/**
 * What changes of the space between two words: what ends a line, what lies between lines and what begins a line apart,
 * so that each belongs to its own line.
 */
function byLine(from: number, was: string, becomes: string): TextEdit[] {
  const parts = (space: string) =>
    /^([^\r\n]*)(?:([\r\n][^]*[\r\n]|[\r\n])([^\r\n]*))?$/.exec(space)!.slice(1);
  const [old, now] = [parts(was), parts(becomes)];
  if (old[1] === undefined || now[1] === undefined) {
    return was === becomes ? [] : [{ from, to: from + was.length, text: becomes }];
  }
  let at = from;
  return old.flatMap((part, i) => {
    const edit = { from: at, to: at + part!.length, text: now[i]! };
    at = edit.to;
    return part === edit.text ? [] : [edit];
  });
}

/** Words, signs and comments without the space behind these. */
function words(text: string): { from: number; to: number }[] {
  return tokensOf(text).map(({ kind, from, to }) => {
    return { from, to: kind === 'comment' ? from + text.slice(from, to).trimEnd().length : to };
  });
}

const LEFT_ALONE = new Set(['missing-brace', 'stray-brace', 'too-deep', 'shared-line', 'conflict-mark']);

/** The lines of top-level statements, kept while these stay the same: an edit costs the one that it is in. */
const laidOut = new WeakMap<TopLevel, readonly string[]>();

/** The lines that a statement's own words make, and whether no word was lost on the way. */
interface OwnLines {
  readonly depth: number;
  readonly lines: readonly string[];
  readonly faithful: boolean;
}

/** Kept as well: an edit in a long draft costs the line that it is in. */
const ownLines = new WeakMap<Statement, OwnLines>();

class Layout {
  private readonly text: string;
  private readonly end: string;
  private readonly out: string[] = [];
  /** Whether the statement at hand holds what has to be compared word by word as a whole. */
  private closely = false;
  private lost = false;

  constructor(private readonly file: SourceFile) {
    this.text = file.text;
    this.end = /\r\n|\r|\n/.exec(this.text)?.[0] ?? '\n';
  }

  whole(): string {
    const mark = this.text.startsWith('\ufeff') ? '\ufeff' : '';
    let at = mark.length;
    for (const item of this.file.items) {
      const from = item.offset + item.statement.start;
      this.between(at, from, 0, at > mark.length);
      at = item.offset + item.statement.end;
      this.item(item, from, at);
    }
    this.between(at, this.text.length, 0, at > mark.length, true);
    return mark + this.out.map((line) => line.trimEnd() + this.end).join('');
  }

  /** Lays a top-level statement out; where that would lose a word, it stays as it stands. */
  private item(item: TopLevel, from: number, to: number): void {
    const known = laidOut.get(item);
    if (known !== undefined) return void known.forEach((line) => this.out.push(line));
    const start = this.out.length;
    this.closely = this.lost = false;
    if (readable(item.statement, item.text)) {
      this.statement(item, item.statement, 0);
      this.lost ||= this.closely && !sameWords(this.text.slice(from, to), this.out.slice(start).join('\n'));
      if (this.lost) this.out.length = start;
    }
    if (this.out.length === start) this.verbatim(from, to, 0);
    laidOut.set(item, this.out.slice(start));
  }

  // ------------------------------------------------------------------------------------------------ statements

  private statement(item: TopLevel, statement: Statement, depth: number): void {
    const from = item.offset + statement.start;
    const to = item.offset + statement.end;
    const left = statement.node.kind === 'broken' && !statement.block;
    if (statement.node.kind === 'divide' && statement.block) return this.divide(item, statement, depth);
    const last = left ? to : from + statement.text.length;
    this.closely ||= !statement.block && last < to;
    this.own(from, last, statement, depth);
    if (statement.block) this.block(item, statement, depth);
  }

  /** The words of a statement without its block; one that can't be read keeps them as they stand. */
  private own(from: number, to: number, statement: Statement, depth: number): void {
    let known = ownLines.get(statement);
    if (known?.depth !== depth) {
      const start = this.out.length;
      if (statement.node.kind === 'broken' && !statement.block) this.verbatim(from, to, depth);
      else this.words(from, to, statement, depth);
      const lines = this.out.splice(start);
      known = { depth, lines, faithful: sameWords(this.text.slice(from, to), lines.join('\n')) };
      ownLines.set(statement, known);
    }
    // what a sign is may depend on what stands before it
    const alone = /^\p{L}/u.test(statement.text);
    this.closely ||= !alone;
    this.lost ||= alone && !known.faithful;
    for (const line of known.lines) this.out.push(line);
  }

  /** The lines between the braces, and the closing one. */
  private block(item: TopLevel, statement: Statement, depth: number): void {
    let at = item.offset + statement.start + statement.text.length;
    const end = item.offset + statement.end - 1;
    let first = true;
    for (const inner of statement.block!) {
      const from = item.offset + inner.start;
      // where a sign can't be read, statements may lie over each other
      this.closely ||= from < at;
      this.between(at, from, depth + 1, !first);
      this.statement(item, inner, depth + 1);
      at = item.offset + inner.end;
      first = false;
    }
    // a brace that was left out is not to be put in
    this.closely ||= at > end;
    this.between(at, end, depth + 1, !first, true);
    this.out.push(`${indent(depth)}}`);
  }

  /** `divide … into a { … }, b { … }`: the words of the divide go on after the block of a share. */
  private divide(item: TopLevel, statement: Statement, depth: number): void {
    this.closely = true;
    let at = item.offset + statement.start;
    for (const share of statement.block!) {
      const from = item.offset + share.start;
      this.goOn(at, from + share.text.length, statement, depth, at > item.offset + statement.start);
      this.block(item, share, depth);
      at = item.offset + share.end;
    }
    const end = item.offset + statement.end;
    if (at < end) this.goOn(at, end, statement, depth, true);
  }

  /** Words that begin a line, or that go on in the line of a closing brace. */
  private goOn(from: number, to: number, statement: Statement, depth: number, joined: boolean): void {
    const before = joined ? this.out.pop()! : '';
    const start = this.out.length;
    this.words(from, to, statement, depth);
    if (!joined) return;
    const own = this.out[start]!.trimStart();
    this.out[start] = before + (own.startsWith(',') ? own : ` ${own}`);
  }

  private verbatim(from: number, to: number, depth: number): void {
    const lines = this.text.slice(from, to).split(/\r\n|\r|\n/);
    lines.forEach((line, i) => this.out.push(i === 0 ? indent(depth) + line : line));
  }

  /** The words of a statement on its line or lines. */
  private words(from: number, to: number, statement: Statement, depth: number): void {
    const minuses = unaryMinuses(statement, from, this.text);
    const edge = statement.inside === 'outline';
    let line = indent(depth);
    let previous: Token | undefined;
    for (const { tokens, comment } of linesOf(this.text, from, to)) {
      for (const [i, token] of tokens.entries()) {
        if (previous && breaks(previous, token, i === 0, edge)) {
          this.out.push(line);
          line = indent(depth + 1);
          previous = undefined;
        }
        line += (previous && spaced(previous, token, minuses) ? ' ' : '') + token.image;
        previous = token;
      }
      if (comment === undefined) continue;
      this.out.push(line.trim() === '' ? indent(depth + 1) + comment : `${line} ${comment}`);
      line = indent(depth + 1);
      previous = undefined;
    }
    if (line.trim() !== '') this.out.push(line);
  }

  // ------------------------------------------------------------------------------------------------ between them

  /** Comments and blank lines between two statements; `inner` where a statement came before. */
  private between(from: number, to: number, depth: number, inner: boolean, last = false): void {
    const { remarks, blankAfter, others } = remarksOf(this.text, from, to);
    this.closely ||= others;
    let begun = inner;
    for (const { text, trails, blankBefore } of remarks) {
      if (trails && this.out.length > 0) {
        this.closely ||= this.out.at(-1)!.includes('#');
        this.out[this.out.length - 1] += ` ${text}`;
        continue;
      }
      if (blankBefore && begun) this.out.push('');
      this.out.push(indent(depth) + text);
      begun = true;
    }
    if (blankAfter && begun && !last) this.out.push('');
  }
}

const indent = (depth: number): string => '  '.repeat(depth);

/** Whether the braces of a statement agree, so that moving its lines can't change what they mean. */
function readable(statement: Statement, text: string): boolean {
  if (statement.problems.some(({ code }) => LEFT_ALONE.has(code))) return false;
  if (!statement.block) return true;
  const braced =
    statement.node.kind === 'divide' || (statement.text.endsWith('{') && text[statement.end - 1] === '}');
  return braced && statement.block.every((inner) => readable(inner, text));
}

function sameWords(one: string, other: string): boolean {
  const [a, b] = [words(one), words(other)];
  return (
    a.length === b.length &&
    a.every(({ from, to }, i) => one.slice(from, to) === other.slice(b[i]!.from, b[i]!.to))
  );
}

/** The lines of a stretch of text, cut to it, with their comments. */
function* linesOf(
  text: string,
  from: number,
  to: number,
): Generator<{ tokens: Token[]; comment: string | undefined }> {
  const part = text.slice(0, to);
  for (let at = from; at < to;) {
    const line: Line = readLine(part, at);
    const comment = line.comment < 0 ? undefined : part.slice(line.comment, line.to).trimEnd();
    yield { tokens: [...line.tokens], comment };
    at = line.next;
  }
}

const OPERATORS = new Set([
  t.Plus,
  t.Minus,
  t.Times,
  t.Over,
  t.Equals,
  t.Less,
  t.LessEqual,
  t.More,
  t.MoreEqual,
  t.Dots,
]);

/** Whether a line ends between two words: `then` leads in an outline; elsewhere where the author broke the line. */
function breaks(before: Token, token: Token, newLine: boolean, edge: boolean): boolean {
  if (token.tokenType === W.then && edge) return true;
  if (!newLine) return false;
  if (token.tokenType === W.then) return true;
  return before.tokenType === t.Comma || OPERATORS.has(before.tokenType) || OPERATORS.has(token.tokenType);
}

function spaced(before: Token, token: Token, minuses: ReadonlySet<number>): boolean {
  if (before.tokenType === t.Open || before.tokenType === t.Dot) return false;
  if (before.tokenType === t.Func && token.tokenType === t.Open) return false;
  if (before.tokenType === t.Minus && minuses.has(before.startOffset)) return false;
  return token.tokenType !== t.Comma && token.tokenType !== t.Close && token.tokenType !== t.Dot;
}
