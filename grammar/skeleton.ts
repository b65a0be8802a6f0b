/**
 * Cuts a text into statements and blocks before any of them is parsed: by heads, braces and, where the braces do not
 * agree, indentation. Nothing is refused here; what was mended is noted on the statement that it concerns.
 *
 * The unit is the *group*: what stands from one fresh start (outside every block, at a line's beginning) to the next.
 * How a group is cut depends on the text up to `reach` and on nothing before its start, so that an edit re-cuts the
 * groups it touches and no other.
 */
import { begins, carriesOn, headsFile, leavesOpen, needsBlock, ownedKind, splitsLine } from './heads';
import { readLine, type Line } from './lexer';
import * as t from './tokens';
import { W, type Token } from './tokens';
import type { BlockKind } from './words';

/** What the cutting itself had to mend. */
export interface Mended {
  readonly code: 'missing-brace' | 'stray-brace' | 'semicolon' | 'too-deep';
  readonly from: number;
  readonly to: number;
  readonly edit?: { readonly from: number; readonly to: number; readonly text: string };
}

/** A statement's tokens, not yet parsed. Offsets are the file's. */
export interface Raw {
  readonly kind: BlockKind | 'share';
  readonly tokens: Token[];
  readonly doc: string;
  /** Where its documentation begins, or it itself. */
  readonly docFrom: number;
  readonly from: number;
  /** One past its own text, its opening brace included. */
  to: number;
  /** One past all of it, its block included. */
  end: number;
  block: Raw[] | undefined;
  readonly mended: Mended[];
}

export interface Group {
  readonly items: Raw[];
  /** Where the next group begins. */
  readonly next: number;
  /** One past the last character that had a say in how this group is cut. */
  readonly reach: number;
}

interface Frame {
  readonly owner: Raw;
  readonly kind: BlockKind;
  readonly indent: number;
  readonly open: Token | undefined;
  /** Offset of the line that opened it. */
  readonly line: number;
  readonly items: Raw[];
  /** Whether its lines stand further in than its header; unknown before the first. */
  indented: boolean | undefined;
}

/** Blocks inside blocks beyond this are not opened: no pattern needs more than three. */
const MAX_BLOCKS = 20;
/** How many lines a bracket may stay open over. More would let one lost bracket be looked for through the file. */
const MAX_BRACKET_LINES = 60;

/** Cuts the group that begins at `start`. */
export function cutGroup(text: string, start: number): Group {
  const lines = new Lines(text);
  const byBraces = new Cutter(lines, start, false);
  const group = byBraces.cut();
  if (group) return group;
  const byIndent = new Cutter(lines, start, true).cut()!;
  return { ...byIndent, reach: Math.max(byIndent.reach, byBraces.reach) };
}

/** Thrown inside one cutting when the braces of the group turn out not to agree; never leaves `cut`. */
class Unbalanced extends Error {}

/** The lines of the text, each read once. */
class Lines {
  private readonly known = new Map<number, Line>();
  constructor(readonly text: string) {}

  at(offset: number): Line {
    let line = this.known.get(offset);
    if (!line) this.known.set(offset, (line = readLine(this.text, offset)));
    return line;
  }

  /** The next line with tokens at or after `offset`. */
  *from(offset: number): Generator<Line> {
    for (let at = offset; at < this.text.length;) {
      const line = this.at(at);
      if (line.tokens.length > 0) yield line;
      at = line.next;
    }
  }

  indent(line: Line): number {
    let width = 0;
    for (let i = line.from; i < line.tokens[0]!.startOffset; i++) width += this.text[i] === '\t' ? 4 : 1;
    return width;
  }
}

const GUESSED: readonly BlockKind[] = [
  'draft', 'piece', 'outline', 'work', 'body', 'sizes', 'cloth', 'fitting', 'trace',
]; // prettier-ignore

/** What a `{` is mistyped as. */
const MISTYPED = new Set([t.CloseBrace, t.Open, t.Close]);

class Cutter {
  private readonly text: string;
  private readonly out: Raw[] = [];
  private readonly stack: Frame[] = [];
  private current: Raw | undefined;
  /** The last header that still lacks its block. */
  private waiting: { raw: Raw; indent: number } | undefined;
  private brackets = 0;
  private comments: Line[] = [];
  private done: number;
  reach = 0;

  constructor(
    private readonly lines: Lines,
    private readonly start: number,
    /** Braces do not agree: believe the indentation. */
    private readonly trust: boolean,
  ) {
    this.text = lines.text;
    this.done = start;
  }

  /** The group; undefined where its braces do not agree and were to be believed. */
  cut(): Group | undefined {
    try {
      return this.cutLines();
    } catch (error) {
      if (error instanceof Unbalanced) return undefined;
      throw error;
    }
  }

  private cutLines(): Group {
    let at = this.start;
    while (at < this.text.length) {
      const line = this.lines.at(at);
      if (!this.take(line))
        return { items: this.out, next: this.done, reach: Math.max(this.reach, line.next) };
      at = line.next;
    }
    if (this.stack.length > 0) {
      if (!this.trust) throw this.unbalanced(Infinity);
      this.closeAll();
    }
    return { items: this.out, next: this.text.length, reach: Infinity };
  }

  /** Takes one line; false where it belongs to the next group. */
  private take(line: Line): boolean {
    if (line.tokens.length === 0) return this.takeSilent(line);
    const first = line.tokens[0]!;
    const indent = this.lines.indent(line);
    if (!this.continues(line)) {
      this.current = undefined;
      this.brackets = 0;
      if (this.stack.length === 0 && this.out.length > 0 && !this.opensLate(line, indent)) {
        if (!this.trust && indent > 0 && !begins('file', line.tokens)) this.doubt();
        return false;
      }
      const top = indent === 0 && this.out.length > 0 && headsFile(line.tokens);
      if (top) {
        if (!this.trust) throw this.unbalanced(line.next);
        this.closeAll();
        return false;
      }
      if (this.opensLate(line, indent)) this.openWaiting();
      this.waiting = undefined;
      if (this.trust && this.closesMistyped(line, indent)) return true;
      if (this.trust && first.tokenType !== t.CloseBrace && this.closeByIndent(line, indent)) return false;
    }
    this.takeTokens(line, indent);
    this.comments = [];
    this.done = line.next;
    return true;
  }

  /** A blank line ends a statement; a comment line may be the next one's documentation. */
  private takeSilent(line: Line): boolean {
    if (line.comment >= 0) {
      this.comments.push(line);
      return true;
    }
    this.comments = [];
    this.current = undefined;
    if (this.waiting) return true;
    return this.stack.length > 0 || this.out.length === 0;
  }

  private continues(line: Line): boolean {
    const { current } = this;
    if (!current) return false;
    const first = line.tokens[0]!;
    if (first.tokenType === t.OpenBrace) return this.waiting?.raw === current;
    if (carriesOn(first)) return true;
    if (first.tokenType === t.CloseBrace || begins(this.kind, line.tokens)) return false;
    if (headsFile(line.tokens) && this.lines.indent(line) === 0) return false;
    if (leavesOpen(current.tokens[current.tokens.length - 1])) return true;
    return this.brackets > 0 && this.bracketCloses(line);
  }

  /** Whether the open bracket is closed on the lines from here on, before anything that begins a statement. */
  private bracketCloses(from: Line): boolean {
    let open = this.brackets;
    let at = from.from;
    for (let count = 0; count < MAX_BRACKET_LINES && at < this.text.length; count++) {
      const line = this.lines.at(at);
      this.reach = Math.max(this.reach, line.next);
      at = line.next;
      if (line.tokens.length === 0 && line.comment < 0) return false;
      if (line.tokens.length > 0 && begins(this.kind, line.tokens)) return false;
      for (const token of line.tokens) {
        if (token.tokenType === t.OpenBrace || token.tokenType === t.CloseBrace) return false;
        if (token.tokenType === t.Open) open++;
        if (token.tokenType === t.Close && --open === 0) return true;
      }
    }
    return false;
  }

  private get kind(): BlockKind {
    return this.stack[this.stack.length - 1]?.kind ?? 'file';
  }

  // ---------------------------------------------------------------------------------------------- tokens of a line

  private takeTokens(line: Line, indent: number): void {
    const { tokens } = line;
    for (let i = 0; i < tokens.length; i++) {
      const token = tokens[i]!;
      if (this.meansOpening(token, i, line)) this.openMistyped(token, line, indent);
      else if (token.tokenType === t.CloseBrace) this.closing(token, i, line, indent);
      else if (token.tokenType === t.OpenBrace && this.opens(token, i === tokens.length - 1, line, indent))
        continue;
      else if (token.image === ';' && token.tokenType === t.Odd && this.semicolon(token, i, line)) continue;
      else this.add(token, i, line, indent);
    }
  }

  private add(token: Token, i: number, line: Line, indent: number): void {
    if (!this.current || (i > 0 && splitsLine(line.tokens, i))) {
      this.current = this.begin(token, i === 0);
      this.brackets = 0;
    }
    const raw = this.current;
    raw.tokens.push(token);
    raw.to = raw.end = token.end;
    if (token.tokenType === t.Open) this.brackets++;
    else if (token.tokenType === t.Close && this.brackets > 0) this.brackets--;
    if (
      i === line.tokens.length - 1 &&
      raw.block === undefined &&
      this.owned(raw) &&
      needsBlock(raw.tokens)
    ) {
      this.waiting = { raw, indent };
    }
  }

  private begin(token: Token, leads: boolean): Raw {
    const documented = leads ? this.documentation(token) : undefined;
    const raw: Raw = {
      kind: this.kind,
      tokens: [],
      doc: documented?.doc ?? '',
      docFrom: documented?.from ?? token.startOffset,
      from: token.startOffset,
      to: token.end,
      end: token.end,
      block: undefined,
      mended: [],
    };
    (this.stack[this.stack.length - 1]?.items ?? this.out).push(raw);
    return raw;
  }

  /** The comment lines directly above. */
  private documentation(token: Token): { doc: string; from: number } | undefined {
    if (this.comments.length === 0) return undefined;
    const lines = this.comments.map((line) =>
      this.text
        .slice(line.comment + 1, line.to)
        .replace(/^[ \t]/, '')
        .trimEnd(),
    );
    const from = this.stack.length === 0 ? this.comments[0]!.comment : token.startOffset;
    return { doc: lines.join('\n'), from };
  }

  /** At the line's end it goes; before another statement it parts the two; elsewhere it stays, to be judged there. */
  private semicolon(token: Token, i: number, line: Line): boolean {
    const last = i === line.tokens.length - 1;
    if (!this.current || !(last || begins(this.kind, line.tokens, i + 1))) return false;
    const { startOffset: from, end: to } = token;
    const text = last ? '' : '\n';
    this.current.mended.push({ code: 'semicolon', from, to, edit: { from, to, text } });
    this.current = undefined;
    return true;
  }

  private owned(raw: Raw): BlockKind | undefined {
    return raw.kind === 'share' ? 'work' : ownedKind(raw.tokens, raw.kind);
  }

  // ------------------------------------------------------------------------------------------------ opening blocks

  /** Opens a block at a `{`, or leaves the brace to the statement. */
  private opens(token: Token, last: boolean, line: Line, indent: number): boolean {
    const raw = this.current ?? this.begin(token, false);
    if (raw.tokens.length === 0) raw.tokens.push(token);
    if (this.stack.length >= MAX_BLOCKS) {
      raw.mended.push({ code: 'too-deep', from: token.startOffset, to: token.end });
      return true;
    }
    const owned = this.owned(raw);
    if (!last && !owned) return false;
    raw.to = raw.end = token.end;
    const isShare = raw.tokens[0]?.tokenType === W.divide && owned !== undefined;
    const owner = isShare ? this.share(raw, token) : raw;
    if (!owned) this.noteStray(owner, token);
    const kind = owned ?? this.guess(raw, line.next);
    this.push({ owner, kind, indent, open: token, line: line.from });
    return true;
  }

  /** A header that ends in another bracket than `{`. */
  private meansOpening(token: Token, i: number, line: Line): boolean {
    const { current } = this;
    if (i === 0 || i < line.tokens.length - 1 || !current || current.block || !MISTYPED.has(token.tokenType))
      return false;
    return current.from >= line.from && this.owned(current) !== undefined && needsBlock(current.tokens);
  }

  private openMistyped(token: Token, line: Line, indent: number): void {
    const owner = this.current!;
    const { startOffset: from, end: to } = token;
    owner.to = owner.end = to;
    owner.mended.push({ code: 'missing-brace', from, to, edit: { from, to, text: '{' } });
    this.push({ owner, kind: this.owned(owner)!, indent, open: token, line: line.from });
  }

  private push(frame: Omit<Frame, 'items' | 'indented'>): void {
    const items: Raw[] = [];
    frame.owner.block = items;
    this.stack.push({ ...frame, items, indented: undefined });
    this.current = undefined;
    this.waiting = undefined;
    this.brackets = 0;
  }

  /** A share of a divide is a statement of its own in the divide's block. */
  private share(divide: Raw, brace: Token): Raw {
    let first = divide.tokens.length - 1;
    while (
      first > 0 &&
      divide.tokens[first - 1]!.tokenType !== W.into &&
      divide.tokens[first - 1]!.tokenType !== t.Comma
    )
      first--;
    const tokens = first < divide.tokens.length ? divide.tokens.slice(first) : [brace];
    const from = tokens[0]?.startOffset ?? brace.startOffset;
    const share: Raw = {
      kind: 'share', tokens, doc: '', docFrom: from, from, to: brace.end, end: brace.end, block: undefined, mended: [],
    }; // prettier-ignore
    (divide.block ??= []).push(share);
    return share;
  }

  private noteStray(raw: Raw, token: Token): void {
    const { startOffset: from, end: to } = token;
    raw.mended.push({ code: 'stray-brace', from, to, edit: { from, to, text: '' } });
  }

  /** What a block under an unknown head holds, by its header and the look of its first lines. */
  private guess(header: Raw, from: number): BlockKind {
    const words = header.tokens.map((token) => token.text);
    if (words.includes('worked')) return 'work';
    if (words.includes('of')) return 'piece';
    const scores = GUESSED.map(() => 0);
    let indent = -1;
    let seen = 0;
    for (const line of this.lines.from(from)) {
      this.reach = Math.max(this.reach, line.next);
      if (indent < 0) indent = this.lines.indent(line);
      if (line.tokens[0]!.tokenType === t.CloseBrace || ++seen > 8) break;
      if (this.lines.indent(line) > indent) continue;
      GUESSED.forEach((kind, i) => (scores[i]! += begins(kind, line.tokens) ? 1 : 0));
    }
    return GUESSED[scores.indexOf(Math.max(...scores))]!;
  }

  /** Whether a header that lacks its `{` is followed by what its block would hold. */
  private opensLate(line: Line, indent: number): boolean {
    const { waiting } = this;
    if (!waiting) return false;
    const kind = this.owned(waiting.raw)!;
    const parent = waiting.raw.kind as BlockKind;
    if (indent === 0 && headsFile(line.tokens)) return false;
    if (line.tokens[0]!.tokenType === t.CloseBrace)
      return indent === waiting.indent && this.closesNothing(indent);
    const mine = begins(kind, line.tokens);
    const its = begins(parent, line.tokens);
    return indent > waiting.indent ? mine || !its : mine && !its;
  }

  /** Whether a `}` that far in would close no block that is open. */
  private closesNothing(indent: number): boolean {
    return !this.stack.some((frame) => frame.indent === indent);
  }

  private openWaiting(): void {
    const { raw, indent } = this.waiting!;
    const [from, to] = [raw.from, raw.to];
    raw.mended.push({ code: 'missing-brace', from, to, edit: { from: to, to, text: ' {' } });
    this.push({ owner: raw, kind: this.owned(raw)!, indent, open: undefined, line: raw.from });
  }

  // ------------------------------------------------------------------------------------------------ closing blocks

  private closing(token: Token, i: number, line: Line, indent: number): void {
    this.brackets = 0;
    const frame = this.stack[this.stack.length - 1];
    if (!frame) return this.strayBrace(token, i);
    if (this.trust) {
      if (!this.closesByTrust(i, line, indent)) return this.noteStray(this.current ?? frame.owner, token);
    } else if (frame.line !== line.from && (i > 0 || indent > frame.indent)) {
      this.doubt();
    }
    const closed = this.stack.pop()!;
    closed.owner.end = token.end;
    const next = line.tokens[i + 1];
    this.current = undefined;
    if (closed.owner.kind === 'share') {
      const siblings = this.stack[this.stack.length - 1]?.items ?? this.out;
      const divide = siblings[siblings.length - 1]!;
      divide.end = token.end;
      if (next?.tokenType === t.Comma) this.current = divide;
    }
  }

  private strayBrace(token: Token, i: number): void {
    const raw = this.begin(token, i === 0);
    raw.tokens.push(token);
    this.noteStray(raw, token);
    this.current = undefined;
  }

  /** With braces that do not agree: whether this `}` is meant, and which blocks it closes before its own. */
  private closesByTrust(i: number, line: Line, indent: number): boolean {
    const frame = this.stack[this.stack.length - 1]!;
    if (i > 0) return frame.line === line.from || this.nextIndent(line) <= frame.indent;
    let own = this.stack.length - 1;
    while (own >= 0 && this.stack[own]!.indent !== indent) own--;
    if (own < 0) own = this.stack.length - 1;
    if (this.goesOnInside(this.stack[own]!, line)) return false;
    while (this.stack.length - 1 > own) this.closeTop();
    return true;
  }

  private nextLine(line: Line): Line | undefined {
    for (const next of this.lines.from(line.next)) {
      this.reach = Math.max(this.reach, next.next);
      return next;
    }
    return undefined;
  }

  private nextIndent(line: Line): number {
    const next = this.nextLine(line);
    return next ? this.lines.indent(next) : -1;
  }

  /** A `}` after which the block's own lines go on, further in than its header. */
  private goesOnInside(frame: Frame, line: Line): boolean {
    const next = this.nextLine(line);
    if (!next || this.lines.indent(next) <= frame.indent) return false;
    return begins(frame.kind, next.tokens) && !(frame.indent === 0 && this.stack.length > 1);
  }

  /** Closes the blocks that a line stands too far out for; true where none is left. */
  private closeByIndent(line: Line, indent: number): boolean {
    const before = this.stack.length;
    for (;;) {
      const frame = this.stack[this.stack.length - 1];
      if (!frame) return before > 0;
      const mine = begins(frame.kind, line.tokens);
      frame.indented ??= indent > frame.indent;
      const parent = this.stack[this.stack.length - 2]?.kind ?? 'file';
      const out = frame.indented ? indent <= frame.indent : !mine && begins(parent, line.tokens);
      if (!out) return false;
      this.closeTop();
    }
  }

  /** With braces that do not agree: one word alone where a block's `}` should stand. */
  private closesMistyped(line: Line, indent: number): boolean {
    const frame = this.stack[this.stack.length - 1];
    const [token, more] = line.tokens;
    const alone = more === undefined && token!.tokenType !== t.CloseBrace && token!.tokenType !== t.OpenBrace;
    if (!frame?.indented || !alone || frame.indent !== indent) return false;
    this.stack.pop();
    const { startOffset: from, end: to } = token!;
    frame.owner.end = to;
    frame.owner.mended.push({ code: 'missing-brace', from, to, edit: { from, to, text: '}' } });
    this.current = undefined;
    this.comments = [];
    this.done = line.next;
    return true;
  }

  private closeAll(): void {
    while (this.stack.length > 0) this.closeTop();
  }

  /** Closes a block whose `}` is missing. */
  private closeTop(): void {
    const frame = this.stack.pop()!;
    const { owner, open } = frame;
    const last = frame.items[frame.items.length - 1];
    owner.end = Math.max(owner.end, last?.end ?? 0);
    const divide = this.stack[this.stack.length - 1]?.items.at(-1) ?? this.out.at(-1);
    if (owner.kind === 'share' && divide) divide.end = Math.max(divide.end, owner.end);
    if (owner.mended.length > 0) return;
    const indent = ' '.repeat(frame.indent);
    const [from, to] = open ? [open.startOffset, open.end] : [owner.from, owner.to];
    const edit = { from: owner.end, to: owner.end, text: `\n${indent}}` };
    owner.mended.push({ code: 'missing-brace', from, to, edit });
  }

  // -------------------------------------------------------------------------------------------------------- doubt

  private unbalanced(reach: number): Unbalanced {
    this.reach = Math.max(this.reach, reach);
    return new Unbalanced();
  }

  /** Asks whether the braces agree as far as the next file head; if not, the group is cut again by indentation. */
  private doubt(): void {
    let depth = 0;
    let first = true;
    for (const line of this.lines.from(this.start)) {
      this.reach = Math.max(this.reach, line.next);
      if (!first && this.lines.indent(line) === 0 && headsFile(line.tokens)) break;
      first = false;
      for (const token of line.tokens) {
        if (token.tokenType === t.OpenBrace) depth++;
        if (token.tokenType === t.CloseBrace && --depth < 0) throw this.unbalanced(line.next);
      }
    }
    if (depth !== 0) throw this.unbalanced(this.reach);
  }
}
