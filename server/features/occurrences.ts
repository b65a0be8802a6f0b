/** Every place of a file where a thing is named, where it is defined among them. */
import type { Name, Ref, Span, Statement, TopLevel } from '../../grammar/syntax';
import { declaredBy } from '../drafting/names/declarations';
import type { FileNames } from '../drafting/names/files';
import { aliasMeaning, declaredMeaning, measurementMeaning, type Meaning } from './meaning';
import { bodyMeaning, givenMeaning, meaningsOf, pieceRound, spacesOf, type Standing } from './meanings';
import { cutMeaning, memberOf, part } from './members';
import type { Names } from './names';

export interface Occurrence {
  readonly meaning: Meaning;
  /** Offsets in the file. */
  readonly from: number;
  readonly to: number;
  readonly defines: boolean;
}

/** What of a top-level statement is looked at: one name alone, or the statements that meet a stretch of the file. */
interface Sought {
  readonly name?: string;
  readonly meeting?: Span;
}

/** The occurrences in one top-level statement, in order of place; those of one name alone where it is given. */
export function occurrencesIn(
  names: Names,
  file: FileNames,
  top: TopLevel,
  name?: string,
): readonly Occurrence[] {
  return sought(names, file, top, name === undefined ? {} : { name });
}

/** The occurrences in those of its statements that a stretch of the file meets. */
export const occurrencesMeeting = (names: Names, top: TopLevel, meeting: Span): readonly Occurrence[] =>
  sought(names, names.root, top, { meeting });

function sought(
  names: Names,
  file: FileNames,
  top: TopLevel,
  { name, meeting }: Sought,
): readonly Occurrence[] {
  if (name !== undefined && !mayName(top.text, name)) return [];
  const found = new Map<number, Occurrence>();
  const visit = (statement: Statement): void => {
    const start = top.offset + statement.start;
    if (meeting !== undefined && (meeting.to < start || top.offset + statement.end < meeting.from)) return;
    if (name === undefined || mayName(statement.text, name)) {
      inStatement({ names, file, top, statement }, name, (meaning, { from, to }, defines) => {
        // a share stands in its divide's line and has a statement of its own as well
        if (!found.has(start + from))
          found.set(start + from, { meaning, from: start + from, to: start + to, defines });
      });
    }
    statement.block?.forEach(visit);
  };
  visit(top.statement);
  return [...found.values()].sort((a, b) => a.from - b.from);
}

/** A text without the name's letters can't name it; names beyond ASCII may be written in several ways. */
const mayName = (text: string, name: string): boolean => text.includes(name) || /[^\x20-\x7e]/.test(name);

/** The occurrence that an offset of a file touches. */
export function occurrenceAt(names: Names, offset: number): Occurrence | undefined {
  const top = topAt(names.root.topLevels, offset);
  if (top === undefined) return undefined;
  const round = occurrencesMeeting(names, top, { from: offset, to: offset });
  return round.find(({ from, to }) => from <= offset && offset <= to);
}

/** Every occurrence of a thing in the file that the names are of. */
export function occurrencesOf(names: Names, { key, name }: Meaning): readonly Occurrence[] {
  return names.root.topLevels.flatMap((top) =>
    occurrencesIn(names, names.root, top, name).filter(({ meaning }) => meaning.key === key),
  );
}

/** The top-level statement that an offset stands in. */
export function topAt(items: readonly TopLevel[], offset: number): TopLevel | undefined {
  const top = topBefore(items, offset);
  return top !== undefined && offset <= top.offset + top.text.length ? top : undefined;
}

/** The last top-level statement that begins at an offset or before it, by halving. */
export function topBefore(items: readonly TopLevel[], offset: number): TopLevel | undefined {
  let low = 0;
  let high = items.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (items[middle]!.offset <= offset) low = middle;
    else high = middle - 1;
  }
  const top = items[low];
  return top !== undefined && top.offset <= offset ? top : undefined;
}

type See = (meaning: Meaning, at: Span, defines: boolean) => void;

/** Tells of every name in a statement, or of one alone, which costs less than looking all of them up. */
function inStatement(at: Standing, only: string | undefined, see: See): void {
  const tell = (meaning: Meaning | undefined, { at: place }: Name, defines = false): void => {
    if (meaning !== undefined) see(meaning, place, defines);
  };
  ownNames(at, tell);
  const { node } = at.statement;
  let spaces: ReturnType<typeof spacesOf> | undefined;
  eachRef(node, (ref, beside) => {
    if (only !== undefined && !ref.path.some(({ text }) => text === only)) return;
    spaces ??= spacesOf(node);
    const meanings = meaningsOf(at, ref, spaces.get(ref), beside);
    const offered = node.kind === 'choose' && node.among?.includes(ref) === true;
    ref.path.forEach((name, i) => tell(meanings[i], name, offered));
  });
}

/** Names that are no references: what the statement defines, and bodies, tables and given values it speaks of. */
function ownNames(
  at: Standing,
  tell: (meaning: Meaning | undefined, name: Name, defines?: boolean) => void,
): void {
  const { file, top, statement } = at;
  const { node } = statement;
  const declared = declaredBy(file.of(top), statement).filter(({ name }) => name !== '');
  const byName = new Map(declared.map((one) => [one.name, one]));
  const own = (name: Name): void => {
    const declaration = byName.get(name.text);
    tell(declaration && declaredMeaning(file, declaration), name, true);
  };
  switch (node.kind) {
    case 'measured':
    case 'row':
      return tell(measurementMeaning(node.name.text), node.name, true);
    case 'measure':
      return tell(measurementMeaning(node.name.text), node.name, true);
    case 'drafted-for':
      return tell(bodyMeaning(at, node.body), node.body);
    case 'body':
      own(node.name);
      return node.from && tell(bodyMeaning(at, node.from.table), node.from.table);
    case 'use':
      if (node.as !== undefined) tell(aliasMeaning(file, node.as.text), node.as, true);
      return node.given.forEach(({ name }) => tell(givenMeaning(at, name), name));
    case 'divide':
      node.into.forEach(({ name }) => own(name));
      return node.along?.name && tell(declared[0] && cutMeaning(file, declared[0]), node.along.name, true);
    case 'join':
      return own(node.into);
    case 'share':
      return undefined; // its divide's line has it
    default:
      if (!('name' in node) || node.name === undefined) return undefined;
      return byName.has(node.name.text) ? own(node.name) : partNamed(at, tell);
  }
}

/** A line of a piece that names a part of it. */
function partNamed(
  at: Standing,
  tell: (meaning: Meaning | undefined, name: Name, defines?: boolean) => void,
): void {
  const { node } = at.statement;
  const piece = pieceRound(at);
  if (piece === undefined || !('name' in node) || node.name === undefined || at.statement.inside === 'file')
    return;
  const meaning = (name: Name) =>
    memberOf(at.file, piece, name.text, 'any') ?? part(at.file, piece.name, name.text);
  const defines = node.kind !== 'dart' || node.on !== undefined;
  tell(defines ? part(at.file, piece.name, node.name.text) : meaning(node.name), node.name, defines);
  if (node.kind !== 'edge') return;
  for (const run of node.runs)
    if (run.kind === 'dart') tell(part(at.file, piece.name, run.name.text), run.name, true);
}

/** Every reference written in a node, with what it is compared with. */
function eachRef(node: object, see: (ref: Ref, beside?: Ref) => void, beside?: Ref): void {
  const { kind } = node as { kind?: string };
  if (kind === 'ref') return see(node as Ref, beside);
  if (kind === 'compare') {
    const { left, right } = node as { left: object; right: object };
    eachRef(left, see, asRef(right));
    return eachRef(right, see, asRef(left));
  }
  for (const value of Object.values(node)) {
    if (typeof value === 'object' && value !== null) eachRef(value as object, see);
  }
}

const asRef = (node: object): Ref | undefined =>
  (node as { kind?: string }).kind === 'ref' ? (node as Ref) : undefined;
