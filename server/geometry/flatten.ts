/** Curves as chains of short chords within a tolerance. */
import { asCubic, type Cubic, type Segment, splitCubic } from './cubic';
import { isFinitePoint, type Point } from './point';

/** Halvings of one curve: 2^12 chords, far more than any tolerance asks of a curve that fits on a table. */
const MAX_DEPTH = 12;

/** Appends the points after the segment's start, its end included. */
export function flattened(seg: Segment, tolerance: number, out: Point[]): void {
  if (seg.kind === 'line' || !(tolerance > 0)) out.push(seg.p3);
  else halve(asCubic(seg), tolerance, out, 0);
}

/** How long the second difference of three control points is. */
function bend(p: Point, q: Point, r: Point): number {
  const x = p.x - 2 * q.x + r.x;
  const y = p.y - 2 * q.y + r.y;
  return Math.sqrt(x * x + y * y);
}

/**
 * With second differences of at most M a cubic strays from its chord, both taken at even speed, by no more than
 * d(d-1)/8·M = 3M/4 (Wang 1984, from memory): a few chords more than needed, never too few.
 */
function halve(seg: Cubic, tolerance: number, out: Point[], depth: number): void {
  const { p0, p1, p2, p3 } = seg;
  const a = bend(p0, p1, p2);
  const b = bend(p1, p2, p3);
  if (depth >= MAX_DEPTH || !(0.75 * Math.max(a, b) > tolerance) || !isFinitePoint(p3)) {
    out.push(p3);
    return;
  }
  const [left, right] = splitCubic(seg, 0.5);
  halve(left, tolerance, out, depth + 1);
  halve(right, tolerance, out, depth + 1);
}
