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

/** More new definitions than this are a pasted garment, and everything is put in order anew. */
const FEW = 100;

const NONE: ReadonlySet<string> = new Set();

export class Ranking {
  readonly groupOf = new Map<string, Group>();
  private circles: ReadonlyMap<string, string> = new Map();

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

  /** Undefined where circles, unknowns or used files are concerned, or where something must move past what takes it. */
  private mended(relinked: Relinked): OrderChange | undefined {
    const fresh = new Set<string>();
    for (const [id, before] of relinked.linked)
      if (before === undefined && this.network.isRoot(id)) fresh.add(id);
    if (fresh.size > FEW || !this.canMend(relinked, fresh)) return undefined;
    for (const id of relinked.removed.keys()) this.groupOf.delete(id);
    const linked = [...relinked.linked.keys()].filter(
      (id) => this.network.isRoot(id) || this.groupOf.has(id),
    );
    if (!this.placeAll(fresh) || !linked.every((id) => this.isAfterInputs(id) || this.moved(id)))
      return undefined;
    if (!linked.every((id) => this.isAfterInputs(id))) return undefined;
    return { reached: [...fresh], left: [...relinked.removed.keys()], regrouped: [] };
  }

  private canMend({ removed, linked }: Relinked, fresh: ReadonlySet<string>): boolean {
    for (const [id, before] of removed) {
      if (!this.isAlone(id) || !this.keepsReached(before, NONE)) return false;
    }
    for (const [id, before] of linked) {
      const now = this.network.inputs(id);
      if (!this.groupOf.has(id) && !this.network.isRoot(id)) continue;
      if (before !== undefined && !(this.isAlone(id) && this.keepsReached(before, now))) return false;
      if (now.has(id) || ![...now].every((input) => this.isReached(input) || fresh.has(input))) return false;
    }
    return true;
  }

  private isAlone(id: string): boolean {
    const group = this.groupOf.get(id);
    return group !== undefined && group.members.length === 1 && !group.circle && group.unknown === undefined;
  }

  /** Whether what is not taken any more is evaluated all the same. */
  private keepsReached(before: ReadonlySet<string>, now: ReadonlySet<string>): boolean {
    return [...before].every((input) => now.has(input) || this.isTaken(input));
  }

  private isReached(id: string): boolean {
    return this.groupOf.has(id) || !this.network.isKnown(id);
  }

  private isTaken(id: string): boolean {
    if (!this.network.isKnown(id) || this.network.isRoot(id) || !this.groupOf.has(id)) return true;
    return [...this.network.dependents(id)].some((dependent) => this.groupOf.has(dependent));
  }

  /** Places new definitions between their inputs and those who take them, inputs first. */
  private placeAll(fresh: ReadonlySet<string>): boolean {
    const waiting = new Set(fresh);
    for (let placed = true; placed && waiting.size > 0;) {
      placed = false;
      for (const id of waiting) {
        if ([...this.network.inputs(id)].some((input) => waiting.has(input))) continue;
        const rank = this.rankBetween(id);
        if (rank === undefined) return false;
        this.groupOf.set(id, { members: [id], circle: false, rank });
        waiting.delete(id);
        placed = true;
      }
    }
    return waiting.size === 0;
  }

  private moved(id: string): boolean {
    const rank = this.rankBetween(id);
    if (rank === undefined) return false;
    this.groupOf.get(id)!.rank = rank;
    return true;
  }

  private isAfterInputs(id: string): boolean {
    const own = this.groupOf.get(id)!.rank;
    return [...this.network.inputs(id)].every((input) => (this.groupOf.get(input)?.rank ?? -1) < own);
  }

  /** A rank after all inputs and before all who take the definition; undefined where there is none. */
  private rankBetween(id: string): number | undefined {
    let low = -1;
    for (const input of this.network.inputs(id)) low = Math.max(low, this.groupOf.get(input)?.rank ?? -1);
    let high = Infinity;
    for (const dependent of this.network.dependents(id))
      high = Math.min(high, this.groupOf.get(dependent)?.rank ?? Infinity);
    const rank = high === Infinity ? low + 1 : (low + high) / 2;
    return low < rank && rank < high ? rank : undefined;
  }
}

/** Whoever stands in a circle, with all that stand in it. */
function circlesOf(groups: readonly Group[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { members, circle, unknown } of groups) {
    if (!circle && unknown === undefined) continue;
    const all = `${circle ? 'circle' : 'unknown'} ${members.join(' ')}`;
    for (const id of members) found.set(id, all);
  }
  return found;
}
