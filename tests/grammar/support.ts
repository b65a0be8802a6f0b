/** What the grammar's tests share: the wardrobe's files, and a tree laid out as a list. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { SourceFile, Statement, SyntaxProblem, TopLevel } from '../../grammar';

const FOLDER = join(process.cwd(), 'samples');

export interface Sample {
  readonly name: string;
  readonly text: string;
}

/** Every pattern file of the wardrobe that is meant to be right, folders included. */
export function samples(folder = FOLDER, prefix = ''): Sample[] {
  const entries = readdirSync(folder, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.flatMap((entry): Sample[] => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'faults' ? [] : samples(path, `${prefix}${entry.name}/`);
    if (!entry.name.endsWith('.draft')) return [];
    return [{ name: prefix + entry.name, text: readFileSync(path, 'utf8') }];
  });
}

/** A statement with its place in the file. */
export interface Placed {
  readonly statement: Statement;
  readonly from: number;
}

export function everyStatement(file: SourceFile): Placed[] {
  return file.items.flatMap((item) => withBlock(item, item.statement));
}

function withBlock(item: TopLevel, statement: Statement): Placed[] {
  const inner = (statement.block ?? []).flatMap((child) => withBlock(item, child));
  return [{ statement, from: item.offset + statement.start }, ...inner];
}

/** A problem with its place in the file. */
export interface PlacedProblem {
  readonly code: string;
  readonly message: string;
  readonly from: number;
  readonly to: number;
  readonly problem: SyntaxProblem;
}

export function everyProblem(file: SourceFile): PlacedProblem[] {
  return everyStatement(file).flatMap(({ statement, from }) =>
    statement.problems.map((problem) => ({
      code: problem.code,
      message: problem.message,
      from: from + problem.at.from,
      to: from + problem.at.to,
      problem,
    })),
  );
}

/** The text with the problem's first fix applied. */
export function fixed(text: string, { from, problem }: PlacedProblem): string {
  const start = from - problem.at.from;
  const edits = [...problem.fixes[0]!.edits].sort((a, b) => b.at.from - a.at.from);
  return edits.reduce(
    (now, edit) => now.slice(0, start + edit.at.from) + edit.text + now.slice(start + edit.at.to),
    text,
  );
}
