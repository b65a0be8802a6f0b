/** The outline in the protocol's words; of what an edit neither changed nor moved, the same objects as before. */
import type { DocumentSymbol, SymbolInformation } from 'vscode-languageserver';
import type { SourceFile, TopLevel } from '../../grammar/syntax';
import type { Encoding, Lines } from '../features/lines';
import { outlineOf, type OutlineSymbol } from '../features/outline';
import { symbolKinds } from './convert';
import type { Desk } from './desk';
import type { OpenDocument } from './documents';

interface Placed {
  readonly line: number;
  readonly character: number;
  readonly encoding: Encoding;
  readonly symbols: readonly DocumentSymbol[];
}

/** Where a statement begins, and how characters are counted, decides where all of it stands. */
const kept = new WeakMap<TopLevel, Placed>();

/** As a tree, or as the list that an older client knows. */
export function outlineFor(
  { lines, clientUri }: OpenDocument,
  file: SourceFile,
  { shows }: Pick<Desk, 'shows'>,
): DocumentSymbol[] | SymbolInformation[] {
  const tree = documentSymbols(file, lines);
  return shows.tree ? tree : tree.flatMap((symbol) => listed(symbol, clientUri, ''));
}

function listed(
  { name, kind, range, children }: DocumentSymbol,
  uri: string,
  round: string,
): SymbolInformation[] {
  const own = { name, kind, location: { uri, range }, ...(round !== '' && { containerName: round }) };
  return [own, ...(children ?? []).flatMap((child) => listed(child, uri, name))];
}

const documentSymbols = (file: SourceFile, lines: Lines): DocumentSymbol[] =>
  file.items.flatMap((top) => symbolsOf(top, lines));

function symbolsOf(top: TopLevel, lines: Lines): readonly DocumentSymbol[] {
  const { encoding } = lines;
  const { line, character } = lines.position(top.offset);
  const known = kept.get(top);
  if (known?.line === line && known.character === character && known.encoding === encoding)
    return known.symbols;
  const symbols = outlineOf(top).map((symbol) => documentSymbol(symbol, top.offset, lines));
  kept.set(top, { line, character, encoding, symbols });
  return symbols;
}

function documentSymbol(symbol: OutlineSymbol, offset: number, lines: Lines): DocumentSymbol {
  return {
    name: symbol.name,
    detail: symbol.detail,
    kind: symbolKinds[symbol.kind],
    range: lines.range(offset + symbol.from, offset + symbol.to),
    selectionRange: lines.range(offset + symbol.nameFrom, offset + symbol.nameTo),
    children: symbol.children.map((child) => documentSymbol(child, offset, lines)),
  };
}
