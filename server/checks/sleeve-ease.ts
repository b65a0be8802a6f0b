/** Finds set-in sleeves whose head holds less or more ease than can be sewn in. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam, SewnEdge } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const EASE: Usual = {
  name: 'sleeve-ease',
  kind: 'ratio',
  low: 0,
  high: 0.11,
  standing: 'common practice: shirts 0 to 2.5%, dresses 4.5 to 8%, tailored wool 7 to 11%',
};

export const sleeveEase: Judged = {
  code: 'sleeve-ease',
  severity: 'warning',
  title: 'A sleeve head with more or less ease than can be sewn in',
  by: 'judgement',
  usual: [EASE],
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

/** A sleeve's head, and the armhole it is set into. */
export interface SetIn {
  readonly head: readonly SewnEdge[];
  readonly armhole: readonly SewnEdge[];
  readonly headLength: number;
  readonly ring: number;
}

/** A seam of edges called head with edges called armhole; not one that is gathered, where the head may be as long as it likes. */
export function setIn(seam: Seam): SetIn | undefined {
  const { left, right, leftLength, rightLength, itsPair, comparable, statement } = seam;
  const { node } = statement;
  if (itsPair || !comparable || (node.kind === 'seam' && node.eases.some(({ kind }) => kind === 'gathered')))
    return undefined;
  const all = (edges: readonly SewnEdge[], ...words: string[]): boolean =>
    edges.length > 0 && edges.every(({ edge }) => called(edge, ...words));
  if (all(left, 'head') && all(right, 'armhole', 'scye'))
    return { head: left, armhole: right, headLength: leftLength, ring: rightLength };
  if (all(right, 'head') && all(left, 'armhole', 'scye'))
    return { head: right, armhole: left, headLength: rightLength, ring: leftLength };
  return undefined;
}

/** A hair, mm, so that exactly the bound passes. */
const ROUNDING = 0.05;

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const set = setIn(seam);
  if (set === undefined || set.ring <= 0) return [];
  const { unit } = pattern;
  const ease = set.headLength - set.ring;
  const range = usualRange(pattern, EASE);
  const hair = ROUNDING / set.ring;
  // a difference within the seam's tolerance is no ease yet
  if (Math.abs(ease) <= seam.tolerance) return [];
  if (isUsual(range, ease / set.ring - hair) || isUsual(range, ease / set.ring + hair)) return [];
  const share = `${Math.round((Math.abs(ease) / set.ring) * 1000) / 10}%`;
  const much = ease < 0 ? say`shorter` : say`longer`;
  const advice =
    ease < 0
      ? say`Raise or widen the head until it is at least as long.`
      : say`Lower the head or say that it is gathered (gathered … to 1); wool takes the most ease, close cotton the least.`;
  const message = say`The head of ${set.head[0]!.piece} is ${printLength(Math.abs(ease), unit)} ${much} than the armhole it is set into (${printLength(set.headLength, unit)} to ${printLength(set.ring, unit)}): ${share} of the armhole; ${rangeInWords(range, unit)}. ${advice}`;
  return [
    finding('sleeve-ease', { statement: seam.statement, at: set.head[0]!.at }, message, {
      piece: set.head[0]!.piece,
    }),
  ];
}
