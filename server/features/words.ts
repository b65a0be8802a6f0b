/** The name under a cursor, read from the text alone. */
import { lineStart } from '../../grammar/text-tokens';

export interface WordAt {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Letters, marks and digits of any script; a hyphen belongs to a name only before a letter. */
const NAME = /[\p{L}\p{M}\p{Nd}]+(?:-\p{L}[\p{L}\p{M}\p{Nd}]*)*/gu;

/** The names of the dotted path that a name stands in: `front` and `side` for either of them in `front.side`. */
export function pathAt(text: string, { from, to, text: name }: WordAt): readonly string[] {
  const before = /(?:[\p{L}\p{M}\p{Nd}-]+\.)*$/u.exec(text.slice(Math.max(0, from - LONGEST), from))![0];
  const after = /^(?:\.[\p{L}\p{M}\p{Nd}-]+)*/u.exec(text.slice(to, to + LONGEST))![0];
  return [...before.split('.'), name, ...after.split('.')].filter((part) => part !== '');
}

/** How far a path is followed, in characters: a path has three names at most, and nobody's are longer than this. */
const LONGEST = 300;

/** The name that holds the offset or ends at it; undefined between names. */
export function wordAt(text: string, offset: number): WordAt | undefined {
  const start = lineStart(text, offset);
  const rest = text.slice(start).search(/[\r\n]/);
  const line = rest < 0 ? text.slice(start) : text.slice(start, start + rest);
  for (const match of line.matchAll(NAME)) {
    const from = start + match.index;
    const to = from + match[0].length;
    if (from <= offset && offset <= to) return { from, to, text: match[0] };
  }
  return undefined;
}
