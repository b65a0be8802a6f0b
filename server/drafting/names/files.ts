/** The files of one pattern as the names see them: what each declares, and which files it uses. */
import type { Expr, SourceFile, Statement, StatementNode, TopLevel, UseNode } from '../../../grammar/syntax';
import type { Door } from '../model';
import { declarations, type Declaration } from './declarations';
import { Repeats } from './repeats';
import { TopLevels } from './top-levels';

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
  /** How used files are called that can't be had, or whose line could not be read; '' without `as`. */
  lost: ReadonlySet<string> = new Set();
  /** Files whose names are written bare in this one, once somebody asked; anew when files use others. */
  visible?: readonly FileNames[];
  /** Counts the versions of the file. */
  revision = 0;
  /** Every declaration by its path, in file order; more than one where a name is given twice. */
  private readonly declared = new Map<string, Declaration[]>();
  private readonly byTop = new Map<TopLevel, readonly Declaration[]>();
  private readonly repeats = new Repeats();
  /** Top-level statements that declare a choice, themselves or in their block. */
  private readonly choosing = new Set<TopLevel>();
  /** Pieces with notches in their block. */
  private readonly notching = new Set<TopLevel>();
  /** Top-level statements with something wrong in their text. */
  private readonly misread = new Set<TopLevel>();
  private measured?: ReadonlySet<string>;
  private valueNames?: ReadonlySet<string>;
  private readonly tops = new TopLevels();

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
    return this.tops.items;
  }

  /** Top-level statements of one kind, in file order; the same list while they stay the same. */
  ofKind(kind: StatementNode['kind']): readonly TopLevel[] {
    return this.tops.ofKind(kind);
  }

  /** Top-level statements of some kinds, in file order. */
  ofKinds(kinds: readonly StatementNode['kind'][]): readonly TopLevel[] {
    return this.tops.ofKinds(kinds);
  }

  /** Takes over a new version of the file; answers the paths whose first declaration is another than before. */
  update(source: SourceFile): ReadonlySet<string> {
    const changed = new Set<string>();
    if (source.items === this.topLevels) return changed;
    this.revision++;
    const { gone, come } = this.tops.update(source.items);
    delete this.valueNames;
    for (const [id, was] of this.replace(gone, come)) {
      if (this.get(id)?.statement !== was?.statement) changed.add(id);
    }
    return changed;
  }

  /** Answers what stood first under each path concerned. */
  private replace(
    gone: readonly TopLevel[],
    come: readonly TopLevel[],
  ): ReadonlyMap<string, Declaration | undefined> {
    const firsts = new Map<string, Declaration | undefined>();
    const note = (id: string): void => {
      if (!firsts.has(id)) firsts.set(id, this.get(id));
    };
    const old = gone.flatMap((top) => this.of(top));
    // what is kept may stand in another order afterwards
    const { twice } = this.repeats;
    if (twice.size > 0) for (const { id } of old) if (twice.has(id)) note(id);
    const known = new Map(old.map((declaration) => [declaration.statement, declaration]));
    gone.forEach((top) => this.forget(top));
    const now = new Set(come.flatMap((top) => this.learn(top, known)));
    const left = new Set(old.filter((declaration) => !now.has(declaration)));
    for (const declaration of [...left, ...now]) note(declaration.id);
    left.forEach((declaration) => this.remove(declaration));
    const held = new Set(old);
    for (const declaration of now) if (!held.has(declaration)) this.insert(declaration);
    for (const id of twice) if (firsts.has(id)) this.declared.get(id)?.sort(inFileOrder);
    return firsts;
  }

  private forget(top: TopLevel): void {
    this.byTop.delete(top);
    this.choosing.delete(top);
    this.notching.delete(top);
    this.misread.delete(top);
    if (givesMeasurements(top)) delete this.measured;
  }

  private learn(top: TopLevel, known: ReadonlyMap<Statement, Declaration>): readonly Declaration[] {
    const list = declarations(top, known);
    this.byTop.set(top, list);
    if (list.some(({ statement }) => statement.node.kind === 'choose')) this.choosing.add(top);
    if (list.some(({ space, scope }) => space === 'notch' && scope !== '')) this.notching.add(top);
    if (isMisread(top.statement)) this.misread.add(top);
    if (givesMeasurements(top)) delete this.measured;
    return list;
  }

  private remove(declaration: Declaration): void {
    this.repeats.remove(declaration);
    const left = (this.declared.get(declaration.id) ?? []).filter((other) => other !== declaration);
    if (left.length === 0) this.declared.delete(declaration.id);
    else this.declared.set(declaration.id, left);
  }

  private insert(declaration: Declaration): void {
    this.repeats.add(declaration);
    const others = this.declared.get(declaration.id);
    const list = others === undefined ? [declaration] : [...others, declaration].sort(inFileOrder);
    this.declared.set(declaration.id, list);
  }

  get(id: string): Declaration | undefined {
    return this.declared.get(id)?.[0];
  }

  /** All first declarations, in file order: a walk through the whole file. */
  all(): readonly Declaration[] {
    return this.topLevels.flatMap((top) => this.firstOf(top));
  }

  private firstOf(top: TopLevel): readonly Declaration[] {
    const own = this.of(top);
    // nearly always a name is given once
    const isFirst = (declaration: Declaration): boolean => this.get(declaration.id) === declaration;
    return own.every(isFirst) ? own : own.filter(isFirst);
  }

  /** What is declared at top level, and in blocks of the given names, in file order. */
  *within(blocks: ReadonlySet<string>): Iterable<Declaration> {
    for (const top of this.topLevels) {
      for (const declaration of this.of(top)) {
        if (declaration.scope !== '' && !blocks.has(declaration.scope)) break;
        yield declaration;
      }
    }
  }

  /** Choices, first declarations alone, in file order. */
  *choices(): Iterable<Declaration> {
    for (const top of [...this.choosing].sort((a, b) => a.offset - b.offset)) {
      for (const declaration of this.firstOf(top)) {
        if (declaration.statement.node.kind === 'choose') yield declaration;
      }
    }
  }

  /** Notches, and pieces with notches in their block, in file order; the same list while it may. */
  notched(): readonly TopLevel[] {
    const bare = this.ofKind('notch');
    if (this.notching.size === 0) return bare;
    return [...bare, ...this.notching].sort((a, b) => a.offset - b.offset);
  }

  /** Top-level statements of whose text something was found, in file order. */
  faulty(): readonly TopLevel[] {
    return [...this.misread].sort((a, b) => a.offset - b.offset);
  }

  /** Bodies and size tables, first declarations alone, in file order. */
  bodies(): readonly Declaration[] {
    const tops = this.ofKinds(['body', 'sizes', 'broken']);
    return tops.flatMap((top) => this.firstOf(top).filter(({ space }) => space === 'body'));
  }

  /** Names that some body, size table or `measure` of this file gives a meaning. */
  measurements(): ReadonlySet<string> {
    this.measured ??= new Set(
      this.topLevels.flatMap((top) => (givesMeasurements(top) ? measuredNames(top.statement) : [])),
    );
    return this.measured;
  }

  /** Names of the values that stand at top level. */
  values(): ReadonlySet<string> {
    this.valueNames ??= new Set(
      this.topLevels
        .flatMap((top) => this.of(top).slice(0, 1))
        .flatMap(({ space, name }) => (space === 'value' ? [name] : [])),
    );
    return this.valueNames;
  }

  /** What a top-level statement declares. */
  of(top: TopLevel): readonly Declaration[] {
    return this.byTop.get(top) ?? [];
  }

  /** First declarations of a name, however its capitals are written, in file order. */
  alike(name: string): readonly Declaration[] {
    const found = [...this.repeats.namedAlike(name)].filter((one) => this.get(one.id) === one);
    return found.sort(inFileOrder);
  }

  /** Values in a draft whose name the file gives to another, and those called as one of `others`, in file order. */
  hiding(others: Iterable<string>): readonly Declaration[] {
    const found = new Set<Declaration>();
    for (const name of this.repeats.repeatedValues) {
      if (this.get(`=${name}`) === undefined) continue;
      for (const declaration of this.repeats.valuesNamed(name))
        if (declaration.scope !== '') found.add(declaration);
    }
    for (const name of others)
      for (const declaration of this.repeats.valuesNamed(name)) found.add(declaration);
    const first = [...found].filter(
      (one) => this.get(one.id) === one && one.statement.node.kind !== 'broken',
    );
    return first.sort(inFileOrder);
  }

  /** Names given twice, or told apart by capitals alone, in file order of what comes second. */
  clashes(): readonly Clash[] {
    const found: Clash[] = [];
    for (const id of this.repeats.twice) {
      const [first, ...more] = this.declared.get(id)!;
      for (const second of more) {
        if (second.statement.node.kind === 'broken') continue;
        found.push({ first: first!, second, why: twoSorts(first!, second) ? 'draft-and-piece' : 'twice' });
      }
    }
    for (const alike of this.repeats.alikeButForCapitals()) {
      const [first, ...more] = [...alike].filter((one) => this.get(one.id) === one).sort(inFileOrder);
      for (const second of more) found.push({ first: first!, second, why: 'case' });
    }
    return found.sort((a, b) => inFileOrder(a.second, b.second));
  }
}

const inFileOrder = (a: Declaration, b: Declaration): number =>
  a.top.offset - b.top.offset || a.statement.start - b.statement.start;

const twoSorts = (first: Declaration, second: Declaration): boolean =>
  first.space === 'block' &&
  (first.statement.node.kind === 'draft') !== (second.statement.node.kind === 'draft');

const isMisread = ({ problems, block = [] }: Statement): boolean =>
  problems.length > 0 || block.some(isMisread);

/** The name that a `use` line gives which could not be read. */
const aliasOf = ({ node, text }: Statement): string[] =>
  node.kind === 'broken' && node.word === 'use' ? [/ as +([^\s]+)/.exec(text)?.[1] ?? ''] : [];

const MEASURING: ReadonlySet<StatementNode['kind']> = new Set(['measure', 'body', 'sizes']);
const givesMeasurements = ({ statement }: TopLevel): boolean => MEASURING.has(statement.node.kind);

function measuredNames(statement: Statement): string[] {
  const { node, block = [] } = statement;
  if (node.kind === 'measure') return [node.name.text];
  if (node.kind !== 'body' && node.kind !== 'sizes') return [];
  return block.flatMap(({ node: row }) =>
    row.kind === 'measured' || row.kind === 'row' ? [row.name.text] : [],
  );
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
    for (const file of this.loaded.values()) delete file.visible;
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
      .map(
        (file) =>
          `${file.uri}:${file.uses.map((use) => `${use.alias}=${use.file?.uri ?? use.failure}`).join(',')}${[...file.lost].join(' ')}`,
      )
      .join('|');
  }

  private visit(
    file: FileNames,
    way: readonly FileNames[],
    changed: Map<FileNames, ReadonlySet<string>>,
  ): void {
    if (changed.has(file)) return;
    const source = this.sourceOf(file.uri);
    changed.set(file, file.update(source ?? { text: '', items: [] }));
    const uses: Use[] = [];
    for (const { statement } of file.ofKind('use')) {
      if (statement.node.kind === 'use')
        uses.push(this.follow(file, statement, statement.node, way, changed));
    }
    file.uses.splice(0, file.uses.length, ...uses);
    const failed = uses.filter(({ failure }) => failure !== undefined).map(({ alias }) => alias);
    file.lost = new Set([...failed, ...file.ofKind('broken').flatMap(({ statement }) => aliasOf(statement))]);
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
