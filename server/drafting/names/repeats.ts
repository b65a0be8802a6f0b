/** Names of one file that stand in it more than once, found without reading the file through after every edit. */
import type { Declaration } from './declarations';

/** What has a key; nearly every key has one thing, which needs no set of its own. */
class Groups<T> {
  private readonly single = new Map<string, T>();
  private readonly sets = new Map<string, Set<T>>();
  /** Keys that hold more than one. */
  readonly crowded = new Set<string>();

  add(key: string, one: T): void {
    const set = this.sets.get(key);
    if (set !== undefined) {
      set.add(one);
      return;
    }
    const other = this.single.get(key);
    if (other === undefined) this.single.set(key, one);
    if (other === undefined || other === one) return;
    this.single.delete(key);
    this.sets.set(key, new Set([other, one]));
    this.crowded.add(key);
  }

  remove(key: string, one: T): void {
    if (this.single.get(key) === one) this.single.delete(key);
    const set = this.sets.get(key);
    if (set?.delete(one) !== true || set.size > 1) return;
    for (const left of set) this.single.set(key, left);
    this.sets.delete(key);
    this.crowded.delete(key);
  }

  get(key: string): Iterable<T> {
    const only = this.single.get(key);
    return only === undefined ? (this.sets.get(key) ?? []) : [only];
  }
}

export class Repeats {
  private readonly byId = new Groups<Declaration>();
  private readonly byFolded = new Groups<Declaration>();
  private readonly valuesByName = new Groups<Declaration>();
  private readonly byName = new Groups<Declaration>();

  add(declaration: Declaration): void {
    const { id, space, name } = declaration;
    if (space === 'expect' || space === 'line') return;
    this.byId.add(id, declaration);
    this.byFolded.add(id.toLowerCase(), declaration);
    this.byName.add(name.toLowerCase(), declaration);
    if (space === 'value') this.valuesByName.add(name, declaration);
  }

  remove(declaration: Declaration): void {
    const { id, space, name } = declaration;
    if (space === 'expect' || space === 'line') return;
    this.byId.remove(id, declaration);
    this.byFolded.remove(id.toLowerCase(), declaration);
    this.byName.remove(name.toLowerCase(), declaration);
    if (space === 'value') this.valuesByName.remove(name, declaration);
  }

  /** Paths that are declared more than once. */
  get twice(): ReadonlySet<string> {
    return this.byId.crowded;
  }

  /** Declarations that are one but for capitals, some of them perhaps one indeed; sets of more than one. */
  *alikeButForCapitals(): Iterable<Iterable<Declaration>> {
    for (const key of this.byFolded.crowded) yield this.byFolded.get(key);
  }

  /** Names that several values have, whatever their scopes. */
  get repeatedValues(): ReadonlySet<string> {
    return this.valuesByName.crowded;
  }

  valuesNamed(name: string): Iterable<Declaration> {
    return this.valuesByName.get(name);
  }

  /** Whatever has a name, in whatever scope and capitals. */
  namedAlike(name: string): Iterable<Declaration> {
    return this.byName.get(name.toLowerCase());
  }
}
