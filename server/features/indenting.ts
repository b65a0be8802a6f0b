/** How far the line under the hands stands in, while it is typed: after a line end, and after a closing brace. */
import { tokensOf, type TextToken } from '../../grammar';
import type { SourceFile } from '../../grammar/syntax';
import type { LayoutEdit } from './formatting';
import { topBefore } from './occurrences';

/** What is typed to have the line's indentation set; nothing else of the line is touched. */
export const INDENTING = { first: '}', more: ['\n'] } as const;

/** The edit that sets the indentation of the line that an offset stands on; none where it is right already. */
export function indentation(file: SourceFile, offset: number, typed: string): readonly LayoutEdit[] {
  const { text } = file;
  const start = lineStart(text, offset);
  const from = /[ \t]*/y;
  from.lastIndex = start;
  const to = start + from.exec(text)![0].length;
  // a brace that closes something in mid-line says nothing of where its line should stand
  if (typed === '}' && text[to] !== '}') return [];
  const wanted = '  '.repeat(levelOf(file, start, to));
  return text.slice(start, to) === wanted ? [] : [{ from: start, to, text: wanted }];
}

const lineStart = (text: string, offset: number): number => {
  let start = offset;
  while (start > 0 && text[start - 1] !== '\n' && text[start - 1] !== '\r') start--;
  return start;
};

/** The level of a line that begins at `start`, with its first word at `first`. */
function levelOf(file: SourceFile, start: number, first: number): number {
  const { text } = file;
  const top = topBefore(file.items, Math.max(start - 1, 0));
  const before = top === undefined ? [] : tokensOf(text.slice(top.offset, start), 0);
  let open = 0;
  for (const { kind, from } of before)
    if (kind === 'brace') open += text[top!.offset + from] === '{' ? 1 : -1;
  if (text[first] === '}') return Math.max(open - 1, 0);
  const goesOn = top !== undefined && isHalf(text.slice(top.offset, start), before);
  return Math.max(open, 0) + (goesOn || /^then\b/.test(text.slice(first, first + 5)) ? 1 : 0);
}

/** Whether a statement goes on in the next line: its last word is a comma or an operator. */
function isHalf(text: string, tokens: readonly TextToken[]): boolean {
  const last = tokens.filter(({ kind }) => kind !== 'comment').at(-1);
  if (last === undefined || last.kind !== 'sign' || /[\r\n]\s*[\r\n]/.test(text.slice(last.to))) return false;
  return text.slice(last.from, last.to) !== '.';
}
