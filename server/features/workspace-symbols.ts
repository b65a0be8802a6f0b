/** Finds a name anywhere in the workspace by some of its letters. */
import { outline, type OutlineSymbol } from './outline';
import type { ReadFile } from './definition';

export interface FoundSymbol {
  readonly uri: string;
  readonly symbol: OutlineSymbol;
  /** What it stands in: the draft or piece; '' at top level. */
  readonly container: string;
}

/** As many as a person would look through; a longer list says only that more letters are needed. */
const MOST = 500;

/** Symbols whose names hold the letters of `query` in their order, those that begin with it first. */
export function workspaceSymbols(files: readonly ReadFile[], query: string): readonly FoundSymbol[] {
  const wanted = query.toLowerCase();
  const found = files.flatMap(({ uri, file }) => flat(uri, outline(file), ''));
  const ranked = found.flatMap((one) => {
    const rank = rankOf(one.symbol.name.toLowerCase(), wanted);
    return rank === undefined ? [] : [{ one, rank }];
  });
  return ranked
    .sort((a, b) => a.rank - b.rank)
    .slice(0, MOST)
    .map(({ one }) => one);
}

function flat(uri: string, symbols: readonly OutlineSymbol[], container: string): readonly FoundSymbol[] {
  return symbols.flatMap((symbol) => [
    { uri, symbol, container },
    ...flat(uri, symbol.children, symbol.name),
  ]);
}

/** 0: the name itself, 1: begins so, 2: a part of it begins so, 3: holds it, 4: has its letters; undefined: no match. */
function rankOf(name: string, wanted: string): number | undefined {
  if (name === wanted) return 0;
  const at = name.indexOf(wanted);
  if (at === 0) return 1;
  if (at > 0) return name[at - 1] === '-' ? 2 : 3;
  let next = 0;
  for (const sign of name) if (sign === wanted[next]) next++;
  return next === wanted.length ? 4 : undefined;
}
