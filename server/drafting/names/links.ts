/** What a definition's names lead to, and what there is to say where they lead nowhere. */
import type { Ref, Sewn, Side, Statement } from '../../../grammar/syntax';
import type { Finding } from '../finding';
import type { Declaration } from './declarations';
import type { FileNames, Given } from './files';
import { eachReference, value, type RefSpace, type Visit } from './references';
import {
  namesInScope,
  resolveBlock,
  resolveBody,
  resolveEdge,
  resolveShape,
  resolveValue,
  scopeOf,
  type Scope,
  type Target,
} from './resolve';
import { nearest } from './spelling';

export interface Links {
  readonly targets: ReadonlyMap<Ref, Target>;
  /** Paths of the definitions it takes as input. */
  readonly inputs: ReadonlySet<string>;
  /** Every first or second name written in it: a change of their meaning concerns it. */
  readonly mentions: ReadonlySet<string>;
  readonly findings: readonly Finding[];
  /** Names beside an equals sign that may be words of a choice: what to say if they turn out not to be. */
  readonly later: ReadonlyMap<Ref, Finding>;
  /** Some name leads nowhere: the definition can't be computed. */
  readonly unresolved: boolean;
  /** Measurements named without a side: what rests on them differs from side to side when the body does. */
  readonly bare: ReadonlySet<string>;
  /** The half of the wearer that its draft is drawn for. */
  readonly drawn: Side;
  /** What of a block's own words reaches into it. */
  readonly head: string;
}

/** The words of a block that change the meaning of what stands in it: its header, and the side it is drawn for. */
export function headOf({ text, block = [] }: Statement): string {
  const drawn = block.find(({ node }) => node.kind === 'drawn-as');
  return drawn === undefined ? text : `${text} ${drawn.text}`;
}

function drawnFor(scope: Scope): Side {
  for (const { file, name } of scope.blocks) {
    for (const { node } of file.get(name)?.statement.block ?? [])
      if (node.kind === 'drawn-as') return node.side;
  }
  return 'right';
}

const ofShapes = (space: RefSpace): boolean => space === 'shape' || space === 'measured';

/** The spaces in which a name is looked up. */
type NameSpace = Exclude<RefSpace, 'word' | 'comparand'>;

export function linksOf(file: FileNames, declaration: Declaration): Links {
  const given = givenTo(file, declaration);
  const scope =
    given === undefined
      ? withPieces(scopeOf(file, declaration), declaration)
      : { file: given.by, blocks: [] };
  const own = ownParts(declaration.statement);
  const targets = new Map<Ref, Target>();
  const inputs = new Set<string>();
  const mentions = new Set<string>(scope.blocks.map(({ name }) => name));
  const findings: Finding[] = [];
  const later = new Map<Ref, Finding>();
  const bare = new Set<string>();
  let orphan = false;
  const visit: Visit = (ref, space, statement) => {
    if (space === 'word') return;
    ref.path.forEach(({ text }) => mentions.add(text));
    const parent = ofParent(scope, declaration, ref, space);
    const moved = parent !== undefined && outlined(scope).has(ref.path[0]!.text);
    const plain = moved ? undefined : resolve(scope, ref, space === 'comparand' ? 'value' : space);
    const found = plain ?? parent;
    // an edge may bear the name of the curve that it runs along: inside the outline that name means the curve still
    const isOwn = (ofShapes(space) || space === 'part') && own.has(ref.path[0]!.text);
    if (found === undefined && isOwn) return;
    if (found !== undefined && space === 'shape' && onOtherSheet(scope, declaration, found)) {
      findings.push(otherSheet(ref, found, statement));
    } else if (found !== undefined) {
      targets.set(ref, found);
      if (found.kind !== 'given' && found.kind !== 'body') inputs.add(found.id);
      if (found.kind === 'measurement' && found.rest.length === 0) bare.add(ref.path[0]!.text);
    } else if (space === 'comparand') {
      later.set(ref, failure(scope, ref, 'value', statement));
    } else if (foundLater(declaration, space)) {
      // said when the piece is made, if it has nothing of that name by then
      later.set(ref, failure(scope, ref, space, statement, own));
    } else {
      // a piece of nothing has no points to name either: that is one fault, not many
      if (!orphan || (!ofShapes(space) && space !== 'part'))
        findings.push(failure(scope, ref, space, statement, own));
      orphan ||= space === 'block';
    }
  };
  if (given === undefined) eachReference(declaration.statement, visit);
  else value(given.value, (ref, space) => visit(ref, space, given.statement));
  for (const edge of borrowed(file, declaration.statement, mentions)) {
    if (!targets.has(edge)) visit(edge, 'edge', declaration.statement);
  }
  const unresolved = findings.length > 0;
  const [drawn, head] = [drawnFor(scope), headOf(declaration.statement)];
  return { targets, inputs, mentions, findings, later, unresolved, bare, drawn, head };
}

/** Edges of seams that a band or a notch takes by the seam's name; the name is mentioned as well. */
function borrowed(file: FileNames, statement: Statement, mentions: Set<string>): readonly Ref[] {
  if (statement.node.kind === 'band') {
    for (const { edge } of statement.node.for.parts) edge.path.forEach(({ text }) => mentions.add(text));
  }
  return [...bandEdges(file, statement), ...notchedEdges(file, statement)].map(({ edge }) => edge);
}

/** Each draft is a sheet of paper of its own: what lies on another has no place on this one. */
function onOtherSheet({ blocks }: Scope, { space, scope }: Declaration, found: Target): boolean {
  const { declaration } = found;
  if (space !== 'shape' || scope === '' || declaration === undefined || found.kind !== 'shape') return false;
  const here = blocks.some(({ file, name }) => file === found.file && name === declaration.scope);
  return !here;
}

function otherSheet(ref: Ref, found: Target, statement: Statement): Finding {
  const name = written(ref);
  return {
    code: 'other-sheet',
    message:
      `${name} lies on another sheet of paper: ${found.declaration!.scope} is a draft of its own. Its lengths may be used ` +
      `here (length, distance); to draw by it, lay it on this sheet: ${name} laid A on P and B toward Q.`,
    statement,
    at: ref.at,
    related: [{ source: found.id, message: `${name} is drawn here.` }],
    fixes: [],
  };
}

/** What the using file sets a value of this file to. */
export const givenTo = (file: FileNames, { space, scope, name }: Declaration): Given | undefined =>
  space === 'value' && scope === '' ? file.given.get(name) : undefined;

/** Places in a seam, a finish or a notch may name the points of the pieces it takes: `notch knee on front.side at knee`. */
function withPieces(scope: Scope, { statement }: Declaration): Scope {
  const blocks = [...scope.blocks];
  for (const ref of edgesTaken(scope, statement)) {
    const piece = resolveBlock(scope, ref);
    if (piece?.file === undefined || piece.declaration === undefined) continue;
    blocks.push(...scopeOf(piece.file, piece.declaration).blocks);
  }
  return { ...scope, blocks };
}

function edgesTaken(scope: Scope, { node }: Statement): readonly Ref[] {
  switch (node.kind) {
    case 'seam':
      return [...node.left.parts, ...(node.right === 'its-pair' ? [] : node.right.parts)].map(
        ({ edge }) => edge,
      );
    case 'finish':
      return node.edges.map(({ edge }) => edge);
    case 'notch': {
      if (node.on.kind !== 'ref') return [];
      const seam = node.on.path.length === 1 ? scope.file.get(`seam:${node.on.path[0]!.text}`) : undefined;
      return seam === undefined ? [node.on] : edgesTaken(scope, seam.statement);
    }
    default:
      return [];
  }
}

/** The edges that a band goes round: those it names, or those of the seam it names, without its own. */
export function bandEdges(file: FileNames, { node }: Statement): readonly Sewn[] {
  if (node.kind !== 'band') return [];
  return node.for.parts.flatMap((part) => {
    if (part.edge.path.length > 1) return [part];
    const seam = file.get(`seam:${part.edge.path[0]!.text}`)?.statement.node;
    if (seam?.kind !== 'seam' || seam.right === 'its-pair') return [part];
    const own = (sewn: Sewn): boolean => sewn.edge.path[0]!.text === node.name.text;
    return [seam.left, seam.right].filter(({ parts }) => !parts.some(own)).flatMap(({ parts }) => parts);
  });
}

/** The edge of a piece that is sewn to its own pair: where it has no fold, that is its centre. */
export function pairedEdge(file: FileNames, piece: string): string | undefined {
  for (const { statement } of file.topLevels) {
    const { node } = statement;
    if (node.kind !== 'seam' || node.right !== 'its-pair') continue;
    const own = node.left.parts.find(({ edge }) => edge.path.length === 2 && edge.path[0]!.text === piece);
    if (own !== undefined) return own.edge.path[1]!.text;
  }
  return undefined;
}

/** The edges of the seam that a notch stands on. */
export function notchedEdges(file: FileNames, { node }: Statement): readonly Sewn[] {
  if (node.kind !== 'notch' || node.on.kind !== 'ref' || node.on.path.length !== 1) return [];
  const seam = file.get(`seam:${node.on.path[0]!.text}`)?.statement.node;
  if (seam?.kind !== 'seam' || seam.right === 'its-pair') return [];
  return [...seam.left.parts, ...seam.right.parts];
}

/** Edges and corners that the outline of a piece names, which work may have moved from where the draft has them. */
function outlined(scope: Scope): ReadonlySet<string> {
  const names = new Set<string>();
  for (const { file, name } of scope.blocks.slice(1)) {
    for (const { node, block = [] } of file.get(name)?.statement.block ?? []) {
      if (node.kind !== 'outline') continue;
      if (node.from.kind === 'ref') names.add(node.from.path[0]!.text);
      for (const edge of block) {
        if (edge.node.kind !== 'edge') continue;
        names.add(edge.node.name.text);
        for (const { to } of edge.node.runs) if (to.kind === 'ref') names.add(to.path[0]!.text);
      }
    }
  }
  return names;
}

/** A style line in a worked piece's block may name the edges, corners and darts of the piece that this one is worked from. */
function ofParent(scope: Scope, { space: of }: Declaration, ref: Ref, space: RefSpace): Target | undefined {
  const parent = scope.blocks[1];
  const declared = parent?.file.get(parent.name);
  if (of === 'block' || !ofShapes(space) || parent === undefined || declared === undefined) return undefined;
  if (declared.statement.node.kind === 'draft' || declared.space !== 'block') return undefined;
  return {
    id: parent.file.key + declared.id,
    kind: 'block',
    file: parent.file,
    declaration: declared,
    rest: ref.path,
  };
}

/** Edges, holes, darts and marks that a piece's own block names. */
function ownParts(statement: Statement): ReadonlySet<string> {
  const names = new Set<string>();
  if (statement.node.kind !== 'piece' && statement.node.kind !== 'lining') return names;
  for (const { node, block = [] } of statement.block ?? []) {
    if (node.kind === 'outline' || node.kind === 'hole') {
      for (const edge of block) {
        if (edge.node.kind !== 'edge') continue;
        names.add(edge.node.name.text);
        for (const run of edge.node.runs) if (run.kind === 'dart') names.add(run.name.text);
      }
    } else if (
      node.kind === 'dart' ||
      node.kind === 'fish-dart' ||
      node.kind === 'mark' ||
      node.kind === 'notch'
    ) {
      names.add(node.name.text);
    }
  }
  return names;
}

/** A piece worked from another has the other's edges and corners: those are looked up when it is made. */
function foundLater({ statement, space: of }: Declaration, space: RefSpace): boolean {
  const { node } = statement;
  if ((of === 'seam' || of === 'finish' || of === 'notch') && ofShapes(space))
    return node.kind !== 'notch' || node.on.kind === 'ref';
  if (of !== 'block') return false;
  if (space === 'part') return true;
  return (
    ofShapes(space) && (node.kind === 'lining' || (node.kind === 'piece' && node.workedFrom !== undefined))
  );
}

function resolve(scope: Scope, ref: Ref, space: NameSpace): Target | undefined {
  switch (space) {
    case 'value':
      return resolveValue(scope, ref.path);
    case 'shape':
    case 'measured':
    case 'part':
      return resolveShape(scope, ref.path);
    case 'edge':
      return resolveEdge(scope, ref.path);
    case 'block':
      return resolveBlock(scope, ref);
    case 'body':
      return resolveBody(scope, ref.path);
  }
}

const written = (ref: Ref): string => ref.path.map(({ text }) => text).join('.');

const WANTED: Readonly<Record<NameSpace, string>> = {
  value: 'a value',
  shape: 'a point, line or curve',
  measured: 'a point, line or curve',
  part: 'an edge or point of this piece',
  edge: 'an edge of a piece',
  block: 'a draft or piece',
  body: 'a body or size table',
};

function failure(
  scope: Scope,
  ref: Ref,
  space: NameSpace,
  statement: Statement,
  own: Iterable<string> = [],
): Finding {
  return wrongSpace(scope, ref, space, statement) ?? unknownName(scope, ref, space, statement, own);
}

/** The name exists, but as something else than is needed here. */
function wrongSpace(scope: Scope, ref: Ref, space: NameSpace, statement: Statement): Finding | undefined {
  const name = written(ref);
  const needed = WANTED[space];
  const finding = (is: string, next: string, source?: string): Finding => ({
    code: 'wrong-kind',
    message: `${name} is ${is}, but ${needed} is needed here. ${next}`,
    statement,
    at: ref.at,
    related: source === undefined ? [] : [{ source, message: `${name} is defined here.` }],
    fixes: [],
  });
  if (space === 'value') {
    const found = resolveShape(scope, ref.path);
    if (found === undefined) return undefined;
    const word = found.kind === 'given' ? 'point' : kindWord(found);
    const next =
      word === 'point'
        ? 'distance(P, Q) gives the length between two points.'
        : `length(${name}) gives its length.`;
    return finding(`a ${word}`, next, found.kind === 'given' ? undefined : found.id);
  }
  const block = space === 'edge' ? resolveBlock(scope, { ...ref, path: ref.path.slice(0, 1) }) : undefined;
  if (block?.declaration?.statement.node.kind === 'draft') {
    return finding(`of the draft ${ref.path[0]!.text}`, 'Write a piece and its edge, such as front.side.');
  }
  const found = resolveValue(scope, ref.path);
  if (found === undefined) return undefined;
  const is = found.kind === 'measurement' ? 'a measurement' : 'a value';
  return finding(is, 'Name a point, line or curve of the draft.', found.declaration && found.id);
}

function kindWord(found: Target): string {
  const node = found.declaration?.statement.node;
  if (node?.kind === 'shape') return node.form;
  if (node?.kind === 'broken') return node.word ?? 'shape';
  return node?.kind ?? 'shape';
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
  const near = nearest(wanted, space === 'part' ? [...known, ...own] : known);
  const advice =
    near !== undefined
      ? `Did you mean ${near}?`
      : space === 'value'
        ? `Define it (let ${wanted} = …), or declare it as a measurement (measure ${wanted} "how it is taken").`
        : 'Define it, or correct the name.';
  return {
    code: 'unknown-name',
    message: `Nothing here is called ${name}. ${advice}`,
    statement,
    at: ref.at,
    related: [],
    fixes: near === undefined ? [] : [{ title: `Change to ${near}`, edits: [{ statement, at, text: near }] }],
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
