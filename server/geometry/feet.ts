/** Where a point drops square onto a path. */
import { TOUCH } from './accuracy';
import { directionAt, pointAt } from './cubic';
import { candidates } from './nearest';
import type { Path } from './path';
import { distance, dot, type Point, subtract } from './point';

export interface Foot {
  readonly s: number;
  readonly point: Point;
}

/** How far from square, as a cosine, a line may be and still count: a right angle to a ten-thousandth of a degree. */
const SQUARE = 1e-6;

/**
 * All places of a path at which the straight line to p stands square on it, by the distance along the path; an end of
 * the path is one only where the line happens to be square there. A point on the path is its own foot.
 */
export function perpendicularFeet(path: Path, p: Point): Foot[] {
  const found: Foot[] = [];
  path.segments.forEach((seg, index) => {
    for (const t of candidates(seg, p)) {
      const point = pointAt(seg, t);
      const off = subtract(p, point);
      const away = distance(p, point);
      const along = directionAt(seg, t);
      const square = away <= TOUCH || (along !== undefined && Math.abs(dot(along, off)) <= SQUARE * away);
      if (!square || found.some((other) => distance(other.point, point) <= TOUCH)) continue;
      found.push({ s: path.lengthTo({ index, t }), point });
    }
  });
  return found.sort((a, b) => a.s - b.s);
}
