/** Finds `usual` lines for ranges that no check judges by, or with ends of another kind than the range has. */
import { say } from '../../grammar/say';
import type { SourcedFinding } from '../drafting/finding';
import type { Pattern, UsualLine } from '../drafting/model';
import { nearest } from '../drafting/names/spelling';
import { finding, type Judged } from './check';
import { rangeInWords, type Usual } from './usual';

/** @param ranges all that the catalogue judges by; asked for when it is complete */
export const unknownRange = (ranges: () => readonly Usual[]): Judged => ({
  code: 'unknown-range',
  severity: 'error',
  firm: true,
  title: 'A usual range that no check judges by',
  by: 'judgement',
  ofPattern: (pattern) => pattern.usualLines.flatMap((line) => faultOf(pattern, line, ranges())),
});

function faultOf(pattern: Pattern, line: UsualLine, ranges: readonly Usual[]): readonly SourcedFinding[] {
  const { source, statement, name, range } = line;
  const known = ranges.find((one) => one.name === name);
  if (known === undefined) return [{ source, finding: unknown(line, ranges) }];
  if (range === undefined || range.kind === known.kind) return [];
  const { low, high, kind } = known;
  const words = rangeInWords({ low, high, kind, stated: false }, pattern.unit);
  const message = say`${name} is a range of ${kindsOf(kind)} (${words}), but this one runs over ${kindsOf(range.kind)}.`;
  return [{ source, finding: finding('wrong-kind', { statement, at: line.rangeAt }, message) }];
}

const kindsOf = (kind: Usual['kind'] | 'area'): string =>
  ({ length: say`lengths`, angle: say`angles`, ratio: say`plain numbers`, area: say`areas` })[kind];

function unknown({ name, statement, nameAt }: UsualLine, ranges: readonly Usual[]) {
  const names = ranges.map((one) => one.name);
  const near = nearest(name, names);
  const advice =
    near === undefined
      ? say`The page of each check lists the ranges it judges by.`
      : say`Did you mean ${near}?`;
  const edits = near === undefined ? [] : [{ statement, at: nameAt, text: near }];
  return finding(
    'unknown-range',
    { statement, at: nameAt },
    say`No check judges by a range called ${name}. ${advice}`,
    {
      fixes: edits.length === 0 ? [] : [{ title: say`Change to ${near!}`, edits }],
    },
  );
}
