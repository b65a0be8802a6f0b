/** Smooth curves through points, after J. D. Hobby, Discrete & Computational Geometry 1 (1986) 123-140. */
import { cubic, line, type Segment } from './cubic';
import { add, angleBetween, distance, isFinitePoint, type Point, rotate, scale, subtract } from './point';

/** A point to pass through; a heading given on one side only holds on both. */
export interface Knot {
  readonly point: Point;
  readonly leaving?: Point | undefined;
  readonly arriving?: Point | undefined;
}

export interface HobbyOptions {
  readonly closed?: boolean;
  /** Factor on every handle: 1.2 is fuller by a fifth, 0.8 flatter. */
  readonly scaleHandles?: number;
}

/** Handles longer than four chords are of no use to anybody; the same bound as The METAFONTbook's (from memory). */
const MAX_VELOCITY = 4;

/**
 * Hobby's velocity: the length of a handle, as a share of the chord, for a curve that leaves at θ and arrives at φ
 * (radians against the chord). The third that makes it a Bézier handle is in it.
 */
export function velocity(theta: number, phi: number): number {
  const st = Math.sin(theta);
  const ct = Math.cos(theta);
  const sp = Math.sin(phi);
  const cp = Math.cos(phi);
  const above = 2 + Math.SQRT2 * (st - sp / 16) * (sp - st / 16) * (ct - cp);
  const below = 3 * (1 + 0.5 * (Math.sqrt(5) - 1) * ct + 0.5 * (3 - Math.sqrt(5)) * cp);
  const f = above / below;
  return f >= 0 && f < MAX_VELOCITY ? f : MAX_VELOCITY;
}

/**
 * The curve through the knots, tension 1 and curl 1 at free ends. Two knots with no heading give a straight line; with
 * one heading the free end leans by the same angle, as an arc does. A knot with a heading splits the problem there.
 * Knots that repeat the one before are left out; fewer than two different finite points give an empty list.
 */
export function hobby(knots: readonly Knot[], options: HobbyOptions = {}): Segment[] {
  const kept = different(knots, options.closed ?? false);
  if (kept.length < 2 || !kept.every((k) => isFinitePoint(k.point))) return [];
  const handles = options.scaleHandles ?? 1;
  if (!options.closed) return openRuns(kept, handles);
  const first = kept.findIndex((k) => k.leaving ?? k.arriving);
  if (first < 0) return throughAngles(closedRing(kept), solveClosed(kept), handles);
  const turned = [...kept.slice(first), ...kept.slice(0, first)];
  return openRuns([...turned, turned[0]!], handles);
}

function different(knots: readonly Knot[], closed: boolean): Knot[] {
  const kept: Knot[] = [];
  for (const knot of knots) {
    const last = kept[kept.length - 1];
    if (!last || distance(last.point, knot.point) > 1e-9) kept.push(knot);
    else kept[kept.length - 1] = { ...last, leaving: knot.leaving ?? last.leaving };
  }
  if (closed && kept.length > 1 && distance(kept[0]!.point, kept[kept.length - 1]!.point) <= 1e-9) kept.pop();
  return kept;
}

const leavingOf = (knot: Knot): Point | undefined => knot.leaving ?? knot.arriving;
const arrivingOf = (knot: Knot): Point | undefined => knot.arriving ?? knot.leaving;

function openRuns(knots: readonly Knot[], handles: number): Segment[] {
  const out: Segment[] = [];
  let from = 0;
  for (let i = 1; i < knots.length; i++) {
    const last = i === knots.length - 1;
    if (!last && !leavingOf(knots[i]!)) continue;
    out.push(...openRun(knots.slice(from, i + 1), handles));
    from = i;
  }
  return out;
}

/** One run whose inner knots have no headings. */
function openRun(knots: readonly Knot[], handles: number): Segment[] {
  const points = knots.map((k) => k.point);
  const leaving = leavingOf(knots[0]!);
  const arriving = arrivingOf(knots[knots.length - 1]!);
  if (points.length === 2 && !leaving && !arriving) return [line(points[0]!, points[1]!)];
  return throughAngles(points, solveOpen(points, leaving, arriving), handles);
}

interface Leaning {
  readonly theta: number;
  readonly phi: number;
}

function throughAngles(points: readonly Point[], angles: readonly Leaning[], handles: number): Segment[] {
  return angles.map(({ theta, phi }, i) => handled(points[i]!, points[i + 1]!, theta, phi, handles));
}

/** The cubic that leaves p at θ and arrives at q at φ against the chord. */
function handled(p: Point, q: Point, theta: number, phi: number, handles: number): Segment {
  const chord = subtract(q, p);
  const out = scale(rotate(chord, theta), handles * velocity(theta, phi));
  const back = scale(rotate(chord, -phi), handles * velocity(phi, theta));
  return cubic(p, add(p, out), subtract(q, back), q);
}

/**
 * Equal mock curvature on both sides of each inner knot: with chords d and turnings ψ,
 * θ[k-1]/d[k-1] + 2θ[k](1/d[k-1] + 1/d[k]) + θ[k+1]/d[k] = -2ψ[k]/d[k-1] - ψ[k+1]/d[k].
 * The last unknown stands for -φ at the end.
 */
function solveOpen(points: readonly Point[], leaving?: Point, arriving?: Point): Leaning[] {
  const n = points.length - 1;
  const { chords, psi } = chordsOf(points);
  const system: Row[] = [];
  if (leaving) system.push({ below: 0, at: 1, above: 0, right: angleBetween(chords[0]!, leaving) });
  else system.push({ below: 0, at: 1, above: 1, right: -psi[1]! });
  for (let k = 1; k < n; k++) system.push(innerRow(chords[k - 1]!, chords[k]!, psi[k]!, psi[k + 1]!));
  if (arriving) system.push({ below: 0, at: 1, above: 0, right: angleBetween(chords[n - 1]!, arriving) });
  else system.push({ below: 1, at: 1, above: 0, right: 0 });
  return leanings(solveTridiagonal(system), psi);
}

function chordsOf(points: readonly Point[]): { chords: Point[]; psi: number[] } {
  const chords: Point[] = [];
  for (let i = 0; i + 1 < points.length; i++) chords.push(subtract(points[i + 1]!, points[i]!));
  const psi = chords.map((chord, i) => (i === 0 ? 0 : angleBetween(chords[i - 1]!, chord)));
  psi.push(0);
  return { chords, psi };
}

function innerRow(before: Point, after: Point, psi: number, psiNext: number): Row {
  const b = 1 / Math.hypot(before.x, before.y);
  const a = 1 / Math.hypot(after.x, after.y);
  return { below: b, at: 2 * (a + b), above: a, right: -2 * psi * b - psiNext * a };
}

const leanings = (theta: readonly number[], psi: readonly number[]): Leaning[] =>
  theta.slice(0, -1).map((value, i) => ({ theta: value, phi: -psi[i + 1]! - theta[i + 1]! }));

/** Coefficients of the unknown before, this one, the one after, and the right-hand side. */
interface Row {
  readonly below: number;
  readonly at: number;
  readonly above: number;
  readonly right: number;
}

/** Thomas' elimination; the system is dominated by its diagonal, so no pivoting is needed. */
function solveTridiagonal(rows: readonly Row[]): number[] {
  const c: number[] = [];
  const d: number[] = [];
  rows.forEach((row, i) => {
    const pivot = row.at - row.below * (c[i - 1] ?? 0);
    c.push(row.above / pivot);
    d.push((row.right - row.below * (d[i - 1] ?? 0)) / pivot);
  });
  for (let i = rows.length - 2; i >= 0; i--) d[i] = d[i]! - c[i]! * d[i + 1]!;
  return d;
}

const closedRing = (knots: readonly Knot[]): Point[] => [...knots, knots[0]!].map((k) => k.point);

/** The ring without headings: a cyclic system, solved as a tridiagonal one with a correction (Sherman & Morrison). */
function solveClosed(knots: readonly Knot[]): Leaning[] {
  const ring = closedRing(knots);
  const n = knots.length;
  const { chords } = chordsOf(ring);
  const psi = chords.map((chord, i) => angleBetween(chords[(i + n - 1) % n]!, chord));
  const rows = chords.map((chord, i) =>
    innerRow(chords[(i + n - 1) % n]!, chord, psi[i]!, psi[(i + 1) % n]!),
  );
  const theta = n === 2 ? solveTwo(rows[0]!, rows[1]!) : solveCyclic(rows);
  return theta.map((value, i) => ({ theta: value, phi: -psi[(i + 1) % n]! - theta[(i + 1) % n]! }));
}

function solveTwo(a: Row, b: Row): number[] {
  const across = a.below + a.above;
  const back = b.below + b.above;
  const det = a.at * b.at - across * back;
  return [(a.right * b.at - across * b.right) / det, (a.at * b.right - back * a.right) / det];
}

function solveCyclic(rows: readonly Row[]): number[] {
  const last = rows.length - 1;
  const gamma = -rows[0]!.at;
  const corner = rows[0]!.below;
  const other = rows[last]!.above;
  const trimmed = rows.map((row, i) => {
    if (i === 0) return { ...row, below: 0, at: row.at - gamma };
    if (i === last) return { ...row, above: 0, at: row.at - (corner * other) / gamma };
    return row;
  });
  const y = solveTridiagonal(trimmed);
  const z = solveTridiagonal(
    trimmed.map((row, i) => ({ ...row, right: i === 0 ? gamma : i === last ? other : 0 })),
  );
  const factor = (y[0]! + (corner * y[last]!) / gamma) / (1 + z[0]! + (corner * z[last]!) / gamma);
  return y.map((value, i) => value - factor * z[i]!);
}
