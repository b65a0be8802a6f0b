/** Which patterns of two trees have to be compared: those that changed, those that use what changed, renamed ones together. */
import { usedPaths } from '../../../grammar';
import { folderOf, joined } from '../uris';
import { pathOf, uriOf } from './two-sided';
import { textIn, type Tree } from './tree';

/** A pattern file on both sides; one is missing where it was added or taken away. */
export interface FilePair {
  readonly was?: string;
  readonly now?: string;
}

/** Two files that share more of their lines than this are one that was renamed. */
const ALIKE = 0.5;

/**
 * The patterns below a path that differ, in the order of their names. A file that others use is told with them, unless
 * nothing uses it.
 */
export function changedFiles(before: Tree, after: Tree, path = ''): FilePair[] {
  const [old, fresh] = [before.list(), after.list()];
  before.readAhead(old);
  after.readAhead(fresh);
  const pairs = pairFiles(before, after, old, fresh);
  const differs = new Set(pairs.filter((pair) => isOther(before, after, pair)));
  if (differs.size === 0) return [];
  const [wasUsers, nowUsers] = [usersOf(before, old), usersOf(after, fresh)];
  const changed = {
    was: reached(
      [...differs].flatMap(({ was }) => was ?? []),
      wasUsers,
    ),
    now: reached(
      [...differs].flatMap(({ now }) => now ?? []),
      nowUsers,
    ),
  };
  const affected = pairs.filter(
    (pair) =>
      (pair.was !== undefined && changed.was.has(pair.was)) ||
      (pair.now !== undefined && changed.now.has(pair.now)),
  );
  const used = (pair: FilePair): boolean =>
    (pair.was !== undefined && wasUsers.has(pair.was)) || (pair.now !== undefined && nowUsers.has(pair.now));
  return affected
    .filter((pair) => isBelow(pair, path))
    .filter((pair) => !used(pair) || drafts(before, pair.was) || drafts(after, pair.now))
    .sort((a, b) => ((a.now ?? a.was)! < (b.now ?? b.was)! ? -1 : 1));
}

/** A pattern of its own, not only bodies or values for others. */
function drafts(tree: Tree, path: string | undefined): boolean {
  const content = path === undefined ? undefined : tree.read(path);
  return content !== undefined && 'text' in content && /^\s*piece\s/m.test(content.text);
}

/** The same file on both sides, by its name or, where that changed, by its lines. */
export function pairFiles(
  before: Tree,
  after: Tree,
  old: readonly string[],
  fresh: readonly string[],
): FilePair[] {
  const [wasThere, nowThere] = [new Set(old), new Set(fresh)];
  const gone = old.filter((path) => !nowThere.has(path));
  const came = fresh.filter((path) => !wasThere.has(path));
  const renamed = gone.length === 0 ? [] : renames(before, after, gone, came);
  const [from, to] = [new Set(renamed.map(({ was }) => was)), new Set(renamed.map(({ now }) => now))];
  return [
    ...old.filter((path) => nowThere.has(path)).map((path) => ({ was: path, now: path })),
    ...renamed,
    ...gone.filter((path) => !from.has(path)).map((was) => ({ was })),
    ...came.filter((path) => !to.has(path)).map((now) => ({ now })),
  ];
}

/** More pairs than these are not tried: each costs a look at all their lines. */
const MOST_TRIED = 10_000;

function renames(
  before: Tree,
  after: Tree,
  gone: readonly string[],
  came: readonly string[],
): Required<FilePair>[] {
  if (gone.length * came.length > MOST_TRIED) return [];
  const lines = (tree: Tree, path: string): readonly string[] => {
    const content = tree.read(path);
    return 'text' in content
      ? content.text
          .split('\n')
          .map((line) => line.trim())
          .filter(Boolean)
      : [];
  };
  const likes = came.flatMap((now) => {
    const fresh = lines(after, now);
    return gone.map((was) => ({ was, now, like: likeness(lines(before, was), fresh) }));
  });
  const found: Required<FilePair>[] = [];
  for (const { was, now, like } of likes.sort((a, b) => b.like - a.like)) {
    if (like < ALIKE || found.some((pair) => pair.was === was || pair.now === now)) continue;
    found.push({ was, now });
  }
  return found;
}

function likeness(one: readonly string[], other: readonly string[]): number {
  const left = new Map<string, number>();
  for (const line of one) left.set(line, (left.get(line) ?? 0) + 1);
  let shared = 0;
  for (const line of other) {
    const count = left.get(line) ?? 0;
    if (count > 0) {
      shared++;
      left.set(line, count - 1);
    }
  }
  const most = Math.max(one.length, other.length);
  return most === 0 ? 0 : shared / most;
}

function isOther(before: Tree, after: Tree, { was, now }: FilePair): boolean {
  if (was === undefined || now === undefined || was !== now) return true;
  const [old, fresh] = [before.read(was), after.read(now)];
  return !('text' in old && 'text' in fresh && old.text === fresh.text);
}

/** Who uses a file, seen from it. */
function usersOf(tree: Tree, paths: readonly string[]): ReadonlyMap<string, readonly string[]> {
  const users = new Map<string, string[]>();
  for (const path of paths) {
    const content = tree.read(path);
    if (!('text' in content)) continue;
    for (const used of usedPaths(content.text)) {
      const uri = joined(folderOf(uriOf(path)), used);
      if (uri !== undefined) users.set(pathOf(uri), [...(users.get(pathOf(uri)) ?? []), path]);
    }
  }
  return users;
}

function reached(
  start: readonly string[],
  users: ReadonlyMap<string, readonly string[]>,
): ReadonlySet<string> {
  const found = new Set(start);
  for (const path of found) for (const user of users.get(path) ?? []) found.add(user);
  return found;
}

const isBelow = ({ was, now }: FilePair, path: string): boolean =>
  path === '' || [was, now].some((one) => one === path || one?.startsWith(`${path.replace(/\/$/, '')}/`));

/** Throws Refusal where a file of the pair can't be compared at all. */
export function readable(before: Tree, after: Tree, { was, now }: FilePair): void {
  if (was !== undefined) textIn(before, was);
  if (now !== undefined) textIn(after, now);
}
