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

/**
 * With second differences of at most M a cubic strays from its chord, both taken at even speed, by no more than
 * d(d-1)/8·M = 3M/4 (Wang 1984, from memory): a few chords more than needed, never too few.
 */
function halve(seg: Cubic, tolerance: number, out: Point[], depth: number): void {
  const { p0, p1, p2, p3 } = seg;
  const a = Math.hypot(p0.x - 2 * p1.x + p2.x, p0.y - 2 * p1.y + p2.y);
  const b = Math.hypot(p1.x - 2 * p2.x + p3.x, p1.y - 2 * p2.y + p3.y);
  if (depth >= MAX_DEPTH || !(0.75 * Math.max(a, b) > tolerance) || !isFinitePoint(p3)) {
    out.push(p3);
    return;
  }
  const [left, right] = splitCubic(seg, 0.5);
  halve(left, tolerance, out, depth + 1);
  halve(right, tolerance, out, depth + 1);
}
