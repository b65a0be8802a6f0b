/** Nearest and farthest places of one segment from a point, exactly, by the roots of a quintic. */
import { bernsteinRoots } from './bernstein';
import { pointAt, type Segment } from './cubic';
import { distance, dot, type Point, subtract } from './point';

export interface PlaceOnSegment {
  readonly t: number;
  readonly distance: number;
  readonly point: Point;
}

/** Parameters where the line to p stands square on the curve, with both ends: the nearest and farthest are among them. */
export function candidates(seg: Segment, p: Point): number[] {
  if (seg.kind === 'line') {
    const along = subtract(seg.p3, seg.p0);
    const t = dot(subtract(p, seg.p0), along) / dot(along, along);
    return t > 0 && t < 1 ? [0, t, 1] : [0, 1];
  }
  const { p0, p1, p2, p3 } = seg;
  const q0 = subtract(p0, p);
  const q1 = subtract(p1, p);
  const q2 = subtract(p2, p);
  const q3 = subtract(p3, p);
  const d0 = subtract(p1, p0);
  const d1 = subtract(p2, p1);
  const d2 = subtract(p3, p2);
  // Product of a cubic and a quadratic in Bernstein form (Farouki & Rajan, CAGD 5, 1988).
  const c = [
    dot(q0, d0),
    (2 * dot(q0, d1) + 3 * dot(q1, d0)) / 5,
    (dot(q0, d2) + 6 * dot(q1, d1) + 3 * dot(q2, d0)) / 10,
    (3 * dot(q1, d2) + 6 * dot(q2, d1) + dot(q3, d0)) / 10,
    (3 * dot(q2, d2) + 2 * dot(q3, d1)) / 5,
    dot(q3, d2),
  ];
  let size = 0;
  for (const value of c) size = Math.max(size, Math.abs(value));
  return [0, ...bernsteinRoots(c, 1e-14 * size), 1];
}

export function nearestOnSegment(seg: Segment, p: Point): PlaceOnSegment {
  return pick(seg, p, (a, b) => a < b);
}

export function farthestOnSegment(seg: Segment, p: Point): PlaceOnSegment {
  return pick(seg, p, (a, b) => a > b);
}

function pick(seg: Segment, p: Point, better: (a: number, b: number) => boolean): PlaceOnSegment {
  let best: PlaceOnSegment = { t: 0, distance: distance(seg.p0, p), point: seg.p0 };
  for (const t of candidates(seg, p)) {
    const at = pointAt(seg, t);
    const reach = distance(at, p);
    if (better(reach, best.distance)) best = { t, distance: reach, point: at };
  }
  return best;
}
