/** Affine maps of the plane as 2 by 3 matrices: how paper is turned, moved, folded and laid. */
import { cubic, line, type Segment } from './cubic';
import { angleOf, type Point, subtract } from './point';

/** x' = a x + c y + e, y' = b x + d y + f. */
export interface Affine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
  readonly e: number;
  readonly f: number;
}

/** An affine map that keeps every length: turning, moving, and mirroring. */
export type Rigid = Affine;

export const identity: Rigid = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 };

export const translation = (by: Point): Rigid => ({ ...identity, e: by.x, f: by.y });

/** Turn by an angle about a point; positive is clockwise on paper. */
export function rotation(about: Point, radians: number): Rigid {
  const c = Math.cos(radians);
  const s = Math.sin(radians);
  return {
    a: c,
    b: s,
    c: -s,
    d: c,
    e: about.x - c * about.x + s * about.y,
    f: about.y - s * about.x - c * about.y,
  };
}

/** Enlarged about a point by one factor along x and one along y (shrinkage, grading). */
export const scaling = (about: Point, alongX: number, alongY = alongX): Affine => ({
  a: alongX,
  b: 0,
  c: 0,
  d: alongY,
  e: about.x * (1 - alongX),
  f: about.y * (1 - alongY),
});

/** Mirrored across the line through two points; the identity where they are one point. */
export function mirror(acrossA: Point, acrossB: Point): Rigid {
  const v = subtract(acrossB, acrossA);
  const size = v.x * v.x + v.y * v.y;
  if (!(size > 0)) return identity;
  const c = (v.x * v.x - v.y * v.y) / size;
  const s = (2 * v.x * v.y) / size;
  return {
    a: c,
    b: s,
    c: s,
    d: -c,
    e: acrossA.x - c * acrossA.x - s * acrossA.y,
    f: acrossA.y - s * acrossA.x + c * acrossA.y,
  };
}

/** First `first`, then `second`. */
export const compose = (first: Affine, second: Affine): Affine => ({
  a: second.a * first.a + second.c * first.b,
  b: second.b * first.a + second.d * first.b,
  c: second.a * first.c + second.c * first.d,
  d: second.b * first.c + second.d * first.d,
  e: second.a * first.e + second.c * first.f + second.e,
  f: second.b * first.e + second.d * first.f + second.f,
});

export const apply = (m: Affine, p: Point): Point => ({
  x: m.a * p.x + m.c * p.y + m.e,
  y: m.b * p.x + m.d * p.y + m.f,
});

/** A vector has no place: it is turned, not moved. */
export const applyVector = (m: Affine, v: Point): Point => ({
  x: m.a * v.x + m.c * v.y,
  y: m.b * v.x + m.d * v.y,
});

/** The map that undoes m; undefined where m flattens the plane. */
export function inverse(m: Affine): Affine | undefined {
  const det = m.a * m.d - m.b * m.c;
  if (!Number.isFinite(1 / det)) return undefined;
  const a = m.d / det;
  const b = -m.b / det;
  const c = -m.c / det;
  const d = m.a / det;
  return { a, b, c, d, e: -(a * m.e + c * m.f), f: -(b * m.e + d * m.f) };
}

/** Whether lengths are kept, within 1e-9 of the unit. */
export function isRigid(m: Affine): boolean {
  const near = (value: number, wanted: number): boolean => Math.abs(value - wanted) < 1e-9;
  return near(m.a * m.a + m.b * m.b, 1) && near(m.c * m.c + m.d * m.d, 1) && near(m.a * m.c + m.b * m.d, 0);
}

/** Whether the map turns a right hand into a left one. */
export const isMirroring = (m: Affine): boolean => m.a * m.d - m.b * m.c < 0;

/**
 * Laid as paper is laid: a comes exactly on to p, and the sheet is turned about it until b points at q.
 * No turning where a and b, or p and q, are one point.
 */
export function layOn(a: Point, b: Point, p: Point, q: Point): Rigid {
  const from = subtract(b, a);
  const to = subtract(q, p);
  const size = Math.hypot(from.x, from.y) * Math.hypot(to.x, to.y);
  const turn = size > 0 ? angleOf(to) - angleOf(from) : 0;
  return compose(rotation(a, turn), translation(subtract(p, a)));
}

export const transformedSegment = (seg: Segment, m: Affine): Segment =>
  seg.kind === 'line'
    ? line(apply(m, seg.p0), apply(m, seg.p3))
    : cubic(apply(m, seg.p0), apply(m, seg.p1), apply(m, seg.p2), apply(m, seg.p3));
