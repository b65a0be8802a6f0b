/** Arc length of one segment by Gauss-Legendre quadrature, in pieces chosen by where the speed would vanish. */
import { DEFAULT_ACCURACY } from './accuracy';
import { type Cubic, type Segment } from './cubic';
import { distance, type Point } from './point';

interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

/**
 * Nodes and weights of the n-point rule on 0..1, by Newton's method on the Legendre polynomial
 * (Abramowitz & Stegun, Handbook of Mathematical Functions, 25.4.29 and table 25.4).
 */
export function gaussLegendre(n: number): Rule {
  const nodes = new Float64Array(n);
  const weights = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let step = 0; step < 8; step++) {
      let before = 1;
      let value = x;
      for (let k = 2; k <= n; k++)
        [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
      slope = (n * (x * value - before)) / (x * x - 1);
      x -= value / slope;
    }
    nodes[i] = (1 - x) / 2;
    weights[i] = 1 / ((1 - x * x) * slope * slope);
  }
  return { nodes, weights };
}

const EIGHT = gaussLegendre(8);
const SIXTEEN = gaussLegendre(16);

/**
 * Halvings of one segment. The zeros of the speed that come near the curve are met by halving towards them, one level
 * for each factor of two; 40 is beyond what `ALMOST_CUSP` lets happen and stands only against surprises.
 */
const MAX_DEPTH = 40;

/**
 * The derivative of a cubic, read as the complex quadratic x' + iy', vanishes at two complex parameters. Away from them
 * and their conjugates the speed is analytic, and how near they come tells beforehand what a rule will achieve.
 */
interface Speed {
  readonly ax: number;
  readonly bx: number;
  readonly cx: number;
  readonly ay: number;
  readonly by: number;
  readonly cy: number;
  /** A bound of the speed. */
  readonly fastest: number;
  /** Real and imaginary parts of the two zeros. */
  readonly zeros: readonly [Point, Point];
}

function speedOf({ p0, p1, p2, p3 }: Cubic): Speed {
  const ax = 3 * (p3.x - 3 * p2.x + 3 * p1.x - p0.x);
  const ay = 3 * (p3.y - 3 * p2.y + 3 * p1.y - p0.y);
  const bx = 6 * (p2.x - 2 * p1.x + p0.x);
  const by = 6 * (p2.y - 2 * p1.y + p0.y);
  const cx = 3 * (p1.x - p0.x);
  const cy = 3 * (p1.y - p0.y);
  const fastest = 3 * Math.max(distance(p0, p1), distance(p1, p2), distance(p2, p3));
  // The zeros of a t² + b t + c with complex coefficients; not finite where the degree is lower.
  const root = complexRoot(
    bx * bx - by * by - 4 * (ax * cx - ay * cy),
    bx * by + by * bx - 4 * (ax * cy + ay * cx),
  );
  const sign = bx * root.x + by * root.y < 0 ? -1 : 1;
  const qx = -(bx + sign * root.x) / 2;
  const qy = -(by + sign * root.y) / 2;
  return { ax, bx, cx, ay, by, cy, fastest, zeros: [quotient(qx, qy, ax, ay), quotient(cx, cy, qx, qy)] };
}

/** One complex number divided by another. */
function quotient(px: number, py: number, qx: number, qy: number): Point {
  const size = qx * qx + qy * qy;
  return { x: (px * qx + py * qy) / size, y: (py * qx - px * qy) / size };
}

function complexRoot(zx: number, zy: number): Point {
  const size = Math.sqrt(zx * zx + zy * zy);
  const x = Math.sqrt(Math.max(0, (size + zx) / 2));
  const y = Math.sqrt(Math.max(0, (size - zx) / 2));
  return { x, y: zy < 0 ? -y : y };
}

function speedAt(v: Speed, t: number): number {
  const x = (v.ax * t + v.bx) * t + v.cx;
  const y = (v.ay * t + v.by) * t + v.cy;
  return Math.sqrt(x * x + y * y);
}

/** Length of the whole segment, right to `accuracy` millimetres (or to rounding, where the curve is huge). */
export function segmentLength(seg: Segment, accuracy = DEFAULT_ACCURACY): number {
  return seg.kind === 'line' ? distance(seg.p0, seg.p3) : run(speedOf(seg), 0, 1, accuracy, 0);
}

/** Signed length from parameter t0 to t1. */
export function lengthBetween(seg: Segment, t0: number, t1: number, accuracy = DEFAULT_ACCURACY): number {
  if (seg.kind === 'line') return distance(seg.p0, seg.p3) * (t1 - t0);
  return signedRun(speedOf(seg), t0, t1, accuracy);
}

const signedRun = (v: Speed, t0: number, t1: number, accuracy: number): number =>
  t1 < t0 ? -run(v, t1, t0, accuracy, 0) : run(v, t0, t1, accuracy, 0);

/**
 * A zero of the speed this near to the real axis is taken to lie on it: the length changes by about the square of the
 * parameter's miss times the speed, far below any accuracy asked for.
 */
const ALMOST_CUSP = 1e-9;

function run(v: Speed, t0: number, t1: number, accuracy: number, depth: number): number {
  const width = t1 - t0;
  const wanted = (4 * v.fastest * width) / Math.max(accuracy, 1e-15 * v.fastest);
  let nearest = Infinity;
  for (const zero of v.zeros) {
    if (Math.abs(zero.y) < ALMOST_CUSP) {
      // At a cusp the speed is |t - zero| times a smooth factor: smooth on each side of it.
      if (zero.x > t0 + 1e-12 && zero.x < t1 - 1e-12 && depth < MAX_DEPTH) {
        return run(v, t0, zero.x, accuracy, depth + 1) + run(v, zero.x, t1, accuracy, depth + 1);
      }
      continue;
    }
    const ellipse = ellipseThrough((2 * zero.x - t0 - t1) / width, (2 * zero.y) / width);
    if (ellipse < nearest) nearest = ellipse;
  }
  const squared = nearest * nearest;
  const power16 = squared * squared * squared * squared * squared * squared * squared * squared;
  if (power16 >= wanted) return rule(v, t0, width, EIGHT);
  // Written so that not-a-number ends the halving.
  if (!(power16 * power16 < wanted) || depth >= MAX_DEPTH) return rule(v, t0, width, SIXTEEN);
  const middle = (t0 + t1) / 2;
  return run(v, t0, middle, accuracy, depth + 1) + run(v, middle, t1, accuracy, depth + 1);
}

/**
 * The Bernstein ellipse (sum of its half axes) through x + iy about -1..1. The error of an n-point rule is at most about
 * 4 M ρ^-2n, with M a bound on the ellipse (Trefethen, SIAM Review 50, 2008, theorem 4.5).
 */
function ellipseThrough(x: number, y: number): number {
  const sum = Math.sqrt((x - 1) * (x - 1) + y * y) + Math.sqrt((x + 1) * (x + 1) + y * y);
  return (sum + Math.sqrt(Math.max(0, sum * sum - 4))) / 2;
}

function rule(v: Speed, t0: number, width: number, { nodes, weights }: Rule): number {
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) sum += weights[i]! * speedAt(v, t0 + width * nodes[i]!);
  return sum * width;
}

/** The parameter at `s` millimetres from the start, where `total` is the length; kept within 0..1. */
export function parameterAtLength(
  seg: Segment,
  s: number,
  total: number,
  accuracy = DEFAULT_ACCURACY,
): number {
  if (!(s > 0) || !(total > 0)) return 0;
  if (s >= total) return 1;
  if (seg.kind === 'line') return s / total;
  const v = speedOf(seg);
  let lo = 0;
  let hi = 1;
  let t = s / total;
  let walked = run(v, 0, t, accuracy / 4, 0);
  for (let step = 0; step < 60; step++) {
    const miss = walked - s;
    if (Math.abs(miss) <= accuracy / 4) return t;
    if (miss > 0) hi = t;
    else lo = t;
    const newton = t - miss / speedAt(v, t);
    const next = newton > lo && newton < hi ? newton : (lo + hi) / 2;
    if (next === t) return t;
    walked += signedRun(v, t, next, accuracy / 16);
    t = next;
  }
  return t;
}
