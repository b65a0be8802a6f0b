/** What an editor may fold away: blocks, and comments of several lines. */
import type { SourceFile, Statement } from '../../grammar/syntax';
import type { Lines } from './lines';

export interface Fold {
  readonly startLine: number;
  readonly endLine: number;
  readonly kind: 'block' | 'comment';
}

/** The folds of a file in order of their first line; zero-based lines, both included. */
export function folds(file: SourceFile, lines: Lines): readonly Fold[] {
  const blocks = file.items.flatMap((top) => blockFolds(top.statement, top.offset, lines));
  return [...blocks, ...commentFolds(lines)].sort((a, b) => a.startLine - b.startLine);
}

function blockFolds(statement: Statement, offset: number, lines: Lines): Fold[] {
  if (statement.block === undefined) return [];
  const startLine = lines.position(offset + statement.start).line;
  const end = lines.position(offset + statement.end).line;
  // the closing brace stays in sight, as editors do it for braces
  const endLine = lines.line(end).trim() === '}' ? end - 1 : end;
  const inner = statement.block.flatMap((line) => blockFolds(line, offset, lines));
  return endLine > startLine ? [{ startLine, endLine, kind: 'block' }, ...inner] : inner;
}

function commentFolds(lines: Lines): Fold[] {
  const found: Fold[] = [];
  let first = -1;
  for (let line = 0; line <= lines.count; line++) {
    const comment = lines.line(line).trimStart().startsWith('#');
    if (comment && first < 0) first = line;
    if (comment || first < 0) continue;
    if (line - 1 > first) found.push({ startLine: first, endLine: line - 1, kind: 'comment' });
    first = -1;
  }
  return found;
}
