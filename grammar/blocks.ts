/** Text to tree: the whole file, and the parts that an edit touched. */
import { readRaw } from './reading';
import { cutGroup, type Group, type Raw } from './skeleton';
import type { SourceFile, Statement, TopLevel } from './syntax';

/** A replacement of `from..to` of the file's text by `text`. */
export interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

export interface Edited {
  readonly file: SourceFile;
  /** Top-level statements that are new or whose text or block changed, in file order. */
  readonly changed: readonly TopLevel[];
  /** Those of the file before that are no more, `changed` ones in their earlier form among them. */
  readonly removed: readonly TopLevel[];
}

/** What is kept of a group to know whether an edit concerns it; offsets are the file's. */
interface Kept {
  from: number;
  reach: number;
  readonly items: readonly TopLevel[];
}

const groupsOf = new WeakMap<SourceFile, Kept[]>();
/** The kind of the block a statement was read in; only for those that its own text and that kind decide alone. */
const kindOf = new WeakMap<Statement, string>();
/** Top-level statements with nothing mended in them: their text alone decides their tree. */
const plain = new WeakSet<TopLevel>();

/** Parses a whole text. Never throws, whatever the text is. */
export function parse(text: string): SourceFile {
  const groups: Kept[] = [];
  const fresh = new Builder(text);
  for (let at = 0; at < text.length;) {
    const group = cutGroup(text, at);
    groups.push({ from: at, reach: group.reach, items: group.items.map((raw) => fresh.topLevel(raw)) });
    at = group.next;
  }
  return fileOf(text, groups);
}

/** The tree of the edited text: deeply equal to `parse` of it, and the same objects wherever nothing changed. */
export function edit(file: SourceFile, change: Change): Edited {
  const groups = groupsOf.get(file);
  const text = file.text.slice(0, change.from) + change.text + file.text.slice(change.to);
  const first = groups?.findIndex((group) => group.reach >= change.from) ?? -1;
  if (!groups || first < 0) return parsedAnew(file, text);
  const delta = change.text.length - (change.to - change.from);
  const { cut, from, next } = recut(text, groups, first, change.to, delta);
  const old = groups.slice(first, next);
  const builder = new Builder(text, old);
  const renewed = cut.map((group, i) => ({
    from: from[i]!,
    reach: group.reach,
    items: group.items.map((raw) => builder.topLevel(raw)),
  }));
  const rest = groups.slice(next);
  if (delta !== 0) for (const group of rest) move(group, delta);
  const edited = fileOf(text, [...groups.slice(0, first), ...renewed, ...rest]);
  return { file: edited, ...replaced(itemsOf(old), itemsOf(renewed)) };
}

/** Cuts from the first group concerned until the text runs on as it was cut before. */
function recut(text: string, groups: readonly Kept[], first: number, oldTo: number, delta: number) {
  const cut: Group[] = [];
  const from: number[] = [];
  let next = first;
  let at = groups[first]!.from;
  while (at < text.length) {
    while (next < groups.length && (groups[next]!.from < oldTo || groups[next]!.from + delta < at)) next++;
    if (cut.length > 0 && next < groups.length && groups[next]!.from + delta === at)
      return { cut, from, next };
    from.push(at);
    cut.push(cutGroup(text, at));
    at = cut[cut.length - 1]!.next;
  }
  return { cut, from, next: groups.length };
}

function move(group: Kept, delta: number): void {
  group.from += delta;
  group.reach += delta;
  for (const item of group.items) item.offset += delta;
}

function itemsOf(groups: readonly Kept[]): TopLevel[] {
  return groups.flatMap((group) => group.items);
}

function replaced(
  before: readonly TopLevel[],
  after: readonly TopLevel[],
): Pick<Edited, 'changed' | 'removed'> {
  const [old, now] = [new Set(before), new Set(after)];
  return {
    changed: after.filter((item) => !old.has(item)),
    removed: before.filter((item) => !now.has(item)),
  };
}

function fileOf(text: string, groups: Kept[]): SourceFile {
  const file: SourceFile = { text, items: itemsOf(groups) };
  groupsOf.set(file, groups);
  return file;
}

/** Makes statements of cut ones, and finds those that stood in the file before. */
class Builder {
  private readonly statements = new Map<string, Statement[]>();
  private readonly items = new Map<string, TopLevel[]>();

  constructor(
    private readonly text: string,
    old: readonly Kept[] = [],
  ) {
    for (const item of itemsOf(old)) {
      if (plain.has(item)) put(this.items, item.text, item);
      this.remember(item.statement);
    }
  }

  private remember(statement: Statement): void {
    const kind = kindOf.get(statement);
    if (kind !== undefined) put(this.statements, keyOf(kind, statement.text, statement.doc), statement);
    for (const child of statement.block ?? []) this.remember(child);
  }

  topLevel(raw: Raw): TopLevel {
    const text = this.text.slice(raw.docFrom, raw.end);
    const untouched = isPlain(raw);
    const known = untouched ? this.items.get(text)?.shift() : undefined;
    if (known) {
      known.offset = raw.docFrom;
      return known;
    }
    const item: TopLevel = { offset: raw.docFrom, text, statement: this.statement(raw, raw.docFrom) };
    if (untouched) plain.add(item);
    return item;
  }

  private statement(raw: Raw, offset: number): Statement {
    const own = this.text.slice(raw.from, raw.to);
    const [start, end] = [raw.from - offset, raw.end - offset];
    const block = raw.block?.map((inner) => this.statement(inner, offset));
    const decided = raw.mended.length === 0;
    const known = decided ? this.statements.get(keyOf(raw.kind, own, raw.doc))?.shift() : undefined;
    if (known && !block && !known.block) {
      known.start = start;
      known.end = end;
      return known;
    }
    const { node, problems } = known ?? readRaw(raw, this.text);
    const statement: Statement = {
      start,
      text: own,
      node,
      problems,
      doc: raw.doc,
      ...(block && { block }),
      end,
    };
    if (decided) kindOf.set(statement, raw.kind);
    return statement;
  }
}

function isPlain(raw: Raw): boolean {
  return raw.mended.length === 0 && (raw.block?.every(isPlain) ?? true);
}

function put<T>(map: Map<string, T[]>, key: string, value: T): void {
  const list = map.get(key);
  if (list) list.push(value);
  else map.set(key, [value]);
}

function keyOf(kind: string, text: string, doc: string): string {
  return `${kind}\n${text}\n${doc}`;
}

function parsedAnew(file: SourceFile, text: string): Edited {
  const now = parse(text);
  return { file: now, ...replaced(file.items, now.items) };
}
