/** The files that a text brings in by its `use` lines, without the rest of it being read. */
import { readLine } from './lexer';
import * as t from './tokens';

/** Whatever is read as a `use` line begins so: spaces of every kind, and capitals that are told as a slip. */
const BEGINNINGS = /^[^\S\r\n]*use(?![\p{L}\p{N}-])/gimu;

/** Paths as they are written. A remark's words are none; a line in a block, where no `use` may stand, is taken for one. */
export function usedPaths(text: string): readonly string[] {
  return [...text.matchAll(BEGINNINGS)].flatMap(({ index }) => {
    const path = readLine(text, index).tokens.find(({ tokenType }) => tokenType === t.Text)?.text;
    return path === undefined ? [] : [path];
  });
}
