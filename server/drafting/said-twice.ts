/** What a file says twice and can mean but once: a measurement of one body, a line of the file, the name of a used file. */
import { keptFor } from '../../grammar/kept';
import { say } from '../../grammar/say';
import type { Name, Statement, StatementNode } from '../../grammar/syntax';
import type { Finding, SourcedFinding } from './finding';
import type { FileNames } from './names/files';

export function saidTwice(file: FileNames): readonly SourcedFinding[] {
  const lines = ONCE.flatMap(([kind, words]) =>
    file
      .ofKind(kind)
      .slice(1)
      .map(({ statement }) => lineTwice(file, statement, words())),
  );
  return [...lines, ...measuredTwice(file), ...calledAlike(file)];
}

const ONCE: readonly (readonly [StatementNode['kind'], () => string])[] = [
  ['pattern', () => say`The title of the pattern`],
  ['drafted-for', () => say`For whom it is drafted`],
  ['units', () => say`The unit of what is shown`],
  ['tolerance', () => say`The tolerance`],
];

const twice = (statement: Statement, at: Finding['at'], message: string): Finding => ({
  code: 'defined-twice',
  message,
  statement,
  at,
  related: [],
  fixes: [],
});

function lineTwice(file: FileNames, statement: Statement, words: string): SourcedFinding {
  const at = { from: statement.node.at.from, to: statement.node.at.to };
  const message = say`${words} is said already, and the first line counts. Take one of the two out.`;
  return { source: `${file.key}line:${statement.text}`, finding: twice(statement, at, message) };
}

function measuredTwice(file: FileNames): readonly SourcedFinding[] {
  return file
    .bodies()
    .flatMap(({ statement, id }) =>
      rowsTwice(statement).map((finding) => ({ source: file.key + id, finding })),
    );
}

/** Of a body or table. */
const rowsTwice = keptFor(({ node, block = [] }: Statement): readonly Finding[] => {
  if (node.kind !== 'body' && node.kind !== 'sizes') return [];
  const seen = new Set<string>();
  return block.flatMap((line) => {
    const name = rowName(line.node);
    if (name === undefined || !seen.has(name.text)) {
      if (name !== undefined) seen.add(name.text);
      return [];
    }
    const message = say`${node.name.text} has a line for ${name.text} already. Take one of the two out.`;
    return [twice(line, name.at, message)];
  });
});

function rowName(node: StatementNode): Name | undefined {
  if (node.kind === 'measured' || node.kind === 'row') return node.name;
  if (node.kind === 'size-row') return { text: 'size', at: { from: node.at.from, to: node.at.from + 4 } };
  return node.kind === 'taken'
    ? { text: 'taken', at: { from: node.at.from, to: node.at.from + 5 } }
    : undefined;
}

/** A used file called as another, or as a draft, a piece or a body here: `skirt.waist` could mean either. */
function calledAlike(file: FileNames): readonly SourcedFinding[] {
  const seen = new Set<string>();
  return file.uses.flatMap(({ alias, node, statement }) => {
    const other = seen.has(alias)
      ? say`another used file`
      : file.get(alias)?.space === 'block'
        ? say`a ${file.get(alias)!.statement.node.kind} of this file`
        : undefined;
    if (alias === '' || node.as === undefined) return [];
    seen.add(alias);
    if (other === undefined) return [];
    const message = say`${alias} is the name of ${other} as well, so ${alias}.waist could mean either. Give the used file another name.`;
    return [{ source: `${file.key}line:${statement.text}`, finding: twice(statement, node.as.at, message) }];
  });
}
