/** Finds notches of the two sides of a seam that are meant for each other and do not meet when it is sewn. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam } from '../drafting/model';
import { across } from '../drafting/sewing/course';
import { printLength } from '../drafting/values/quantity';
import type { AroundSeam } from './around';
import { finding, type Judged } from './check';
import { notchPairs, type NotchPair } from './matched-notches';
import { rangeInWords, usualRange, type Usual } from './usual';

const OFF: Usual = { name: 'notch-off', kind: 'length', low: 0, high: 1, standing: 'common practice' };

export const notchesApart: Judged = {
  code: 'notches-apart',
  severity: 'warning',
  title: 'Notches that do not meet when the seam is sewn',
  by: 'judgement',
  usual: [OFF],
  ofSewnSeam: (seam, around) => {
    const isNotched = (side: Seam['left']): boolean =>
      side.some(({ piece }) => around.piecesNamed(piece).some(({ notches }) => notches.length > 0));
    const isJudged = seam.comparable && seam.side !== 'left' && isNotched(seam.left) && isNotched(seam.right);
    return isJudged ? apart(seam, around) : [];
  },
};

/** A hair, mm. */
const ROUNDING = 0.005;

/** Farther apart than this, mm, two notches were never meant for each other. */
const STRANGERS = 30;

function apart(seam: Seam, around: AroundSeam): readonly Finding[] {
  // where the lengths differ the notches say where: that is told with the lengths
  if (Math.abs(seam.difference) > seam.tolerance) return [];
  const range = usualRange(around, OFF);
  return notchPairs(around, seam).flatMap((pair) => {
    const off = Math.abs(across(seam.course!, 'left', pair.left.at) - pair.right.at);
    const ofSeam = pair.left.notch.source === pair.right.notch.source;
    return ofSeam || off <= range.high + ROUNDING || off > STRANGERS
      ? []
      : [unmet(seam, pair, off, rangeInWords(range, around.unit), around)];
  });
}

function unmet(
  seam: Seam,
  { left, right }: NotchPair,
  off: number,
  range: string,
  { unit }: AroundSeam,
): Finding {
  const [one, other] = [left.notch, right.notch];
  const message = say`When ${seam.name} is sewn, ${one.name} and ${other.name} miss each other by ${printLength(off, unit)} (${printLength(left.at, unit)} and ${printLength(right.at, unit)} from the same end); ${range}. Put one notch on the seam instead (notch NAME on ${seam.name} at …): it lands on both sides.`;
  return finding('notches-apart', { statement: seam.statement, at: seam.left[0]!.at }, message, {
    piece: seam.left[0]!.piece,
    related: [one, other].map(({ source, name }) => ({ source, message: say`${name} is placed here.` })),
  });
}
