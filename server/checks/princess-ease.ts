/** Finds seams over the bust with more ease than cloth takes there, with it on the wrong part, or away from the bust. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Seam, SewnEdge } from '../drafting/model';
import { edgeNamed, locatedOn, sewnPath } from '../drafting/sewing/course';
import { printLength } from '../drafting/values/quantity';
import { cross, normalised, subtract, type Point } from '../geometry';
import { finding, type Judged, type Judging } from './check';
import { matches } from './mismatched-seam';
import { called } from './seam-ends';
import { isUsual, rangeInWords, usualRange, type Usual } from './usual';

const EASE: Usual = {
  name: 'princess-ease',
  kind: 'length',
  low: 0,
  high: 12,
  standing: 'common practice: 3 to 8mm',
};

const REACH: Usual = {
  name: 'princess-ease-reach',
  kind: 'length',
  low: 0,
  high: 60,
  standing: 'common practice: either way from the bust point',
};

export const princessEase: Judged = {
  code: 'princess-ease',
  severity: 'warning',
  title: 'A seam over the bust with unusual ease',
  by: 'judgement',
  usual: [EASE, REACH],
  ofSeam: (seam, pattern) => judged(seam, pattern),
};

interface OverBust {
  readonly side: SewnEdge;
  readonly centre: SewnEdge;
}

/** The seam of a front's side part and its middle; another pair of edges called princess is told apart by no name. */
function overBust({ left, right, itsPair, comparable }: Seam): OverBust | undefined {
  if (itsPair || !comparable || left.length !== 1 || right.length !== 1) return undefined;
  const [one, other] = [left[0]!, right[0]!];
  if (![one, other].every(({ piece }) => called(piece, 'front') && !called(piece, 'back'))) return undefined;
  const [a, b] = [called(one.piece, 'side'), called(other.piece, 'side')];
  if (a === b) return undefined;
  return a ? { side: one, centre: other } : { side: other, centre: one };
}

function judged(seam: Seam, pattern: Judging): readonly Finding[] {
  const parts = overBust(seam);
  // what the seam does not ask for is told of its lengths
  if (parts === undefined || !matches(seam)) return [];
  const { side, centre } = parts;
  const ease = side.length - centre.length;
  if (Math.abs(ease) <= seam.tolerance) return [];
  const range = usualRange(pattern, EASE);
  if (isUsual(range, ease)) return tooFar(seam, parts, pattern);
  const { unit } = pattern;
  const lengths = say`${side.piece}.${side.edge} is ${printLength(Math.abs(ease), unit)} ${ease < 0 ? say`shorter` : say`longer`} than ${centre.piece}.${centre.edge}`;
  const message =
    ease < 0
      ? say`${lengths}, but over the bust the side part is eased to the middle, never the other way; ${rangeInWords(range, unit)} longer. Draw its curve over the bust fuller.`
      : say`${lengths}; ${rangeInWords(range, unit)}, over the bust. More puckers: take the rest into a dart, or draw its curve flatter.`;
  return [
    finding('princess-ease', { statement: seam.statement, at: side.at }, message, { piece: side.piece }),
  ];
}

/** Less than this of ease in a stretch is rounding, mm. */
const NONE = 0.1;

/** How far from the bust ease lies, along the side part. */
function tooFar(seam: Seam, { side }: OverBust, pattern: Judging): readonly Finding[] {
  const { course, statement } = seam;
  const which = side === seam.left[0] ? 'left' : 'right';
  const bust = bustOn(side);
  if (course === undefined || bust === undefined) return [];
  const eased = course.meets.slice(1).flatMap((to, i) => {
    const from = course.meets[i]!;
    const ease = to.right - from.right - (to.left - from.left);
    return Math.abs(ease) < NONE ? [] : [from[which], to[which]];
  });
  const run = course[which][0]!;
  const at = run.from < run.to ? bust - run.from : run.from - bust;
  const farthest = Math.max(0, ...eased.map((s) => Math.abs(s - at)));
  const range = usualRange(pattern, REACH);
  if (isUsual(range, farthest, 1)) return [];
  const { unit } = pattern;
  const message = say`The ease of ${side.piece}.${side.edge} begins or ends ${printLength(farthest, unit)} from the bust; ${rangeInWords(range, unit)}. Elsewhere it puckers, and the bust has none of it: put it between two notches (easing 6mm of … between A and B).`;
  return [finding('princess-ease', { statement, at: side.at }, message, { piece: side.piece })];
}

/** The side part is the rounder: the bust is where its edge lies farthest from the line through both ends. */
function bustOn({ of, edge }: SewnEdge): number | undefined {
  const found = of && edgeNamed(of, edge);
  if (found === undefined) return undefined;
  const path = sewnPath(found);
  const along = normalised(subtract(path.end, path.start));
  if (along === undefined) return undefined;
  const off = (p: Point): number => Math.abs(cross(along, subtract(p, path.start)));
  const farthest = path.polyline(ACCURACY).reduce((a, b) => (off(b) > off(a) ? b : a));
  return locatedOn(found, farthest).distance;
}

/** Of the curve by which the bust is found, mm: its top is flat, so that a finer one says no more. */
const ACCURACY = 0.05;
