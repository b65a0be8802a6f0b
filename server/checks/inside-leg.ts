/** Finds trousers whose back inside leg is longer than the front's, or shorter by more than can be stretched. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const SHORT: Usual = {
  name: 'inside-leg-stretch',
  kind: 'length',
  low: 0,
  high: 12,
  standing: 'common practice: the back 3 to 10mm short, stretched above the knee',
};

export const insideLeg: Judged = {
  code: 'inside-leg',
  severity: 'warning',
  title: 'A back inside leg that does not suit the front',
  by: 'judgement',
  usual: [SHORT],
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

const LEG = ['inseam', 'inside-leg', 'inner-leg'] as const;

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const { left, right, itsPair, comparable, tolerance } = seam;
  if (itsPair || !comparable || left.length !== 1 || right.length !== 1) return [];
  const both = [left[0]!, right[0]!];
  if (!both.every(({ edge }) => LEG.some((word) => edge === word || called(edge, word)))) return [];
  const back = both.find(({ piece }) => called(piece, 'back'));
  const front = both.find(({ piece }) => called(piece, 'front'));
  if (back === undefined || front === undefined) return [];
  const short = front.length - back.length;
  const range = usualRange(pattern, SHORT);
  if (Math.abs(short) <= tolerance || isUsual(range, short)) return [];
  const { unit } = pattern;
  const [of, to] = [printLength(back.length, unit), printLength(front.length, unit)];
  const message =
    short < 0
      ? say`The back inside leg is ${printLength(-short, unit)} longer than the front's (${of} to ${to}): the back is stretched to the front, never eased to it; ${rangeInWords(range, unit)} short. Lower the back fork or shorten the back's inside leg.`
      : say`The back inside leg is ${printLength(short, unit)} shorter than the front's (${of} to ${to}); ${rangeInWords(range, unit)}. More than that can't be stretched above the knee: raise the back fork.`;
  return [finding('inside-leg', { statement: seam.statement, at: back.at }, message, { piece: back.piece })];
}
