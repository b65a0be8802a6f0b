/** Finds long or curved seams without a notch: nothing tells the machinist whether both layers still keep step. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam } from '../drafting/model';
import { edgeNamed } from '../drafting/sewing/course';
import { printLength } from '../drafting/values/quantity';
import type { AroundSeam } from './around';
import { finding, type Judged } from './check';
import { isBandOf } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const LONG: Usual = {
  name: 'seam-without-notch',
  kind: 'length',
  low: 0,
  high: 250,
  standing: 'common practice',
};

export const noNotch: Judged = {
  code: 'no-notch',
  severity: 'note',
  title: 'A long seam without a notch',
  by: 'judgement',
  usual: [LONG],
  // a pattern without a single notch is still being drafted
  ofSewnSeam: (seam, around) => (around.notched ? unnotched(seam, around) : []),
};

/** Seams of two edges; along an edge that is sewn to its pair both layers are one piece twice, and keep step. */
function unnotched(seam: Seam, around: AroundSeam): readonly Finding[] {
  const { left, right, itsPair, comparable, side, leftLength, rightLength, statement } = seam;
  if (itsPair || !comparable || side === 'left' || statement.node.kind !== 'seam') return [];
  if (isBandOf(left) || isBandOf(right)) return [];
  const range = usualRange(around, LONG);
  const length = Math.max(leftLength, rightLength);
  if (isUsual(range, length) || isNotched(seam, around)) return [];
  const { unit } = around;
  const message = say`${seam.name} is ${printLength(length, unit)} long and has no notch; ${rangeInWords(range, unit)} without one. Put one on it where both layers are to meet: notch NAME on ${seam.name} at … (it lands on both sides).`;
  return [finding('no-notch', { statement, at: left[0]!.at }, message, { piece: left[0]!.piece })];
}

function isNotched({ left, right }: Seam, { piecesNamed }: AroundSeam): boolean {
  return [...left, ...right].some(({ piece, edge, of }) => {
    const [found] = piecesNamed(piece);
    // a piece of another file brings no notches of its own
    if (found === undefined || of === undefined || edgeNamed(of, edge) === undefined) return true;
    return found.notches.some((notch) => notch.edge === edge);
  });
}
