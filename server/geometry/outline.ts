/** Closed outlines: paths laid end to end and back to the start. */
import { bernsteinAt } from './bernstein';
import type { Box } from './box';
import { bounds, type Cubic, line, quadraticRoots, type Segment } from './cubic';
import type { Meeting } from './intersect';
import { boxOfPaths, Path } from './path';
import type { Point } from './point';
import { selfCrossingsOf } from './self';

/** The edges of an outline in order; the last ends where the first starts. */
export type Outline = readonly Path[];

/** All edges as one path; distances along it run from the first edge's start. */
export const ringOf = (outline: Outline): Path => Path.joined(outline);

/**
 * Area in square millimetres, exact for lines and cubics (Green's theorem); positive where the outline runs clockwise on
 * paper. A gap at the end is closed by a straight line.
 */
export function signedArea(outline: Outline): number {
  const origin = outline[0]?.start;
  if (!origin) return 0;
  let twice = 0;
  let last = origin;
  for (const { segments } of outline) {
    for (const seg of segments) {
      twice += twiceTriangle(origin, last, seg.p0) + twiceSwept(seg, origin);
      last = seg.p3;
    }
  }
  return twice / 2;
}

/** Twice the area swept by the ray from the origin to the segment, in closed form. */
function twiceSwept(seg: Segment, origin: Point): number {
  if (seg.kind === 'line') return twiceTriangle(origin, seg.p0, seg.p3);
  const { p0: a, p1: b, p2: c, p3: d } = seg;
  // Integrals of products of Bernstein polynomials, in tenths.
  return (
    (6 * twiceTriangle(origin, a, b) +
      3 * twiceTriangle(origin, a, c) +
      twiceTriangle(origin, a, d) +
      3 * twiceTriangle(origin, b, c) +
      3 * twiceTriangle(origin, b, d) +
      6 * twiceTriangle(origin, c, d)) /
    10
  );
}

/** Twice the area of the triangle that a point makes with two others, positive where these lie clockwise on paper. */
const twiceTriangle = (from: Point, a: Point, b: Point): number =>
  (a.x - from.x) * (b.y - from.y) - (a.y - from.y) * (b.x - from.x);

export const areaOf = (outline: Outline): number => Math.abs(signedArea(outline));

/** 1 clockwise on paper, -1 anticlockwise, 0 without area. */
export const orientation = (outline: Outline): -1 | 0 | 1 => {
  const area = signedArea(outline);
  return area > 0 ? 1 : area < 0 ? -1 : 0;
};

export const perimeter = (outline: Outline): number => outline.reduce((sum, path) => sum + path.length, 0);

export const outlineBounds = (outline: Outline): Box => boxOfPaths(outline);

/** Crossings of the outline with itself; `sA` and `sB` count from the first edge's start. */
export const selfCrossings = (outline: Outline): Meeting[] => selfCrossingsOf(ringOf(outline), true);

/**
 * Whether a point lies inside (by the even-odd rule). On the outline itself either answer may come. A ray to the right is
 * counted against stretches that only rise or only fall, each with its lower end and without its upper.
 */
export function contains(outline: Outline, p: Point): boolean {
  let inside = false;
  let last = outline[outline.length - 1]?.end;
  for (const { segments, box } of outline) {
    const passedBy = box.maxX <= p.x || box.minY > p.y || box.maxY < p.y;
    for (const seg of segments) {
      if (last!.x !== seg.p0.x || last!.y !== seg.p0.y)
        inside = inside !== crossesRay(line(last!, seg.p0), p);
      if (!passedBy) inside = inside !== crossesRay(seg, p);
      last = seg.p3;
    }
  }
  return inside;
}

/** Whether the segment meets the ray to the right of p an odd number of times. */
function crossesRay(seg: Segment, p: Point): boolean {
  if (seg.kind === 'line') {
    if (seg.p0.y <= p.y === seg.p3.y <= p.y) return false;
    return seg.p0.x + ((p.y - seg.p0.y) / (seg.p3.y - seg.p0.y)) * (seg.p3.x - seg.p0.x) > p.x;
  }
  const box = bounds(seg);
  if (box.maxX <= p.x || box.minY > p.y || box.maxY < p.y) return false;
  if (box.minX > p.x) return seg.p0.y <= p.y !== seg.p3.y <= p.y;
  return curveCrossesRay(seg, p);
}

function curveCrossesRay(seg: Cubic, p: Point): boolean {
  const xs = [seg.p0.x, seg.p1.x, seg.p2.x, seg.p3.x];
  const ys = [seg.p0.y, seg.p1.y, seg.p2.y, seg.p3.y];
  const stops = [0, ...quadraticRoots(ys[1]! - ys[0]!, ys[2]! - ys[1]!, ys[3]! - ys[2]!), 1];
  const height = (t: number): number => (t === 0 ? ys[0]! : t === 1 ? ys[3]! : bernsteinAt(ys, t));
  let odd = false;
  for (let i = 0; i + 1 < stops.length; i++) {
    let lo = stops[i]!;
    let hi = stops[i + 1]!;
    const below = height(lo) <= p.y;
    if (below === height(hi) <= p.y) continue;
    for (let step = 0; step < 52; step++) {
      const middle = (lo + hi) / 2;
      if (height(middle) <= p.y === below) lo = middle;
      else hi = middle;
    }
    if (bernsteinAt(xs, lo) > p.x) odd = !odd;
  }
  return odd;
}
