/** The angle that one segment turns through. */
import { cubic, directionAt, type Segment, splitCubic } from './cubic';
import { angleBetween, cross, dot, subtract } from './point';

/** At an exact cusp the direction flips at once; 24 halvings come within a millionth of the segment of it. */
const MAX_DEPTH = 24;

/** Radians from the first direction to the last, counted through all that lies between; clockwise on paper is positive. */
export function segmentTurning(seg: Segment, depth = 0): number {
  if (seg.kind === 'line') return 0;
  const legs = [subtract(seg.p1, seg.p0), subtract(seg.p2, seg.p1), subtract(seg.p3, seg.p2)];
  const [a, b, c] = legs as [typeof seg.p0, typeof seg.p0, typeof seg.p0];
  // Directions lie between those of the legs: if these lie within a right angle, so does all the turning.
  const tame = dot(a, b) >= 0 && dot(b, c) >= 0 && dot(a, c) >= 0;
  const leaving = directionAt(seg, 0, 'after');
  const arriving = directionAt(seg, 1, 'before');
  if (!leaving || !arriving) return 0;
  const flat = cross(a, b) === 0 && cross(b, c) === 0 && cross(a, c) === 0;
  if (tame || flat || depth >= MAX_DEPTH || !(Math.abs(seg.p3.x) + Math.abs(seg.p3.y) < Infinity)) {
    return angleBetween(leaving, arriving);
  }
  const [left, right] = splitCubic(cubic(seg.p0, seg.p1, seg.p2, seg.p3), 0.5);
  const middle = directionAt(left, 1, 'before');
  const onward = directionAt(right, 0, 'after');
  const kink = middle && onward ? angleBetween(middle, onward) : 0;
  return segmentTurning(left, depth + 1) + kink + segmentTurning(right, depth + 1);
}
