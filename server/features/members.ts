/** What a piece has: its own edges, darts and marks, those of the piece it is made from, and the points of its draft. */
import { keptFor } from '../../grammar/kept';
import type { Name, Ref, Statement, StatementNode } from '../../grammar/syntax';
import type { Declaration } from '../drafting/names/declarations';
import type { FileNames } from '../drafting/names/files';
import { resolveBlock, resolveShape, scopeOf } from '../drafting/names/resolve';
import { declaredMeaning, type Meaning } from './meaning';

/** A part of a piece; edges, darts and marks of one name in one piece are one. */
export const part = (file: FileNames, piece: string, name: string): Meaning => ({
  key: `${file.uri}#${piece}//${name}`,
  kind: 'part',
  name,
  uri: file.uri,
});

/** A chain of worked pieces ends at the draft; a longer one than this is a circle. */
const LONGEST_CHAIN = 50;

/**
 * What a name means that is asked of a piece.
 *
 * @param reach `own`: only what the piece's own lines name; `any`: also what it has from the piece or draft it is made of
 */
export function memberOf(
  file: FileNames,
  piece: Declaration,
  name: string,
  reach: 'own' | 'any',
  depth = 0,
): Meaning | undefined {
  const { node } = piece.statement;
  const cut = node.kind === 'divide' ? cutNamed(file, piece, name) : undefined;
  if (cut !== undefined) return cut;
  if (namesOwn(file, piece, name, depth)) return part(file, piece.name, name);
  if (reach === 'own') return undefined;
  const shape = file.get(`${piece.name}/${name}`);
  if (shape !== undefined) return declaredMeaning(file, shape);
  if (depth > LONGEST_CHAIN) return undefined;
  for (const ref of madeFrom(node)) {
    const from = resolveBlock({ file, blocks: [] }, ref);
    const found = from?.declaration && memberOf(from.file!, from.declaration, name, 'any', depth + 1);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The blocks that a piece is made from. */
function madeFrom(node: StatementNode): readonly Ref[] {
  const refs: unknown[] = [];
  if (node.kind === 'piece') refs.push(node.of, node.workedFrom);
  else if (node.kind === 'lining' || node.kind === 'facing') refs.push(node.of);
  else if (node.kind === 'divide') refs.push(node.piece);
  else if (node.kind === 'join') refs.push(node.one, node.other);
  return refs.filter((ref): ref is Ref => (ref as Ref | undefined)?.kind === 'ref');
}

/** The cut of a divide, which is an edge of every share: the name after `as`, or that of the line itself. */
function cutNamed(file: FileNames, share: Declaration, name: string): Meaning | undefined {
  const { node } = share.statement;
  if (node.kind !== 'divide' || node.along?.name?.text !== name) return undefined;
  return cutMeaning(file, share);
}

export function cutMeaning(file: FileNames, { statement, ...rest }: Declaration): Meaning | undefined {
  const { node } = statement;
  if (node.kind !== 'divide' || node.along?.name === undefined) return undefined;
  const { line, name } = node.along;
  if (line.kind === 'ref' && line.at.from === name.at.from) {
    const target = resolveShape(scopeOf(file, { statement, ...rest }), line.path);
    if (target?.declaration !== undefined && target.rest.length === 0)
      return declaredMeaning(target.file!, target.declaration);
  }
  return part(file, node.into[0]?.name.text ?? '', name.text);
}

export interface OwnName {
  readonly name: Name;
  /** False for a dart's line that only says more of a dart of the outline, or of the piece this one is made from. */
  readonly defines: boolean;
}

function namesOwn(file: FileNames, piece: Declaration, name: string, depth: number): boolean {
  const block = blockOf(piece);
  if (block === undefined) return false;
  const found = ownNames(block).get(name) ?? [];
  if (found.some(({ defines }) => defines)) return true;
  if (found.length === 0 || depth > LONGEST_CHAIN) return false;
  // more is said of a dart here: whose it is, the piece before knows; if nobody does, it is ours
  return !madeFrom(piece.statement.node).some((ref) => {
    const from = resolveBlock({ file, blocks: [] }, ref);
    return (
      from?.declaration !== undefined &&
      memberOf(from.file!, from.declaration, name, 'any', depth + 1) !== undefined
    );
  });
}

/** The statement whose block holds a piece's lines. */
function blockOf({ statement, name }: Declaration): Statement | undefined {
  if (statement.node.kind !== 'divide') return statement;
  return statement.block?.find(({ node }) => node.kind === 'share' && node.name.text === name);
}

/** Kept while the statement stays the same object. */
const ownNames = keptFor(ownNamesOf);

function ownNamesOf(block: Statement): ReadonlyMap<string, readonly OwnName[]> {
  const found = new Map<string, OwnName[]>();
  const add = (name: Name, defines: boolean): void => {
    found.set(name.text, [...(found.get(name.text) ?? []), { name, defines }]);
  };
  for (const line of block.block ?? []) {
    const { node } = line;
    if (isPart(node)) add(node.name, node.kind !== 'dart' || node.on !== undefined);
    for (const inner of line.block ?? []) {
      if (inner.node.kind !== 'edge') continue;
      add(inner.node.name, true);
      for (const run of inner.node.runs) if (run.kind === 'dart') add(run.name, true);
    }
  }
  return found;
}

/** Lines of a piece that name a part of it. */
export function isPart(
  node: StatementNode,
): node is StatementNode & { readonly name: Name; readonly on?: unknown } {
  if (NOT_PARTS.has(node.kind)) return false;
  return 'name' in node && node.name !== undefined;
}

/** Values and shapes of a piece have paths of their own; shares are pieces. */
const NOT_PARTS: ReadonlySet<StatementNode['kind']> = new Set([
  ...(['let', 'choose', 'solve', 'shape', 'circle', 'share', 'broken', 'later'] as const),
  ...(['measured', 'row', 'draft', 'piece', 'lining', 'facing', 'band', 'strip', 'seam', 'finish'] as const),
  ...(['body', 'sizes', 'measure', 'usual'] as const),
]);
