/** Names of one file that stand in it more than once, found without reading the file through after every edit. */
import type { Declaration } from './declarations';

/** Sets by a key; a key's set goes with its last entry. */
class Groups<T> {
  private readonly sets = new Map<string, Set<T>>();
  /** Keys that hold more than one. */
  readonly crowded = new Set<string>();

  add(key: string, one: T): void {
    const set = this.sets.get(key);
    if (set === undefined) this.sets.set(key, new Set([one]));
    else if (set.add(one).size > 1) this.crowded.add(key);
  }

  remove(key: string, one: T): void {
    const set = this.sets.get(key);
    if (set === undefined) return;
    set.delete(one);
    if (set.size < 2) this.crowded.delete(key);
    if (set.size === 0) this.sets.delete(key);
  }

  get(key: string): ReadonlySet<T> {
    return this.sets.get(key) ?? NONE;
  }
}

const NONE: ReadonlySet<never> = new Set();

export class Repeats {
  private readonly byId = new Groups<Declaration>();
  private readonly byFolded = new Groups<Declaration>();
  private readonly valuesByName = new Groups<Declaration>();

  add(declaration: Declaration): void {
    const { id, space, name } = declaration;
    if (space === 'expect' || space === 'line') return;
    this.byId.add(id, declaration);
    this.byFolded.add(id.toLowerCase(), declaration);
    if (space === 'value') this.valuesByName.add(name, declaration);
  }

  remove(declaration: Declaration): void {
    const { id, space, name } = declaration;
    if (space === 'expect' || space === 'line') return;
    this.byId.remove(id, declaration);
    this.byFolded.remove(id.toLowerCase(), declaration);
    if (space === 'value') this.valuesByName.remove(name, declaration);
  }

  /** Paths that are declared more than once. */
  get twice(): ReadonlySet<string> {
    return this.byId.crowded;
  }

  /** Declarations that are one but for capitals, some of them perhaps one indeed; sets of more than one. */
  *alikeButForCapitals(): Iterable<ReadonlySet<Declaration>> {
    for (const key of this.byFolded.crowded) yield this.byFolded.get(key);
  }

  /** Names that several values have, whatever their scopes. */
  get repeatedValues(): ReadonlySet<string> {
    return this.valuesByName.crowded;
  }

  valuesNamed(name: string): Iterable<Declaration> {
    return this.valuesByName.get(name);
  }
}
