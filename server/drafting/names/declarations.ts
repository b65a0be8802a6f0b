/** What a top-level statement declares: the names it gives, and the definitions that are evaluated. */
import { keptFor } from '../../../grammar/kept';
import type { Name, Statement, StatementNode, TopLevel } from '../../../grammar/syntax';

/** Values and shapes have separate name spaces, and so have blocks (drafts and pieces), seams and bodies. */
export type Space =
  | 'value'
  | 'shape'
  | 'block'
  | 'seam'
  | 'finish'
  | 'notch'
  | 'body'
  | 'measure'
  | 'usual'
  | 'expect'
  | 'line';

export interface Declaration {
  /** Path in its file: `=hip-ease`, `skirt/=quarter-hip`, `skirt/hip-curve`, `skirt`, `seam:side`. */
  readonly id: string;
  readonly space: Space;
  readonly name: string;
  /** The draft or piece whose block it stands in; '' at top level. */
  readonly scope: string;
  readonly statement: Statement;
  /** The top-level statement it stands in; a new one where something else in the block was edited. */
  top: TopLevel;
  /** Where its name stands in the statement. */
  readonly nameAt: { readonly from: number; readonly to: number };
}

/** How a statement is told apart from others in its scope: the space, and a word before its name in the path. */
function space(node: StatementNode): { space: Space; mark: string } | undefined {
  switch (node.kind) {
    case 'let':
    case 'choose':
    case 'solve':
      return { space: 'value', mark: '=' };
    case 'shape':
    case 'circle':
      return { space: 'shape', mark: '' };
    case 'draft':
    case 'piece':
    case 'lining':
    case 'facing':
    case 'band':
    case 'strip':
      return { space: 'block', mark: '' };
    case 'seam':
    case 'finish':
    case 'notch':
      return { space: node.kind, mark: `${node.kind}:` };
    case 'body':
    case 'sizes':
      return { space: 'body', mark: 'body:' };
    case 'measure':
      return { space: 'measure', mark: 'measure:' };
    case 'usual':
      return { space: 'usual', mark: 'usual:' };
    case 'broken':
      return node.name && BROKEN[node.word ?? ''];
    default:
      return undefined;
  }
}

/** A statement that could not be read gives its name all the same: who rests on it has nothing more to say. */
const BROKEN: Readonly<Record<string, { space: Space; mark: string }>> = Object.assign(
  Object.create(null) as Record<string, { space: Space; mark: string }>,
  Object.fromEntries([
    ...['let', 'choose', 'solve'].map((word) => [word, { space: 'value', mark: '=' }]),
    ...['point', 'line', 'curve', 'arc', 'circle'].map((word) => [word, { space: 'shape', mark: '' }]),
    ...['draft', 'piece', 'lining', 'facing', 'band', 'strip'].map((word) => [
      word,
      { space: 'block', mark: '' },
    ]),
    ...['body', 'sizes'].map((word) => [word, { space: 'body', mark: 'body:' }]),
  ]),
);

/** The word a statement begins with, as far as it says what is defined. */
const wordOf = (node: StatementNode): string => (node.kind === 'broken' ? (node.word ?? '') : node.kind);

/** The blocks whose statements are definitions of their own (a draft's); those of a piece belong to the piece. */
const OPEN_BLOCKS: ReadonlySet<string> = new Set(['draft']);

/** Shapes and values that stand in a piece's block are definitions of their own as well, and notches, which rest on the piece. */
const DEFINITIONS_IN_PIECES: ReadonlySet<Space> = new Set<Space>(['value', 'shape', 'notch']);

function declare(statement: Statement, top: TopLevel, scope: string): Declaration | undefined {
  const node = statement.node;
  const prefix = scope === '' ? '' : `${scope}/`;
  if (node.kind === 'expect') {
    return line(statement, top, scope, `${prefix}expect:${statement.text}`, 'expect');
  }
  const kind = space(node);
  if (kind === undefined) return undefined;
  const name = (node as { name: Name }).name;
  const id = `${prefix}${kind.mark}${name.text}`;
  return { id, space: kind.space, name: name.text, scope, statement, top, nameAt: name.at };
}

function line(statement: Statement, top: TopLevel, scope: string, id: string, of: Space): Declaration {
  return { id, space: of, name: '', scope, statement, top, nameAt: { from: 0, to: statement.node.at.to } };
}

/** The pieces that come of dividing or joining. */
function shares(statement: Statement, top: TopLevel): readonly Declaration[] {
  const { node } = statement;
  const names =
    node.kind === 'divide' ? node.into.map(({ name }) => name) : node.kind === 'join' ? [node.into] : [];
  return names.map(({ text, at }) => ({
    id: text,
    space: 'block',
    name: text,
    scope: '',
    statement,
    top,
    nameAt: at,
  }));
}

/** Notches in the block that a part of a divided piece has of its own. */
function notchesOfShares(
  { block = [] }: Statement,
  top: TopLevel,
  before?: ReadonlyMap<Statement, Declaration>,
): readonly Declaration[] {
  return block.flatMap(({ node, block: lines = [] }) => {
    if (node.kind !== 'share') return [];
    const scope = node.name.text;
    return lines.flatMap((inner): readonly Declaration[] => {
      if (inner.node.kind !== 'notch') return [];
      const kept = before?.get(inner);
      const declaration = kept?.scope === scope ? kept : declare(inner, top, scope);
      if (declaration === undefined) return [];
      declaration.top = top;
      return [declaration];
    });
  });
}

/**
 * All that a top-level statement declares, itself first. Lines without a name (`units`, `use`) are found by their words.
 *
 * @param before what a statement of a block declared in an earlier text: it is kept where it says the same
 */
export function declarations(
  top: TopLevel,
  before?: ReadonlyMap<Statement, Declaration>,
): readonly Declaration[] {
  const { statement } = top;
  const shared = shares(statement, top);
  if (shared.length > 0) return [...shared, ...notchesOfShares(statement, top, before)];
  const own = declare(statement, top, '');
  const found = [own ?? line(statement, top, '', `line:${statement.text}`, 'line')];
  const block = statement.block ?? [];
  const scope = own?.space === 'block' ? own.name : undefined;
  if (scope === undefined) return found;
  const open = OPEN_BLOCKS.has(wordOf(statement.node));
  for (const inner of block) {
    const kept = before?.get(inner);
    const declaration = kept?.scope === scope ? kept : declare(inner, top, scope);
    if (declaration === undefined || (!open && !DEFINITIONS_IN_PIECES.has(declaration.space))) continue;
    declaration.top = top;
    found.push(declaration);
  }
  return found;
}

/** What one statement declares, of all that its top-level statement does. */
export const declaredBy = (all: readonly Declaration[], statement: Statement): readonly Declaration[] =>
  byStatement(all).get(statement) ?? [];

/** Kept for each list of declarations once somebody asked. */
const byStatement = keptFor(grouped);

function grouped(all: readonly Declaration[]): ReadonlyMap<Statement, readonly Declaration[]> {
  const found = new Map<Statement, Declaration[]>();
  for (const one of all) {
    const known = found.get(one.statement);
    if (known === undefined) found.set(one.statement, [one]);
    else known.push(one);
  }
  return found;
}
