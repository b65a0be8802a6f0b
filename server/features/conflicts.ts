/** Chooses between two versions of the same lines that git left marked, one over the other. */
import { say } from '../../grammar/say';
import type { Lines } from './lines';

export interface Choosing {
  readonly title: string;
  /** Lines that go. */
  readonly edits: readonly { readonly from: number; readonly to: number; readonly text: string }[];
}

interface Mark {
  readonly line: number;
  /** What git calls the version: a branch, a commit; '' where it says nothing. */
  readonly name: string;
}

interface Conflict {
  readonly first: Mark;
  /** Where what both were made from begins, if it was left in the text. */
  readonly before: Mark | undefined;
  readonly middle: Mark;
  readonly second: Mark;
}

/** A longer stretch than this between two marks is no conflict that a person could look through. */
const LONGEST = 5000;

function markOn(lines: Lines, line: number, sign: string): Mark | undefined {
  const text = lines.line(line);
  if (!text.startsWith(sign.repeat(7)) || (text.length > 7 && text[7] !== ' ')) return undefined;
  return { line, name: text.slice(7).trim() };
}

/** The conflict that a line stands in, its marks among its lines. */
function conflictRound(lines: Lines, at: number): Conflict | undefined {
  let start = at;
  while (start > at - LONGEST && start >= 0 && markOn(lines, start, '<') === undefined) start--;
  const first = markOn(lines, start, '<');
  if (first === undefined) return undefined;
  let [before, middle]: (Mark | undefined)[] = [];
  for (let line = start + 1; line < Math.min(lines.count, start + LONGEST); line++) {
    if (markOn(lines, line, '<') !== undefined) return undefined;
    if (middle === undefined) before ??= markOn(lines, line, '|');
    middle ??= markOn(lines, line, '=');
    const second = markOn(lines, line, '>');
    if (second !== undefined) return middle && line >= at ? { first, before, middle, second } : undefined;
  }
  return undefined;
}

/** What may be kept of the conflict at an offset; nothing where there is none. */
export function choosings(lines: Lines, offset: number): readonly Choosing[] {
  const found = conflictRound(lines, lines.position(offset).line);
  if (found === undefined) return [];
  const { first, middle, second, before = middle } = found;
  const without = (from: number, past: number) => ({
    from: lines.offset({ line: from, character: 0 }),
    to: lines.offset({ line: past, character: 0 }),
    text: '',
  });
  const opening = without(first.line, first.line + 1);
  const closing = without(second.line, second.line + 1);
  return [
    {
      title: first.name === '' ? say`Keep the first version` : say`Keep the first version (${first.name})`,
      edits: [opening, without(before.line, second.line + 1)],
    },
    {
      title:
        second.name === '' ? say`Keep the second version` : say`Keep the second version (${second.name})`,
      edits: [without(first.line, middle.line + 1), closing],
    },
    {
      title: say`Keep both versions, one after the other`,
      edits: [opening, without(before.line, middle.line + 1), closing],
    },
  ];
}
