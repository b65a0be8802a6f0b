/** Finds back shoulders that are eased to the front by more than cloth takes, or that are the shorter of the two. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const EASE: Usual = {
  name: 'shoulder-ease',
  kind: 'length',
  low: 0,
  high: 10,
  standing: 'common practice: 3 to 10mm, and no more than 8% of the shoulder',
};

export const shoulderEase: Judged = {
  code: 'shoulder-ease',
  severity: 'warning',
  title: 'A back shoulder with unusual ease',
  by: 'judgement',
  usual: [EASE],
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

/** Of the front shoulder: more than this puckers. */
const LARGEST_SHARE = 0.08;

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const { left, right, leftLength, rightLength, itsPair, comparable, tolerance } = seam;
  const all = [...left, ...right];
  if (itsPair || !comparable || !all.every(({ edge }) => called(edge, 'shoulder'))) return [];
  const of = (side: typeof left, word: string): boolean => side.every(({ piece }) => called(piece, word));
  const backLeft = of(left, 'back') && of(right, 'front');
  if (!backLeft && !(of(right, 'back') && of(left, 'front'))) return [];
  const [back, front] = backLeft ? [leftLength, rightLength] : [rightLength, leftLength];
  const ease = back - front;
  const range = usualRange(pattern, EASE);
  const tooMuch = !range.stated && ease > LARGEST_SHARE * front + tolerance;
  if (Math.abs(ease) <= tolerance || (isUsual(range, ease) && !tooMuch)) return [];
  const { unit } = pattern;
  const share = `${Math.round((Math.abs(ease) / front) * 1000) / 10}%`;
  const message =
    ease < 0
      ? say`The back shoulder is ${printLength(-ease, unit)} shorter than the front's (${printLength(back, unit)} to ${printLength(front, unit)}), but the back is the rounder: it is eased to the front, never the other way; ${rangeInWords(range, unit)}. Lengthen the back shoulder or shorten the front's.`
      : say`The back shoulder is ${printLength(ease, unit)} longer than the front's (${share}); ${rangeInWords(range, unit)} and no more than 8%. Take the rest into a shoulder dart, or shorten the back shoulder.`;
  const piece = (backLeft ? left : right)[0]!;
  return [
    finding('shoulder-ease', { statement: seam.statement, at: piece.at }, message, { piece: piece.piece }),
  ];
}
