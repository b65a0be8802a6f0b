/** How near and how far paths are from points and from each other. */
import { distanceBetweenBoxes } from './box';
import { asCubic, controlBox, type Cubic, pointAt, splitCubic } from './cubic';
import { refineNearest } from './newton';
import { farthestOnSegment, nearestOnSegment } from './nearest';
import type { Located, Path } from './path';
import { distance, type Point } from './point';

export interface Approach {
  readonly distance: number;
  readonly pointA: Point;
  readonly pointB: Point;
  readonly sA: number;
  readonly sB: number;
}

/** The place of a path nearest to a point. */
export const nearestTo = (path: Path, p: Point): Located => path.locate(p);

/** The place of a path farthest from a point. */
export function farthestFrom(path: Path, p: Point): Located {
  let best = { index: 0, t: 0, distance: -Infinity, point: path.start };
  path.segments.forEach((seg, index) => {
    const found = farthestOnSegment(seg, p);
    if (found.distance > best.distance) best = { index, ...found };
  });
  return { s: path.lengthTo(best), distance: best.distance, point: best.point };
}

/**
 * Pieces are halved this many times before Newton's rule alone is trusted: 1/32 of a curve holds one nearest approach at
 * the most in anything that is drawn. One level more doubles the time.
 */
const MAX_DEPTH = 5;

interface Best {
  distance: number;
  i: number;
  j: number;
  t: number;
  u: number;
}

/** The nearest approach of two paths: distance 0 where they meet. */
export function nearestBetween(a: Path, b: Path): Approach {
  const pairs: { i: number; j: number; apart: number }[] = [];
  a.controlBoxes.forEach((boxA, i) =>
    b.controlBoxes.forEach((boxB, j) => pairs.push({ i, j, apart: distanceBetweenBoxes(boxA, boxB) })),
  );
  pairs.sort((p, q) => p.apart - q.apart);
  const best: Best = { distance: Infinity, i: 0, j: 0, t: 0, u: 0 };
  for (const { i, j, apart } of pairs) {
    if (!(apart < best.distance)) continue;
    const p = asCubic(a.segments[i]!);
    const q = asCubic(b.segments[j]!);
    const whole = { p, q, i, j };
    considerEnds(whole, best);
    search(whole, { curve: p, from: 0, to: 1 }, { curve: q, from: 0, to: 1 }, 0, best);
  }
  const pointA = pointAt(a.segments[best.i]!, best.t);
  const pointB = pointAt(b.segments[best.j]!, best.u);
  return {
    distance: distance(pointA, pointB),
    pointA,
    pointB,
    sA: a.lengthTo({ index: best.i, t: best.t }),
    sB: b.lengthTo({ index: best.j, t: best.u }),
  };
}

interface Whole {
  readonly p: Cubic;
  readonly q: Cubic;
  readonly i: number;
  readonly j: number;
}

interface Piece {
  readonly curve: Cubic;
  readonly from: number;
  readonly to: number;
}

function search(whole: Whole, p: Piece, q: Piece, depth: number, best: Best): void {
  if (!(distanceBetweenBoxes(controlBox(p.curve), controlBox(q.curve)) < best.distance)) return;
  consider(whole, (p.from + p.to) / 2, (q.from + q.to) / 2, best);
  if (depth >= MAX_DEPTH) return;
  for (const left of halves(p)) for (const right of halves(q)) search(whole, left, right, depth + 1, best);
}

function halves(piece: Piece): [Piece, Piece] {
  const [left, right] = splitCubic(piece.curve, 0.5);
  const middle = (piece.from + piece.to) / 2;
  return [
    { curve: left, from: piece.from, to: middle },
    { curve: right, from: middle, to: piece.to },
  ];
}

function consider(whole: Whole, t: number, u: number, best: Best): void {
  note(whole, refineNearest(whole.p, whole.q, { t, u }), best);
}

/** The nearest approach at an end of one of the two. */
function considerEnds(whole: Whole, best: Best): void {
  for (const end of [0, 1]) {
    note(whole, { t: end, u: nearestOnSegment(whole.q, pointAt(whole.p, end)).t }, best);
    note(whole, { t: nearestOnSegment(whole.p, pointAt(whole.q, end)).t, u: end }, best);
  }
}

function note(whole: Whole, place: { t: number; u: number }, best: Best): void {
  const apart = distance(pointAt(whole.p, place.t), pointAt(whole.q, place.u));
  if (apart < best.distance) Object.assign(best, { distance: apart, i: whole.i, j: whole.j, ...place });
}
