/** Tells the minus of a negative value from that of a subtraction. */
import type { Statement } from './syntax';

/** Offsets in the file of the minus signs that touch what they turn; the statement begins at `from`. */
export function unaryMinuses(statement: Statement, from: number, text: string): ReadonlySet<number> {
  const found = new Set<number>();
  if (statement.text.includes('-')) collect(statement.node, from, text, found);
  if (statement.node.kind === 'later') guessed(statement.text, from, found);
  return found;
}

function collect(node: unknown, from: number, text: string, found: Set<number>): void {
  if (typeof node !== 'object' || node === null) return;
  const { kind, at } = node as { kind?: string; at?: { from: number } };
  if ((kind === 'negative' || kind === 'quantity') && at && text[from + at.from] === '-')
    found.add(from + at.from);
  for (const value of Object.values(node)) collect(value, from, text, found);
}

/** Where no tree was kept: a minus after another sign, an opening bracket or a word of direction. */
function guessed(text: string, from: number, found: Set<number>): void {
  for (const { index, 0: match } of text.matchAll(
    /(?:[-+*/=<>(,]|\b(?:up|down|left|right|by|to|at|of))\s*-/g,
  )) {
    found.add(from + index + match.length - 1);
  }
}
