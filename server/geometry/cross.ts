/** Where two single segments cross or touch, as pairs of parameters. */
import { TOUCH } from './accuracy';
import { bernsteinRoots } from './bernstein';
import { type Box, boxContains, boxesMeet } from './box';
import { asCubic, controlBox, type Cubic, type Line, pointAt, type Segment, splitCubic } from './cubic';
import { refineCrossing, refineTouch } from './newton';
import { nearestOnSegment } from './nearest';
import { cross, distance, dot, lengthOf, type Point, subtract } from './point';

/** Parameters on the first and the second segment. */
export interface Hit {
  readonly t: number;
  readonly u: number;
}

/**
 * Cells (pairs of pieces) looked at before two curves are given up as lying on each other. Nine crossings of two wild
 * cubics take about 200; curves that share a stretch would go on for ever.
 */
const MAX_CELLS = 1500;

/** Below this size (millimetres) of both pieces a touching is looked for at once; below the second, halving stops. */
const TOUCH_CELL = 0.05;
const LAST_CELL = 1e-4;

/**
 * All crossings and touchings of two segments, in no order, some perhaps twice; of a shared stretch, its two ends.
 *
 * @param boxA of the control points, where it is known
 */
export function crossSegments(a: Segment, b: Segment, boxA = controlBox(a), boxB = controlBox(b)): Hit[] {
  const hits = endTouches(a, b, boxA, boxB);
  if (hits.length > 1 && sharesStretch(a, b, hits)) return hits;
  if (a.kind === 'line' && b.kind === 'line') crossLines(a, b, hits);
  else if (a.kind === 'line') for (const hit of lineOnCubic(a, asCubic(b))) hits.push(hit);
  else if (b.kind === 'line') for (const { t, u } of lineOnCubic(b, a)) hits.push({ t: u, u: t });
  else crossCubics(a, b, hits);
  return hits;
}

/** Ends of one that lie on the other, within `TOUCH`. */
function endTouches(a: Segment, b: Segment, boxA: Box, boxB: Box): Hit[] {
  const hits: Hit[] = [];
  for (let t = 0; t <= 1; t++) {
    const u = touching(b, boxB, t === 0 ? a.p0 : a.p3);
    if (u !== undefined) hits.push({ t, u });
  }
  for (let u = 0; u <= 1; u++) {
    const t = touching(a, boxA, u === 0 ? b.p0 : b.p3);
    if (t !== undefined) hits.push({ t, u });
  }
  return hits;
}

function touching(seg: Segment, box: Box, p: Point): number | undefined {
  if (!boxContains(box, p, TOUCH)) return undefined;
  if (distance(seg.p0, p) <= TOUCH) return 0;
  if (distance(seg.p3, p) <= TOUCH) return 1;
  if (seg.kind === 'cubic' && outsideFatLine(seg, p)) return undefined;
  const found = nearestOnSegment(seg, p);
  return found.distance <= TOUCH ? found.t : undefined;
}

/** Whether two touchings have a stretch between them that both segments run along. */
function sharesStretch(a: Segment, b: Segment, hits: readonly Hit[]): boolean {
  const ts = hits.map((hit) => hit.t);
  const from = Math.min(...ts);
  const to = Math.max(...ts);
  if (distance(pointAt(a, from), pointAt(a, to)) <= TOUCH) return false;
  const between = [0.21, 0.5, 0.83].map((share) => pointAt(a, from + (to - from) * share));
  return between.every((p) => nearestOnSegment(b, p).distance <= TOUCH);
}

function crossLines(a: Line, b: Line, hits: Hit[]): void {
  const d = subtract(a.p3, a.p0);
  const e = subtract(b.p3, b.p0);
  const w = subtract(b.p0, a.p0);
  const area = cross(d, e);
  if (Math.abs(area) <= 1e-14 * lengthOf(d) * lengthOf(e)) return;
  const t = cross(w, e) / area;
  const u = cross(w, d) / area;
  if (t >= 0 && t <= 1 && u >= 0 && u <= 1) hits.push({ t, u });
}

/** Signed distances of a cubic's control points from the line through o along a unit vector. */
function heights(seg: Cubic, o: Point, along: Point): [number, number, number, number] {
  const h = (p: Point): number => cross(along, subtract(p, o));
  return [h(seg.p0), h(seg.p1), h(seg.p2), h(seg.p3)];
}

/** t on the line, u on the cubic. */
function lineOnCubic(a: Line, b: Cubic): Hit[] {
  const d = subtract(a.p3, a.p0);
  const size = lengthOf(d);
  if (!(size > 0)) return [];
  const along = { x: d.x / size, y: d.y / size };
  const hits: Hit[] = [];
  for (const u of bernsteinRoots(heights(b, a.p0, along), TOUCH / 2)) {
    const t = dot(subtract(pointAt(b, u), a.p0), along) / size;
    if (t >= 0 && t <= 1) hits.push({ t, u });
  }
  return hits;
}

interface Strip {
  readonly along: Point;
  readonly low: number;
  readonly high: number;
}

/** Bounds of the strip along the chord in which a cubic lies (Sederberg & Nishita, CAD 22, 1990). */
function strip(seg: Cubic): Strip | undefined {
  const d = subtract(seg.p3, seg.p0);
  const size = lengthOf(d);
  if (!(size > 0)) return undefined;
  const along = { x: d.x / size, y: d.y / size };
  const h1 = cross(along, subtract(seg.p1, seg.p0));
  const h2 = cross(along, subtract(seg.p2, seg.p0));
  const factor = h1 * h2 > 0 ? 3 / 4 : 4 / 9;
  return { along, low: factor * Math.min(0, h1, h2), high: factor * Math.max(0, h1, h2) };
}

function outsideFatLine(seg: Cubic, p: Point): boolean {
  const found = strip(seg);
  if (!found) return false;
  const h = cross(found.along, subtract(p, seg.p0));
  return h < found.low - TOUCH || h > found.high + TOUCH;
}

/** A piece of a cubic, the parameters that it covers, and what rules out work: its box, its strip, its directions. */
interface Piece {
  readonly curve: Cubic;
  readonly from: number;
  readonly to: number;
  readonly box: Box;
  readonly size: number;
  readonly strip: Strip | undefined;
  readonly legs: readonly [Point, Point, Point];
}

function pieceOf(curve: Cubic, from: number, to: number): Piece {
  const { p0, p1, p2, p3 } = curve;
  const box = {
    minX: Math.min(p0.x, p1.x, p2.x, p3.x),
    minY: Math.min(p0.y, p1.y, p2.y, p3.y),
    maxX: Math.max(p0.x, p1.x, p2.x, p3.x),
    maxY: Math.max(p0.y, p1.y, p2.y, p3.y),
  };
  const size = Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const legs = [subtract(p1, p0), subtract(p2, p1), subtract(p3, p2)] as const;
  return { curve, from, to, box, size, strip: strip(curve), legs };
}

function halvesOf(piece: Piece): [Piece, Piece] {
  const [left, right] = splitCubic(piece.curve, 0.5);
  const middle = (piece.from + piece.to) / 2;
  return [pieceOf(left, piece.from, middle), pieceOf(right, middle, piece.to)];
}

/** Whether the control points of b all lie on one side of the strip of a. */
function stripMisses(a: Piece, b: Piece): boolean {
  const found = a.strip;
  if (!found) return false;
  const { x, y } = found.along;
  const { p0, p1, p2, p3 } = b.curve;
  const base = x * a.curve.p0.y - y * a.curve.p0.x;
  const h0 = x * p0.y - y * p0.x - base;
  const h1 = x * p1.y - y * p1.x - base;
  const h2 = x * p2.y - y * p2.x - base;
  const h3 = x * p3.y - y * p3.x - base;
  const high = found.high + TOUCH;
  const low = found.low - TOUCH;
  return (h0 > high && h1 > high && h2 > high && h3 > high) || (h0 < low && h1 < low && h2 < low && h3 < low);
}

/** Whether no direction of one is a direction of the other: then they cross once at the most. */
function directionsApart(a: Piece, b: Piece): boolean {
  let sign = 0;
  for (const p of a.legs) {
    for (const q of b.legs) {
      const turn = p.x * q.y - p.y * q.x;
      if (turn === 0) continue;
      if (sign !== 0 && turn > 0 !== sign > 0) return false;
      sign = turn;
    }
  }
  return sign !== 0;
}

/** Pieces that cannot meet are dropped, the others halved, until Newton's rule is safe. */
function crossCubics(a: Cubic, b: Cubic, hits: Hit[]): void {
  const stack: [Piece, Piece][] = [[pieceOf(a, 0, 1), pieceOf(b, 0, 1)]];
  for (let cells = 0; stack.length > 0 && cells < MAX_CELLS; cells++) {
    const [p, q] = stack.pop()!;
    if (!boxesMeet(p.box, q.box, TOUCH) || stripMisses(p, q) || stripMisses(q, p)) continue;
    if (settled(a, b, p, q, hits)) continue;
    if (p.size >= q.size) for (const half of halvesOf(p)) stack.push([half, q]);
    else for (const half of halvesOf(q)) stack.push([p, half]);
  }
}

function settled(a: Cubic, b: Cubic, p: Piece, q: Piece, hits: Hit[]): boolean {
  const start = { t: (p.from + p.to) / 2, u: (q.from + q.to) / 2 };
  const larger = Math.max(p.size, q.size);
  if (directionsApart(p, q)) {
    const hit = refineCrossing(a, b, start);
    if (hit && inside(hit.t, p, 0) && inside(hit.u, q, 0)) {
      hits.push(hit);
      return true;
    }
  } else if (larger < TOUCH_CELL) {
    const hit = refineTouch(a, b, start);
    const near = hit && inside(hit.t, p, 1) && inside(hit.u, q, 1);
    if (hit && near && distance(pointAt(a, hit.t), pointAt(b, hit.u)) <= TOUCH) {
      hits.push(hit);
      return true;
    }
  }
  if (larger > LAST_CELL) return false;
  const hit = refineCrossing(a, b, start);
  if (hit && inside(hit.t, p, 1) && inside(hit.u, q, 1)) hits.push(hit);
  return true;
}

/** Whether a parameter lies in a piece widened by a share of itself, and on the curve at all. */
function inside(t: number, piece: Piece, widened: number): boolean {
  const margin = widened * (piece.to - piece.from);
  return t >= Math.max(0, piece.from - margin) && t <= Math.min(1, piece.to + margin);
}
