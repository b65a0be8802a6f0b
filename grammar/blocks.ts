/** Text to tree: the whole file, and the parts that an edit touched. */
import { Builder } from './builder';
import { own } from './own';
import { MOST_WEIGHT, unread } from './raw';
import { cutGroup, Lines, type Group } from './skeleton';
import type { SourceFile, TopLevel } from './syntax';

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

/** What is kept of a group, to know whether an edit concerns it; offsets are the file's. */
interface Kept {
  from: number;
  reach: number;
  readonly text: string;
  readonly items: readonly TopLevel[];
  /** How much of what is read at most of a file it takes. */
  readonly weight: number;
}

/**
 * A file as its groups. The whole text is put together only when somebody asks for it: copying half a megabyte costs
 * more than re-reading the block that was edited.
 */
class CutFile implements SourceFile {
  private whole: string | undefined;

  constructor(
    readonly items: readonly TopLevel[],
    private readonly groups: readonly Kept[],
    text?: string,
  ) {
    Object.defineProperty(this, 'groups', { enumerable: false });
    Object.defineProperty(this, 'whole', { enumerable: false, writable: true, value: text });
  }

  get text(): string {
    return (this.whole ??= this.groups.map((group) => group.text).join(''));
  }

  static groupsOf(file: SourceFile): readonly Kept[] {
    return file instanceof CutFile ? file.groups : (parse(file.text) as CutFile).groups;
  }
}

/** Parses a whole text. Never throws, whatever the text is. */
export function parse(text: string): SourceFile {
  const builder = new Builder(text, 0);
  const lines = new Lines(text);
  const groups: Kept[] = [];
  for (let at = 0; at < text.length;) {
    const group = builder.weight > MOST_WEIGHT ? restOf(lines, at) : cutGroup(lines, at);
    groups.push(kept(text, at, group, builder, 0));
    at = group.next;
  }
  return new CutFile(itemsOf(groups), groups, text);
}

/** What is left once enough was read. */
function restOf(lines: Lines, at: number): Group {
  const { text } = lines;
  for (const { tokens } of lines.from(at))
    return { items: [unread(tokens[0]!, text)], next: text.length, reach: Infinity };
  return { items: [], next: text.length, reach: Infinity };
}

function kept(text: string, from: number, group: Group, builder: Builder, base: number): Kept {
  const before = builder.weight;
  const items = group.items.map((raw) => builder.topLevel(raw));
  const weight = builder.weight - before;
  const written = own(text.slice(from, group.next));
  return { from: base + from, reach: base + group.reach, text: written, items, weight };
}

/**
 * The tree of the edited text: deeply equal to `parse` of it, and the same objects wherever nothing changed. The file
 * given must not be used any more: what it shares with the new one has moved.
 */
export function edit(file: SourceFile, change: Change): Edited {
  const groups = CutFile.groupsOf(file);
  const first = groups.findIndex((group) => group.reach >= change.from);
  if (first < 0 || tooMuch(groups)) return parsedAnew(file, change);
  const delta = change.text.length - (change.to - change.from);
  const base = groups[first]!.from;
  const recut = cutAgain(groups, first, change, delta);
  const old = groups.slice(first, recut.next);
  const builder = new Builder(recut.text, base);
  builder.reuse(
    itemsOf(old),
    recut.cut.flatMap(({ group }) => group.items),
  );
  const renewed = recut.cut.map(({ from, group }) => kept(recut.text, from, group, builder, base));
  const rest = groups.slice(recut.next);
  const all = [...groups.slice(0, first), ...renewed, ...rest];
  if (tooMuch(all)) return parsedAnew(file, change);
  if (delta !== 0) for (const group of rest) move(group, delta);
  const now = itemsOf(renewed);
  const items = spliced(file.items, groups, first, old, now);
  const edited = new CutFile(items, all);
  return { file: edited, ...replaced(itemsOf(old), now) };
}

/** Where a file holds more than is read, an edit anywhere may decide what is left out: it is read as a whole. */
function tooMuch(groups: readonly Kept[]): boolean {
  let weight = 0;
  for (const group of groups) weight += group.weight;
  return weight > MOST_WEIGHT;
}

interface Recut {
  /** The text that was cut, from the first group concerned on. */
  readonly text: string;
  readonly cut: readonly { from: number; group: Group }[];
  /** The first old group that stands as it stood. */
  readonly next: number;
}

/** How much is read beyond the edit at first; where a group turns out longer, eight times as much is tried. */
const WINDOW = 4096;

/** Cuts from the first group concerned until the text runs on as it was cut before. */
function cutAgain(groups: readonly Kept[], first: number, change: Change, delta: number): Recut {
  for (let ahead = WINDOW; ; ahead *= 8) {
    const window = windowOf(groups, first, change, ahead);
    const recut = cutWindow(groups, first, change.to, delta, window);
    if (recut) return recut;
  }
}

function windowOf(groups: readonly Kept[], first: number, change: Change, ahead: number) {
  const base = groups[first]!.from;
  let before = '';
  let last = first;
  while (last < groups.length && base + before.length < change.to + ahead) before += groups[last++]!.text;
  const text = before.slice(0, change.from - base) + change.text + before.slice(change.to - base);
  return { text, complete: last === groups.length };
}

/** Undefined where the window is too short to tell. */
function cutWindow(
  groups: readonly Kept[],
  first: number,
  oldTo: number,
  delta: number,
  window: { text: string; complete: boolean },
): Recut | undefined {
  const { text, complete } = window;
  const lines = new Lines(text);
  const shift = delta - groups[first]!.from;
  const cut: { from: number; group: Group }[] = [];
  let next = first;
  for (let at = 0; at < text.length;) {
    while (next < groups.length && (groups[next]!.from < oldTo || groups[next]!.from + shift < at)) next++;
    if (cut.length > 0 && next < groups.length && groups[next]!.from + shift === at)
      return { text, cut, next };
    const group = cutGroup(lines, at);
    if (!complete && group.reach >= text.length) return undefined;
    cut.push({ from: at, group });
    at = group.next;
  }
  return { text, cut, next: groups.length };
}

function move(group: Kept, delta: number): void {
  group.from += delta;
  group.reach += delta;
  for (const item of group.items) item.offset += delta;
}

function itemsOf(groups: readonly Kept[]): TopLevel[] {
  const items: TopLevel[] = [];
  for (const group of groups) for (const item of group.items) items.push(item);
  return items;
}

/** The items of the file with those of the old groups exchanged. */
function spliced(
  items: readonly TopLevel[],
  groups: readonly Kept[],
  first: number,
  old: readonly Kept[],
  now: readonly TopLevel[],
): TopLevel[] {
  let start = 0;
  for (let i = 0; i < first; i++) start += groups[i]!.items.length;
  let end = start;
  for (const group of old) end += group.items.length;
  return items.slice(0, start).concat(now, items.slice(end));
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

function parsedAnew(file: SourceFile, change: Change): Edited {
  const { text } = file;
  const now = parse(text.slice(0, change.from) + change.text + text.slice(change.to));
  return { file: now, ...replaced(file.items, now.items) };
}
