/**
 * The graph of definitions: each is a node with its inputs recorded, found by names alone, before anything is
 * computed. From it come the order of evaluation, circles, and what an edit reaches.
 */
import type { Ref, Statement } from '../../../grammar/syntax';
import type { Finding } from '../finding';
import type { Declaration } from './declarations';
import type { FileNames, FileSet } from './files';
import { headOf, linksOf, type Links } from './links';
import type { Target } from './resolve';
import type { Group } from './order';
import { Ranking, type OrderChange } from './ranking';
import { selfSewnBy } from './self-sewn';

const NO_LINKS: Links = {
  targets: new Map(),
  inputs: new Set(),
  mentions: new Set(),
  findings: [],
  later: new Map(),
  unresolved: false,
  bare: new Set(),
  drawn: 'right',
  head: '',
};

const UNMOVED: OrderChange = { reached: [], left: [], regrouped: [] };

/** One definition: where it stands, what it takes. */
export class Node {
  links: Links = NO_LINKS;
  /** Whether it was a `solve` when its names were looked up. */
  unknown = false;
  /** The version of the file that `last` is of. */
  private revision: number;

  constructor(
    /** Path over all files. */
    readonly id: string,
    readonly file: FileNames,
    private last: Declaration,
  ) {
    this.revision = file.revision;
  }

  /** As it stands in the present text: an edit beside it moves it into a new block. */
  get declaration(): Declaration {
    if (this.revision !== this.file.revision) {
      this.last = this.file.get(this.last.id) ?? this.last;
      this.revision = this.file.revision;
    }
    return this.last;
  }
}

export interface NetworkChange extends OrderChange {
  /** Definitions whose words, or the meaning of whose names, are new. */
  readonly dirty: ReadonlySet<string>;
  readonly removed: ReadonlySet<string>;
}

export class Network {
  readonly nodes = new Map<string, Node>();
  /** Who takes a definition as input. */
  readonly dependents = new Map<string, Set<string>>();
  /** Definitions that none takes as input. */
  readonly untaken = new Set<string>();
  /** Counts the changes of what takes what, and of which side of the wearer is meant. */
  revision = 0;
  /** Which definitions mention a name, so that a new or lost name finds those it concerns. */
  private readonly mentions = new Map<string, Set<string>>();
  private readonly unresolved = new Set<Node>();
  private measurements: ReadonlySet<string> = new Set();
  private readonly ranking = new Ranking({
    inputs: (id) => this.nodes.get(id)?.links.inputs ?? NO_LINKS.inputs,
    isUnknown: (id) => this.nodes.get(id)?.unknown === true,
    isKnown: (id) => this.nodes.has(id),
    isRoot: (id) => this.nodes.get(id)?.file === this.files.root,
    dependents: (id) => this.dependents.get(id) ?? [],
    roots: () => this.files.root.all().map(({ id }) => id),
    asWritten: (ids) => [...ids].sort((a, b) => this.compare(a, b)),
  });

  constructor(private readonly files: FileSet) {}

  /** What a definition is evaluated with: itself alone, or a circle held together by names. */
  groupOf(id: string): Group | undefined {
    return this.ranking.groupOf.get(id);
  }

  /** Follows the files to their present text. */
  update(): NetworkChange {
    const { changed, usesChanged } = this.files.update();
    const dirty = new Set<string>();
    const removed = new Map<string, ReadonlySet<string>>();
    const names = new Set<string>();
    for (const [file, ids] of changed) {
      for (const id of ids) this.replace(file, id, dirty, removed, names);
    }
    for (const name of this.changedMeasurements()) names.add(name);
    if (usesChanged) {
      this.dropUnused(removed);
      for (const id of this.nodes.keys()) dirty.add(id);
    }
    if (this.mentions.size > 0)
      for (const path of names) for (const id of this.concernedBy(path)) dirty.add(id);
    if (names.size > 0) for (const node of this.unresolved) dirty.add(node.id);
    const linked = this.linkAll(dirty);
    if (removed.size > 0 || linked.size > 0) this.revision++;
    const unmoved = removed.size === 0 && linked.size === 0;
    const order = usesChanged
      ? this.ranking.sort()
      : unmoved
        ? UNMOVED
        : this.ranking.update({ removed, linked });
    return { dirty, removed: new Set(removed.keys()), ...order };
  }

  /** Who may mean what has this path: a name in a block is meant where both are mentioned. */
  private concernedBy(path: string): Iterable<string> {
    const slash = path.indexOf('/');
    const all = this.mentions.get(path.slice(slash + 1)) ?? [];
    if (slash < 0) return all;
    const block = path.slice(0, slash);
    return [...all].filter((id) => this.nodes.get(id)?.links.mentions.has(block));
  }

  /** The definitions in whose words a name stands, whatever it means there. */
  *mentioning(name: string): Iterable<Node> {
    for (const id of this.mentions.get(name) ?? []) {
      const node = this.nodes.get(id);
      if (node !== undefined) yield node;
    }
  }

  /** Answers those whose inputs are others than before, with what they took before. */
  private linkAll(dirty: ReadonlySet<string>): ReadonlyMap<string, ReadonlySet<string> | undefined> {
    const linked = new Map<string, ReadonlySet<string> | undefined>();
    for (const id of dirty) {
      const node = this.nodes.get(id);
      if (node === undefined) continue;
      const { links, unknown } = node;
      this.link(node);
      if (links === NO_LINKS) linked.set(id, undefined);
      else if (unknown !== node.unknown || !sameSet(links.inputs, node.links.inputs))
        linked.set(id, links.inputs);
      else if (!sameSet(links.bare, node.links.bare)) this.revision++;
    }
    return linked;
  }

  private replace(
    file: FileNames,
    id: string,
    dirty: Set<string>,
    removed: Map<string, ReadonlySet<string>>,
    names: Set<string>,
  ): void {
    const full = file.key + id;
    const declaration = file.get(id);
    const node = this.nodes.get(full);
    noteSelfSewn(declaration?.statement, names);
    noteSelfSewn(node?.declaration.statement, names);
    if (declaration === undefined) {
      if (node === undefined) return;
      this.drop(node);
      removed.set(full, node.links.inputs);
      names.add(pathOf(node.declaration));
      return;
    }
    removed.delete(full);
    dirty.add(full);
    if (node === undefined) {
      this.nodes.set(full, new Node(full, file, declaration));
      if ((this.dependents.get(full)?.size ?? 0) === 0) this.untaken.add(full);
      names.add(pathOf(declaration));
      return;
    }
    // bands and notches take the edges that a seam names, and a seam the place of a notch
    if (declaration.space === 'seam' || declaration.space === 'notch') names.add(declaration.name);
    // a piece made from another block, or a draft drawn for the other side, changes what stands in it, and that mentions it
    if (declaration.space === 'block' && node.links.head !== headOf(declaration.statement)) {
      names.add(declaration.name);
      this.revision++;
    }
  }

  private dropUnused(removed: Map<string, ReadonlySet<string>>): void {
    const used = new Set(this.files.files());
    for (const node of [...this.nodes.values()]) {
      if (used.has(node.file)) continue;
      this.drop(node);
      removed.set(node.id, node.links.inputs);
    }
  }

  private changedMeasurements(): string[] {
    const now = new Set(this.files.files().flatMap((file) => [...file.measurements()]));
    const before = this.measurements;
    this.measurements = now;
    return [...[...now].filter((name) => !before.has(name)), ...[...before].filter((name) => !now.has(name))];
  }

  private drop(node: Node): void {
    this.unlink(node);
    this.nodes.delete(node.id);
    this.untaken.delete(node.id);
  }

  private unlink(node: Node): void {
    if (node.links === NO_LINKS) return;
    this.unresolved.delete(node);
    for (const input of node.links.inputs) {
      const takers = this.dependents.get(input);
      takers?.delete(node.id);
      if (takers?.size === 0 && this.nodes.has(input)) this.untaken.add(input);
    }
    for (const name of node.links.mentions) this.mentions.get(name)?.delete(node.id);
  }

  /** Looks a definition's names up again. */
  private link(node: Node): void {
    this.unlink(node);
    node.links = linksOf(node.file, node.declaration);
    node.unknown = node.declaration.statement.node.kind === 'solve';
    // while its block is missing, a name that is looked up later does not mention what it waits for
    if (node.links.unresolved || node.links.later.size > 0) this.unresolved.add(node);
    for (const input of node.links.inputs) {
      put(this.dependents, input, node.id);
      this.untaken.delete(input);
    }
    for (const name of node.links.mentions) put(this.mentions, name, node.id);
  }

  /** By place in the text; those of used files after the pattern's own. */
  private compare(a: string, b: string): number {
    const [one, other] = [this.nodes.get(a)!, this.nodes.get(b)!];
    const [d, e] = [one.declaration, other.declaration];
    if (one.file !== other.file) return one.file.key < other.file.key ? -1 : 1;
    return d.top.offset - e.top.offset || d.statement.start - e.statement.start;
  }

  target(id: string, ref: Ref): Target | undefined {
    return this.nodes.get(id)?.links.targets.get(ref);
  }

  /** What the names phase has to say of a definition. */
  findings(id: string): readonly Finding[] {
    return this.nodes.get(id)?.links.findings ?? [];
  }

  statement(id: string): Statement | undefined {
    return this.nodes.get(id)?.declaration.statement;
  }
}

/** Takes down the pieces whose centre, or how many of them go round, a seam says by sewing them to their own kind. */
function noteSelfSewn(statement: Statement | undefined, names: Set<string>): void {
  if (statement !== undefined) for (const piece of selfSewnBy(statement)) names.add(piece);
}

/** The name and the block it stands in. */
const pathOf = ({ scope, name }: Declaration): string => (scope === '' ? name : `${scope}/${name}`);

function put(map: Map<string, Set<string>>, key: string, value: string): void {
  const set = map.get(key);
  if (set === undefined) map.set(key, new Set([value]));
  else set.add(value);
}

function sameSet(a: ReadonlySet<string>, b: ReadonlySet<string>): boolean {
  if (a.size !== b.size) return false;
  for (const entry of a) if (!b.has(entry)) return false;
  return true;
}
