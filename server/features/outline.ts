/** The document outline: drafts with their shapes, pieces with their edges, seams, choices. Read from the syntax alone. */
import { keptFor } from '../../grammar/kept';
import { say } from '../../grammar/say';
import type { SourceFile, Statement, StatementNode, TopLevel } from '../../grammar/syntax';

export type SymbolKind =
  'pattern' | 'value' | 'choice' | 'body' | 'draft' | 'shape' | 'piece' | 'edge' | 'mark' | 'seam';

/** A symbol and what lies in it. */
export interface OutlineSymbol {
  readonly name: string;
  readonly detail: string;
  readonly kind: SymbolKind;
  readonly from: number;
  readonly to: number;
  readonly nameFrom: number;
  readonly nameTo: number;
  readonly children: readonly OutlineSymbol[];
}

/** What a node of each kind is in an outline; kinds that are left out define nothing a person would look for. */
const KINDS: Partial<Record<StatementNode['kind'], SymbolKind>> = {
  let: 'value',
  choose: 'choice',
  solve: 'value',
  measure: 'value',
  body: 'body',
  sizes: 'body',
  draft: 'draft',
  shape: 'shape',
  circle: 'shape',
  piece: 'piece',
  lining: 'piece',
  facing: 'piece',
  band: 'piece',
  strip: 'piece',
  edge: 'edge',
  hole: 'edge',
  dart: 'mark',
  'fish-dart': 'mark',
  notch: 'mark',
  mark: 'mark',
  marks: 'mark',
  balance: 'mark',
  pleats: 'mark',
  gathers: 'mark',
  seam: 'seam',
  finish: 'seam',
  broken: 'mark',
};

/** The symbols of one top-level statement; their offsets count from its start. */
export const outlineOf = keptFor((top: TopLevel): readonly OutlineSymbol[] => {
  const symbols: OutlineSymbol[] = [];
  collect(top.statement, symbols);
  return symbols;
});

/** The symbols of a file in file order. */
export const outline = (file: SourceFile): readonly OutlineSymbol[] =>
  file.items.flatMap((top) => outlineOf(top).map((symbol) => moved(symbol, top.offset)));

const moved = (symbol: OutlineSymbol, by: number): OutlineSymbol => ({
  ...symbol,
  from: symbol.from + by,
  to: symbol.to + by,
  nameFrom: symbol.nameFrom + by,
  nameTo: symbol.nameTo + by,
  children: symbol.children.map((child) => moved(child, by)),
});

/** A statement's symbol, or those of its block where it has no name of its own (an outline's edges). */
function collect(statement: Statement, into: OutlineSymbol[]): void {
  const { node, block = [] } = statement;
  const kind = KINDS[node.kind];
  const name = nameOf(node);
  const named = kind !== undefined && name !== undefined;
  const children: OutlineSymbol[] = named ? [] : into;
  for (const inner of block) collect(inner, children);
  if (!named) return;
  const from = statement.start;
  into.push({
    name: name.text,
    detail: detailOf(node),
    kind,
    from,
    to: statement.end,
    nameFrom: from + name.at.from,
    nameTo: from + name.at.to,
    children,
  });
}

const nameOf = (node: StatementNode) => ('name' in node ? node.name : undefined);

function detailOf(node: StatementNode): string {
  switch (node.kind) {
    case 'shape':
      return node.form;
    case 'piece':
      return node.workedFrom ? `piece worked from ${pathOf(node.workedFrom)}` : `piece of ${pathOf(node.of)}`;
    case 'mark':
    case 'marks':
      return node.word;
    case 'broken':
      return say`not understood`;
    default:
      return node.kind.replaceAll('-', ' ');
  }
}

const pathOf = (ref: { readonly path: readonly { readonly text: string }[] } | undefined) =>
  ref?.path.map(({ text }) => text).join('.') ?? '';
