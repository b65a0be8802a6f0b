/**
 * What the top-level statements of some kinds come to, in file order: read again only where a statement or its answer
 * is another than before, so that lists stay the same objects while nothing in them changes.
 */
import type { Statement, StatementNode, TopLevel } from '../../grammar/syntax';
import type { FileNames } from './names/files';
import { same } from './same';

interface Entry<T> {
  readonly top: TopLevel;
  readonly statement: Statement;
  readonly id: string;
  values: readonly T[];
  pieces: readonly string[];
}

/** What is gathered, and how. */
export interface Kind<T> {
  readonly kinds: readonly StatementNode['kind'][];
  /** Where they stand, if some stand in the block of another statement. */
  readonly tops?: () => readonly TopLevel[];
  /** What a definition comes to: nothing, one thing, or one for each side of the wearer. */
  take(id: string): readonly T[];
  /** The pieces that a thing concerns. */
  piecesOf(thing: T): readonly string[];
}

const NONE: readonly never[] = [];

export class Answers<T> {
  private tops: readonly TopLevel[] = NONE;
  private entries: readonly Entry<T>[] = NONE;
  private readonly byId = new Map<string, Entry<T>[]>();
  private readonly concerned = new Set<string>();
  private list: readonly T[] = NONE;
  private byPiece: ReadonlyMap<string, readonly T[]> = new Map();

  constructor(
    private readonly root: FileNames,
    private readonly kind: Kind<T>,
  ) {}

  /** Definitions that may come to something else now. */
  note(ids: Iterable<string>): void {
    if (this.byId.size === 0) return;
    for (const id of ids) if (this.byId.has(id)) this.concerned.add(id);
  }

  /** Brings the list up to date; answers the pieces that other things concern than before. */
  update(): ReadonlySet<string> {
    const { kinds, tops: ownTops } = this.kind;
    const tops = ownTops === undefined ? this.root.ofKinds(kinds) : ownTops();
    const read = !same(tops, this.tops);
    if (read) this.read(tops);
    let changed = read;
    for (const id of this.concerned) {
      for (const entry of this.byId.get(id) ?? NONE) changed = this.take(entry) || changed;
    }
    this.concerned.clear();
    return changed ? this.gather() : NOTHING;
  }

  private read(tops: readonly TopLevel[]): void {
    const before = grouped(this.entries, ({ top }) => top);
    this.tops = tops;
    this.entries = tops.flatMap((top) => before.get(top) ?? this.entriesOf(top));
    this.byId.clear();
    for (const [id, entries] of grouped(this.entries, (entry) => entry.id)) this.byId.set(id, entries);
  }

  private entriesOf(top: TopLevel): readonly Entry<T>[] {
    const own = this.root
      .of(top)
      .filter(({ statement }) =>
        this.kind.tops === undefined
          ? statement === top.statement
          : this.kind.kinds.includes(statement.node.kind),
      );
    return own.map(({ id, statement }) => {
      const entry: Entry<T> = { top, statement, id, values: NONE, pieces: NONE };
      this.take(entry);
      return entry;
    });
  }

  /** Of two statements with one name the first counts. */
  private counts({ statement, id }: Entry<T>): boolean {
    return this.root.get(id)?.statement === statement;
  }

  private take(entry: Entry<T>): boolean {
    const values = this.counts(entry) ? this.kind.take(entry.id) : NONE;
    if (same(values, entry.values)) return false;
    entry.values = values;
    entry.pieces = [...new Set(values.flatMap((value) => this.kind.piecesOf(value)))];
    return true;
  }

  private gather(): ReadonlySet<string> {
    const list = this.entries.flatMap(({ values }) => values);
    if (same(list, this.list)) return NOTHING;
    this.list = list;
    const before = this.byPiece;
    const now = new Map<string, T[]>();
    for (const { pieces, values } of this.entries) {
      for (const piece of pieces) {
        const concerning =
          values.length === 1 ? values : values.filter((value) => this.kind.piecesOf(value).includes(piece));
        const held = now.get(piece);
        if (held === undefined) now.set(piece, [...concerning]);
        else held.push(...concerning);
      }
    }
    this.byPiece = now;
    return keepAlike(before, now);
  }

  get all(): readonly T[] {
    return this.list;
  }

  /** The things that concern a piece; the same list while they are the same things. */
  of(piece: string): readonly T[] {
    return this.byPiece.get(piece) ?? NONE;
  }

  /** Names, whether or not anything comes of them. */
  get ids(): readonly string[] {
    return this.entries.filter((entry) => this.counts(entry)).map(({ id }) => id);
  }

  /** Statements of which nothing comes. */
  get without(): readonly { readonly top: TopLevel; readonly id: string }[] {
    return this.entries.filter(({ values }) => values.length === 0);
  }
}

const NOTHING: ReadonlySet<string> = new Set();

/** Puts lists of before in the place of those that hold the same; answers the keys of the others. */
function keepAlike<T>(
  before: ReadonlyMap<string, readonly T[]>,
  now: Map<string, readonly T[]>,
): ReadonlySet<string> {
  const others = new Set<string>();
  for (const [key, list] of now) {
    const old = before.get(key);
    if (old !== undefined && same(old, list)) now.set(key, old);
    else others.add(key);
  }
  for (const key of before.keys()) if (!now.has(key)) others.add(key);
  return others;
}

function grouped<K, E>(entries: readonly E[], keyOf: (entry: E) => K): Map<K, E[]> {
  const found = new Map<K, E[]>();
  for (const entry of entries) {
    const key = keyOf(entry);
    const list = found.get(key);
    if (list === undefined) found.set(key, [entry]);
    else list.push(entry);
  }
  return found;
}
