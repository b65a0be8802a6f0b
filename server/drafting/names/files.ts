/** The files of one pattern as the names see them: what each declares, and which files it uses. */
import type { Expr, SourceFile, Statement, TopLevel, UseNode } from '../../../grammar/syntax';
import type { Door } from '../model';
import { declarations, type Declaration } from './declarations';

/** One `use` line and where it leads. */
export interface Use {
  readonly statement: Statement;
  readonly node: UseNode;
  readonly alias: string;
  /** The file, once it is loaded. */
  readonly file?: FileNames;
  readonly failure?: 'missing' | 'outside' | 'circle';
  /** For a circle: the files on the way round, as written paths. */
  readonly circle?: readonly string[];
}

/** A value that a `use` line sets in the file it uses, read where that line stands. */
export interface Given {
  readonly value: Expr;
  readonly statement: Statement;
  readonly by: FileNames;
}

/** Two statements that give one name. */
export interface Clash {
  readonly first: Declaration;
  readonly second: Declaration;
  readonly why: 'twice' | 'case' | 'draft-and-piece';
}

/** Declarations of one file, kept up to date top-level statement by top-level statement. */
export class FileNames {
  readonly uses: Use[] = [];
  /** Every declaration by its path, in file order; more than one where a name is given twice. */
  private readonly declared = new Map<string, Declaration[]>();
  private readonly byTop = new Map<TopLevel, readonly Declaration[]>();
  private measured?: ReadonlySet<string>;
  private items: readonly TopLevel[] = [];

  /**
   * @param key what stands before the paths of this file: '' for the pattern itself
   * @param given values that the using file sets in this copy of the file (`use … with a = v`)
   */
  constructor(
    readonly key: string,
    readonly uri: string,
    readonly given: ReadonlyMap<string, Given> = new Map(),
  ) {}

  get topLevels(): readonly TopLevel[] {
    return this.items;
  }

  /** Takes over a new version of the file; answers the paths whose first declaration is another than before. */
  update(source: SourceFile): ReadonlySet<string> {
    const changed = new Set<string>();
    const before = this.items;
    const after = source.items;
    let head = 0;
    while (head < before.length && head < after.length && before[head] === after[head]) head++;
    let tail = 0;
    while (
      tail < before.length - head &&
      tail < after.length - head &&
      before[before.length - 1 - tail] === after[after.length - 1 - tail]
    ) {
      tail++;
    }
    const firsts = new Map<string, Declaration | undefined>();
    const note = (id: string): void => {
      if (!firsts.has(id)) firsts.set(id, this.declared.get(id)?.[0]);
    };
    for (const top of before.slice(head, before.length - tail)) {
      for (const declaration of this.byTop.get(top) ?? []) {
        note(declaration.id);
        this.remove(declaration);
      }
      this.byTop.delete(top);
    }
    for (const top of after.slice(head, after.length - tail)) {
      const list = declarations(top);
      this.byTop.set(top, list);
      for (const declaration of list) {
        note(declaration.id);
        this.insert(declaration);
      }
    }
    this.items = after;
    if (changed.size > 0 || firsts.size > 0) delete this.measured;
    for (const [id, was] of firsts) {
      if (this.declared.get(id)?.[0]?.statement !== was?.statement) changed.add(id);
    }
    return changed;
  }

  private remove(declaration: Declaration): void {
    const left = (this.declared.get(declaration.id) ?? []).filter((other) => other !== declaration);
    if (left.length === 0) this.declared.delete(declaration.id);
    else this.declared.set(declaration.id, left);
  }

  private insert(declaration: Declaration): void {
    const list = [...(this.declared.get(declaration.id) ?? []), declaration];
    list.sort((a, b) => a.top.offset - b.top.offset || a.statement.start - b.statement.start);
    this.declared.set(declaration.id, list);
  }

  get(id: string): Declaration | undefined {
    return this.declared.get(id)?.[0];
  }

  /** All first declarations, in file order. */
  *all(): Iterable<Declaration> {
    for (const top of this.items) {
      for (const declaration of this.byTop.get(top) ?? []) {
        if (this.declared.get(declaration.id)?.[0] === declaration) yield declaration;
      }
    }
  }

  /** Names that some body, size table or `measure` of this file gives a meaning. */
  measurements(): ReadonlySet<string> {
    if (this.measured === undefined) {
      this.measured = new Set(this.items.flatMap(({ statement }) => measuredNames(statement)));
    }
    return this.measured;
  }

  /** What a top-level statement declares. */
  of(top: TopLevel): readonly Declaration[] {
    return this.byTop.get(top) ?? [];
  }

  /** Names given twice, or told apart by capitals alone. */
  clashes(): readonly Clash[] {
    const found: Clash[] = [];
    const folded = new Map<string, Declaration>();
    const blocks = new Map<string, Declaration>();
    for (const [id, list] of this.declared) {
      const first = list[0]!;
      if (first.space === 'expect' || first.space === 'line') continue;
      for (const second of list.slice(1)) {
        if (second.statement.node.kind === 'broken') continue;
        const sorts = [first, second].map(({ statement }) => (statement.node.kind === 'draft' ? 'draft' : 'piece'));
        const twoSorts = first.space === 'block' && sorts[0] !== sorts[1];
        found.push({ first, second, why: twoSorts ? 'draft-and-piece' : 'twice' });
      }
      const other = folded.get(id.toLowerCase());
      if (other === undefined) folded.set(id.toLowerCase(), first);
      else found.push(inOrder(other, first, 'case'));
      if (first.space === 'block') blocks.set(first.name, first);
    }
    return found;
  }
}

function measuredNames(statement: Statement): string[] {
  const { node, block = [] } = statement;
  if (node.kind === 'measure') return [node.name.text];
  if (node.kind !== 'body' && node.kind !== 'sizes') return [];
  return block.flatMap(({ node: row }) => (row.kind === 'measured' || row.kind === 'row' ? [row.name.text] : []));
}

function inOrder(a: Declaration, b: Declaration, why: Clash['why']): Clash {
  const swap = b.top.offset < a.top.offset || (a.top === b.top && b.statement.start < a.statement.start);
  return swap ? { first: b, second: a, why } : { first: a, second: b, why };
}

/** Reads the files that a pattern uses, and theirs; a file that uses itself on the way is a circle. */
export class FileSet {
  readonly root: FileNames;
  private readonly loaded = new Map<string, FileNames>();

  constructor(
    rootUri: string,
    private readonly door: Door,
    private readonly sourceOf: (uri: string) => SourceFile | undefined,
  ) {
    this.root = new FileNames('', rootUri);
    this.loaded.set(rootUri, this.root);
  }

  /** All files now in use, the pattern itself first. */
  files(): readonly FileNames[] {
    const seen = new Set<FileNames>();
    const visit = (file: FileNames): void => {
      if (seen.has(file)) return;
      seen.add(file);
      for (const use of file.uses) if (use.file !== undefined) visit(use.file);
    };
    visit(this.root);
    return [...seen];
  }

  /**
   * Brings every file up to its present text. Answers the changed paths by file, and whether the set of files or the
   * way they use each other changed.
   */
  update(): { changed: Map<FileNames, ReadonlySet<string>>; usesChanged: boolean } {
    const changed = new Map<FileNames, ReadonlySet<string>>();
    const before = this.shape();
    this.visit(this.root, [this.root], changed);
    this.forgetUnused();
    return { changed, usesChanged: this.shape() !== before };
  }

  /** A file that nobody uses any more is taken anew when it is used again. */
  private forgetUnused(): void {
    const used = new Set(this.files());
    for (const [uri, file] of this.loaded) if (!used.has(file)) this.loaded.delete(uri);
  }

  private shape(): string {
    return this.files()
      .map((file) => `${file.uri}:${file.uses.map((use) => `${use.alias}=${use.file?.uri ?? use.failure}`).join(',')}`)
      .join('|');
  }

  private visit(file: FileNames, way: readonly FileNames[], changed: Map<FileNames, ReadonlySet<string>>): void {
    if (changed.has(file)) return;
    const source = this.sourceOf(file.uri);
    changed.set(file, file.update(source ?? { text: '', items: [] }));
    const uses: Use[] = [];
    for (const top of file.topLevels) {
      const { statement } = top;
      if (statement.node.kind === 'use') uses.push(this.follow(file, statement, statement.node, way, changed));
    }
    file.uses.splice(0, file.uses.length, ...uses);
  }

  private follow(
    from: FileNames,
    statement: Statement,
    node: UseNode,
    way: readonly FileNames[],
    changed: Map<FileNames, ReadonlySet<string>>,
  ): Use {
    const use = { statement, node, alias: node.as?.text ?? '' };
    const found = this.door.resolve(from.uri, node.path.text);
    if ('outside' in found) return { ...use, failure: 'outside' };
    const round = way.findIndex((file) => file.uri === found.uri);
    if (round >= 0) return { ...use, failure: 'circle', circle: way.slice(round).map((file) => file.uri) };
    if (this.sourceOf(found.uri) === undefined) return { ...use, failure: 'missing' };
    const file = this.load(found.uri, from, statement, node);
    this.visit(file, [...way, file], changed);
    return { ...use, file };
  }

  /** One copy of a file; a `use` that sets values has a copy of its own. */
  private load(uri: string, by: FileNames, statement: Statement, node: UseNode): FileNames {
    const own = node.given.length === 0 ? '' : `?${by.key}${statement.text}`;
    const before = this.loaded.get(uri + own);
    if (before !== undefined) return before;
    const given = new Map(node.given.map(({ name, value }) => [name.text, { value, statement, by }]));
    const file = new FileNames(`${uri}${own}#`, uri, given);
    this.loaded.set(uri + own, file);
    return file;
  }
}
