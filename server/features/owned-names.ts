/**
 * What drafts and pieces have, by its bare name. First what is drafted by now; then what is only written down, since
 * while a line is being typed whatever rests on it can't be drafted, and is meant all the same.
 */
import { inWords, say, tongue } from '../../grammar/say';
import type { Expr, Name, SourceFile, Statement, StatementNode } from '../../grammar/syntax';
import type { Defined, DefinedIn, Pattern, Piece, Shape, Value } from '../drafting/model';
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
  const refs: (Expr | undefined)[] = [];
  if (node.kind === 'piece') refs.push(node.workedFrom);
  else if (node.kind === 'lining' || node.kind === 'facing') refs.push(node.of);
  else if (node.kind === 'divide') refs.push(node.piece);
  else if (node.kind === 'join') refs.push(node.one, node.other);
  return refs.flatMap((ref) => (ref?.kind === 'ref' && ref.path.length === 1 ? [ref.path[0]!.text] : []));
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

export function valuesOfBlock(pattern: Pattern, files: readonly SourceFile[], owner: string): Item[] {
  if (owner === '') return [];
  const block = pattern.definedIn(owner);
  return withWritten(itemsOf(block.values, pattern, valueItem), undrafted(files, owner, block), writtenValue);
}

export function shapesOfBlock(pattern: Pattern, files: readonly SourceFile[], owner: string): Item[] {
  if (owner === '') return [];
  const block = pattern.definedIn(owner);
  return withWritten(itemsOf(block.shapes, pattern, shapeItem), undrafted(files, owner, block), writtenShape);
}

interface Rest {
  readonly lines: readonly Statement[];
  readonly rest: readonly Statement[];
}

const restOf = new WeakMap<DefinedIn, Rest>();

/** The lines of a block that are no drafted values or shapes. */
function undrafted(files: readonly SourceFile[], owner: string, block: DefinedIn): readonly Statement[] {
  const lines = blockNamed(files, owner)?.block ?? [];
  const before = restOf.get(block);
  if (before?.lines === lines) return before.rest;
  let [value, shape] = [0, 0];
  // all are in file order
  const rest = lines.filter((line) => {
    if (line === block.values[value]?.statement) value++;
    else if (line === block.shapes[shape]?.statement) shape++;
    else return true;
    return false;
  });
  restOf.set(block, { lines, rest });
  return rest;
}

/** What is drafted, and behind it what lines name besides. */
function withWritten(
  drafted: Item[],
  lines: readonly Statement[],
  written: (line: Statement) => Item | undefined,
): Item[] {
  const others = lines.flatMap((line) => written(line) ?? []);
  return others.length === 0 ? drafted : besides(drafted, others);
}

/** Values outside all blocks. */
export const valuesOutside = (pattern: Pattern, file: SourceFile | undefined): Item[] =>
  besides(
    itemsOf(pattern.definedIn('').values, pattern, valueItem),
    file === undefined ? [] : valuesOf(file),
  );

interface Kept {
  readonly drafted: Value | Shape;
  readonly unit: Pattern['unit'];
  readonly language: string;
  readonly item: Item;
}

/** What was said of each statement: in a long draft a letter changes few of them, and all are offered. */
const kept = new WeakMap<Statement, Kept>();

function itemsOf<T extends Value | Shape>(
  all: readonly Defined<T>[],
  { unit }: Pattern,
  itemOf: (one: Defined<T>, unit: Pattern['unit']) => Item,
): Item[] {
  const language = tongue();
  return all.map((one) => {
    const { statement, drafted } = one;
    const before = kept.get(statement);
    const stays = before?.drafted === drafted && before.unit === unit && before.language === language;
    // the remark above a statement may become another without it
    if (stays && before.item.doc === statement.doc) return before.item;
    const item = itemOf(one, unit);
    kept.set(statement, { drafted, unit, language, item });
    return item;
  });
}

function valueItem({ name, statement, drafted }: Defined<Value>, unit: Pattern['unit']): Item {
  const detail = drafted.kind === 'text' ? drafted.text : print(drafted, unit);
  return item(name, statement.node.kind === 'choose' ? 'choice' : 'value', detail, statement.doc);
}

function shapeItem({ name, statement, drafted }: Defined<Shape>, unit: Pattern['unit']): Item {
  const isPoint = drafted.kind === 'point';
  const length = isPoint ? '' : `, ${printLength(drafted.path.length, unit)}`;
  const said = item(name, 'shape', inWords(drafted.kind) + length, statement.doc);
  return isPoint ? said : { ...said, line: true };
}

function writtenShape({ node, doc }: Statement): Item | undefined {
  if (node.kind !== 'shape' && node.kind !== 'circle') return undefined;
  const form = node.kind === 'circle' ? 'circle' : node.form;
  return {
    ...item(node.name.text, 'shape', inWords(form), doc),
    ...(form !== 'point' && { line: true as const }),
  };
}

function writtenValue({ node, doc }: Statement): Item | undefined {
  if (node.kind === 'choose') return item(node.name.text, 'choice', '', doc);
  return node.kind === 'let' || node.kind === 'solve' ? item(node.name.text, 'value', '', doc) : undefined;
}

/** What a file names outside its blocks: values, and drafts and pieces. */
export const valuesOf = ({ items }: SourceFile): Item[] =>
  items.flatMap(({ statement }) => writtenValue(statement) ?? []);

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
