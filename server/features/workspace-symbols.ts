/** Finds a name anywhere in the workspace by some of its letters. */
import { outlineOf, type OutlineSymbol } from './outline';
import type { ReadFile } from './definition';

export interface FoundSymbol {
  readonly uri: string;
  readonly symbol: OutlineSymbol;
  /** Where its name stands in the file. */
  readonly from: number;
  readonly to: number;
  /** What it stands in: the draft or piece; '' at top level. */
  readonly container: string;
}

/** As many as a person would look through; a longer list says only that more letters are needed. */
const MOST = 500;

/** Symbols whose names hold the letters of `query` in their order, those that begin with it first. */
export function workspaceSymbols(files: readonly ReadFile[], query: string): readonly FoundSymbol[] {
  const wanted = query.toLowerCase();
  const found: FoundSymbol[][] = [[], [], [], [], []];
  const look = (uri: string, symbols: readonly OutlineSymbol[], offset: number, container: string): void => {
    for (const symbol of symbols) {
      const rank = rankOf(symbol.name.toLowerCase(), wanted);
      const [from, to] = [symbol.nameFrom + offset, symbol.nameTo + offset];
      if (rank !== undefined) found[rank]!.push({ uri, symbol, from, to, container });
      look(uri, symbol.children, offset, symbol.name);
    }
  };
  for (const { uri, file } of files) for (const top of file.items) look(uri, outlineOf(top), top.offset, '');
  return found.flat().slice(0, MOST);
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
