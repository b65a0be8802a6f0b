/** What each name in a text stands for, as one key that is the same wherever the thing is named. */
import type { Name, Ref, Statement, StatementNode, TopLevel } from '../../grammar/syntax';
import { declaredBy, type Declaration } from '../drafting/names/declarations';
import type { FileNames } from '../drafting/names/files';
import { ofNode } from '../drafting/names/mentions';
import type { RefSpace } from '../drafting/names/references';
import {
  resolveBlock,
  resolveBody,
  resolveEdge,
  resolveShape,
  resolveValue,
  scopeOf,
  type Target,
} from '../drafting/names/resolve';
import { aliasMeaning, declaredMeaning, measurementMeaning, type Meaning } from './meaning';
import { memberOf } from './members';
import type { Names } from './names';

/** A statement and what it stands in, for looking up its names. */
export interface Standing {
  readonly names: Names;
  readonly file: FileNames;
  readonly top: TopLevel;
  readonly statement: Statement;
}

/** The declaration that a statement belongs to: its own, else that of the block it stands in. */
function ownersOf({ file, top, statement }: Standing): readonly Declaration[] {
  const all = file.of(top);
  const own = declaredBy(all, statement);
  return statement === top.statement ? own : [...own, ...declaredBy(all, top.statement)];
}

/** The piece or share whose lines a statement is one of. */
export function pieceRound({ file, top, statement }: Standing): Declaration | undefined {
  const { node, block = [] } = top.statement;
  const shares = node.kind === 'divide' ? block : [];
  const share = shares.find((one) => one.node.kind === 'share' && holds(one, statement));
  const name = share?.node.kind === 'share' ? share.node.name.text : undefined;
  return declaredBy(file.of(top), top.statement).find(
    (one) => one.space === 'block' && one.scope === '' && (name === undefined || one.name === name),
  );
}

const holds = (block: Statement, statement: Statement): boolean =>
  block === statement || (block.block ?? []).some((inner) => holds(inner, statement));

/** The name spaces of the names that a statement mentions; names that nothing looks up yet are not among them. */
export function spacesOf(node: StatementNode): ReadonlyMap<Ref, RefSpace> {
  const spaces = new Map<Ref, RefSpace>();
  ofNode(node, (ref, space) => spaces.set(ref, space));
  return spaces;
}

/**
 * What each name of a path stands for; undefined where it names nothing of ours (`start`, a dart's `tip`).
 *
 * @param beside what the name is compared with, for the words of a choice
 */
export function meaningsOf(
  at: Standing,
  ref: Ref,
  space: RefSpace | undefined,
  beside?: Ref,
): readonly (Meaning | undefined)[] {
  if (space === 'word') return [wordOf(at, ref)];
  const own = ownPart(at, ref, space);
  if (own !== undefined) return [own];
  const target = linked(at, ref) ?? guessed(at, ref);
  if (target !== undefined) return ofTarget(at, ref, target);
  const inPiece = partOfTaken(at, ref.path[0]!.text) ?? (beside && wordBeside(at, ref, beside));
  return inPiece === undefined ? [] : [inPiece];
}

/** Outside the outline, a line of a piece means an edge, a dart or a mark of the piece before anything of the draft. */
function ownPart(at: Standing, ref: Ref, space: RefSpace | undefined): Meaning | undefined {
  const { inside, node } = at.statement;
  if (inside === 'file' || inside === 'draft' || inside === 'body' || inside === 'sizes') return undefined;
  const piece = pieceRound(at);
  if (piece === undefined || space === 'value' || space === 'comparand') return undefined;
  const outlined = inside === 'outline' || node.kind === 'outline' || node.kind === 'shape';
  const target = outlined || space === 'shape' || space === 'measured' ? linked(at, ref) : undefined;
  return target === undefined ? memberOf(at.file, piece, ref.path[0]!.text, 'any') : undefined;
}

/** Where the names phase has it lead. */
function linked(at: Standing, ref: Ref): Target | undefined {
  const { names, file } = at;
  for (const { id } of ownersOf(at)) {
    const target = names.network.nodes.get(file.key + id)?.links.targets.get(ref);
    if (target !== undefined) return target;
  }
  return undefined;
}

/** Names that no phase looks up, or that stand in a statement whose name is taken already. */
function guessed(at: Standing, ref: Ref): Target | undefined {
  const { file } = at;
  const [owner] = ownersOf(at);
  const scope = owner === undefined ? { file, blocks: [] } : scopeOf(file, owner);
  return (
    resolveEdge(scope, ref.path) ??
    resolveShape(scope, ref.path) ??
    resolveBlock(scope, ref) ??
    resolveValue(scope, ref.path) ??
    resolveBody(scope, ref.path)
  );
}

function ofTarget({ file }: Standing, { path }: Ref, target: Target): readonly (Meaning | undefined)[] {
  const found: (Meaning | undefined)[] = path.map(() => undefined);
  let at = path.length - target.rest.length - 1;
  const { declaration } = target;
  if (target.kind === 'measurement') found[at] = measurementMeaning(path[at]!.text);
  else if (declaration !== undefined && at >= 0) found[at] = declaredMeaning(target.file!, declaration);
  if (target.kind === 'block' && target.rest.length > 0)
    found[at + 1] = memberOf(target.file!, declaration!, target.rest[0]!.text, 'any');
  if (at > 0 && declaration !== undefined && declaration.scope === path[at - 1]!.text) {
    const block = target.file!.get(declaration.scope);
    if (block !== undefined) found[--at] = declaredMeaning(target.file!, block);
  }
  if (at > 0) found[0] = aliasMeaning(file, path[0]!.text);
  return found;
}

/** A corner, dart or edge of one of the pieces that a seam, a finish or a piece's own lines speak of. */
function partOfTaken(at: Standing, name: string): Meaning | undefined {
  const round = at.statement.inside === 'file' ? undefined : pieceRound(at);
  const own = round && memberOf(at.file, round, name, 'any');
  if (own !== undefined) return own;
  const scope = { file: at.file, blocks: [] };
  for (const [ref, space] of spacesOf(at.statement.node)) {
    const block = ref.path.length > 1 || space === 'block' ? resolveBlock(scope, ref) : undefined;
    const found = block?.declaration && memberOf(block.file!, block.declaration, name, 'any');
    if (found !== undefined) return found;
  }
  const mark = at.file.get(`notch:${name}`);
  return mark && declaredMeaning(at.file, mark);
}

/** A word that a `choose … among` offers, where it offers it. */
function wordOf({ file, top, statement }: Standing, ref: Ref): Meaning | undefined {
  const [choice] = declaredBy(file.of(top), statement);
  return choice && choiceWord(declaredMeaning(file, choice), ref.path[0]!.text);
}

/** The same word, compared with the choice. */
function wordBeside(at: Standing, ref: Ref, beside: Ref): Meaning | undefined {
  const target = linked(at, beside) ?? guessed(at, beside);
  const { declaration, file } = target ?? {};
  const node = declaration?.statement.node;
  if (node?.kind !== 'choose' || node.among === undefined || ref.path.length > 1) return undefined;
  const offered = node.among.some((one) => one.kind === 'ref' && one.path[0]!.text === ref.path[0]!.text);
  return offered ? choiceWord(declaredMeaning(file!, declaration!), ref.path[0]!.text) : undefined;
}

const choiceWord = (choice: Meaning, name: string): Meaning => ({
  key: `${choice.key}~${name}`,
  kind: 'word',
  name,
  uri: choice.uri,
});

/** What a bare name that is no reference stands for: the body of `drafted for`, a value that a `use` sets. */
export function bodyMeaning({ file }: Standing, name: Name): Meaning | undefined {
  const target = resolveBody({ file, blocks: [] }, [name]);
  return target?.declaration && declaredMeaning(target.file!, target.declaration);
}

export function givenMeaning(at: Standing, name: Name): Meaning | undefined {
  const used = at.file.uses.find(({ statement }) => statement === at.statement)?.file;
  const value = used?.get(`=${name.text}`);
  return used && value && declaredMeaning(used, value);
}
