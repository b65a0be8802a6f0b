/** The top-level statements of one file, by kind. */
import type { StatementNode, TopLevel } from '../../../grammar/syntax';

type Kind = StatementNode['kind'];
type ByKind = ReadonlyMap<Kind, readonly TopLevel[]>;

const NONE: readonly TopLevel[] = [];

export class TopLevels {
  private all: readonly TopLevel[] = [];
  private kinds: ByKind = new Map();

  get items(): readonly TopLevel[] {
    return this.all;
  }

  /** Takes over other statements; answers which are gone and which have come. */
  update(items: readonly TopLevel[]): { gone: readonly TopLevel[]; come: readonly TopLevel[] } {
    const { gone, come } = difference(this.all, items);
    this.all = items;
    this.kinds = exchanged(this.kinds, gone, come) ?? byKind(items);
    return { gone, come };
  }

  /** Those of one kind, in file order; the same list while they stay the same. */
  ofKind(kind: Kind): readonly TopLevel[] {
    return this.kinds.get(kind) ?? NONE;
  }

  /** Those of some kinds, in file order. */
  ofKinds(kinds: readonly Kind[]): readonly TopLevel[] {
    const lists = kinds.map((kind) => this.ofKind(kind)).filter(({ length }) => length > 0);
    return lists.length < 2 ? (lists[0] ?? []) : lists.flat().sort((a, b) => a.offset - b.offset);
  }
}

/** What stands in one list and not in the other, but for what both begin and end with. */
function difference<T>(
  before: readonly T[],
  after: readonly T[],
): { gone: readonly T[]; come: readonly T[] } {
  const most = Math.min(before.length, after.length);
  let head = 0;
  while (head < most && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < most - head && before[before.length - 1 - tail] === after[after.length - 1 - tail]) tail++;
  return { gone: before.slice(head, before.length - tail), come: after.slice(head, after.length - tail) };
}

function byKind(items: readonly TopLevel[]): ByKind {
  const kinds = new Map<Kind, TopLevel[]>();
  for (const top of items) {
    const list = kinds.get(top.statement.node.kind);
    if (list === undefined) kinds.set(top.statement.node.kind, [top]);
    else list.push(top);
  }
  return kinds;
}

/** The lists by kind with some statements exchanged for others; undefined where they have to be made anew. */
function exchanged(kinds: ByKind, gone: readonly TopLevel[], come: readonly TopLevel[]): ByKind | undefined {
  const alike = gone.length === come.length && gone.every((top, i) => kindOf(top) === kindOf(come[i]!));
  if (!alike) return undefined;
  const now = new Map(kinds);
  for (const kind of new Set(gone.map(kindOf))) {
    const list = [...now.get(kind)!];
    const [before, after] = [gone, come].map((tops) => tops.filter((top) => kindOf(top) === kind));
    list.splice(list.indexOf(before![0]!), before!.length, ...after!);
    now.set(kind, list);
  }
  return now;
}

const kindOf = ({ statement }: TopLevel): Kind => statement.node.kind;
