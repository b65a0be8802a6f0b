/** The names and words that may stand at the cursor. */
import { inWords, say } from '../../grammar/say';
import { nextWords, type Next } from '../../grammar';
import { FUNCTIONS, wordsOf, type BlockKind } from '../../grammar/words';
import type { SourceFile } from '../../grammar/syntax';
import { catalogue, isFirm, rangeInWords, ranges } from '../checks';
import type { Pattern, Shape, Value } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { measurements } from '../drafting/values/measurements';
import { print, printLength } from '../drafting/values/quantity';
import { inCommentOrText, lineBefore, scopeAt, statementBefore, type Scope } from './scope';
import { NO_FILES, ownMeasurements, type UsedFiles } from './used-names';
import { wholeStatements } from './whole-statements';
import { wordAt } from './words';

export type CompletionKind =
  | 'word'
  | 'value'
  | 'choice'
  | 'measurement'
  | 'shape'
  | 'piece'
  | 'draft'
  | 'edge'
  | 'seam'
  | 'body'
  | 'function'
  | 'statement'
  | 'file';

interface Item {
  readonly label: string;
  readonly kind: CompletionKind;
  readonly detail: string;
  readonly doc: string;
  /** Of a shape: a line or a curve, not a point. */
  readonly line?: true;
  /** What is typed to find it, where that is not its label. */
  readonly typed?: string;
  /** What it writes, in the notation of editors for places to fill in; its label where there is none. */
  readonly snippet?: string;
}

export interface Completion extends Item {
  /** What accepting it replaces. */
  readonly from: number;
  readonly to: number;
}

/** What lies round a file; asked for where it may be written. */
export interface Around {
  /** The ways from the file to the others of the workspace. */
  readonly paths: () => readonly string[];
  readonly used: () => UsedFiles;
}

const ALONE: Around = { paths: () => [], used: () => NO_FILES };

/**
 * What may stand at an offset, the nearest scope first. `sources` are the files of the pattern, its own first;
 * only bodies and tables are taken from the others. `around` tells what lies round its
 * own file.
 */
export function completions(
  pattern: Pattern,
  sources: readonly SourceFile[],
  text: string,
  offset: number,
  around: Around = ALONE,
): readonly Completion[] {
  const path = pathBeingWritten(text, offset);
  if (path !== undefined) return around.paths().map((one) => ({ ...item(one, 'file'), ...path }));
  const word = wordAt(text, offset);
  const from = word?.from ?? offset;
  const before = lineBefore(text, from);
  if (inCommentOrText(before)) return [];
  const scope = scopeAt(sources[0], offset);
  const written = statementBefore(text, from);
  const place = { line: written.trimStart(), next: nextWords(scope.kind, written) };
  const items = before.endsWith('.')
    ? members(pattern, scope, before, around)
    : inPlace(pattern, sources, scope, place, around);
  const once = new Map(items.map((item) => [`${item.kind} ${item.label}`, item]));
  return [...once.values()].map((item) => ({ ...item, from, to: word?.to ?? offset }));
}

/** The path between the quotes of a `use` line, as far as it is written. */
function pathBeingWritten(text: string, offset: number): { from: number; to: number } | undefined {
  const [, written] = /^\s*use\s+"([^"]*)$/.exec(lineBefore(text, offset)) ?? [];
  if (written === undefined) return undefined;
  const [rest] = /^[^"#\r\n]*(?=")|^/.exec(text.slice(offset))!;
  return { from: offset - written.length, to: offset + rest.length };
}

const item = (label: string, kind: CompletionKind, detail = '', doc = ''): Item => ({
  label,
  kind,
  detail,
  doc,
});

// ------------------------------------------------------------------------------------------------- after a dot

/** What can be asked of the name before the dot. */
function members(pattern: Pattern, scope: Scope, before: string, { used }: Around): readonly Item[] {
  const owner = /([\p{L}\p{M}\p{Nd}-]+)\.$/u.exec(before)?.[1] ?? '';
  const file = used().named.get(owner);
  if (file !== undefined) return [...valuesOf(file), ...drawnIn(file)];
  const piece = pattern.pieces.find(({ name }) => name === owner);
  const found = [...(piece ? partsOf(pattern, piece) : []), ...withPrefix(pattern, owner)];
  if (found.length > 0) return found;
  if (measurements.some(({ name }) => name === owner)) {
    return ['left', 'right', 'average', 'larger'].map((side) => item(side, 'measurement'));
  }
  const shape = shapesIn(pattern, scope).find(({ label }) => label === owner);
  if (shape !== undefined) return ['start', 'end'].map((end) => item(end, 'shape'));
  return ['inner', 'outer', 'tip', 'pivot'].map((point) => item(point, 'shape', say`of a dart`));
}

function partsOf({ unit }: Pattern, piece: Pattern['pieces'][number]): Item[] {
  const { corners, balance, marks } = piece;
  return [
    ...everyEdge(piece).map(({ name, sewn }) => item(name, 'edge', say`edge, ${printLength(sewn, unit)}`)),
    ...corners.filter(({ name }) => name !== '').map(({ name }) => item(name, 'shape', say`corner`)),
    ...balance.map(({ name }) => item(name, 'shape', say`balance line`)),
    ...marks.filter(({ row }) => row === undefined).map(({ name, word }) => item(name, 'shape', word)),
  ];
}

/** Values and shapes of a draft or piece, by their bare names. */
const withPrefix = (pattern: Pattern, owner: string): Item[] => [
  ...valuesOfBlock(pattern, owner),
  ...shapesOfBlock(pattern, owner),
];

const valuesOfBlock = (pattern: Pattern, owner: string): Item[] =>
  [...within(owner, pattern.values)].map(([name, value]) => valueItem(pattern, owner, name, value));

const shapesOfBlock = (pattern: Pattern, owner: string): Item[] =>
  [...within(owner, pattern.shapes)].map(([name, shape]) => shapeItem(pattern, owner, name, shape));

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

// -------------------------------------------------------------------------------------------- anywhere else

/** The words of a statement before the cursor, and what may come after them. */
interface Written {
  readonly line: string;
  readonly next: Next | undefined;
}

/** Names of what may stand here, the nearest first; then the words of the language that go on from here. */
function inPlace(
  pattern: Pattern,
  sources: readonly SourceFile[],
  scope: Scope,
  { line, next }: Written,
  around: Around,
): readonly Item[] {
  if (line === '') return beginnings(scope.kind).concat(isMeasuring(scope) ? measured(sources) : []);
  if (/^use\b/.test(line)) return [];
  // whoever gives a name makes it up
  if (next?.second === true && NAMING.test(line)) return [];
  const words = (next?.words ?? []).map((word) => item(word, 'word'));
  const named = next === undefined || next.name || next.value;
  const names = named ? namesIn(pattern, sources, scope, { line, next }, around) : [];
  // after a comma a clause begins, with its word
  return line.trimEnd().endsWith(',') ? [...words, ...names] : [...names, ...words];
}

/** Heads after which a new name stands. */
const NAMING =
  /^(let|choose|solve|measure|point|line|curve|arc|circle|draft|piece|lining|facing|band|strip|seam|finish|notch|body|sizes)\s+$/;

/** Words after which a line is named sooner than a point. */
const ALONG = /\b(along|on|onto|across|mirrored|length\s*\(|drawn\s*\(|slope\s*\(|angle\s*\()\s*$/;

const isLine = ({ line }: Item): boolean => line === true;
const isPoint = (one: Item): boolean => !isLine(one);

function namesIn(
  pattern: Pattern,
  sources: readonly SourceFile[],
  scope: Scope,
  { line, next }: Written,
  { used }: Around,
): readonly Item[] {
  if (/\bdrafted\s+for\s+$/.test(line)) return bodies(sources);
  if (/^(piece|lining)\s+\S+\s+of\s+$/.test(line))
    return drafts(sources).concat(pieces(pattern), used().bare.flatMap(drawnIn));
  if (/\bworked\s+from\s+$/.test(line)) return pieces(pattern).concat(used().bare.flatMap(drawnIn));
  if (/^(usual|accept)\b/.test(line)) return ofJudging(pattern, scope, line);
  const ofValue = next?.value === true || next === undefined;
  const values = ofValue ? valuesAnd(pattern, sources, scope, used) : [];
  if (/^(seam|finish|band|divide|join|facing|notch)\b/.test(line) && scope.kind === 'file')
    return [...ofSewing(pattern, line), ...values];
  const shapes = shapesIn(pattern, scope);
  const [first, then] = ALONG.test(line) ? [isLine, isPoint] : [isPoint, isLine];
  return [
    ...edgesOwnedBy(pattern, scope),
    ...shapes.filter(first),
    ...shapes.filter(then),
    ...values,
    ...(scope.kind === 'file' ? pieces(pattern).concat(seams(pattern)) : []),
    ...(ofValue && scope.kind !== 'outline' ? FUNCTIONS.map((name) => item(name, 'function')) : []),
    ...(ofValue ? drafts(sources) : []),
  ];
}

/** What is reckoned with: values, those of used files, and measurements. */
const valuesAnd = (
  pattern: Pattern,
  sources: readonly SourceFile[],
  scope: Scope,
  used: Around['used'],
): readonly Item[] => [
  ...valuesIn(pattern, scope),
  ...used().bare.flatMap(valuesOf),
  ...(scope.kind === 'outline' ? [] : measured(sources)),
];

/** Pieces, and what a notch stands on or at: a seam, then the corners of what it sews. */
function ofSewing(pattern: Pattern, line: string): readonly Item[] {
  if (!line.startsWith('notch')) return pieces(pattern);
  const [, on] = /^notch\s+\S+\s+on\s+([\p{L}\p{M}\p{Nd}-]+)\s/u.exec(line) ?? [];
  if (on === undefined) return seams(pattern).concat(pieces(pattern));
  const seam = pattern.seams.find(({ name }) => name === on);
  const sewn = new Set([...(seam?.left ?? []), ...(seam?.right ?? [])].map(({ piece }) => piece));
  const corners = pattern.pieces
    .filter(({ base }) => sewn.has(base))
    .flatMap((piece) => partsOf(pattern, piece));
  return corners.filter(({ kind }) => kind === 'shape');
}

/** The words that a line may begin with, then whole statements with places to fill in. */
function beginnings(kind: BlockKind): readonly Item[] {
  const words = wordsOf(kind).heads.map((head) => item(head, 'word'));
  const whole = wholeStatements(kind).map(({ head, form, what, example, snippet }) => {
    const typed = head === '' ? form : `${head} ${form}`;
    return { ...item(form, 'statement', what, example), typed, snippet };
  });
  return [...words, ...whole];
}

/** Ranges after `usual`, codes after `accept`, and what a finding may be of. */
function ofJudging(pattern: Pattern, scope: Scope, line: string): readonly Item[] {
  if (/^usual\s+$/.test(line))
    return ranges.map((one) => {
      const range = rangeInWords({ ...one, stated: false }, pattern.unit);
      return item(one.name, 'word', range, inWords(one.standing));
    });
  if (/^usual\s+\S+\s+in\b/.test(line)) return valuesIn(pattern, scope);
  if (/^accept\s+$/.test(line)) {
    const codes = catalogue.filter(({ code }) => !isFirm(code));
    return codes.map(({ code, severity, title }) => item(code, 'word', inWords(severity), inWords(title)));
  }
  return /^accept\s+\S+\s+at\s+$/.test(line) ? pieces(pattern).concat(seams(pattern)) : [];
}

const isMeasuring = ({ kind }: Scope): boolean => kind === 'body' || kind === 'sizes';

/** The measurements that every pattern knows, and those that its files add. */
function measured(sources: readonly SourceFile[]): readonly Item[] {
  const known = new Map(measurements.map(({ name, definition }) => [name, inWords(definition)]));
  for (const [name, how] of ownMeasurements(sources))
    if (!known.has(name) || how !== '') known.set(name, how);
  return [...known].map(([name, how]) => item(name, 'measurement', '', how));
}

/** What a used file names outside its blocks: values, and drafts and pieces. */
const valuesOf = ({ items }: SourceFile): Item[] =>
  items.flatMap(({ statement: { node, doc } }) => {
    if (node.kind === 'choose') return [item(node.name.text, 'choice', '', doc)];
    return node.kind === 'let' || node.kind === 'solve' ? [item(node.name.text, 'value', '', doc)] : [];
  });

const drawnIn = ({ items }: SourceFile): Item[] =>
  items.flatMap(({ statement: { node, doc } }) => {
    if (node.kind === 'draft') return [item(node.name.text, 'draft', say`draft`, doc)];
    return node.kind === 'piece' || node.kind === 'lining'
      ? [item(node.name.text, 'piece', say`piece`, doc)]
      : [];
  });

/** The draft whose names may be written bare: the one we are in, or the one that our piece is taken from. */
function draftOf(pattern: Pattern, { owner }: Scope): readonly string[] {
  if (owner?.kind === 'draft') return [owner.name.text];
  if (owner?.kind !== 'piece') return [];
  const taken = pattern.pieces.find(({ name }) => name === owner.name.text)?.draft;
  const written = owner.of?.path.map((part: { readonly text: string }) => part.text).join('.');
  return [owner.name.text, taken ?? written ?? ''].filter(Boolean);
}

const shapesIn = (pattern: Pattern, scope: Scope): readonly Item[] =>
  draftOf(pattern, scope).flatMap((owner) => shapesOfBlock(pattern, owner));

function valuesIn(pattern: Pattern, scope: Scope): readonly Item[] {
  const own = draftOf(pattern, scope).flatMap((owner) => valuesOfBlock(pattern, owner));
  const top = [...pattern.values].filter(([path]) => !path.includes('.'));
  return [...own, ...top.map(([name, value]) => valueItem(pattern, '', name, value))];
}

function edgesOwnedBy(pattern: Pattern, { owner }: Scope): readonly Item[] {
  const piece = owner?.kind === 'piece' && pattern.pieces.find(({ name }) => name === owner.name.text);
  return piece ? partsOf(pattern, piece).filter(({ kind }) => kind === 'edge') : [];
}

const pieces = (pattern: Pattern): Item[] =>
  [...pattern.pieceNames, ...pattern.leftOut].map((name) => item(name, 'piece', say`piece`));
const seams = (pattern: Pattern): Item[] => pattern.seams.map(({ name }) => item(name, 'seam', say`seam`));

function drafts(sources: readonly SourceFile[]): Item[] {
  const own = sources[0]?.items ?? [];
  return own.flatMap(({ statement: { node, doc } }) =>
    node.kind === 'draft' ? [item(node.name.text, 'draft', say`draft`, doc)] : [],
  );
}

function bodies(sources: readonly SourceFile[]): Item[] {
  return sources.flatMap(({ items }) =>
    items.flatMap(({ statement: { node, doc } }) =>
      node.kind === 'body' || node.kind === 'sizes' ? [item(node.name.text, 'body', node.kind, doc)] : [],
    ),
  );
}
