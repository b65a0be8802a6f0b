/**
 * What drafts and pieces have, by its bare name. First what is drafted by now; then what is only written down, since
 * while a line is being typed whatever rests on it can't be drafted, and is meant all the same.
 */
import { inWords, say } from '../../grammar/say';
import type { Name, SourceFile, Statement, StatementNode } from '../../grammar/syntax';
import type { Pattern, Piece, Shape, Value } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { print, printLength } from '../drafting/values/quantity';
import { besides, item, type Item } from './completion-item';

/** Parts of all pieces that are drafted from one block, which are two where its sides differ. */
export function partsNamed(
  pattern: Pattern,
  files: readonly SourceFile[],
  name: string,
  depth = 0,
): readonly Item[] {
  const drafted = pattern.pieces.filter((piece) => piece.base === name || piece.name === name);
  const parts = drafted.flatMap((piece) => partsOf(pattern, piece));
  return drafted.length > 0 ? once(parts) : writtenParts(pattern, files, name, depth);
}

/** An edge may bear the name of a corner; of two edges of one name the first counts. */
function once(items: readonly Item[]): Item[] {
  const kept = new Map<string, Item>();
  for (const one of items) {
    const key = `${one.kind} ${one.label}`;
    if (!kept.has(key)) kept.set(key, one);
  }
  return [...kept.values()];
}

function partsOf({ unit }: Pattern, piece: Piece): Item[] {
  const { corners, balance, marks, darts } = piece;
  return [
    ...everyEdge(piece).map(({ name, sewn }) => item(name, 'edge', say`edge, ${printLength(sewn, unit)}`)),
    ...corners.filter(({ name }) => name !== '').map(({ name }) => item(name, 'shape', say`corner`)),
    ...darts.map(({ name }) => ({ ...item(name, 'shape', say`dart`), dart: true as const })),
    ...balance.map(({ name }) => item(name, 'shape', say`balance line`)),
    ...marks.filter(({ row }) => row === undefined).map(({ name, word }) => item(name, 'shape', word)),
  ];
}

/** A piece worked from one that is worked from one … ends somewhere; a longer chain than this is a circle. */
const LONGEST_CHAIN = 20;

/** Edges as the outline names them, of a piece or of what it is made from. */
function writtenParts(
  pattern: Pattern,
  files: readonly SourceFile[],
  name: string,
  depth: number,
): readonly Item[] {
  const piece = blockNamed(files, name);
  if (piece === undefined || depth > LONGEST_CHAIN) return [];
  const outlines = (piece.block ?? []).filter(({ node }) => node.kind === 'outline');
  const own = outlines.flatMap(({ block = [] }) =>
    block.flatMap(({ node }) => (node.kind === 'edge' ? [item(node.name.text, 'edge', say`edge`)] : [])),
  );
  return besides(
    own,
    madeFrom(piece.node).flatMap((from) => partsNamed(pattern, files, from, depth + 1)),
  );
}

/** The names of the pieces that a piece is made from. */
export function madeFrom(node: StatementNode): readonly string[] {
  const refs: unknown[] = [];
  if (node.kind === 'piece') refs.push(node.workedFrom);
  else if (node.kind === 'lining' || node.kind === 'facing') refs.push(node.of);
  else if (node.kind === 'divide') refs.push(node.piece);
  else if (node.kind === 'join') refs.push(node.one, node.other);
  return (refs as ({ kind: string; path?: readonly { text: string }[] } | undefined)[]).flatMap((ref) =>
    ref?.kind === 'ref' && ref.path?.length === 1 ? [ref.path[0]!.text] : [],
  );
}

/** The draft or piece of a name, and what it is called with: a share of a divide is its divide. */
function blockNamed(files: readonly SourceFile[], name: string): Statement | undefined {
  for (const { items } of files)
    for (const { statement } of items) {
      const { node } = statement;
      const named = 'name' in node && (node.name as { text?: string } | undefined)?.text === name;
      if (named && BLOCKS.has(node.kind)) return statement;
      if (node.kind === 'divide' && node.into.some((share) => share.name.text === name)) return statement;
      if (node.kind === 'join' && node.into.text === name) return statement;
    }
  return undefined;
}

const BLOCKS: ReadonlySet<StatementNode['kind']> = new Set(['draft', 'piece', 'lining', 'facing']);

/** The draft that a piece is drawn in, as it is written. */
export function draftBehind(files: readonly SourceFile[], name: string, depth = 0): string | undefined {
  const node = blockNamed(files, name)?.node;
  if (node === undefined || depth > LONGEST_CHAIN) return undefined;
  if (node.kind === 'piece' && node.of !== undefined) return node.of.path.map(({ text }) => text).join('.');
  const [from] = madeFrom(node);
  return from === undefined ? undefined : draftBehind(files, from, depth + 1);
}

// -------------------------------------------------------------------------------------------- values and shapes

/** Values and shapes of a draft or piece. */
export const withPrefix = (pattern: Pattern, files: readonly SourceFile[], owner: string): Item[] => [
  ...valuesOfBlock(pattern, files, owner),
  ...shapesOfBlock(pattern, files, owner),
];

export const valuesOfBlock = (pattern: Pattern, files: readonly SourceFile[], owner: string): Item[] =>
  withWritten(
    [...within(owner, pattern.values)].map(([name, value]) => valueItem(pattern, owner, name, value)),
    blockNamed(files, owner)?.block ?? [],
    writtenValue,
  );

export const shapesOfBlock = (pattern: Pattern, files: readonly SourceFile[], owner: string): Item[] =>
  withWritten(
    [...within(owner, pattern.shapes)].map(([name, shape]) => shapeItem(pattern, owner, name, shape)),
    blockNamed(files, owner)?.block ?? [],
    writtenShape,
  );

/** What is drafted, and behind it what lines name besides; a long draft is gone through at every letter. */
function withWritten(
  drafted: Item[],
  lines: readonly Statement[],
  written: (line: Statement) => readonly Item[],
): Item[] {
  const known = new Set(drafted.map(({ label }) => label));
  for (const line of lines) {
    const { node } = line;
    const name = 'name' in node ? (node.name as Name | undefined)?.text : undefined;
    if (name !== undefined && !known.has(name)) drafted.push(...written(line));
  }
  return drafted;
}

/** Values outside all blocks. */
export const valuesOutside = (pattern: Pattern, file: SourceFile | undefined): Item[] =>
  besides(
    [...pattern.values]
      .filter(([path]) => !path.includes('.'))
      .map(([name, value]) => valueItem(pattern, '', name, value)),
    file === undefined ? [] : valuesOf(file),
  );

/** What of all that has a path stands in one block, by its bare name. */
function* within<T>(owner: string, all: ReadonlyMap<string, T>): Iterable<readonly [string, T]> {
  const start = owner.length + 1;
  for (const [path, one] of all) {
    const inside = path[owner.length] === '.' && path.startsWith(owner);
    if (inside && path.indexOf('.', start) < 0) yield [path.slice(start), one];
  }
}

function valueItem(pattern: Pattern, owner: string, name: string, value: Value): Item {
  const info = pattern.info(owner === '' ? `=${name}` : `${owner}/=${name}`);
  const detail = value.kind === 'text' ? value.text : print(value, pattern.unit);
  return item(name, info?.kind === 'choice' ? 'choice' : 'value', detail, info?.doc);
}

function shapeItem(pattern: Pattern, owner: string, name: string, shape: Shape): Item {
  const isPoint = shape.kind === 'point';
  const length = isPoint ? '' : `, ${printLength(shape.path.length, pattern.unit)}`;
  const doc = pattern.info(owner === '' ? name : `${owner}/${name}`)?.doc;
  return { ...item(name, 'shape', inWords(shape.kind) + length, doc), ...(!isPoint && { line: true }) };
}

function writtenShape({ node, doc }: Statement): Item[] {
  if (node.kind !== 'shape' && node.kind !== 'circle') return [];
  const form = node.kind === 'circle' ? 'circle' : node.form;
  return [
    {
      ...item(node.name.text, 'shape', inWords(form), doc),
      ...(form !== 'point' && { line: true as const }),
    },
  ];
}

function writtenValue({ node, doc }: Statement): Item[] {
  if (node.kind === 'choose') return [item(node.name.text, 'choice', '', doc)];
  return node.kind === 'let' || node.kind === 'solve' ? [item(node.name.text, 'value', '', doc)] : [];
}

/** What a file names outside its blocks: values, and drafts and pieces. */
export const valuesOf = ({ items }: SourceFile): Item[] =>
  items.flatMap(({ statement }) => writtenValue(statement));

export const drawnIn = ({ items }: SourceFile): Item[] =>
  items.flatMap(({ statement: { node, doc } }) => {
    if (node.kind === 'draft') return [item(node.name.text, 'draft', say`draft`, doc)];
    return piecesOf(node).map(({ text }) => item(text, 'piece', say`piece`, doc));
  });

function piecesOf(node: StatementNode): readonly Name[] {
  if (node.kind === 'divide') return node.into.map(({ name }) => name);
  if (node.kind === 'join') return [node.into];
  return 'name' in node && MADE.has(node.kind) ? [node.name as Name] : [];
}

const MADE: ReadonlySet<StatementNode['kind']> = new Set(['piece', 'lining', 'facing', 'band', 'strip']);
