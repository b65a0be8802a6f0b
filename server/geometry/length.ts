/** Arc length of one segment by Gauss-Legendre quadrature, halved where the speed changes sharply. */
import { DEFAULT_ACCURACY } from './accuracy';
import { type Cubic, type Segment } from './cubic';
import { distance } from './point';

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

const COARSE = gaussLegendre(8);
const FINE = gaussLegendre(16);

/**
 * Halvings of one segment. At an exact cusp each halving leaves a quarter of the error, so 26 reach 1e-16 of the
 * length; a smooth curve needs none or two.
 */
const MAX_DEPTH = 26;

/** The derivative as ax t² + bx t + cx, and likewise y. */
interface Speed {
  readonly ax: number;
  readonly bx: number;
  readonly cx: number;
  readonly ay: number;
  readonly by: number;
  readonly cy: number;
}

function speedOf({ p0, p1, p2, p3 }: Cubic): Speed {
  return {
    ax: 3 * (p3.x - 3 * p2.x + 3 * p1.x - p0.x),
    bx: 6 * (p2.x - 2 * p1.x + p0.x),
    cx: 3 * (p1.x - p0.x),
    ay: 3 * (p3.y - 3 * p2.y + 3 * p1.y - p0.y),
    by: 6 * (p2.y - 2 * p1.y + p0.y),
    cy: 3 * (p1.y - p0.y),
  };
}

function speedAt(v: Speed, t: number): number {
  const x = (v.ax * t + v.bx) * t + v.cx;
  const y = (v.ay * t + v.by) * t + v.cy;
  return Math.sqrt(x * x + y * y);
}

/** Length of the whole segment, right to `accuracy` millimetres (or to rounding, where the curve is huge). */
export function segmentLength(seg: Segment, accuracy = DEFAULT_ACCURACY): number {
  return seg.kind === 'line' ? distance(seg.p0, seg.p3) : adaptive(speedOf(seg), 0, 1, accuracy, 0);
}

/** Signed length from parameter t0 to t1. */
export function lengthBetween(seg: Segment, t0: number, t1: number, accuracy = DEFAULT_ACCURACY): number {
  if (seg.kind === 'line') return distance(seg.p0, seg.p3) * (t1 - t0);
  return t1 < t0 ? -adaptive(speedOf(seg), t1, t0, accuracy, 0) : adaptive(speedOf(seg), t0, t1, accuracy, 0);
}

/**
 * Two rules are compared. On a smooth stretch the error falls geometrically with the number of nodes, so the error
 * of the finer rule is about the square of the difference; that is trusted only where the slowest speed met is not
 * small beside the fastest, because close to a cusp the fall is slow and the difference itself must be small.
 */
function adaptive(v: Speed, t0: number, t1: number, accuracy: number, depth: number): number {
  const width = t1 - t0;
  let coarse = 0;
  for (let i = 0; i < 8; i++) coarse += COARSE.weights[i]! * speedAt(v, t0 + width * COARSE.nodes[i]!);
  let fine = 0;
  let slowest = Infinity;
  let fastest = 0;
  for (let i = 0; i < 16; i++) {
    const speed = speedAt(v, t0 + width * FINE.nodes[i]!);
    if (speed < slowest) slowest = speed;
    if (speed > fastest) fastest = speed;
    fine += FINE.weights[i]! * speed;
  }
  const length = fine * width;
  const gap = Math.abs(fine - coarse) * width;
  const allowed = Math.max(accuracy, 1e-15 * length);
  // Written so that not-a-number ends the halving.
  if (!(gap > allowed) || depth >= MAX_DEPTH) return length;
  const smooth = slowest > 0.1 * fastest && gap < 1e-4 * length;
  if (smooth && 4 * gap * gap <= allowed * length) return length;
  const middle = (t0 + t1) / 2;
  return adaptive(v, t0, middle, accuracy / 2, depth + 1) + adaptive(v, middle, t1, accuracy / 2, depth + 1);
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
  let run = adaptive(v, 0, t, accuracy / 4, 0);
  for (let step = 0; step < 60; step++) {
    const miss = run - s;
    if (Math.abs(miss) <= accuracy / 4) return t;
    if (miss > 0) hi = t;
    else lo = t;
    const newton = t - miss / speedAt(v, t);
    const next = newton > lo && newton < hi ? newton : (lo + hi) / 2;
    if (next === t) return t;
    run += next > t ? adaptive(v, t, next, accuracy / 16, 0) : -adaptive(v, next, t, accuracy / 16, 0);
    t = next;
  }
  return t;
}
