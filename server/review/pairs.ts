/** Which statement of one side answers to which of the other, and which names were changed. */
import type { Line, Placed } from './lines';

/** A name that was changed: what kind of thing it names, what holds it, and both names. */
export interface Renamed {
  readonly kind: string;
  readonly scope: string;
  readonly was: string;
  readonly now: string;
}

/** Two lines that answer to each other, or one that has no answer. */
export interface Pair {
  readonly was?: Placed;
  readonly now?: Placed;
  /** Names of the blocks around it, as they are now. */
  readonly scope: string;
}

export interface Paired {
  /** Every pair that does not say the same, the lines of blocks beside the blocks. */
  readonly pairs: readonly Pair[];
  readonly renamed: readonly Renamed[];
  /** Blocks whose lines stand in another order, where that matters. */
  readonly reordered: readonly Pair[];
}

export function pairLines(before: readonly Placed[], after: readonly Placed[]): Paired {
  const found: { pairs: Pair[]; renamed: Renamed[]; reordered: Pair[] } = {
    pairs: [],
    renamed: [],
    reordered: [],
  };
  pairBlock(before, after, '', found);
  return found;
}

type Found = { pairs: Pair[]; renamed: Renamed[]; reordered: Pair[] };

function pairBlock(before: readonly Placed[], after: readonly Placed[], scope: string, found: Found): void {
  const matching = new Matching(before, after);
  matching.by(({ line }) => line.whole);
  matching.by(({ line }) => (line.name === '' ? undefined : `${line.kind} ${line.name}`), true);
  matching.renamed(found.renamed, scope);
  matching.by(({ line }) => (line.name === '' ? line.kind : undefined), true);
  for (const [was, now] of matching.matched) {
    if (was.line.whole === now.line.whole) continue;
    const inner = joined(scope, now.line);
    found.pairs.push({ was, now, scope });
    if (was.line.children.length + now.line.children.length > 0)
      pairBlock(childrenOf(was), childrenOf(now), inner, found);
    if (now.line.ordered && isReordered(was.line, now.line, found.renamed))
      found.reordered.push({ was, now, scope });
  }
  found.pairs.push(...matching.before.map((was) => ({ was, scope })));
  found.pairs.push(...matching.after.map((now) => ({ now, scope })));
}

const childrenOf = ({ line, file, offset }: Placed): Placed[] =>
  line.children.map((child) => ({ line: child, file, offset }));

/** An outline belongs to its piece: it adds nothing to the name of what it holds. */
const joined = (scope: string, { name }: Line): string =>
  name === '' ? scope : scope === '' ? name : `${scope}.${name}`;

function isReordered(was: Line, now: Line, renamed: readonly Renamed[]): boolean {
  const names = new Set(now.children.map(({ name }) => name));
  const then = was.children
    .map(({ name }) => (names.has(name) ? name : (renamed.find((one) => one.was === name)?.now ?? name)))
    .filter((name) => names.has(name));
  const shared = new Set(then);
  return now.children.filter(({ name }) => shared.has(name)).some(({ name }, i) => then[i] !== name);
}

class Matching {
  readonly matched: [Placed, Placed][] = [];
  before: Placed[];
  after: Placed[];

  constructor(before: readonly Placed[], after: readonly Placed[]) {
    this.before = [...before];
    this.after = [...after];
  }

  /** Pairs what has the same key, the first with the first. */
  by(keyOf: (line: Placed) => string | undefined, sorted = false): void {
    const waiting = new Map<string, Placed[]>();
    for (const one of this.before) {
      const key = keyOf(one);
      if (key !== undefined) waiting.set(key, [...(waiting.get(key) ?? []), one]);
    }
    const taken = new Set<Placed>();
    this.after = this.after.filter((now) => {
      const key = keyOf(now);
      const was = key === undefined ? undefined : waiting.get(key)?.shift();
      if (was === undefined) return true;
      this.matched.push([was, now]);
      taken.add(was);
      return false;
    });
    this.before = this.before.filter((one) => !taken.has(one));
    if (sorted) this.matched.sort(([, a], [, b]) => a.line.from + a.offset - b.line.from - b.offset);
  }

  /** Pairs lines of one kind that differ in their name alone, or whose blocks do. */
  renamed(renamed: Renamed[], scope: string): void {
    for (const was of [...this.before]) {
      if (was.line.name === '') continue;
      const now = this.after.find((other) => isRenamed(was.line, other.line, renamed));
      if (now === undefined) continue;
      renamed.push({ kind: was.line.kind, scope, was: was.line.name, now: now.line.name });
      this.matched.push([was, now]);
      this.before = this.before.filter((one) => one !== was);
      this.after = this.after.filter((one) => one !== now);
    }
  }
}

/** Measured lines are never renamed: another name is another measurement. */
const NEVER: ReadonlySet<string> = new Set(['measured', 'row', 'accept', 'usual']);

function isRenamed(was: Line, now: Line, renamed: readonly Renamed[]): boolean {
  if (was.kind !== now.kind || now.name === '' || NEVER.has(was.kind)) return false;
  const more = [...renamed, { kind: was.kind, scope: '', was: was.name, now: now.name }];
  if (!sameWords(was.words, now.words, more)) return false;
  const mine = new Set(was.children.map(({ whole }) => whole));
  const kept = now.children.filter(({ whole }) => mine.has(whole)).length;
  return 2 * kept >= Math.max(was.children.length, now.children.length);
}

/** Whether the words say the same once the names that were changed are read as one. */
export function sameWords(
  was: readonly string[],
  now: readonly string[],
  renamed: readonly Renamed[],
): boolean {
  if (was.length !== now.length) return false;
  return was.every(
    (word, i) => word === now[i] || renamed.some((name) => name.was === word && name.now === now[i]),
  );
}
