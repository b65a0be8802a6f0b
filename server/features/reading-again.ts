/** Whether words are read as before when names in them are others: a word may be a name in one place and not in another. */
import { parse, type SourceFile, type Statement, type TopLevel } from '../../grammar';
import type { FileRange } from '../drafting/model';
import type { Names } from './names';
import { topAt } from './occurrences';

interface Put {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Whether the statements that edits touch are still read as what they were. */
export function readsTheSame({ root, uri }: Names, edits: readonly (FileRange & Put)[]): boolean {
  const byTop = new Map<TopLevel, Put[]>();
  for (const { uri: file, from, to, text } of edits) {
    const top = file === uri ? topAt(root.topLevels, from) : undefined;
    if (top === undefined) continue;
    const put = { from: from - top.offset, to: to - top.offset, text };
    const known = byTop.get(top);
    if (known === undefined) byTop.set(top, [put]);
    else known.push(put);
  }
  return [...byTop].every(([top, puts]) => {
    const idle = idleIn(top, puts);
    const after = shapes(parse(applied(top.text, [...puts, ...idle])));
    return after === (idle.length === 0 ? shapeOf(top.statement) : shapes(parse(applied(top.text, idle))));
  });
}

/** A text after edits, which all count in the text as it was and lie apart. */
function applied(text: string, puts: readonly Put[]): string {
  const parts: string[] = [];
  let at = 0;
  for (const put of [...puts].sort((a, b) => a.from - b.from)) {
    parts.push(text.slice(at, put.from), put.text);
    at = put.to;
  }
  return parts.join('') + text.slice(at);
}

/**
 * Lines of blocks in which nothing is put, as stretches to leave out: a long draft would be read again for the few of its
 * statements that a name stands in. Only what fills its lines can go without a trace.
 */
function idleIn({ statement, text }: TopLevel, puts: readonly Put[]): readonly Put[] {
  const places = puts.map(({ from }) => from).sort((a, b) => a - b);
  const idle: Put[] = [];
  const visit = ({ node, block = [] }: Statement): void => {
    if (node.kind === 'divide') return;
    for (const inner of block) {
      const next = places[firstFrom(places, inner.start)];
      if (next !== undefined && next <= inner.end) visit(inner);
      else if (fillsItsLines(text, inner)) idle.push({ from: inner.start, to: inner.end, text: '' });
    }
  };
  visit(statement);
  return idle;
}

/** Where in a sorted list the first number stands that is not below another, by halving. */
function firstFrom(sorted: readonly number[], least: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! < least) low = middle + 1;
    else high = middle;
  }
  return low;
}

const BLANK = /[ \t]*(?=[\r\n#]|$)/y;

function fillsItsLines(text: string, { start, end }: Statement): boolean {
  let before = start;
  while (text[before - 1] === ' ' || text[before - 1] === '\t') before--;
  BLANK.lastIndex = end;
  return (text[before - 1] === '\n' || text[before - 1] === '\r') && BLANK.test(text);
}

/** What statements are, with their blocks, apart from their names. */
const shapes = ({ items }: SourceFile): string => items.map(({ statement }) => shapeOf(statement)).join('\n');

function shapeOf({ node, problems, block = [] }: Statement): string {
  return `${node.kind}!${problems.map(({ code }) => code).join()}(${block.map(shapeOf).join(' ')})`;
}
