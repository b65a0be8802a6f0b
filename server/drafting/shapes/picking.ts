/** Which of several meeting points is meant: `nearest P`, `upper`, `lower`, `left-hand`, `right-hand`. */
import { say } from '../../../grammar/say';
import type { Pick, Span } from '../../../grammar/syntax';
import { distance, samePoint, type Point } from '../../geometry';
import { report, type Reader } from '../values/reader';
import { pointOf } from './phrase';

export interface Candidate {
  readonly point: Point;
  /** Whether it lies on the shapes as drawn, not on a line's extension under the ruler. */
  readonly drawn: boolean;
}

/** Two meeting points nearer than this are one: a hundredth of what a pencil can show. */
const SAME_PLACE = 1e-3;

/**
 * The candidate that is meant. Those on the shapes as drawn go before those on a line's extension; of several, a pick
 * must say which.
 *
 * @param candidates at least one
 * @param what for the message: "shoulder-line and armhole meet"
 */
export function picked(
  reader: Reader,
  candidates: readonly Candidate[],
  pick: Pick | undefined,
  at: Span,
  what: string,
): Point | undefined {
  const drawn = candidates.filter((candidate) => candidate.drawn);
  const points = different((drawn.length > 0 ? drawn : candidates).map(({ point }) => point));
  if (pick === undefined) {
    if (points.length === 1) return points[0];
    return report(
      reader,
      'several-places',
      at,
      say`${what} in ${points.length} places. Say which: nearest P, upper, lower, left-hand or right-hand.`,
    );
  }
  if (pick.word === 'nearest') {
    const near = pointOf(reader, pick.point!, 'nearest');
    return near && best(points, (point) => distance(point, near));
  }
  return best(points, RANK[pick.word]);
}

const RANK: Readonly<Record<Exclude<Pick['word'], 'nearest'>, (point: Point) => number>> = {
  upper: ({ y }) => y,
  lower: ({ y }) => -y,
  'left-hand': ({ x }) => x,
  'right-hand': ({ x }) => -x,
};

const best = (points: readonly Point[], rank: (point: Point) => number): Point =>
  points.reduce((a, b) => (rank(b) < rank(a) ? b : a));

function different(points: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const point of points)
    if (!kept.some((other) => samePoint(other, point, SAME_PLACE))) kept.push(point);
  return kept;
}
