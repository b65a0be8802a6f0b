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
import { inOrder, type Group } from './order';

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

/** One definition: where it stands, what it takes. */
export class Node {
  links: Links = NO_LINKS;

  constructor(
    /** Path over all files. */
    readonly id: string,
    readonly file: FileNames,
    private last: Declaration,
  ) {}

  /** As it stands in the present text: an edit beside it moves it into a new block. */
  get declaration(): Declaration {
    this.last = this.file.get(this.last.id) ?? this.last;
    return this.last;
  }
}

export interface NetworkChange {
  /** Definitions whose words, or the meaning of whose names, are new. */
  readonly dirty: ReadonlySet<string>;
  readonly removed: ReadonlySet<string>;
  /** Whether the order of evaluation was found anew. */
  readonly reordered: boolean;
}

export class Network {
  readonly nodes = new Map<string, Node>();
  /** Who takes a definition as input. */
  readonly dependents = new Map<string, Set<string>>();
  /** Groups in the order of evaluation: single definitions, or circles held together by names. */
  groups: readonly Group[] = [];
  readonly groupOf = new Map<string, number>();
  /** Which definitions mention a name, so that a new or lost name finds those it concerns. */
  private readonly mentions = new Map<string, Set<string>>();
  private measurements: ReadonlySet<string> = new Set();

  constructor(private readonly files: FileSet) {}

  /** Follows the files to their present text. */
  update(): NetworkChange {
    const { changed, usesChanged } = this.files.update();
    const dirty = new Set<string>();
    const removed = new Set<string>();
    const names = new Set<string>();
    for (const [file, ids] of changed) {
      for (const id of ids) this.replace(file, id, dirty, removed, names);
    }
    for (const name of this.changedMeasurements()) names.add(name);
    if (usesChanged) {
      this.dropUnused(removed);
      for (const id of this.nodes.keys()) dirty.add(id);
    }
    for (const name of names) for (const id of this.mentions.get(name) ?? []) dirty.add(id);
    if (names.size > 0) for (const node of this.nodes.values()) if (node.links.unresolved) dirty.add(node.id);
    let moved = removed.size > 0;
    for (const id of dirty) {
      const node = this.nodes.get(id);
      if (node !== undefined) moved = this.link(node) || moved;
    }
    if (moved) for (const id of this.sort()) dirty.add(id);
    return { dirty, removed, reordered: moved };
  }

  private replace(file: FileNames, id: string, dirty: Set<string>, removed: Set<string>, names: Set<string>): void {
    const full = file.key + id;
    const declaration = file.get(id);
    const node = this.nodes.get(full);
    if (declaration === undefined) {
      if (node === undefined) return;
      this.drop(node);
      removed.add(full);
      names.add(node.declaration.name);
      return;
    }
    removed.delete(full);
    dirty.add(full);
    if (node === undefined) {
      this.nodes.set(full, new Node(full, file, declaration));
      names.add(declaration.name);
      return;
    }
    // bands and notches take the edges that a seam names
    if (declaration.space === 'seam') names.add(declaration.name);
    // a piece made from another block, or a draft drawn for the other side, changes what stands in it
    if (declaration.space === 'block' && node.links.head !== headOf(declaration.statement)) {
      names.add(declaration.name);
      for (const other of this.nodes.values()) {
        if (other.file === file && other.declaration.scope === declaration.name) dirty.add(other.id);
      }
    }
  }

  private dropUnused(removed: Set<string>): void {
    const used = new Set(this.files.files());
    for (const node of [...this.nodes.values()]) {
      if (used.has(node.file)) continue;
      this.drop(node);
      removed.add(node.id);
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
  }

  private unlink(node: Node): void {
    for (const input of node.links.inputs) this.dependents.get(input)?.delete(node.id);
    for (const name of node.links.mentions) this.mentions.get(name)?.delete(node.id);
  }

  /** Looks a definition's names up again; answers whether its inputs are others than before. */
  private link(node: Node): boolean {
    this.unlink(node);
    const before = node.links;
    node.links = linksOf(node.file, node.declaration);
    for (const input of node.links.inputs) put(this.dependents, input, node.id);
    for (const name of node.links.mentions) put(this.mentions, name, node.id);
    return before === NO_LINKS || !sameSet(before.inputs, node.links.inputs);
  }

  /** Puts the definitions in order; answers those that stand in another circle than before, or in none any more. */
  private sort(): readonly string[] {
    const { root } = this.files;
    const roots = [...root.all()].map(({ id }) => root.key + id).filter((id) => this.nodes.has(id));
    const before = this.circles();
    const solve = (id: string): boolean => this.nodes.get(id)?.declaration.statement.node.kind === 'solve';
    this.groups = inOrder(
      roots,
      (id) => this.nodes.get(id)?.links.inputs ?? [],
      solve,
    );
    this.groupOf.clear();
    this.groups.forEach((group, index) => group.members.forEach((id) => this.groupOf.set(id, index)));
    const after = this.circles();
    return [...new Set([...before.keys(), ...after.keys()])].filter((id) => before.get(id) !== after.get(id));
  }

  /** Whoever stands in a circle, with all that stand in it. */
  private circles(): ReadonlyMap<string, string> {
    const found = new Map<string, string>();
    for (const { members, circle, unknown } of this.groups) {
      if (!circle && unknown === undefined) continue;
      const all = `${circle ? 'circle' : 'unknown'} ${members.join(' ')}`;
      for (const id of members) found.set(id, all);
    }
    return found;
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

function put(map: Map<string, Set<string>>, key: string, value: string): void {
  const set = map.get(key);
  if (set === undefined) map.set(key, new Set([value]));
  else set.add(value);
}

const sameSet = (a: ReadonlySet<string>, b: ReadonlySet<string>): boolean =>
  a.size === b.size && [...a].every((entry) => b.has(entry));
