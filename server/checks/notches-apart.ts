/** Finds notches of the two sides of a seam that are meant for each other and do not meet when it is sewn. */
import type { Finding, SourcedFinding } from '../drafting/finding';
import type { Pattern, Seam } from '../drafting/model';
import { across } from '../drafting/sewing/course';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged } from './check';
import { notchPairs, piecesOf, type NotchPair } from './matched-notches';
import { rangeInWords, usualRange, type Usual } from './usual';

const OFF: Usual = { name: 'notch-off', kind: 'length', low: 0, high: 1, standing: 'common practice' };

export const notchesApart: Judged = {
  code: 'notches-apart',
  severity: 'warning',
  title: 'Notches that do not meet when the seam is sewn',
  by: 'judgement',
  usual: [OFF],
  ofPattern: (pattern) => {
    const byBase = new Map<string, boolean>();
    for (const { base, notches } of pattern.pieces) if (notches.length > 0) byBase.set(base, true);
    return pattern.seams
      .filter(({ left, right }) => [left, right].every((side) => side.some(({ piece }) => byBase.has(piece))))
      .flatMap((seam) => judged(seam, pattern));
  },
};

const kept = new WeakMap<
  Seam,
  { readonly around: readonly unknown[]; readonly findings: readonly SourcedFinding[] }
>();

function judged(seam: Seam, pattern: Pattern): readonly SourcedFinding[] {
  const around = [pattern.unit, pattern.usual, ...piecesOf(pattern, seam)];
  const before = kept.get(seam);
  if (before?.around.length === around.length && before.around.every((one, i) => one === around[i]))
    return before.findings;
  const found = seam.comparable && seam.side !== 'left' ? apart(seam, pattern) : [];
  const findings = found.map((one) => ({ source: seam.source, finding: one }));
  kept.set(seam, { around, findings });
  return findings;
}

/** A hair, mm. */
const ROUNDING = 0.005;

/** Farther apart than this, mm, two notches were never meant for each other. */
const STRANGERS = 30;

function apart(seam: Seam, pattern: Pattern): readonly Finding[] {
  // where the lengths differ the notches say where: that is told with the lengths
  if (Math.abs(seam.difference) > seam.tolerance) return [];
  const range = usualRange(pattern, OFF);
  return notchPairs(pattern, seam).flatMap((pair) => {
    const off = Math.abs(across(seam.course!, 'left', pair.left.at) - pair.right.at);
    const ofSeam = pair.left.notch.source === pair.right.notch.source;
    return ofSeam || off <= range.high + ROUNDING || off > STRANGERS
      ? []
      : [unmet(seam, pair, off, rangeInWords(range, pattern.unit), pattern)];
  });
}

function unmet(
  seam: Seam,
  { left, right }: NotchPair,
  off: number,
  range: string,
  { unit }: Pattern,
): Finding {
  const [one, other] = [left.notch, right.notch];
  const message =
    `When ${seam.name} is sewn, ${one.name} and ${other.name} miss each other by ${printLength(off, unit)} ` +
    `(${printLength(left.at, unit)} and ${printLength(right.at, unit)} from the same end); ${range}. ` +
    `Put one notch on the seam instead (notch NAME on ${seam.name} at …): it lands on both sides.`;
  return finding('notches-apart', { statement: seam.statement, at: seam.left[0]!.at }, message, {
    piece: seam.left[0]!.piece,
    related: [one, other].map(({ source, name }) => ({ source, message: `${name} is placed here.` })),
  });
}
