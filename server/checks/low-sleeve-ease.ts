/** Finds sleeves whose ease is sewn in under the arm, where it puckers and nothing wants it. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam } from '../drafting/model';
import { across } from '../drafting/sewing/course';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { setIn } from './sleeve-ease';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const BELOW: Usual = {
  name: 'ease-under-arm',
  kind: 'length',
  low: 0,
  high: 3,
  standing: 'common practice: below a pitch',
};

export const lowSleeveEase: Judged = {
  code: 'low-sleeve-ease',
  severity: 'warning',
  title: 'A sleeve with ease under the arm',
  by: 'judgement',
  usual: [BELOW],
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

/** Of the armhole, counted from the underarm: wherever the pitches are placed, so much lies below them. */
const UNDER_ARM = 1 / 6;

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const { course, left, leftLength, rightLength, tolerance, side } = seam;
  if (course === undefined || side === 'left' || rightLength === leftLength) return [];
  const set = setIn(seam);
  // a head of two parts begins at its back seam, not under the arm
  if (set === undefined || set.head.length !== 1 || set.headLength - set.ring <= tolerance) return [];
  const arm = set.armhole === left ? 'left' : 'right';
  const low = UNDER_ARM * set.ring;
  const [first, last] = [low, set.ring - low].map((s) => across(course, arm, s));
  const most = Math.max(first! - low, set.headLength - last! - low);
  const range = usualRange(pattern, BELOW);
  if (isUsual(range, most, 0.05)) return [];
  const { unit } = pattern;
  const [head] = set.head;
  const message = say`${printLength(most, unit)} of the ease of ${head!.piece} lie under the arm, in a sixth of the armhole; ${rangeInWords(range, unit)}. It puckers there: keep it above the pitches (easing …, none below back-pitch and front-pitch).`;
  return [
    finding('low-sleeve-ease', { statement: seam.statement, at: head!.at }, message, { piece: head!.piece }),
  ];
}
