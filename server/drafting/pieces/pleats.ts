/** Reads a `pleats` line: how many, where, what each takes and to which side it folds. */
import { say } from '../../../grammar/say';
import type { PleatsNode } from '../../../grammar/syntax';
import { dot, subtract, type Point } from '../../geometry';
import type { Shape } from '../model';
import { distanceAlong } from '../shapes/places';
import { pointOf, shapeOf } from '../shapes/phrase';
import { lengthOf, ofKind } from '../values/arithmetic';
import { report, wordsOf, type Reader } from '../values/reader';
import type { Named } from './working/bench';

/**
 * What one fold takes of the edge: a knife pleat is one, an inverted pleat one with two sides, a box pleat two.
 *
 * `at`: on the edge as it is sewn, from its start. `folds`: see `Pleat`.
 */
export interface Take {
  readonly at: number;
  readonly width: number;
  readonly folds: 'start' | 'end' | 'both';
}

export interface ReadPleats {
  readonly taking: number;
  readonly stitched: number;
  /** Where the pleats lie, and the folds that make them, both in the order of the outline. */
  readonly places: readonly number[];
  readonly takes: readonly Take[];
}

/** More pleats than this on one edge are a slip of the pen. */
const MOST = 200;

export function readPleats(reader: Reader, node: PleatsNode, named: Named): ReadPleats | undefined {
  const count = countOf(reader, node);
  const taking = takingOf(reader, node);
  const stitched = stitchedOf(reader, node);
  if (count === undefined || taking === undefined || stitched === undefined) return undefined;
  if (node.added === node.outOfWidth) return unsaid(reader, node, width(node));
  const places = placesOf(reader, node, named, count, taking);
  if (places === undefined) return undefined;
  const takes = takesOf(reader, node, named, places, taking);
  return takes && { taking, stitched, places, takes };
}

const unsaid = (reader: Reader, { name }: PleatsNode, message: string): undefined =>
  report(reader, 'incomplete-pleats', name.at, message);

const width = ({ name, added }: PleatsNode): string =>
  added
    ? say`${name.text} can't be added and taken out of the width at once: keep one of the two.`
    : say`Where does the cloth for ${name.text} come from? Say it after a comma: added (the piece grows), or out of the width drawn (the edge is sewn shorter).`;

function countOf(reader: Reader, node: PleatsNode): number | undefined {
  const count = ofKind(reader, node.count, 'ratio', 'pleats');
  if (count === undefined) return undefined;
  if (!Number.isInteger(count) || count < 1 || count > MOST) {
    return report(
      reader,
      'no-such-number',
      node.count.at,
      say`Pleats are counted in whole numbers from 1 to ${MOST}; this comes to ${Math.round(count * 1000) / 1000}.`,
    );
  }
  const stated = node.places?.distances.length;
  if (stated === undefined || stated === count) return count;
  return unsaid(
    reader,
    node,
    say`${node.name.text} has ${count} pleats, but ${stated === 1 ? say`one place` : say`${stated} places`} for them: say as many places, or from A to B to have them evenly.`,
  );
}

function takingOf(reader: Reader, node: PleatsNode): number | undefined {
  if (node.taking === undefined) {
    return unsaid(
      reader,
      node,
      say`How much does each pleat of ${node.name.text} take? Say it after a comma: taking 3cm each.`,
    );
  }
  const taking = lengthOf(reader, node.taking, 'taking');
  if (taking === undefined || taking > 0.1) return taking;
  return report(
    reader,
    'no-such-number',
    node.taking.at,
    say`A pleat takes more than nothing: its depth twice over.`,
  );
}

function stitchedOf(reader: Reader, { stitchedDown }: PleatsNode): number | undefined {
  if (stitchedDown === undefined) return 0;
  const stitched = lengthOf(reader, stitchedDown, 'stitched down');
  if (stitched === undefined || stitched >= 0) return stitched;
  const message = say`Pleats are stitched down over a length from the edge, which is not less than nothing.`;
  return report(reader, 'no-such-number', stitchedDown.at, message);
}

/** On the edge as it is sewn: stated one by one, or each in the middle of its share of a stretch. */
function placesOf(
  reader: Reader,
  node: PleatsNode,
  { edge, shape }: Named,
  count: number,
  taking: number,
): readonly number[] | undefined {
  const { length } = shape.path;
  const lost = node.outOfWidth ? count * taking : 0;
  if (node.places === undefined) {
    const from = distanceAlong(reader, shape, node.from!, edge.name);
    const to = distanceAlong(reader, shape, node.to!, edge.name);
    if (from === undefined || to === undefined) return undefined;
    const start = Math.min(from, to);
    const share = (Math.abs(to - from) - lost) / count;
    return Array.from({ length: count }, (_, i) => start + (i + 0.5) * share);
  }
  const point = pointOf(reader, node.places.from, 'from');
  const distances = node.places.distances.map((one) => lengthOf(reader, one, 'at'));
  if (point === undefined || distances.some((one) => one === undefined)) return undefined;
  const { s, distance } = shape.path.locate(point);
  const ends = [s <= 0.05, s >= length - 0.05];
  if (distance > 0.05 || ends[0] === ends[1]) {
    const words = wordsOf(reader, node.places.from);
    return report(
      reader,
      distance > 0.05 ? 'not-on-line' : 'which-way',
      node.places.from.at,
      say`${words} is no end of ${edge.name}: pleats are counted from one of its ends, or evenly from A to B.`,
    );
  }
  const from = (one: number): number => (ends[0] ? one : length - lost - one);
  return (distances as number[]).map(from).sort((a, b) => a - b);
}

function takesOf(
  reader: Reader,
  node: PleatsNode,
  named: Named,
  places: readonly number[],
  taking: number,
): readonly Take[] | undefined {
  const half = taking / 2;
  switch (node.form) {
    case 'inverted':
      return places.map((at) => ({ at, width: taking, folds: 'both' }));
    case 'box':
      // both halves fold away from each other; beneath, they meet in the middle
      return places.flatMap((at): Take[] => [
        { at: at - half / 2, width: half, folds: 'end' },
        { at: at + half / 2, width: half, folds: 'start' },
      ]);
    case 'knife': {
      const folds = places.map((at) => knifeFolds(reader, node, named, at));
      if (folds.some((one) => one === undefined)) return undefined;
      return places.map((at, i) => ({ at, width: taking, folds: folds[i]! }));
    }
  }
}

/** The side of the pleat that is folded on to the other, by what it folds toward. */
function knifeFolds(
  reader: Reader,
  node: PleatsNode,
  { shape }: Named,
  at: number,
): 'start' | 'end' | undefined {
  if (node.folds === undefined) {
    return unsaid(
      reader,
      node,
      say`To which side do the knife pleats of ${node.name.text} fold? Say it after a comma: folds toward EDGE, such as folds toward centre.`,
    );
  }
  const target = shapeOf(reader, node.folds);
  if (target === undefined) return undefined;
  const s = Math.min(Math.max(at, 0), shape.path.length);
  const here = shape.path.pointAt(s);
  const ahead = dot(shape.path.tangentAt(s), subtract(nearestOf(target, here), here));
  if (Math.abs(ahead) > 1e-6) return ahead > 0 ? 'start' : 'end';
  return report(
    reader,
    'no-direction',
    node.folds.at,
    say`${wordsOf(reader, node.folds)} lies on neither side of a pleat of ${node.name.text}, so it does not say which way it folds.`,
  );
}

const nearestOf = (shape: Shape, p: Point): Point =>
  shape.kind === 'point' ? shape.point : shape.path.locate(p).point;
