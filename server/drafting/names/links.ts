/** What a definition's names lead to, and what there is to say where they lead nowhere. */
import type { Expr, NotchNode, Ref, Sewn, Side, Statement } from '../../../grammar/syntax';
import type { Finding } from '../finding';
import type { Declaration } from './declarations';
import { failure, notFromDraft, ofItself, ofShapes, otherSheet, type NameSpace } from './failures';
import type { FileNames, Given } from './files';
import { outlined, ownParts } from './piece-names';
import { eachReference, value, type RefSpace, type Visit } from './references';
import {
  resolveBlock,
  resolveBody,
  resolveEdge,
  resolveShape,
  resolveSubject,
  resolveValue,
  isOfLostFile,
  losesFiles,
  scopeOf,
  target,
  type Scope,
  type Target,
} from './resolve';

export interface Links {
  readonly targets: ReadonlyMap<Ref, Target>;
  /** Paths of the definitions it takes as input. */
  readonly inputs: ReadonlySet<string>;
  /** Every first or second name written in it: a change of their meaning concerns it. */
  readonly mentions: ReadonlySet<string>;
  readonly findings: readonly Finding[];
  /**
   * What to say of a name where it is read, if it leads nowhere by then: one beside an equals sign may be the word of a
   * choice, one in a piece something that the piece has when it is made.
   */
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
export function headOf(statement: Statement): string {
  const drawn = drawnLine(statement);
  return drawn === undefined ? statement.text : `${statement.text} ${drawn.text}`;
}

/** The `drawn as` lines of blocks, looked for once in each. */
const drawnLines = new WeakMap<Statement, Statement | 'none'>();

function drawnLine(block: Statement): Statement | undefined {
  if (block.block === undefined) return undefined;
  const known = drawnLines.get(block);
  const found = known ?? block.block.find(({ node }) => node.kind === 'drawn-as') ?? 'none';
  if (known === undefined) drawnLines.set(block, found);
  return found === 'none' ? undefined : found;
}

function drawnFor(scope: Scope): Side {
  for (const { file, name } of scope.blocks) {
    const block = file.get(name)?.statement;
    const line = block && drawnLine(block);
    if (line?.node.kind === 'drawn-as') return line.node.side;
  }
  return 'right';
}

export function linksOf(file: FileNames, declaration: Declaration): Links {
  const given = givenTo(file, declaration);
  const home = withPieces(scopeOf(file, declaration), declaration);
  const linking = new Linking(file, declaration, home);
  if (given === undefined || declaration.statement.node.kind === 'choose')
    eachReference(declaration.statement, linking.visit);
  const abroad: Scope = { file: given?.by ?? file, blocks: [] };
  if (given !== undefined && !isWord(abroad, given.value, declaration.statement)) {
    linking.scope = abroad;
    value(given.value, (ref, space) => linking.visit(ref, space, given.statement));
    linking.scope = home;
  }
  for (const edge of borrowed(file, declaration.statement, linking.mentions)) {
    if (!linking.targets.has(edge)) linking.visit(edge, 'edge', declaration.statement);
  }
  const { targets, inputs, mentions, findings, later, bare, adrift } = linking;
  return {
    targets,
    inputs,
    mentions,
    findings,
    later: later ?? NOT_LATER,
    unresolved: findings.length > 0 || adrift,
    bare: bare ?? NO_NAMES,
    drawn: drawnFor(linking.scope),
    head: headOf(declaration.statement),
  };
}

/** Links are kept, and most have nothing in these: it is the same nothing for all. */
const NO_NAMES: ReadonlySet<string> = new Set();
const NOT_LATER: ReadonlyMap<Ref, Finding> = new Map();

/** The names of one definition, looked up one after the other. */
class Linking {
  readonly targets = new Map<Ref, Target>();
  readonly inputs = new Set<string>();
  readonly mentions: Set<string>;
  readonly findings: Finding[] = [];
  later?: Map<Ref, Finding>;
  bare?: Set<string>;
  /** A name leads into a file that can't be had, which was told there. */
  adrift = false;
  private orphan = false;
  private readonly own: ReadonlySet<string>;

  constructor(
    private readonly file: FileNames,
    private readonly declaration: Declaration,
    public scope: Scope,
  ) {
    this.mentions = new Set();
    for (const { name } of scope.blocks) this.mentions.add(name);
    this.own = ownParts(declaration.statement);
  }

  readonly visit: Visit = (ref, space, statement) => {
    const { scope, declaration } = this;
    // a notch in a piece's block is cut when the piece is made
    if (space === 'word' || (statement.node.kind === 'notch' && declaration.space === 'block')) return;
    for (const { text } of ref.path) this.mentions.add(text);
    const found = lookedUp(scope, declaration, ref, space);
    // an edge may bear the name of the curve that it runs along: inside the outline that name means the curve still
    const isOwn = (ofShapes(space) || space === 'part') && this.own.has(ref.path[0]!.text);
    if (found === undefined && isOwn) return;
    const notch =
      found === undefined ? notchInSeam(this.file, declaration, ref, space, statement) : undefined;
    if (notch !== undefined) return eachReference(notch, this.visit);
    if (found === undefined) return this.nowhere(ref, space, statement);
    if (space === 'shape' && onOtherSheet(scope, declaration, found)) {
      this.findings.push(otherSheet(ref, found, statement));
      return;
    }
    const wrong = notFromDraft(ref, found, statement) ?? ofItself(declaration, ref, found, statement);
    if (wrong !== undefined) {
      this.findings.push(wrong);
      return;
    }
    this.targets.set(ref, found);
    if (found.kind !== 'given' && found.kind !== 'body') this.inputs.add(found.id);
    if (found.kind === 'measurement' && found.rest.length === 0)
      (this.bare ??= new Set<string>()).add(ref.path[0]!.text);
  };

  private nowhere(ref: Ref, space: Exclude<RefSpace, 'word'>, statement: Statement): void {
    const { scope, declaration, orphan, own } = this;
    if (isOfLostFile(scope.file, ref.path)) {
      this.adrift = true;
    } else if (space === 'comparand') {
      (this.later ??= new Map<Ref, Finding>()).set(ref, failure(scope, ref, 'value', statement));
    } else if (foundLater(declaration, space) || (!orphan && onlyShapes(statement))) {
      (this.later ??= new Map<Ref, Finding>()).set(ref, failure(scope, ref, space, statement, own));
    } else {
      const told = failure(scope, ref, space, statement, own);
      // a piece of nothing has no points to name either: that is one fault, not many
      if (!orphan || (!ofShapes(space) && space !== 'part')) {
        if (told.fixes.length === 0 && losesFiles(scope.file)) this.adrift = true;
        else this.findings.push(told);
      }
      this.orphan ||= space === 'block';
    }
  }
}

/** `use … with closure = zip`: one of the words of a choice, and no name. */
function isWord(scope: Scope, given: Expr, { node }: Statement): boolean {
  if (given.kind !== 'ref' || node.kind !== 'choose') return false;
  const words = (node.among ?? []).flatMap((word) => (word.kind === 'ref' ? [word.path[0]!.text] : []));
  if (words.length === 0) return false;
  return words.includes(given.path[0]!.text) || resolveValue(scope, given.path) === undefined;
}

/** In a seam a notch stands for its place, whose names are then the seam's as well. */
function notchInSeam(
  file: FileNames,
  { space: of, statement: own }: Declaration,
  { path }: Ref,
  space: RefSpace,
  statement: Statement,
): Statement | undefined {
  return of === 'seam' && statement === own && ofShapes(space) ? namedNotch(file, path[0]!.text) : undefined;
}

/** In a worked piece its own edges and corners come before the draft's shapes, which they may have moved away from. */
function lookedUp(
  scope: Scope,
  declaration: Declaration,
  ref: Ref,
  space: Exclude<RefSpace, 'word'>,
): Target | undefined {
  const parent = ofParent(scope, declaration, ref, space);
  const moved = parent !== undefined && outlined(scope).has(ref.path[0]!.text);
  const found = moved ? undefined : resolve(scope, ref, space === 'comparand' ? 'value' : space);
  return found ?? parent ?? ofOwnPiece(scope, declaration, ref, space);
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

/** What the using file sets a value of this file to. */
export const givenTo = (file: FileNames, { space, scope, name }: Declaration): Given | undefined =>
  space === 'value' && scope === '' ? file.given.get(name) : undefined;

/** Places in a seam, a finish or a notch may name the points of the pieces it takes: `notch knee on front.side at knee`. */
function withPieces(scope: Scope, { statement }: Declaration): Scope {
  const edges = edgesTaken(scope, statement);
  if (edges.length === 0) return scope;
  const blocks = [...scope.blocks];
  for (const ref of edges) {
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

/** The edges of the seam that a notch stands on. */
export function notchedEdges(file: FileNames, { node }: Statement): readonly Sewn[] {
  if (node.kind !== 'notch' || node.on.kind !== 'ref' || node.on.path.length !== 1) return [];
  const seam = file.get(`seam:${node.on.path[0]!.text}`)?.statement.node;
  if (seam?.kind !== 'seam') return [];
  return [...seam.left.parts, ...(seam.right === 'its-pair' ? [] : seam.right.parts)];
}

/** The notch that a place of a seam names: `none below front-pitch`. */
export function namedNotch(
  file: FileNames,
  name: string,
): (Statement & { readonly node: NotchNode }) | undefined {
  const statement = file.get(`notch:${name}`)?.statement;
  return statement?.node.kind === 'notch'
    ? (statement as Statement & { readonly node: NotchNode })
    : undefined;
}

/** A style line in a worked piece's block may name the edges, corners and darts of the piece that this one is worked from. */
function ofParent(scope: Scope, { space: of }: Declaration, ref: Ref, space: RefSpace): Target | undefined {
  const parent = scope.blocks[1];
  const declared = parent?.file.get(parent.name);
  if (of === 'block' || !ofShapes(space) || parent === undefined || declared === undefined) return undefined;
  if (declared.statement.node.kind === 'draft' || declared.space !== 'block') return undefined;
  return target(parent.file, declared, 'block', ref.path);
}

/** A notch in a piece's block names the edges of that piece without the piece's name. */
function ofOwnPiece(
  { file }: Scope,
  { space: of, scope }: Declaration,
  { path }: Ref,
  space: RefSpace,
): Target | undefined {
  const piece = of === 'notch' && space === 'edge' && path.length === 1 ? file.get(scope) : undefined;
  return piece && target(file, piece, 'block', path);
}

/** A line without which its piece is drawn all the same. */
const onlyShapes = ({ node: { kind } }: Statement): boolean =>
  kind === 'dart' || kind === 'fish-dart' || kind === 'pleats' || kind === 'gathers';

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
    case 'subject':
      return resolveSubject(scope, ref);
  }
}
