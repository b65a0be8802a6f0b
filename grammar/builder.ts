/** Makes statements of cut ones, and finds those that stood in the file before. */
import { own } from './own';
import { leftUnread, readRaw, type Read } from './reading';
import { MOST_WEIGHT, PROBLEM_WEIGHT, type Raw } from './raw';
import type { Statement, TopLevel } from './syntax';
import { Conflict } from './tokens';

/** Top-level statements with nothing mended in them: their text, and whether it is a mark of git, decides their tree. */
const plain = new WeakSet<TopLevel>();

/** What the cutting itself mends depends on more than the statement's own text. */
const CUT_MENDED = new Set(['missing-brace', 'stray-brace', 'semicolon', 'shared-line', 'too-deep']);

export class Builder {
  private readonly statements = new Map<string, Statement[]>();
  private readonly broken = new Map<string, Read>();
  private readonly kept = new Map<Raw, TopLevel>();
  /** What was read so far: statements, and the problems of those that have any. */
  weight = 0;
  private saidUnread = false;

  /** @param base where `text` begins in the file */
  constructor(
    private readonly text: string,
    private readonly base: number,
  ) {}

  /**
   * Offers what stood in the file before. Whole top-level statements are kept first: a statement of one that is kept
   * may not be used a second time.
   */
  reuse(old: readonly TopLevel[], now: readonly Raw[]): void {
    const byText = new Map<string, TopLevel[]>();
    for (const item of old) if (plain.has(item)) put(byText, topKey(isMark(item.statement), item.text), item);
    const taken = new Set<TopLevel>();
    for (const raw of now) {
      const key = topKey(marks(raw), this.text.slice(raw.docFrom, raw.end));
      const item = isPlain(raw) ? byText.get(key)?.shift() : undefined;
      if (!item) continue;
      this.kept.set(raw, item);
      taken.add(item);
    }
    for (const item of old) if (!taken.has(item)) this.remember(item.statement);
  }

  private remember(statement: Statement): void {
    const { inside, text, problems, block } = statement;
    const asWritten = !problems.some((problem) => CUT_MENDED.has(problem.code));
    if (asWritten) put(this.statements, keyOf(inside, isMark(statement), text, block), statement);
    for (const child of block ?? []) this.remember(child);
  }

  topLevel(raw: Raw): TopLevel {
    const known = this.kept.get(raw);
    if (known) {
      this.weight += weightOf(known.statement);
      known.offset = this.base + raw.docFrom;
      return known;
    }
    const text = own(this.text.slice(raw.docFrom, raw.end));
    const item: TopLevel = {
      offset: this.base + raw.docFrom,
      text,
      statement: this.statement(raw, raw.docFrom),
    };
    if (isPlain(raw)) plain.add(item);
    return item;
  }

  /** A broken statement's reading is remembered: working out what was meant takes many attempts. */
  private read(raw: Raw, written: string): Read {
    if (raw.mended.length > 0 || this.broken.size === 0) return this.readAnew(raw, written);
    return this.broken.get(keyOf(raw.kind, marks(raw), written, raw.block)) ?? this.readAnew(raw, written);
  }

  private readAnew(raw: Raw, written: string): Read {
    const read = readRaw(raw, this.text);
    if (read.node.kind !== 'broken' || raw.mended.length > 0) return read;
    if (this.broken.size < REMEMBERED) this.broken.set(keyOf(raw.kind, marks(raw), written, raw.block), read);
    return read;
  }

  private weigh(problems: readonly unknown[]): void {
    if (problems.length > 0) this.weight += PROBLEM_WEIGHT;
  }

  /** The first that is left unread says so; the others say nothing. */
  private unread(raw: Raw, offset: number, block: readonly Statement[] | undefined): Statement {
    const { node, problems } = leftUnread(raw, !this.saidUnread);
    this.saidUnread = true;
    const text = own(this.text.slice(raw.from, raw.to));
    const [start, end] = [raw.from - offset, raw.end - offset];
    return { start, text, node, problems, doc: raw.doc, inside: raw.kind, end, ...(block && { block }) };
  }

  private statement(raw: Raw, offset: number): Statement {
    const written = own(this.text.slice(raw.from, raw.to));
    const [start, end] = [raw.from - offset, raw.end - offset];
    const block = raw.block?.map((inner) => this.statement(inner, offset));
    const known = this.statements.size === 0 ? undefined : this.earlier(raw, written);
    if (raw.unread || this.weight > MOST_WEIGHT) return this.unread(raw, offset, block);
    this.weight++;
    if (known && sameLines(known.block, block)) {
      this.weigh(known.problems);
      known.start = start;
      known.end = end;
      known.doc = raw.doc;
      return known;
    }
    const { node, problems } = known ?? this.read(raw, written);
    this.weigh(problems);
    const { doc, kind: inside } = raw;
    return block
      ? { start, text: written, node, problems, doc, inside, end, block }
      : { start, text: written, node, problems, doc, inside, end };
  }

  /** A statement of these words that stood in the file before, each given back once. */
  private earlier(raw: Raw, written: string): Statement | undefined {
    if (raw.mended.length > 0) return undefined;
    return this.statements.get(keyOf(raw.kind, marks(raw), written, raw.block))?.shift();
  }
}

/** What a statement with all its lines weighed when it was read. */
function weightOf(statement: Statement): number {
  const alone = 1 + (statement.problems.length > 0 ? PROBLEM_WEIGHT : 0);
  return (statement.block ?? []).reduce((sum, line) => sum + weightOf(line), alone);
}

/** How many broken statements of one text are remembered, so that a text of one mistake over and over stays fast. */
const REMEMBERED = 2000;

function isPlain(raw: Raw): boolean {
  return raw.mended.length === 0 && (raw.block?.every(isPlain) ?? true);
}

/** Whether a block holds the very statements that it held before: then whoever rests on it need not look again. */
const sameLines = (
  before: readonly Statement[] | undefined,
  now: readonly Statement[] | undefined,
): boolean => before?.length === now?.length && (now ?? []).every((line, i) => line === before?.[i]);

function put<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

/** One text may be read otherwise where a block follows it, and is a mark of git in column 1 alone. */
function keyOf(kind: string, mark: boolean, text: string, block: unknown): string {
  return `${kind}\n${block === undefined ? '' : '{'}${mark ? '=' : ''}\n${text}`;
}

const topKey = (mark: boolean, text: string): string => (mark ? `=\n${text}` : text);

const marks = (raw: Raw): boolean => raw.tokens[0]?.tokenType === Conflict;

const isMark = ({ problems }: Statement): boolean => problems.some(({ code }) => code === 'conflict-mark');
