/** Roots of polynomials in Bernstein form on 0..1: the one tool behind crossings, compass and nearest points. */

/**
 * Cells looked at before a polynomial is given up. A well-behaved sextic needs under 40; only a polynomial that is
 * rounding noise all over comes near, and then any answer is as good as another.
 */
const MAX_CELLS = 400;
const MAX_DEPTH = 44;

interface Found {
  readonly t: number;
  /** True where the sign changes, so that the place is known to the last digit. */
  readonly crossing: boolean;
}

/** Where values are worked out, a hundred thousand times for one pattern: no degree of ours comes near its size. */
const bench = new Float64Array(16);

/** Value at t by de Casteljau's rule. */
export function bernsteinAt(coefficients: readonly number[], t: number): number {
  const count = coefficients.length;
  const work = count <= bench.length ? bench : new Float64Array(count);
  work[0] = 0;
  for (let i = 0; i < count; i++) work[i] = coefficients[i]!;
  for (let n = count - 1; n > 0; n--) {
    for (let i = 0; i < n; i++) work[i] = work[i]! + (work[i + 1]! - work[i]!) * t;
  }
  return work[0]!;
}

/** Coefficients of the derivative, one degree lower. */
export function bernsteinDerivative(coefficients: readonly number[]): number[] {
  const n = coefficients.length - 1;
  const out: number[] = [];
  for (let i = 0; i < n; i++) out.push(n * (coefficients[i + 1]! - coefficients[i]!));
  return out;
}

/**
 * The roots in 0..1, rising. Values within `zero` count as nought: a double root is then reported once, at its
 * extremum, even where rounding lifts it off the axis. A polynomial that is nought all over gives 0.5.
 */
export function bernsteinRoots(coefficients: readonly number[], zero: number): number[] {
  for (const c of coefficients) if (!Number.isFinite(c)) return [];
  const found: Found[] = [];
  const budget = { cells: MAX_CELLS };
  isolate(coefficients, 0, 1, 0, zero, found, budget);
  if (found.length < 2 && (found.length === 0 || found[0]!.crossing)) return found.map((f) => f.t);
  found.sort((a, b) => a.t - b.t);
  return merged(coefficients, found, zero);
}

function isolate(
  c: readonly number[],
  t0: number,
  t1: number,
  depth: number,
  zero: number,
  found: Found[],
  budget: { cells: number },
): void {
  const n = c.length - 1;
  let changes = 0;
  let sign = 0;
  let first = 0;
  for (let i = 0; i <= n; i++) {
    const v = c[i]!;
    const s = v > zero ? 1 : v < -zero ? -1 : 0;
    if (s === 0) continue;
    if (sign === 0) first = s;
    else if (s !== sign) changes++;
    sign = s;
  }
  if (sign === 0) {
    found.push({ t: (t0 + t1) / 2, crossing: false });
    return;
  }
  if (changes <= 1) {
    if (Math.abs(c[0]!) <= zero) found.push({ t: t0, crossing: false });
    if (changes === 1) found.push({ t: t0 + (t1 - t0) * bracketed(c, first), crossing: true });
    if (Math.abs(c[n]!) <= zero) found.push({ t: t1, crossing: false });
    return;
  }
  if (depth >= MAX_DEPTH || --budget.cells <= 0) {
    found.push({ t: (t0 + t1) / 2, crossing: false });
    return;
  }
  const [left, right] = halves(c);
  const middle = (t0 + t1) / 2;
  isolate(left, t0, middle, depth + 1, zero, found, budget);
  isolate(right, middle, t1, depth + 1, zero, found, budget);
}

function halves(c: readonly number[]): [number[], number[]] {
  const n = c.length - 1;
  const work = c.slice();
  const left: number[] = [work[0]!];
  const right: number[] = new Array<number>(n + 1);
  right[n] = work[n]!;
  for (let k = 1; k <= n; k++) {
    for (let i = 0; i <= n - k; i++) work[i] = (work[i]! + work[i + 1]!) / 2;
    left.push(work[0]!);
    right[n - k] = work[n - k]!;
  }
  return [left, right];
}

/** The one root of a cell whose coefficients change sign once: Newton kept inside a shrinking bracket. */
function bracketed(c: readonly number[], firstSign: number): number {
  const slope = bernsteinDerivative(c);
  let lo = 0;
  let hi = 1;
  const a = Math.abs(c[0]!);
  const b = Math.abs(c[c.length - 1]!);
  // Not at an end: there may lie another root, which is none of this one's business.
  let t = a + b > 0 ? Math.min(0.95, Math.max(0.05, a / (a + b))) : 0.5;
  for (let step = 0; step < 64; step++) {
    const f = bernsteinAt(c, t);
    if (f === 0) return t;
    if (f > 0 === firstSign > 0) lo = t;
    else hi = t;
    const next = t - f / bernsteinAt(slope, t);
    const inside = next > lo && next < hi;
    const to = inside ? next : (lo + hi) / 2;
    if (Math.abs(to - t) < 1e-16 || hi - lo < 1e-16) return to;
    t = to;
  }
  return t;
}

/** Joins what one touching gave twice or more, and settles each touching at its extremum. */
function merged(c: readonly number[], found: readonly Found[], zero: number): number[] {
  const groups: Found[][] = [];
  for (const f of found) {
    const group = groups[groups.length - 1];
    const last = group?.[group.length - 1];
    const joined = last && (f.t - last.t < 1e-13 || Math.abs(bernsteinAt(c, (f.t + last.t) / 2)) <= 2 * zero);
    if (group && joined) group.push(f);
    else groups.push([f]);
  }
  return groups.map((group) => settle(c, group));
}

function settle(c: readonly number[], group: readonly Found[]): number {
  if (group.length === 1 && group[0]!.crossing) return group[0]!.t;
  const crossings = group.filter((f) => f.crossing);
  if (crossings.length === 1) return crossings[0]!.t;
  const lo = group[0]!.t;
  const hi = group[group.length - 1]!.t;
  const start = (lo + hi) / 2;
  const slope = bernsteinDerivative(c);
  const bend = bernsteinDerivative(slope);
  let t = start;
  for (let step = 0; step < 8; step++) {
    const b = bernsteinAt(bend, t);
    if (b === 0) break;
    t = Math.min(1, Math.max(0, t - bernsteinAt(slope, t) / b));
  }
  const better = Math.abs(bernsteinAt(c, t)) <= Math.abs(bernsteinAt(c, start)) + 1e-300;
  return better && Math.abs(t - start) < 0.1 ? t : start;
}
