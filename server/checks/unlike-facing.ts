/** Finds facings whose edge is longer or shorter than the edge that they are sewn to. */
import type { FacedEdge } from '../drafting/derived-model';
import type { SourcedFinding } from '../drafting/finding';
import type { Finish, Pattern } from '../drafting/model';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const FACING_LENGTH: Usual = {
  name: 'facing-length',
  kind: 'length',
  low: -2,
  high: 1,
  standing: 'as long as its edge or a millimetre shorter, either within a millimetre (common practice)',
};

export const unlikeFacing: Judged = {
  code: 'unlike-facing',
  severity: 'error',
  title: 'A facing that is longer or shorter than its edge',
  by: 'judgement',
  usual: [FACING_LENGTH],
  ofPattern: (pattern) => pattern.finishes.flatMap((finish) => ofFinish(finish, pattern)),
};

interface Kept {
  readonly around: readonly unknown[];
  readonly findings: readonly SourcedFinding[];
}

const kept = new WeakMap<Finish, Kept>();

function ofFinish(finish: Finish, pattern: Pattern): readonly SourcedFinding[] {
  if (finish.faced === undefined) return [];
  const around = [pattern.unit, pattern.usual];
  const before = kept.get(finish);
  if (before !== undefined && around.every((one, i) => one === before.around[i])) return before.findings;
  const findings = finish.faced.flatMap((faced) => ofEdge(finish, faced, pattern));
  kept.set(finish, { around, findings });
  return findings;
}

/** A hair on top, so that a difference of exactly the allowed passes whatever the rounding. */
const ROUNDING = 0.05;

function ofEdge(finish: Finish, faced: FacedEdge, pattern: Pattern): readonly SourcedFinding[] {
  const range = usualRange(pattern, FACING_LENGTH);
  const by = faced.facing.length - faced.length;
  if (isUsual({ ...range, low: range.low - ROUNDING, high: range.high + ROUNDING }, by)) return [];
  const { unit } = pattern;
  const [edge, own] = [`${faced.piece}.${faced.edge}`, `${faced.facing.piece}.${faced.facing.edge}`];
  const message =
    `${edge} is ${printLengthFine(faced.length, unit)} long, and ${own}, which faces it, ` +
    `${printLengthFine(faced.facing.length, unit)}: ${printLength(Math.abs(by), unit)} too ${by > 0 ? 'long' : 'short'} ` +
    `(longer by: ${rangeInWords(range, unit)}). Make the facing anew from the piece as it is cut: facing NAME of ` +
    `${faced.piece} along ${faced.edge}, 6cm deep.`;
  const { node } = finish.statement;
  const at = node.kind === 'finish' && node.facedBy !== undefined ? node.facedBy.at : node.at;
  const related = [{ source: faced.facing.source, message: `${own} runs here.` }];
  return [
    {
      source: finish.source,
      finding: finding('unlike-facing', { statement: finish.statement, at }, message, { related }),
    },
  ];
}
