/** What a mentioned name means where it stands: block, then file, then used files, then body, then well-known. */
import type { Name, Ref, StatementNode } from '../../../grammar/syntax';
import { measurementNamed } from '../values/measurements';
import type { Declaration } from './declarations';
import type { FileNames } from './files';

/** What a reference leads to. `rest` are the names that the definition's own value answers (`.left`, `.start`, an edge). */
export interface Target {
  /** Path over all files: the file's key and the declaration's id, `measurement:waist`, or a given name (`origin`, `pi`, `nothing`). */
  readonly id: string;
  readonly kind: 'value' | 'shape' | 'block' | 'seam' | 'body' | 'measurement' | 'given';
  readonly file?: FileNames;
  readonly declaration?: Declaration;
  readonly rest: readonly Name[];
}

interface Block {
  readonly file: FileNames;
  readonly name: string;
}

/** Where a statement stands, for the look-up of names. */
export interface Scope {
  readonly file: FileNames;
  /** Blocks whose names are written bare, the innermost first. */
  readonly blocks: readonly Block[];
}

/** Files whose names are written bare in `file`: those it uses without `as`, and theirs. */
export function visibleFiles(file: FileNames): readonly FileNames[] {
  return (file.visible ??= bareFrom(file));
}

function bareFrom(file: FileNames): readonly FileNames[] {
  const seen = new Set<FileNames>([file]);
  const visit = (from: FileNames): void => {
    for (const use of from.uses) {
      if (use.file === undefined || use.alias !== '' || seen.has(use.file)) continue;
      seen.add(use.file);
      visit(use.file);
    }
  };
  visit(file);
  return [...seen];
}

/** The scope of a declaration: its draft; or its piece, with the piece or draft that this one is made from. */
export function scopeOf(file: FileNames, declaration: Declaration): Scope {
  const name = declaration.space === 'block' ? declaration.name : declaration.scope;
  return { file, blocks: name === '' ? [] : blocksFrom(file, name, 0) };
}

/** A chain of worked pieces ends at the draft; a longer chain than this is a circle, reported elsewhere. */
const LONGEST_CHAIN = 50;

function blocksFrom(file: FileNames, name: string, depth: number): readonly Block[] {
  const own: Block = { file, name };
  const node = file.get(name)?.statement.node;
  const ref = node === undefined || depth > LONGEST_CHAIN ? undefined : madeFrom(node);
  const parent = ref === undefined ? undefined : resolveBlock({ file, blocks: [] }, ref);
  if (parent?.file === undefined || parent.declaration === undefined) return [own];
  return [own, ...blocksFrom(parent.file, parent.declaration.name, depth + 1)];
}

/** The draft or piece that a piece is made from. */
function madeFrom(node: StatementNode): Ref | undefined {
  switch (node.kind) {
    case 'piece':
      return node.of ?? node.workedFrom;
    case 'lining':
    case 'facing':
      return node.of;
    case 'divide':
      return node.piece.kind === 'ref' ? node.piece : undefined;
    default:
      return undefined;
  }
}

/**
 * What a name leads to in a file. Its declaration is looked up when it is asked for: whoever names it stands while it is
 * edited, and would hold on to the text that it had when both were read.
 */
class Declared implements Target {
  readonly id: string;
  readonly #own: string;

  constructor(
    readonly file: FileNames,
    { id }: Declaration,
    readonly kind: Target['kind'],
    readonly rest: readonly Name[],
  ) {
    this.#own = id;
    this.id = file.key + id;
  }

  get declaration(): Declaration | undefined {
    return this.file.get(this.#own);
  }
}

/** What leads to a declaration of a file. */
export const target = (
  file: FileNames,
  declaration: Declaration,
  kind: Target['kind'],
  rest: readonly Name[],
): Target => new Declared(file, declaration, kind, rest);

const outside = (file: FileNames): Scope => ({ file, blocks: [] });

function aliased(file: FileNames, path: readonly Name[]): FileNames | undefined {
  return path.length < 2 ? undefined : file.uses.find((use) => use.alias === path[0]!.text)?.file;
}

/** A name of a used file that can't be had: that was told where the file is used. */
export const isOfLostFile = (file: FileNames, path: readonly Name[]): boolean =>
  path.length > 1 && file.lost.has(path[0]!.text);

/** Whether names that lead nowhere may be of a file that can't be had. */
export const losesFiles = (file: FileNames): boolean => visibleFiles(file).some(({ lost }) => lost.has(''));

export function resolveValue(scope: Scope, path: readonly Name[]): Target | undefined {
  const [first, second] = path;
  for (const block of scope.blocks) {
    const found = block.file.get(`${block.name}/=${first!.text}`);
    if (found !== undefined) return target(block.file, found, 'value', path.slice(1));
  }
  const files = visibleFiles(scope.file);
  for (const file of files) {
    const found = file.get(`=${first!.text}`);
    if (found !== undefined) return target(file, found, 'value', path.slice(1));
  }
  if (second !== undefined) {
    for (const file of files) {
      const found = file.get(`${first!.text}/=${second.text}`);
      if (found !== undefined) return target(file, found, 'value', path.slice(2));
    }
    const alias = aliased(scope.file, path);
    if (alias !== undefined) return resolveValue(outside(alias), path.slice(1));
  }
  const rest = path.slice(1);
  if (isMeasurement(files, first!.text))
    return { id: `measurement:${first!.text}`, kind: 'measurement', rest };
  return GIVEN_VALUES.has(first!.text) ? { id: first!.text, kind: 'given', rest } : undefined;
}

const GIVEN_VALUES: ReadonlySet<string> = new Set(['pi', 'nothing']);

const isMeasurement = (files: readonly FileNames[], name: string): boolean =>
  measurementNamed.has(name) || files.some((file) => file.measurements().has(name));

export function resolveShape(scope: Scope, path: readonly Name[]): Target | undefined {
  const [first, second] = path;
  if (first!.text === 'origin') return { id: 'origin', kind: 'given', rest: path.slice(1) };
  for (const block of scope.blocks) {
    const found = block.file.get(`${block.name}/${first!.text}`);
    if (found !== undefined) return target(block.file, found, 'shape', path.slice(1));
  }
  for (const file of visibleFiles(scope.file)) {
    const block = file.get(first!.text);
    if (block?.space !== 'block') continue;
    if (block.statement.node.kind !== 'draft') return target(file, block, 'block', path.slice(1));
    const found = second === undefined ? undefined : file.get(`${first!.text}/${second.text}`);
    return found === undefined ? undefined : target(file, found, 'shape', path.slice(2));
  }
  const alias = aliased(scope.file, path);
  return alias === undefined ? undefined : resolveShape(outside(alias), path.slice(1));
}

/** A draft or a piece: `skirt`, `front`, `block.front`. */
export function resolveBlock(scope: Scope, ref: Ref): Target | undefined {
  return blockOf(scope.file, ref.path);
}

function blockOf(from: FileNames, path: readonly Name[]): Target | undefined {
  for (const file of visibleFiles(from)) {
    const found = file.get(path[0]!.text);
    if (found?.space === 'block') return target(file, found, 'block', path.slice(1));
  }
  const alias = aliased(from, path);
  return alias === undefined ? undefined : blockOf(alias, path.slice(1));
}

/** `front.side` (a piece with the edge as rest), or the bare name of a seam. */
export function resolveEdge(scope: Scope, path: readonly Name[]): Target | undefined {
  if (path.length === 1) {
    const seam = scope.file.get(`seam:${path[0]!.text}`);
    if (seam !== undefined) return target(scope.file, seam, 'seam', []);
  }
  const block = blockOf(scope.file, path);
  return block?.declaration?.statement.node.kind === 'draft' ? undefined : block;
}

/** Something that a finding may concern: what is sewn, then pieces with their edges, bodies, values and shapes. */
export function resolveSubject(scope: Scope, ref: Ref): Target | undefined {
  const { path } = ref;
  if (path.length === 1) {
    for (const mark of SEWN) {
      const found = scope.file.get(`${mark}:${path[0]!.text}`);
      if (found !== undefined) return target(scope.file, found, 'seam', []);
    }
  }
  return (
    resolveShape(scope, path) ??
    resolveBlock(scope, ref) ??
    resolveBody(scope, path) ??
    resolveValue(scope, path)
  );
}

const SEWN = ['seam', 'finish', 'notch'] as const;

/** Names of what is sewn in a file. */
export const sewnNames = ({ file }: Scope): readonly string[] =>
  SEWN.flatMap((kind) => file.ofKind(kind)).flatMap((top) => file.of(top).map(({ name }) => name));

export function resolveBody(scope: Scope, path: readonly Name[]): Target | undefined {
  for (const file of visibleFiles(scope.file)) {
    const found = file.get(`body:${path[0]!.text}`);
    if (found !== undefined) return target(file, found, 'body', path.slice(1));
  }
  return undefined;
}

/** Names that could stand here, for the nearest-name advice and for completion. */
export function namesInScope(scope: Scope, space: 'value' | 'shape' | 'block' | 'body'): ReadonlySet<string> {
  const names = new Set<string>();
  const visible = visibleFiles(scope.file);
  for (const file of new Set([...visible, ...scope.blocks.map((block) => block.file)])) {
    const blocks = new Set(scope.blocks.flatMap((block) => (block.file === file ? [block.name] : [])));
    const seen = visible.includes(file);
    for (const { space: kind, scope: of, name } of file.within(blocks)) {
      if (kind === space && (of === '' ? seen : blocks.has(of))) names.add(name);
      if (kind === 'block' && space === 'shape' && seen) names.add(name);
    }
    if (space === 'value' && seen) for (const name of file.measurements()) names.add(name);
  }
  if (space === 'value') for (const name of measurementNamed.keys()) names.add(name);
  return names;
}
