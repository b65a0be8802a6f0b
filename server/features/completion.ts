/** The names and words that may stand at the cursor. */
import { inWords, say } from '../../grammar/say';
import { nextWords, type Next } from '../../grammar';
import { FUNCTIONS, wordsOf, type BlockKind } from '../../grammar/words';
import type { SourceFile } from '../../grammar/syntax';
import { catalogue, isFirm, rangeInWords, ranges } from '../checks';
import type { Pattern } from '../drafting/model';
import { measurements } from '../drafting/values/measurements';
import { besides, item, type CompletionKind, type Item } from './completion-item';
import {
  draftBehind,
  drawnIn,
  madeFrom,
  partsNamed,
  shapesOfBlock,
  valuesOf,
  valuesOfBlock,
  valuesOutside,
  withPrefix,
} from './owned-names';
import { inCommentOrText, lineAbove, lineBefore, scopeAt, statementBefore, type Scope } from './scope';
import { NO_FILES, ownMeasurements, type UsedFiles } from './used-names';
import { wholeStatements } from './whole-statements';
import { wordAt } from './words';

export type { CompletionKind } from './completion-item';

export interface Completions {
  readonly items: readonly Item[];
  /** What accepting any of them replaces. */
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

/** A place in a text where something is going to be written. */
interface Place {
  readonly pattern: Pattern;
  /** The files of the pattern, its own first. */
  readonly sources: readonly SourceFile[];
  /** Of these and others the ones whose names may be written bare, its own first. */
  readonly files: readonly SourceFile[];
  readonly around: Around;
  readonly scope: Scope;
  /** The words of the statement before it. */
  readonly line: string;
  /** What the grammar has after these. */
  readonly next: Next | undefined;
  /** The nearest line above that says something. */
  readonly above: () => string;
}

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
): Completions {
  const path = pathBeingWritten(text, offset);
  if (path !== undefined) return { ...path, items: around.paths().map((one) => item(one, 'file')) };
  const word = wordAt(text, offset);
  const from = word?.from ?? offset;
  const to = word?.to ?? offset;
  const before = lineBefore(text, from);
  if (inCommentOrText(before)) return { from, to, items: [] };
  const scope = scopeAt(sources[0], offset);
  const written = statementBefore(text, from);
  const place: Place = {
    pattern,
    sources,
    files: [...sources.slice(0, 1), ...around.used().bare],
    around,
    scope,
    line: written.trimStart(),
    next: nextWords(scope.kind, written),
    above: () => lineAbove(text, from),
  };
  const items = before.endsWith('.') ? members(place, before) : inPlace(place);
  const own = /^(?:let|choose|solve|point|line|curve|arc|circle)\s+(\S+)\s/.exec(place.line)?.[1];
  return { from, to, items: once(items).filter(({ label }) => label !== own) };
}

/** One of each kind and label, where the first of them stands: the last, which says most. */
function once(items: readonly Item[]): readonly Item[] {
  const all: Item[] = [];
  const places = new Map<CompletionKind, Map<string, number>>();
  for (const one of items) {
    let known = places.get(one.kind);
    if (known === undefined) places.set(one.kind, (known = new Map()));
    const place = known.get(one.label) ?? all.length;
    known.set(one.label, place);
    all[place] = one;
  }
  return all;
}

/** The path between the quotes of a `use` line, as far as it is written. */
function pathBeingWritten(text: string, offset: number): { from: number; to: number } | undefined {
  const [, written] = /^\s*use\s+"([^"]*)$/.exec(lineBefore(text, offset)) ?? [];
  if (written === undefined) return undefined;
  const [rest] = /^[^"#\r\n]*(?=")|^/.exec(text.slice(offset))!;
  return { from: offset - written.length, to: offset + rest.length };
}

// ------------------------------------------------------------------------------------------------- after a dot

/** What can be asked of the name before the dot. */
function members(place: Place, before: string): readonly Item[] {
  const { pattern, files } = place;
  const owner = /([\p{L}\p{M}\p{Nd}-]+)\.$/u.exec(before)?.[1] ?? '';
  const file = place.around.used().named.get(owner);
  if (file !== undefined) return [...valuesOf(file), ...drawnIn(file)];
  const found = [...partsNamed(pattern, files, owner), ...withPrefix(pattern, files, owner)];
  if (found.length > 0) return found;
  if (measurements.some(({ name }) => name === owner)) {
    return ['left', 'right', 'average', 'larger'].map((side) => item(side, 'measurement'));
  }
  const shape = shapesIn(place).find(({ label }) => label === owner);
  if (shape !== undefined) return ['start', 'end'].map((end) => item(end, 'shape'));
  return ['inner', 'outer', 'tip', 'pivot'].map((point) => item(point, 'shape', say`of a dart`));
}

// -------------------------------------------------------------------------------------------- anywhere else

/** Names of what may stand here, the nearest first; then the words of the language that go on from here. */
function inPlace(place: Place): readonly Item[] {
  const { line, next, scope } = place;
  if (line === '') {
    const goesOn = scope.kind === 'outline' && !place.above().endsWith('{') ? [item('then', 'word')] : [];
    return [...beginnings(scope.kind), ...goesOn, ...(isMeasuring(scope) ? measured(place.sources) : [])];
  }
  if (/^use\b/.test(line)) return [];
  // whoever gives a name makes it up
  if (next?.second === true && NAMING.test(line)) return [];
  const words = (next?.words ?? []).map((word) => item(word, 'word'));
  const named = next === undefined || next.name || next.value;
  const names = named ? namesIn(place) : [];
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

/** Where a place along a line is told. */
const PLACED = /\bat\s+$|\bon\s+(?:[^\s()]+|\(.+\))\s+$/;

function namesIn(place: Place): readonly Item[] {
  const { pattern, sources, files, scope, line, next } = place;
  const ofBody = bodiesAt(sources, line);
  if (ofBody !== undefined) return ofBody;
  if (/^(piece|lining)\s+\S+\s+of\s+$/.test(line))
    return drafts(sources).concat(pieces(pattern), files.slice(1).flatMap(drawnIn));
  if (/\bworked\s+from\s+$/.test(line)) return pieces(pattern).concat(files.slice(1).flatMap(drawnIn));
  if (/^(usual|accept)\b/.test(line)) return ofJudging(place);
  const ofValue = next?.value === true || next === undefined;
  const values = ofValue ? valuesAnd(place) : [];
  const halfway = PLACED.test(line) ? [item('halfway', 'word')] : [];
  const choice = wordsOfChoice(files, line);
  if (choice.length > 0 && /\b(when|if|and|or|not)\b/.test(line)) return choice;
  if (SEWING.test(line) && scope.kind === 'file') return [...ofSewing(place), ...values, ...halfway];
  const shapes = shapesIn(place);
  const inDraft = scope.kind === 'draft' || scope.kind === 'work';
  const [first, then] = ALONG.test(line) ? [isLine, isPoint] : [isPoint, isLine];
  return [
    ...edgesOwnedBy(place),
    ...shapes.filter(first),
    ...shapes.filter(then),
    ...(inDraft ? [item('origin', 'shape', inWords('point'))] : []),
    ...halfway,
    ...values,
    ...(scope.kind === 'file' ? pieces(pattern).concat(seams(pattern, files)) : []),
    ...(ofValue && scope.kind !== 'outline' ? FUNCTIONS.map((name) => item(name, 'function')) : []),
    ...(ofValue || inDraft ? files.flatMap(drawnIn) : []),
  ];
}

/** What is reckoned with: values, those of used files, measurements, and what is given. */
const valuesAnd = (place: Place): readonly Item[] => [
  ...valuesIn(place),
  ...place.files.slice(1).flatMap(valuesOf),
  ...(place.scope.kind === 'outline' ? [] : measured(place.sources)),
  ...['pi', 'nothing'].map((name) => item(name, 'value')),
];

const SEWING = /^(seam|finish|band|divide|join|facing|notch)\b/;

/** Words of a seam or a notch after which one of its corners stands. */
const CORNERED = /\b(from|to|at|before|beyond|above|below|and)\s+$/;

/** Pieces, and what else is named where they are sewn, cut apart and faced. */
function ofSewing({ pattern, files, line }: Place): readonly Item[] {
  const all = pieces(pattern).concat(files.slice(1).flatMap(drawnIn));
  const partsOf = (names: readonly string[]) => names.flatMap((name) => partsNamed(pattern, files, name));
  const [, word, of] = /^(divide|facing\s+\S+\s+of)\s+(\S+)\s/.exec(line) ?? [];
  if (of !== undefined) {
    const draft = word === 'divide' ? draftBehind(files, of) : undefined;
    const parts = besides(partsOf([of]), draft === undefined ? [] : shapesOfBlock(pattern, files, draft));
    return word === 'divide' ? [...parts, ...all] : parts;
  }
  if (/^band\s+\S+\s+for\s/.test(line)) return seams(pattern, files).concat(all);
  const onto = /^notch\s+\S+\s+on\s+\S+\s/.test(line);
  if (line.startsWith('notch') && !onto) return seams(pattern, files).concat(all);
  if (!onto && !CORNERED.test(line)) return all;
  const sewn = sewnIn(files, line);
  const drawn = new Set(sewn.flatMap((name) => draftBehind(files, name) ?? []));
  const points = [...drawn].flatMap((draft) => shapesOfBlock(pattern, files, draft)).filter(isPoint);
  const corners = partsOf(sewn).filter(({ kind }) => kind === 'shape');
  return [...besides(corners, points), ...(onto ? [] : all)];
}

/** The pieces whose edges a line names, itself or by their seam, whether that is sewn just now or not. */
function sewnIn([own]: readonly SourceFile[], line: string): readonly string[] {
  const [, on] = /^notch\s+\S+\s+on\s+([\p{L}\p{M}\p{Nd}-]+)\s/u.exec(line) ?? [];
  const seam = (own?.items ?? []).flatMap(({ statement: { node } }) =>
    on !== undefined && node.kind === 'seam' && node.name.text === on ? [node] : [],
  );
  const sewn = seam.flatMap(({ left, right }) => [
    ...left.parts,
    ...(right === 'its-pair' ? [] : right.parts),
  ]);
  const named = [...line.matchAll(/([\p{L}\p{M}\p{Nd}-]+)\./gu)].map(([, piece]) => piece!);
  return [...new Set([...sewn.map(({ edge }) => edge.path[0]!.text), ...named])];
}

/** The words of a choice that is being compared: `when making = `. */
function wordsOfChoice(sources: readonly SourceFile[], line: string): Item[] {
  const [, name] = /([\p{L}\p{M}\p{Nd}-]+)\s+=\s+$/u.exec(line) ?? [];
  return sources.flatMap(({ items }) =>
    items.flatMap(({ statement: { node } }) => {
      if (name === undefined || node.kind !== 'choose' || node.name.text !== name) return [];
      return (node.among ?? []).flatMap((one) =>
        one.kind === 'ref' ? [item(one.path[0]!.text, 'choice')] : [],
      );
    }),
  );
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
function ofJudging(place: Place): readonly Item[] {
  const { pattern, files, line } = place;
  if (/^usual\s+$/.test(line))
    return ranges.map((one) => {
      const range = rangeInWords({ ...one, stated: false }, pattern.unit);
      return item(one.name, 'word', range, inWords(one.standing));
    });
  if (/^usual\s+\S+\s+in\b/.test(line)) return valuesIn(place);
  if (/^accept\s+$/.test(line)) {
    const codes = catalogue.filter(({ code }) => !isFirm(code));
    return codes.map(({ code, severity, title }) => item(code, 'word', inWords(severity), inWords(title)));
  }
  return /^accept\s+\S+\s+at\s+$/.test(line) ? pieces(pattern).concat(seams(pattern, files)) : [];
}

const isMeasuring = ({ kind }: Scope): boolean => kind === 'body' || kind === 'sizes';

/** The measurements that every pattern knows, and those that its files add. */
function measured(sources: readonly SourceFile[]): readonly Item[] {
  const known = new Map(measurements.map(({ name, definition }) => [name, inWords(definition)]));
  for (const [name, how] of ownMeasurements(sources))
    if (!known.has(name) || how !== '') known.set(name, how);
  return [...known].map(([name, how]) => item(name, 'measurement', '', how));
}

/** The blocks whose names may be written bare: the draft we are in; of a piece, itself and the draft it is taken from. */
function ownersOf({ pattern, files, scope: { owner } }: Place): readonly string[] {
  if (owner?.kind === 'draft') return [owner.name.text];
  if (owner?.kind === 'divide') return madeFrom(owner).flatMap((from) => draftBehind(files, from) ?? []);
  if (owner?.kind !== 'piece' && owner?.kind !== 'lining') return [];
  const name = owner.name.text;
  const taken = pattern.pieces.find(({ base }) => base === name)?.draft;
  return [name, taken ?? draftBehind(files, name) ?? ''].filter(Boolean);
}

const shapesIn = (place: Place): readonly Item[] =>
  joined(ownersOf(place).map((owner) => shapesOfBlock(place.pattern, place.files, owner)));

/** As `flat` does it, which takes a long list item by item. */
const joined = (lists: readonly Item[][]): Item[] => ([] as Item[]).concat(...lists);

function valuesIn(place: Place): readonly Item[] {
  const { pattern, files } = place;
  const own = ownersOf(place).map((owner) => valuesOfBlock(pattern, files, owner));
  return joined([...own, valuesOutside(pattern, files[0])]);
}

function edgesOwnedBy({ pattern, files, scope: { owner } }: Place): readonly Item[] {
  const names =
    owner?.kind === 'divide'
      ? owner.into.map(({ name }) => name.text)
      : owner?.kind === 'piece' || owner?.kind === 'lining'
        ? [owner.name.text]
        : [];
  const parts = names.flatMap((name) => partsNamed(pattern, files, name));
  return parts.filter(({ kind, dart }) => kind === 'edge' || dart === true);
}

const pieces = (pattern: Pattern): Item[] =>
  [...pattern.pieceNames, ...pattern.leftOut].map((name) => item(name, 'piece', say`piece`));
/** Seams, those as well that rest on the line being written. */
const seams = (pattern: Pattern, [own]: readonly SourceFile[]): Item[] => {
  const known = pattern.seams.map(({ name }) => item(name, 'seam', say`seam`));
  const written = (own?.items ?? []).flatMap(({ statement: { node } }) =>
    node.kind === 'seam' ? [item(node.name.text, 'seam', say`seam`)] : [],
  );
  return besides(known, written);
};

function drafts(sources: readonly SourceFile[]): Item[] {
  const own = sources[0]?.items ?? [];
  return own.flatMap(({ statement: { node, doc } }) =>
    node.kind === 'draft' ? [item(node.name.text, 'draft', say`draft`, doc)] : [],
  );
}

/** Bodies and tables, and behind a table its sizes; undefined where neither stands. */
function bodiesAt(sources: readonly SourceFile[], line: string): readonly Item[] | undefined {
  const [, , table] = /^(drafted\s+for|body\s+\S+\s+from)\s+(?:(\S+)\s+)?$/.exec(line) ?? [''];
  if (table !== undefined) return sizesOf(sources, table);
  return /^(drafted\s+for|body\s+\S+\s+from)\s+$/.test(line) ? bodies(sources) : undefined;
}

const sizesOf = (sources: readonly SourceFile[], table: string): Item[] =>
  sources.flatMap(({ items }) =>
    items.flatMap(({ statement: { node, block = [] } }) =>
      node.kind === 'sizes' && node.name.text === table
        ? block.flatMap(({ node: row }) =>
            row.kind === 'size-row' ? row.sizes.map(({ text }) => item(text, 'body', say`size ${text}`)) : [],
          )
        : [],
    ),
  );

function bodies(sources: readonly SourceFile[]): Item[] {
  return sources.flatMap(({ items }) =>
    items.flatMap(({ statement: { node, doc } }) =>
      node.kind === 'body' || node.kind === 'sizes' ? [item(node.name.text, 'body', node.kind, doc)] : [],
    ),
  );
}
