/** Finds facings whose edge is longer or shorter than the edge that they are sewn to. */
import { say } from '../../grammar/say';
import type { FacedEdge } from '../drafting/derived-model';
import type { SourcedFinding } from '../drafting/finding';
import type { Finish, Pattern } from '../drafting/model';
import { printLength, printLengthFine } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { isUnderCollar } from './unlike-under-collar';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const FACING_LENGTH: Usual = {
  name: 'facing-length',
  kind: 'length',
  low: -2,
  high: 1,
  standing: 'as long as its edge or a millimetre shorter, either within a millimetre (common practice)',
};

/** An under collar is cut smaller all round, and drawn to the collar's edge. */
const UNDER_COLLAR_LENGTH: Usual = {
  name: 'under-collar-length',
  kind: 'length',
  low: -8,
  high: 1,
  standing: 'common practice: 2 to 4mm smaller on every side',
};

export const unlikeFacing: Judged = {
  code: 'unlike-facing',
  severity: 'error',
  title: 'A facing that is longer or shorter than its edge',
  by: 'judgement',
  usual: [FACING_LENGTH, UNDER_COLLAR_LENGTH],
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

const advice = ({ piece, edge, facing }: FacedEdge): string =>
  isUnderCollar(facing.piece)
    ? say`Draw the under collar from the collar, 2 to 4mm smaller on every side.`
    : say`Make the facing anew from the piece as it is cut: facing NAME of ${piece} along ${edge}, 6cm deep.`;

function ofEdge(finish: Finish, faced: FacedEdge, pattern: Pattern): readonly SourcedFinding[] {
  const range = usualRange(pattern, isUnderCollar(faced.facing.piece) ? UNDER_COLLAR_LENGTH : FACING_LENGTH);
  const by = faced.facing.length - faced.length;
  if (isUsual({ ...range, low: range.low - ROUNDING, high: range.high + ROUNDING }, by)) return [];
  const { unit } = pattern;
  const [edge, own] = [`${faced.piece}.${faced.edge}`, `${faced.facing.piece}.${faced.facing.edge}`];
  const message = say`${edge} is ${printLengthFine(faced.length, unit)} long, and ${own}, which faces it, ${printLengthFine(faced.facing.length, unit)}: ${printLength(Math.abs(by), unit)} too ${by > 0 ? say`long` : say`short`} (longer by: ${rangeInWords(range, unit)}). ${advice(faced)}`;
  const { node } = finish.statement;
  const at = node.kind === 'finish' && node.facedBy !== undefined ? node.facedBy.at : node.at;
  const related = [{ source: faced.facing.source, message: say`${own} runs here.` }];
  return [
    {
      source: finish.source,
      finding: finding('unlike-facing', { statement: finish.statement, at }, message, { related }),
    },
  ];
}
