/** The order of evaluation, kept up to date: mended where an edit asks for little, found anew where it asks for more. */
import { inOrder, type Definitions, type Group } from './order';

/** What the ranking has to know of the network. */
export interface Ranked extends Definitions {
  /** Whether it is a definition at all; measurements are not. */
  isKnown(id: string): boolean;
  /** Whether it is evaluated whoever takes it: all of the pattern's own file. */
  isRoot(id: string): boolean;
  dependents(id: string): Iterable<string>;
  roots(): Iterable<string>;
}

/** Definitions with other inputs than before, by what they took before; nothing where they are new. */
export interface Relinked {
  readonly removed: ReadonlyMap<string, ReadonlySet<string>>;
  readonly linked: ReadonlyMap<string, ReadonlySet<string> | undefined>;
}

export interface OrderChange {
  /** Definitions that are evaluated now and were not before. */
  readonly reached: readonly string[];
  /** Definitions that are evaluated no more. */
  readonly left: readonly string[];
  /** Definitions that stand in another circle than before, or in none any more. */
  readonly regrouped: readonly string[];
}

/** More definitions than this are a pasted garment, and everything is put in order anew. */
const FEW = 1000;

const NONE: ReadonlySet<string> = new Set();

export class Ranking {
  readonly groupOf = new Map<string, Group>();
  private circles = new Map<string, string>();

  constructor(private readonly network: Ranked) {}

  update(relinked: Relinked): OrderChange {
    return this.mended(relinked) ?? this.sort();
  }

  sort(): OrderChange {
    const before = new Set(this.groupOf.keys());
    const circlesBefore = this.circles;
    const groups = inOrder(this.network.roots(), this.network);
    this.groupOf.clear();
    for (const group of groups) for (const id of group.members) this.groupOf.set(id, group);
    this.circles = circlesOf(groups);
    const concerned = [...new Set([...circlesBefore.keys(), ...this.circles.keys()])];
    return {
      reached: [...this.groupOf.keys()].filter((id) => !before.has(id) && this.network.isKnown(id)),
      left: [...before].filter((id) => !this.groupOf.has(id)),
      regrouped: concerned.filter((id) => circlesBefore.get(id) !== this.circles.get(id)),
    };
  }

  /**
   * Only what has other inputs, and what goes round with it, is placed anew between what it takes and what takes it.
   * Undefined where circles without an unknown are concerned, where a used file comes or goes, or where there is no room.
   */
  private mended({ removed, linked }: Relinked): OrderChange | undefined {
    if (linked.size > FEW) return undefined;
    const fresh: string[] = [];
    const region = new Set<string>();
    for (const [id, before] of removed) {
      if (!this.canMend(id, before, NONE)) return undefined;
      this.membersWith(id).forEach((member) => region.add(member));
    }
    for (const [id, before] of linked) {
      if (!this.groupOf.has(id) && !this.network.isRoot(id)) continue;
      if (before === undefined) fresh.push(id);
      else if (!this.canMend(id, before, this.network.inputs(id))) return undefined;
      this.membersWith(id).forEach((member) => region.add(member));
    }
    for (const id of removed.keys()) {
      region.delete(id);
      this.groupOf.delete(id);
      this.circles.delete(id);
    }
    const regrouped = region.size > FEW ? undefined : this.place(region);
    return regrouped && { reached: fresh, left: [...removed.keys()], regrouped };
  }

  /** Whether what a definition took and takes no more stays in the order for others, and it stands in no circle. */
  private canMend(id: string, before: ReadonlySet<string>, now: ReadonlySet<string>): boolean {
    const group = this.groupOf.get(id);
    return group?.circle === false && [...before].every((input) => now.has(input) || this.isTaken(input));
  }

  private membersWith(id: string): readonly string[] {
    return this.groupOf.get(id)?.members ?? [id];
  }

  private isReached(id: string): boolean {
    return this.groupOf.has(id) || !this.network.isKnown(id);
  }

  private isTaken(id: string): boolean {
    if (!this.network.isKnown(id) || this.network.isRoot(id) || !this.groupOf.has(id)) return true;
    return [...this.network.dependents(id)].some((dependent) => this.groupOf.has(dependent));
  }

  /** Answers those that go round with others than before; undefined where there is no room. */
  private place(region: ReadonlySet<string>): readonly string[] | undefined {
    const { network } = this;
    const within = new Map<string, ReadonlySet<string>>();
    for (const id of region) {
      const inputs = [...network.inputs(id)];
      if (!inputs.every((input) => region.has(input) || this.isReached(input))) return undefined;
      within.set(id, new Set(inputs.filter((input) => region.has(input))));
    }
    const groups = inOrder(region, { ...network, inputs: (id) => within.get(id)! });
    for (const group of groups) {
      const rank = this.rankFor(group.members, region);
      if (group.circle || rank === undefined) return undefined;
      group.rank = rank;
      for (const id of group.members) this.groupOf.set(id, group);
    }
    return this.regroup(region, groups);
  }

  private regroup(region: ReadonlySet<string>, groups: readonly Group[]): readonly string[] {
    const now = circlesOf(groups);
    const others = [...region].filter((id) => this.circles.get(id) !== now.get(id));
    for (const id of others) {
      const all = now.get(id);
      if (all === undefined) this.circles.delete(id);
      else this.circles.set(id, all);
    }
    return others;
  }

  /** A rank after all inputs and before all who take the members: that of before, if it fits; undefined without room. */
  private rankFor(members: readonly string[], region: ReadonlySet<string>): number | undefined {
    let [low, high] = [-1, Infinity];
    for (const id of members) {
      for (const input of this.network.inputs(id)) {
        if (!members.includes(input)) low = Math.max(low, this.groupOf.get(input)?.rank ?? -1);
      }
      for (const dependent of this.network.dependents(id)) {
        if (!region.has(dependent)) high = Math.min(high, this.groupOf.get(dependent)?.rank ?? Infinity);
      }
    }
    const before = this.groupOf.get(members[0]!)?.rank;
    if (before !== undefined && low < before && before < high) return before;
    const rank = high === Infinity ? low + 1 : (low + high) / 2;
    return low < rank && rank < high ? rank : undefined;
  }
}

/** Whoever stands in a circle, with all that stand in it. */
function circlesOf(groups: readonly Group[]): Map<string, string> {
  const found = new Map<string, string>();
  for (const { members, circle, unknown } of groups) {
    if (!circle && unknown === undefined) continue;
    const all = `${circle ? 'circle' : 'unknown'} ${members.join(' ')}`;
    for (const id of members) found.set(id, all);
  }
  return found;
}
