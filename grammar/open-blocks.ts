/** The blocks that are open while a text is cut: how one opens, and how one closes whose brace is missing. */
import { begins, ownedKind } from './heads';
import type { Line } from './lexer';
import { own } from './own';
import { PROBLEM_WEIGHT, type Frame, type Lines, type Mended, type Raw } from './raw';
import * as t from './tokens';
import { W, type Token } from './tokens';
import type { BlockKind } from './words';

const GUESSED: readonly BlockKind[] = [
  'draft', 'piece', 'outline', 'work', 'body', 'sizes', 'cloth', 'fitting', 'trace',
]; // prettier-ignore

export abstract class OpenBlocks {
  protected readonly text: string;
  protected readonly out: Raw[] = [];
  protected readonly stack: Frame[] = [];
  protected current: Raw | undefined;
  /** The last header that still lacks its block. */
  protected waiting: { raw: Raw; indent: number } | undefined;
  protected brackets = 0;
  protected comments: Line[] = [];
  /** One past the last line taken. */
  protected done: number;
  /** One past the last character looked at. */
  reach = 0;
  /** How much was found so far, problems counting more than once. */
  protected weight = 0;

  constructor(
    protected readonly lines: Lines,
    protected readonly start: number,
  ) {
    this.text = lines.text;
    this.done = start;
  }

  protected get kind(): BlockKind {
    return this.stack[this.stack.length - 1]?.kind ?? 'file';
  }

  protected owned(raw: Raw): BlockKind | undefined {
    return raw.kind === 'share' ? 'work' : ownedKind(raw.tokens, raw.kind);
  }

  protected begin(token: Token, leads: boolean): Raw {
    this.weight++;
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
  protected documentation(token: Token): { doc: string; from: number } | undefined {
    if (this.comments.length === 0) return undefined;
    const lines = this.comments.map((line) =>
      this.text
        .slice(line.comment + 1, line.to)
        .replace(/^[ \t]/, '')
        .trimEnd(),
    );
    const from = this.stack.length === 0 ? this.comments[0]!.comment : token.startOffset;
    return { doc: own(lines.join('\n')), from };
  }

  /** A share of a divide is a statement of its own in the divide's block. */
  protected share(divide: Raw, brace: Token): Raw {
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

  protected mend(raw: Raw, mended: Mended): void {
    this.weight += PROBLEM_WEIGHT;
    raw.mended.push(mended);
  }

  protected noteStray(raw: Raw, token: Token): void {
    const { startOffset: from, end: to } = token;
    this.mend(raw, { code: 'stray-brace', from, to, edit: { from, to, text: '' } });
  }

  protected push(frame: Omit<Frame, 'items' | 'indented'>): void {
    const items: Raw[] = [];
    frame.owner.block = items;
    this.stack.push({ ...frame, items, indented: undefined });
    this.current = undefined;
    this.waiting = undefined;
    this.brackets = 0;
  }

  protected openWaiting(): void {
    const { raw, indent } = this.waiting!;
    const [from, to] = [raw.from, raw.to];
    this.mend(raw, { code: 'missing-brace', from, to, edit: { from: to, to, text: ' {' } });
    this.push({ owner: raw, kind: this.owned(raw)!, indent, open: undefined, line: raw.from });
  }

  /** What a block under an unknown head holds, by its header and the look of its first lines. */
  protected guess(header: Raw, from: number): BlockKind {
    const words = header.tokens.map((token) => token.text);
    if (words.includes('worked')) return 'work';
    if (words.includes('of')) return 'piece';
    const scores = GUESSED.map(() => 0);
    let indent = -1;
    let seen = 0;
    let depth = 0;
    for (const line of this.ahead(from)) {
      if (indent < 0) indent = this.lines.indent(line);
      if (line.tokens[0]!.tokenType === t.CloseBrace || ++seen > 8) break;
      const inner = this.lines.indent(line) > indent;
      if (!inner) GUESSED.forEach((kind, i) => (scores[i]! += begins(kind, line.tokens) ? 1 : 0));
      // what follows the block's end is none of it
      for (const { tokenType } of line.tokens) {
        if (tokenType === t.OpenBrace) depth++;
        else if (tokenType === t.CloseBrace) depth--;
        if (depth < 0) break;
      }
      if (depth < 0) break;
    }
    return GUESSED[scores.indexOf(Math.max(...scores))]!;
  }

  /** Closes a block whose `}` is missing. */
  protected closeTop(): void {
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
    this.mend(owner, { code: 'missing-brace', from, to, edit });
  }

  /** Leaves the blocks as far as they came, where no more is read. */
  protected leaveAll(): void {
    for (let frame = this.stack.pop(); frame; frame = this.stack.pop())
      frame.owner.end = Math.max(frame.owner.end, frame.items.at(-1)?.end ?? 0);
  }

  protected closeAll(): void {
    while (this.stack.length > 0) this.closeTop();
  }

  // ---------------------------------------------------------------------------- where braces do not agree

  protected strayBrace(token: Token, i: number): void {
    const raw = this.begin(token, i === 0);
    raw.tokens.push(token);
    this.noteStray(raw, token);
    this.current = undefined;
  }

  /** With braces that do not agree: whether this `}` is meant, and which blocks it closes before its own. */
  protected closesByTrust(i: number, line: Line, indent: number): boolean {
    const frame = this.stack[this.stack.length - 1]!;
    if (i > 0) return frame.line === line.from || this.nextIndent(line) <= frame.indent;
    let own = this.stack.length - 1;
    while (own >= 0 && this.stack[own]!.indent !== indent) own--;
    if (own < 0) own = this.stack.length - 1;
    if (this.goesOnInside(this.stack[own]!, line)) return false;
    while (this.stack.length - 1 > own) this.closeTop();
    return true;
  }

  /** The lines with tokens from here on: each has a say in the cutting, and so has the text's end where it is reached. */
  protected *ahead(offset: number): Generator<Line> {
    for (const line of this.lines.from(offset)) {
      this.reach = Math.max(this.reach, line.next);
      yield line;
    }
    this.reach = Infinity;
  }

  protected nextLine(line: Line): Line | undefined {
    for (const next of this.ahead(line.next)) return next;
    return undefined;
  }

  protected nextIndent(line: Line): number {
    const next = this.nextLine(line);
    return next ? this.lines.indent(next) : -1;
  }

  /** A `}` after which the block's own lines go on, further in than its header. */
  protected goesOnInside(frame: Frame, line: Line): boolean {
    const next = this.nextLine(line);
    if (!next || this.lines.indent(next) <= frame.indent) return false;
    return begins(frame.kind, next.tokens) && !(frame.indent === 0 && this.stack.length > 1);
  }

  /** Closes the blocks that a line stands too far out for; true where none is left. */
  protected closeByIndent(line: Line, indent: number): boolean {
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
  protected closesMistyped(line: Line, indent: number): boolean {
    const frame = this.stack[this.stack.length - 1];
    const [token, more] = line.tokens;
    const alone = more === undefined && token!.tokenType !== t.CloseBrace && token!.tokenType !== t.OpenBrace;
    if (!frame?.indented || !alone || frame.indent !== indent) return false;
    this.stack.pop();
    const { startOffset: from, end: to } = token!;
    frame.owner.end = to;
    this.mend(frame.owner, { code: 'missing-brace', from, to, edit: { from, to, text: '}' } });
    this.current = undefined;
    this.comments = [];
    this.done = line.next;
    return true;
  }
}
