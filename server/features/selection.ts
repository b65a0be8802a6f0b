/** Ever wider selections round a cursor: the name, its phrase, the statement, the block, the file. */
import type { SourceFile, Span, Statement } from '../../grammar/syntax';
import { topAt } from './occurrences';
import { wordAt } from './words';

/** The stretches round an offset, the narrowest first, each within the next. */
export function selections(file: SourceFile, text: string, offset: number): readonly Span[] {
  const word = wordAt(text, offset);
  const found: Span[] = word === undefined ? [] : [word];
  const top = topAt(file.items, offset);
  if (top !== undefined) {
    for (const { statement, phrases } of statementsAt(top.statement, offset - top.offset)) {
      const start = top.offset + statement.start;
      found.push(...phrases.map(({ from, to }) => ({ from: start + from, to: start + to })));
      found.push({ from: start, to: start + statement.text.trimEnd().length });
      found.push({ from: start, to: top.offset + statement.end });
    }
    found.push({ from: top.offset, to: top.offset + top.text.trimEnd().length });
  }
  found.push({ from: 0, to: text.length });
  return growing(found, offset);
}

interface Around {
  readonly statement: Statement;
  /** Phrases of the statement that hold the place, the narrowest first. */
  readonly phrases: readonly Span[];
}

/** The statements that hold a place, the innermost first. */
function statementsAt(statement: Statement, at: number): readonly Around[] {
  const inner = statement.block?.find(({ start, end }) => start <= at && at <= end);
  const phrases: Span[] = [];
  collect(statement.node, at - statement.start, phrases);
  phrases.sort((a, b) => a.to - a.from - (b.to - b.from));
  return [...(inner === undefined ? [] : statementsAt(inner, at)), { statement, phrases }];
}

function collect(node: object, at: number, into: Span[]): void {
  const { at: span } = node as { at?: Span };
  if (span !== undefined && (at < span.from || at > span.to)) return;
  if (span !== undefined) into.push(span);
  for (const value of Object.values(node)) {
    if (typeof value === 'object' && value !== null && value !== span) collect(value as object, at, into);
  }
}

/** Only what holds the place and is wider than the one before. */
function growing(spans: readonly Span[], offset: number): readonly Span[] {
  const kept: Span[] = [];
  for (const { from, to } of spans) {
    const last = kept.at(-1);
    if (from > offset || to < offset) continue;
    const wider =
      last === undefined || (from <= last.from && to >= last.to && to - from > last.to - last.from);
    if (wider) kept.push({ from, to });
  }
  return kept;
}
