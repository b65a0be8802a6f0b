/** The shallow curve of a neck, a hip or a crotch: so deep, on that side, at that share of the way. */
import { cubic, line, type Segment } from './cubic';
import { hobby } from './hobby';
import { Path } from './path';
import { add, cross, lerp, lengthOf, type Point, scale, subtract } from './point';

/** Outside these shares one cubic would have to start almost square to the chord; two joined at the deepest point do not. */
const ONE_CURVE_FROM = 0.2;

/**
 * The curve from p to q whose deepest point lies exactly `depth` from the chord, on the side of `towardSide`, square
 * over the share `at` of the chord. Straight where the depth is nothing or the ends are one point; a side point on the
 * chord itself means the left of travel. The share is kept within 0.02..0.98.
 */
export function hollowCurve(p: Point, q: Point, depth: number, towardSide: Point, at = 0.5): Path {
  const chord = subtract(q, p);
  const size = lengthOf(chord);
  if (!(size > 0) || !Number.isFinite(size) || !Number.isFinite(depth) || depth === 0) return Path.line(p, q);
  const share = shareWithin(at);
  const out = scale(outward(p, q, towardSide), depth);
  const inner = share >= ONE_CURVE_FROM && share <= 1 - ONE_CURVE_FROM;
  return Path.of(inner ? [oneCurve(p, q, out, share)] : twoCurves(p, q, out, share));
}

/** Where that curve is deepest; that of a straight one lies on its chord. */
export const deepestOf = (p: Point, q: Point, depth: number, towardSide: Point, at = 0.5): Point =>
  add(lerp(p, q, shareWithin(at)), scale(outward(p, q, towardSide), depth));

const shareWithin = (at: number): number => Math.min(0.98, Math.max(0.02, Number.isFinite(at) ? at : 0.5));

/** Square to the chord on the side of a point, of length 1. */
function outward(p: Point, q: Point, towardSide: Point): Point {
  const chord = subtract(q, p);
  const right = cross(chord, subtract(towardSide, p)) > 0;
  return scale(right ? { x: -chord.y, y: chord.x } : { x: chord.y, y: -chord.x }, 1 / lengthOf(chord));
}

/**
 * With both handles at 4/3 of the depth the height is 4t(1-t) of it, deepest at t = 1/2; the point there stands over
 * (1 + 3 x1 + 3 x2)/8 of the chord, which fixes the sum of the handles' shares. They are set so that the middle gives a
 * parabola and a share counted from the other end gives the mirrored curve.
 */
function oneCurve(p: Point, q: Point, out: Point, share: number): Segment {
  const sum = (8 * share - 1) / 3;
  const first = sum <= 1 ? sum / 3 : 1 - (2 * (2 - sum)) / 3;
  const handle = scale(out, 4 / 3);
  return cubic(p, add(lerp(p, q, first), handle), add(lerp(p, q, sum - first), handle), q);
}

function twoCurves(p: Point, q: Point, out: Point, share: number): Segment[] {
  const deepest = add(lerp(p, q, share), out);
  const curves = hobby([{ point: p }, { point: deepest, leaving: subtract(q, p) }, { point: q }]);
  return curves.length > 0 ? curves : [line(p, q)];
}
