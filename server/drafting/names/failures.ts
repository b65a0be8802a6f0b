/** What is said of a name that leads nowhere, or to something of another kind than is needed. */
import { say } from '../../../grammar/say';
import type { Ref, Statement } from '../../../grammar/syntax';
import type { Finding } from '../finding';
import type { Declaration } from './declarations';
import { misplacedHalfway } from './halfway';
import type { RefSpace } from './references';
import {
  namesInScope,
  resolveBlock,
  resolveShape,
  resolveValue,
  sewnNames,
  type Scope,
  type Target,
} from './resolve';
import { nearest } from './spelling';

/** The spaces in which a name is looked up. */
export type NameSpace = Exclude<RefSpace, 'word' | 'comparand'>;

export const ofShapes = (space: RefSpace): boolean => space === 'shape' || space === 'measured';

const written = (ref: Ref): string => ref.path.map(({ text }) => text).join('.');

const wantedWords = (kind: NameSpace): string =>
  ({
    value: say`a value`,
    shape: say`a point, line or curve`,
    measured: say`a point, line or curve`,
    part: say`an edge or point of this piece`,
    edge: say`an edge of a piece`,
    block: say`a draft or piece`,
    body: say`a body or size table`,
    subject: say`a piece, an edge or a seam`,
  })[kind];

export function failure(
  scope: Scope,
  ref: Ref,
  space: NameSpace,
  statement: Statement,
  own: Iterable<string> = [],
): Finding {
  return (
    wrongSpace(scope, ref, space, statement) ??
    misplacedHalfway(scope, ref, statement) ??
    unknownName(scope, ref, space, statement, own)
  );
}

/** The name exists, but as something else than is needed here. */
function wrongSpace(scope: Scope, ref: Ref, space: NameSpace, statement: Statement): Finding | undefined {
  const name = written(ref);
  const needed = wantedWords(space);
  const finding = (is: string, next: string, source?: string): Finding => ({
    code: 'wrong-kind',
    message: say`${name} is ${is}, but ${needed} is needed here. ${next}`,
    statement,
    at: ref.at,
    related: source === undefined ? [] : [{ source, message: say`${name} is defined here.` }],
    fixes: [],
  });
  if (space === 'value') {
    const found = resolveShape(scope, ref.path);
    if (found === undefined) return undefined;
    const word = found.kind === 'given' ? 'point' : kindWord(found);
    const next =
      word === 'point'
        ? say`distance(P, Q) gives the length between two points.`
        : say`length(${name}) gives its length.`;
    return finding(aKind(word), next, found.kind === 'given' ? undefined : found.id);
  }
  const block = space === 'edge' ? resolveBlock(scope, { ...ref, path: ref.path.slice(0, 1) }) : undefined;
  if (block?.declaration?.statement.node.kind === 'draft') {
    return finding(
      say`of the draft ${ref.path[0]!.text}`,
      say`Write a piece and its edge, such as front.side.`,
    );
  }
  const found = resolveValue(scope, ref.path);
  if (found === undefined) return undefined;
  const is = found.kind === 'measurement' ? say`a measurement` : say`a value`;
  return finding(is, say`Name a point, line or curve of the draft.`, found.declaration && found.id);
}

function kindWord(found: Target): string {
  const node = found.declaration?.statement.node;
  if (node?.kind === 'shape') return node.form;
  if (node?.kind === 'broken') return node.word ?? 'shape';
  return node?.kind ?? 'shape';
}

/** Each with its article: a language may have several. */
function aKind(word: string): string {
  switch (word) {
    case 'point':
      return say`a point`;
    case 'line':
      return say`a line`;
    case 'curve':
      return say`a curve`;
    case 'arc':
      return say`an arc`;
    case 'circle':
      return say`a circle`;
    default:
      return say`a ${word}`;
  }
}

function unknownName(
  scope: Scope,
  ref: Ref,
  space: NameSpace,
  statement: Statement,
  own: Iterable<string>,
): Finding {
  const name = written(ref);
  const list =
    space === 'value' || space === 'body' ? space : ofShapes(space) || space === 'part' ? 'shape' : 'block';
  const { wanted, at, known } = misspelt(scope, ref, list);
  const more = space === 'part' ? own : space === 'subject' && ref.path.length === 1 ? sewnNames(scope) : [];
  const names = [...known, ...more];
  const minus = subtracted(ref, statement, names);
  if (minus !== undefined) return minus;
  const near = nearest(wanted, names);
  const advice =
    near !== undefined
      ? say`Did you mean ${near}?`
      : space === 'value'
        ? say`Define it (let ${wanted} = …), or declare it as a measurement (measure ${wanted} "how it is taken").`
        : say`Define it, or correct the name.`;
  return {
    code: 'unknown-name',
    message: say`Nothing here is called ${name}. ${advice}`,
    statement,
    at: ref.at,
    related: [],
    fixes:
      near === undefined ? [] : [{ title: say`Change to ${near}`, edits: [{ statement, at, text: near }] }],
  };
}

/** `dart-1` where `dart1` is known: read as a subtraction from a name that there is not. */
function subtracted(ref: Ref, statement: Statement, names: readonly string[]): Finding | undefined {
  const { from, to } = ref.at;
  const number = /^-(\d+)(?![\w.%/])/.exec(statement.text.slice(to));
  const name = written(ref);
  const meant = number && name + number[1]!;
  if (meant === null || !names.includes(meant)) return undefined;
  const at = { from, to: to + number![0].length };
  const is = name + number![0];
  return {
    code: 'unknown-name',
    message: say`${is} is read as a subtraction, ${name} less ${number![1]!}, and nothing here is called ${name}. Did you mean ${meant}?`,
    statement,
    at,
    related: [],
    fixes: [{ title: say`Change to ${meant}`, edits: [{ statement, at, text: meant }] }],
  };
}

/** Which of the names of a path is the wrong one, and what could stand in its place. */
function misspelt(
  scope: Scope,
  ref: Ref,
  list: 'value' | 'shape' | 'block' | 'body',
): { wanted: string; at: { from: number; to: number }; known: Iterable<string> } {
  const [first, second] = ref.path;
  const block = second === undefined ? undefined : resolveBlock(scope, { ...ref, path: [first!] });
  if (second !== undefined && block?.declaration !== undefined && block.file !== undefined) {
    const { name } = block.declaration;
    const inside = [...block.file.within(new Set([name]))].filter(
      ({ scope: of, space }) => of === name && space === list,
    );
    return { wanted: second.text, at: second.at, known: inside.map(({ name }) => name) };
  }
  const known = [...namesInScope(scope, list)];
  return {
    wanted: first!.text,
    at: first!.at,
    known: second === undefined || list !== 'block' ? known : known.filter(isPiece(scope)),
  };
}

/** Only pieces have edges to name. */
const isPiece =
  (scope: Scope) =>
  (name: string): boolean =>
    resolveBlock(scope, { kind: 'ref', path: [{ text: name, at: NOWHERE }], at: NOWHERE })?.declaration
      ?.statement.node.kind !== 'draft';

const NOWHERE = { from: 0, to: 0 };

/** A shape of another draft, where it would have to lie on this one's paper. */
export function otherSheet(ref: Ref, found: Target, statement: Statement): Finding {
  const name = written(ref);
  return {
    code: 'other-sheet',
    message: say`${name} lies on another sheet of paper: ${found.declaration!.scope} is a draft of its own. Its lengths may be used here (length, distance); to draw by it, lay it on this sheet: ${name} laid A on P and B toward Q.`,
    statement,
    at: ref.at,
    related: [{ source: found.id, message: say`${name} is drawn here.` }],
    fixes: [],
  };
}

/** A draft where a piece is needed: its shapes become a piece only by an outline. */
export function notFromDraft({ at, path }: Ref, found: Target, statement: Statement): Finding | undefined {
  const { node } = statement;
  const from = node.kind === 'piece' ? node.workedFrom : 'of' in node ? node.of : undefined;
  const pieces = node.kind === 'piece' || node.kind === 'lining' || node.kind === 'facing';
  if (!pieces || from === undefined || from.kind !== 'ref' || from.at !== at) return undefined;
  if (node.kind === 'piece' && node.workedFrom === undefined) return undefined;
  if (found.declaration?.statement.node.kind !== 'draft') return undefined;
  const name = path.map(({ text }) => text).join('.');
  return {
    code: 'wrong-kind',
    message: say`${name} is a draft, but a piece is needed here. A piece is walked round on a draft: piece NAME of ${name}, with its outline.`,
    statement,
    at,
    related: [{ source: found.id, message: say`${name} is defined here.` }],
    fixes: [],
  };
}

/** A piece that calls its own edges by its own name, as if it were made already. */
export function ofItself(
  { id, statement: own, name: called }: Declaration,
  { at, path }: Ref,
  found: Target,
  statement: Statement,
): Finding | undefined {
  const [piece, part] = path;
  if (own === statement || part === undefined || piece!.text !== called || found.declaration?.id !== id)
    return undefined;
  if (own.node.kind !== 'piece' && own.node.kind !== 'lining') return undefined;
  const text = path
    .slice(1)
    .map((one) => one.text)
    .join('.');
  return {
    code: 'circle',
    message: say`${called}.${text} is asked for while ${called} is being made. Within its own block it is called ${text}.`,
    statement,
    at,
    related: [],
    fixes: [{ title: say`Write ${text}`, edits: [{ statement, at, text }] }],
  };
}
