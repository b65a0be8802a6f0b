/** One stretch of an outline: a straight line or a cubic Bézier curve, and what can be asked of it at a parameter. */
import { type Box, boxOf } from './box';
import { add, cross, lerp, normalised, type Point, scale, subtract } from './point';

export interface Line {
  readonly kind: 'line';
  readonly p0: Point;
  readonly p3: Point;
}

export interface Cubic {
  readonly kind: 'cubic';
  readonly p0: Point;
  readonly p1: Point;
  readonly p2: Point;
  readonly p3: Point;
}

/** Runs from p0 at parameter 0 to p3 at parameter 1. */
export type Segment = Line | Cubic;

export const line = (p0: Point, p3: Point): Line => ({ kind: 'line', p0, p3 });

export const cubic = (p0: Point, p1: Point, p2: Point, p3: Point): Cubic => ({
  kind: 'cubic',
  p0,
  p1,
  p2,
  p3,
});

/** A line as the cubic that runs along it at even speed. */
export const asCubic = (seg: Segment): Cubic =>
  seg.kind === 'cubic'
    ? seg
    : cubic(seg.p0, lerp(seg.p0, seg.p3, 1 / 3), lerp(seg.p0, seg.p3, 2 / 3), seg.p3);

export function pointAt(seg: Segment, t: number): Point {
  if (t === 0) return seg.p0;
  if (t === 1) return seg.p3;
  if (seg.kind === 'line') return lerp(seg.p0, seg.p3, t);
  const { p0, p1, p2, p3 } = seg;
  return { x: coordinateAt(p0.x, p1.x, p2.x, p3.x, t), y: coordinateAt(p0.y, p1.y, p2.y, p3.y, t) };
}

/** One coordinate of a cubic, by those of its control points: for who works out so many that points would cost more. */
export function coordinateAt(p0: number, p1: number, p2: number, p3: number, t: number): number {
  if (t === 0) return p0;
  if (t === 1) return p3;
  const r = 1 - t;
  return r * r * r * p0 + 3 * r * r * t * p1 + 3 * r * t * t * p2 + t * t * t * p3;
}

/** Change of one coordinate with the parameter. */
export function slopeAt(p0: number, p1: number, p2: number, p3: number, t: number): number {
  const r = 1 - t;
  return 3 * r * r * (p1 - p0) + 6 * r * t * (p2 - p1) + 3 * t * t * (p3 - p2);
}

/** Change of the slope of one coordinate with the parameter. */
export const bendAt = (p0: number, p1: number, p2: number, p3: number, t: number): number =>
  6 * (1 - t) * (p2 - 2 * p1 + p0) + 6 * t * (p3 - 2 * p2 + p1);

/** Change of place with the parameter, millimetres. */
export function derivativeAt(seg: Segment, t: number): Point {
  if (seg.kind === 'line') return subtract(seg.p3, seg.p0);
  const { p0, p1, p2, p3 } = seg;
  return { x: slopeAt(p0.x, p1.x, p2.x, p3.x, t), y: slopeAt(p0.y, p1.y, p2.y, p3.y, t) };
}

export function secondDerivativeAt(seg: Segment, t: number): Point {
  if (seg.kind === 'line') return { x: 0, y: 0 };
  const { p0, p1, p2, p3 } = seg;
  return { x: bendAt(p0.x, p1.x, p2.x, p3.x, t), y: bendAt(p0.y, p1.y, p2.y, p3.y, t) };
}

function thirdDerivative(seg: Cubic): Point {
  const { p0, p1, p2, p3 } = seg;
  return { x: 6 * (p3.x - 3 * p2.x + 3 * p1.x - p0.x), y: 6 * (p3.y - 3 * p2.y + 3 * p1.y - p0.y) };
}

/** Signed curvature in 1/mm, positive where the curve turns clockwise on paper; 0 where it has none (a cusp, a line). */
export function curvatureAt(seg: Segment, t: number): number {
  if (seg.kind === 'line') return 0;
  const d = derivativeAt(seg, t);
  const speed = Math.sqrt(d.x * d.x + d.y * d.y);
  if (!(speed > vanishing(seg))) return 0;
  return cross(d, secondDerivativeAt(seg, t)) / (speed * speed * speed);
}

/** Greatest extent of the control points: the size that "as good as nothing" is measured against. */
export function extentOf(seg: Segment): number {
  const { p0, p3 } = seg;
  if (seg.kind === 'line') return Math.max(Math.abs(p3.x - p0.x), Math.abs(p3.y - p0.y));
  const { p1, p2 } = seg;
  const wide = Math.max(p0.x, p1.x, p2.x, p3.x) - Math.min(p0.x, p1.x, p2.x, p3.x);
  const high = Math.max(p0.y, p1.y, p2.y, p3.y) - Math.min(p0.y, p1.y, p2.y, p3.y);
  return Math.max(wide, high);
}

const vanishing = (seg: Segment): number => 1e-9 * extentOf(seg);

/**
 * Unit direction of travel at t, just before or just after it. Where the handle has no length (or at a cusp) it is
 * the limit from that side, by the first derivative that does not vanish. Undefined for a segment of no size.
 */
export function directionAt(seg: Segment, t: number, side: 'before' | 'after' = 'after'): Point | undefined {
  const d = derivativeAt(seg, t);
  if (seg.kind === 'line') return normalised(d);
  const small = vanishing(seg);
  if (Math.abs(d.x) > small || Math.abs(d.y) > small) return normalised(d);
  const back = t >= 1 || (t > 0 && side === 'before');
  const second = secondDerivativeAt(seg, t);
  if (Math.abs(second.x) > small || Math.abs(second.y) > small)
    return normalised(scale(second, back ? -1 : 1));
  return normalised(thirdDerivative(seg));
}

/** Cut in two at t by de Casteljau's rule. */
export function split(seg: Segment, t: number): [Segment, Segment] {
  if (seg.kind === 'line') {
    const middle = lerp(seg.p0, seg.p3, t);
    return [line(seg.p0, middle), line(middle, seg.p3)];
  }
  return splitCubic(seg, t);
}

export function splitCubic(seg: Cubic, t: number): [Cubic, Cubic] {
  const a = lerp(seg.p0, seg.p1, t);
  const b = lerp(seg.p1, seg.p2, t);
  const c = lerp(seg.p2, seg.p3, t);
  const ab = lerp(a, b, t);
  const bc = lerp(b, c, t);
  const middle = lerp(ab, bc, t);
  return [cubic(seg.p0, a, ab, middle), cubic(middle, bc, c, seg.p3)];
}

/** The stretch from t0 to t1; runs backwards where t0 > t1. Its ends are exactly the points at t0 and t1. */
export function subsegment(seg: Segment, t0: number, t1: number): Segment {
  if (t0 === 0 && t1 === 1) return seg;
  if (t0 > t1) return reversedSegment(subsegment(seg, t1, t0));
  const start = pointAt(seg, t0);
  const end = pointAt(seg, t1);
  if (seg.kind === 'line') return line(start, end);
  const third = (t1 - t0) / 3;
  const p1 = add(start, scale(derivativeAt(seg, t0), third));
  const p2 = subtract(end, scale(derivativeAt(seg, t1), third));
  return cubic(start, p1, p2, end);
}

export const reversedSegment = (seg: Segment): Segment =>
  seg.kind === 'line' ? line(seg.p3, seg.p0) : cubic(seg.p3, seg.p2, seg.p1, seg.p0);

/** Box of the control points: holds the curve, not tightly. */
export function controlBox(seg: Segment): Box {
  const { p0, p3 } = seg;
  const p1 = seg.kind === 'line' ? p0 : seg.p1;
  const p2 = seg.kind === 'line' ? p3 : seg.p2;
  return {
    minX: least(p0.x, p1.x, p2.x, p3.x),
    minY: least(p0.y, p1.y, p2.y, p3.y),
    maxX: most(p0.x, p1.x, p2.x, p3.x),
    maxY: most(p0.y, p1.y, p2.y, p3.y),
  };
}

/** Where a number is none, it has no say; so says `boxOf`. */
const lower = (than: number, a: number): number => (a < than ? a : than);
const higher = (than: number, a: number): number => (a > than ? a : than);
const least = (a: number, b: number, c: number, d: number): number =>
  lower(lower(lower(lower(Infinity, a), b), c), d);
const most = (a: number, b: number, c: number, d: number): number =>
  higher(higher(higher(higher(-Infinity, a), b), c), d);

/** The exact box of the curve, by the places where it runs level or upright. */
export function bounds(seg: Segment): Box {
  if (seg.kind === 'line') return controlBox(seg);
  const { p0, p1, p2, p3 } = seg;
  const points = [p0, p3];
  for (const t of quadraticRoots(p1.x - p0.x, p2.x - p1.x, p3.x - p2.x)) points.push(pointAt(seg, t));
  for (const t of quadraticRoots(p1.y - p0.y, p2.y - p1.y, p3.y - p2.y)) points.push(pointAt(seg, t));
  return boxOf(points);
}

/** Roots strictly inside 0..1 of the quadratic with these Bernstein coefficients (the derivative of one coordinate). */
export function quadraticRoots(a: number, b: number, c: number): number[] {
  const q2 = a - 2 * b + c;
  const q1 = b - a;
  const root = q1 * q1 - q2 * a;
  if (!(root >= 0)) return [];
  // The stable pair: no difference of nearly equal numbers is taken (Press et al., Numerical Recipes, 5.6).
  const w = -(q1 + (q1 < 0 ? -1 : 1) * Math.sqrt(root));
  const t = w / q2;
  const u = a / w;
  const out: number[] = [];
  if (t > 0 && t < 1) out.push(t);
  if (u > 0 && u < 1) {
    if (out.length > 0 && u < t) out.unshift(u);
    else out.push(u);
  }
  return out;
}
