/** Reads how a pattern is to be judged from its `usual` and `accept` lines. */
import type { AcceptNode } from '../../grammar/syntax';
import type { Evaluation } from './evaluation';
import type { FileNames } from './names/files';
import type { Network } from './names/network';
import type { Acceptance, OwnUsual, UsualLine } from './rules-model';

/** The ranges of the pattern's own file, in file order; of two with one name the first. */
export function usualLines(file: FileNames, evaluation: Evaluation): readonly UsualLine[] {
  const names = new Set<string>();
  return file.ofKind('usual').flatMap((top) => {
    const { statement } = top;
    const id = file.of(top)[0]?.id;
    if (statement.node.kind !== 'usual' || id === undefined) return [];
    const { name, range } = statement.node;
    if (names.has(name.text)) return [];
    names.add(name.text);
    const source = file.key + id;
    const { answer } = evaluation.result(source);
    const line = { name: name.text, source, statement, nameAt: name.at, rangeAt: range.at };
    return [answer?.is === 'usual' ? { ...line, range: answer.range } : line];
  });
}

/** The ranges by name: `before` where they are the same, so that what was judged by them stands. */
export function usualRanges(
  lines: readonly UsualLine[],
  before: ReadonlyMap<string, OwnUsual>,
): ReadonlyMap<string, OwnUsual> {
  const now = new Map(lines.flatMap(({ name, range }) => (range === undefined ? [] : [[name, range]])));
  const alike = now.size === before.size && [...now].every(([name, range]) => same(range, before.get(name)));
  return alike ? before : now;
}

const same = (a: OwnUsual, b: OwnUsual | undefined): boolean =>
  b !== undefined && a.kind === b.kind && a.low === b.low && a.high === b.high;

/** What the pattern's own file accepts, in file order. */
export function acceptances(file: FileNames, network: Network): readonly Acceptance[] {
  return file.ofKind('accept').flatMap((top) => {
    const { statement } = top;
    const { node } = statement;
    const id = file.of(top)[0]?.id;
    if (node.kind !== 'accept' || id === undefined) return [];
    const source = file.key + id;
    const { code, because } = node;
    const line = { source, statement, code: code.text, codeAt: code.at, reason: because.text };
    return [node.of === undefined ? line : { ...line, of: subject(network, source, node.of) }];
  });
}

function subject(network: Network, line: string, of: NonNullable<AcceptNode['of']>): Acceptance['of'] {
  const text = of.path.map((name) => name.text).join('.');
  const target = network.target(line, of);
  if (target === undefined) return { text, at: of.at };
  const source = [target.id, ...target.rest.map((name) => name.text)].join('/');
  return { text, at: of.at, source };
}
