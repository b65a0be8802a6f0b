/**
 * Cuts a text into statements and blocks before any of them is parsed: by heads, braces and, where the braces do not
 * agree, indentation. Nothing is refused here; what was mended is noted on the statement that it concerns.
 *
 * The unit is the *group*: what stands from one fresh start (outside every block, at a line's beginning) to the next.
 * How a group is cut depends on the text up to `reach` and on nothing before its start, so that an edit re-cuts the
 * groups it touches and no other.
 */
import { begins, carriesOn, headsFile, leavesOpen, needsBlock, splitsLine } from './heads';
import type { Line } from './lexer';
import { OpenBlocks } from './open-blocks';
import { MOST_WEIGHT, unread, type Group, type Lines, type Raw } from './raw';
import * as t from './tokens';
import { W, type Token } from './tokens';
import { ruleOf, type BlockKind } from './words';

export { Lines, type Group, type Mended, type Raw } from './raw';

/** Blocks inside blocks beyond this are not opened: no pattern needs more than three. */
const MAX_BLOCKS = 20;
/** How many lines a bracket may stay open over. More would let one lost bracket be looked for through the file. */
const MAX_BRACKET_LINES = 30;

/** Cuts the group that begins at `start`. */
export function cutGroup(lines: Lines, start: number): Group {
  const byBraces = new Cutter(lines, start, false);
  const group = byBraces.cut();
  if (group) return group;
  const byIndent = new Cutter(lines, start, true).cut()!;
  return { ...byIndent, reach: Math.max(byIndent.reach, byBraces.reach) };
}

/** Thrown inside one cutting when the braces of the group turn out not to agree; never leaves `cut`. */
class Unbalanced extends Error {}
const UNBALANCED = new Unbalanced();

/** What a `{` is mistyped as. */
const MISTYPED = new Set([t.CloseBrace, t.Open, t.Close]);

class Cutter extends OpenBlocks {
  /** Where more stands than is read. */
  private rest: Token | undefined;

  /** @param trust braces do not agree: believe the indentation */
  constructor(
    lines: Lines,
    start: number,
    private readonly trust: boolean,
  ) {
    super(lines, start);
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
      this.reach = Math.max(this.reach, line.next);
      if (!this.take(line)) return { items: this.out, next: this.done, reach: this.reach };
      if (this.rest) return this.unfinished(this.rest);
      at = line.next;
    }
    if (this.stack.length > 0) {
      if (!this.trust) throw this.unbalanced(Infinity);
      this.closeAll();
    }
    return { items: this.out, next: this.text.length, reach: Infinity };
  }

  /** The group as far as it was read, and the rest of the text as one piece. */
  private unfinished(rest: Token): Group {
    this.leaveAll();
    this.out.push(unread(rest, this.text));
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
      // a mark of git stands in column 1 wherever it is
      const believed = this.trust && first.tokenType !== t.Conflict;
      if (believed && this.closesMistyped(line, indent)) return true;
      if (believed && first.tokenType !== t.CloseBrace && this.closeByIndent(line, indent)) return false;
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

  private takeTokens(line: Line, indent: number): void {
    const { tokens } = line;
    for (let i = 0; i < tokens.length; i++) {
      const token = tokens[i]!;
      if (this.weight > MOST_WEIGHT) {
        this.rest = token;
        return;
      }
      if (this.meansOpening(token, i, line)) this.openMistyped(token, line, indent);
      else if (token.tokenType === t.CloseBrace) this.closing(token, i, line, indent);
      else if (token.tokenType === t.OpenBrace && this.opens(token, i === tokens.length - 1, line, indent))
        continue;
      else if (token.image === ';' && token.tokenType === t.Odd && this.semicolon(token, i, line)) continue;
      else this.add(token, i, line, indent);
    }
  }

  private add(token: Token, i: number, line: Line, indent: number): void {
    if (!this.current || (i > 0 && splitsLine(this.kind, line.tokens, i))) {
      const shared = this.current !== undefined;
      this.current = this.begin(token, i === 0);
      this.brackets = 0;
      if (shared) this.noteSharedLine(token);
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

  private noteSharedLine(token: Token): void {
    const { startOffset: from, end: to } = token;
    this.mend(this.current!, { code: 'shared-line', from, to, edit: { from, to: from, text: '\n' } });
  }

  /** At the line's end it goes; before another statement it parts the two; elsewhere it stays, to be judged there. */
  private semicolon(token: Token, i: number, line: Line): boolean {
    const last = i === line.tokens.length - 1;
    if (!this.current || !(last || begins(this.kind, line.tokens, i + 1))) return false;
    const { startOffset: from, end: to } = token;
    const text = last ? '' : '\n';
    this.mend(this.current, { code: 'semicolon', from, to, edit: { from, to, text } });
    this.current = undefined;
    return true;
  }

  /** Opens a block at a `{`, or leaves the brace to the statement. */
  private opens(token: Token, last: boolean, line: Line, indent: number): boolean {
    const raw = this.current ?? this.begin(token, false);
    if (raw.tokens.length === 0) raw.tokens.push(token);
    if (this.stack.length >= MAX_BLOCKS) {
      this.mend(raw, { code: 'too-deep', from: token.startOffset, to: token.end });
      return true;
    }
    const owned = this.owned(raw);
    if (!last && !owned) return false;
    raw.to = raw.end = token.end;
    const isShare = raw.tokens[0]?.tokenType === W.divide && owned !== undefined;
    const owner = isShare ? this.share(raw, token) : raw;
    if (!owned && this.isStatement(raw)) this.noteStray(owner, token);
    const kind = owned ?? this.guess(raw, line.next);
    this.push({ owner, kind, indent, open: token, line: line.from });
    return true;
  }

  /** Whether a statement without a block is known to be one; an unknown head may be a misspelt header. */
  private isStatement(raw: Raw): boolean {
    const [head] = raw.tokens;
    if (head!.tokenType === t.OpenBrace || raw.kind === 'share') return true;
    return ruleOf(raw.kind, head!.text) !== undefined || begins(raw.kind, raw.tokens);
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
    this.mend(owner, { code: 'missing-brace', from, to, edit: { from, to, text: '{' } });
    this.push({ owner, kind: this.owned(owner)!, indent, open: token, line: line.from });
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

  private unbalanced(reach: number): Unbalanced {
    this.reach = Math.max(this.reach, reach);
    return UNBALANCED;
  }

  /** Asks whether the braces agree as far as the next file head; if not, the group is cut again by indentation. */
  private doubt(): void {
    let depth = 0;
    let first = true;
    for (const line of this.ahead(this.start)) {
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
