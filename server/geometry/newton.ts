/** Newton's rule for two curves at once: to the crossing, or to the place where they run side by side. */
import { type Cubic, derivativeAt, pointAt, secondDerivativeAt, type Segment } from './cubic';
import { cross, dot, type Point, subtract } from './point';

interface Pair {
  readonly t: number;
  readonly u: number;
}

const MAX_STEPS = 20;

/** The crossing reached from a start, exact to rounding; undefined where the steps do not settle near 0..1. */
export function refineCrossing(a: Segment, b: Segment, start: Pair): Pair | undefined {
  let { t, u } = start;
  for (let step = 0; step < MAX_STEPS; step++) {
    const gap = subtract(pointAt(b, u), pointAt(a, t));
    const da = derivativeAt(a, t);
    const db = derivativeAt(b, u);
    const area = cross(da, db);
    if (area === 0) return undefined;
    const dt = cross(gap, db) / area;
    const du = cross(gap, da) / area;
    t += dt;
    u += du;
    if (!wanders(t, u)) return undefined;
    if (Math.abs(dt) < 1e-14 && Math.abs(du) < 1e-14) return tidy(t, u);
  }
  const miss = subtract(pointAt(b, u), pointAt(a, t));
  return dot(miss, miss) < 1e-18 ? tidy(t, u) : undefined;
}

const wanders = (t: number, u: number): boolean => t > -0.5 && t < 1.5 && u > -0.5 && u < 1.5;

/** Parameters that rounding put just outside are the ends. */
const tidy = (t: number, u: number): Pair => ({ t: ended(t), u: ended(u) });

const ended = (t: number): number => (t < 0 && t > -1e-12 ? 0 : t > 1 && t < 1 + 1e-12 ? 1 : t);

/**
 * The place near a start where the curves are parallel and the gap between them stands square on both: where they touch,
 * if they do. Solves (b - a)·a' = 0 and a' × b' = 0.
 */
export function refineTouch(a: Cubic, b: Cubic, start: Pair): Pair | undefined {
  let { t, u } = start;
  for (let step = 0; step < MAX_STEPS; step++) {
    const gap = subtract(pointAt(b, u), pointAt(a, t));
    const da = derivativeAt(a, t);
    const db = derivativeAt(b, u);
    const dda = secondDerivativeAt(a, t);
    const ddb = secondDerivativeAt(b, u);
    const f = dot(gap, da);
    const g = cross(da, db);
    const solved = solve2(dot(gap, dda) - dot(da, da), dot(db, da), cross(dda, db), cross(da, ddb), f, g);
    if (!solved) return undefined;
    t -= solved.x;
    u -= solved.y;
    if (!wanders(t, u)) return undefined;
    if (Math.abs(solved.x) < 1e-10 && Math.abs(solved.y) < 1e-10) return tidy(t, u);
  }
  return undefined;
}

/** The nearest approach of two curves from a start: the gap stands square on both. Kept within 0..1. */
export function refineNearest(a: Segment, b: Segment, start: Pair): Pair {
  let { t, u } = start;
  for (let step = 0; step < MAX_STEPS; step++) {
    const gap = subtract(pointAt(b, u), pointAt(a, t));
    const da = derivativeAt(a, t);
    const db = derivativeAt(b, u);
    const f = -dot(gap, da);
    const g = dot(gap, db);
    const mixed = -dot(da, db);
    const ft = dot(da, da) - dot(gap, secondDerivativeAt(a, t));
    const gu = dot(db, db) + dot(gap, secondDerivativeAt(b, u));
    const solved = solve2(ft, mixed, mixed, gu, f, g);
    if (!solved || !(ft > 0) || !(gu > 0)) break;
    const nextT = Math.min(1, Math.max(0, t - solved.x));
    const nextU = Math.min(1, Math.max(0, u - solved.y));
    const still = Math.abs(nextT - t) < 1e-14 && Math.abs(nextU - u) < 1e-14;
    t = nextT;
    u = nextU;
    if (still) break;
  }
  return { t, u };
}

/** [a b; c d] (x, y) = (f, g). */
function solve2(a: number, b: number, c: number, d: number, f: number, g: number): Point | undefined {
  const det = a * d - b * c;
  if (det === 0 || !Number.isFinite(det)) return undefined;
  return { x: (f * d - b * g) / det, y: (a * g - c * f) / det };
}
