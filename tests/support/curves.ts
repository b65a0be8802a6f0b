/** Curves to try the geometry on, and slow, simple ways to measure them. */
import assert from 'node:assert/strict';
import { cubic, derivativeAt, lengthOf, Path, point, pointAt } from '../../server/geometry';
import type { Cubic, Point, Segment } from '../../server/geometry';
import { random } from './random';

/** Asserts that a number is the wanted one within an absolute miss. */
export function near(actual: number, wanted: number, within: number, what = 'value'): void {
  const miss = Math.abs(actual - wanted);
  assert.ok(miss <= within, `${what}: ${actual} is ${miss} away from ${wanted}, more than ${within}`);
}

export function nearPoint(actual: Point | undefined, wanted: Point, within: number, what = 'point'): void {
  assert.ok(actual, `${what} is missing`);
  near(actual.x, wanted.x, within, `${what}, x`);
  near(actual.y, wanted.y, within, `${what}, y`);
}

/** Cubics with their control points strewn over a square of 200 mm, the same in every run. */
export function strewnCubics(count: number, seed: number): Cubic[] {
  const next = random(seed);
  const coordinate = (): number => next(2_000_000) / 10_000;
  const place = (): Point => point(coordinate(), coordinate());
  return Array.from({ length: count }, () => cubic(place(), place(), place(), place()));
}

/** Arc length by Simpson's rule over many equal steps: slow, and right where the speed nowhere nearly vanishes. */
export function lengthBySteps(seg: Segment, steps = 20_000): number {
  const speed = (i: number): number => lengthOf(derivativeAt(seg, i / steps));
  let sum = speed(0) + speed(steps);
  for (let i = 1; i < steps; i++) sum += speed(i) * (i % 2 === 1 ? 4 : 2);
  return sum / (3 * steps);
}

/** Crossings of two curves counted between all pairs of their chords. */
export function chordCrossings(a: Segment, b: Segment, chords = 300): Point[] {
  const places = (seg: Segment): Point[] =>
    Array.from({ length: chords + 1 }, (_, i) => pointAt(seg, i / chords));
  const [p, q] = [places(a), places(b)];
  const found: Point[] = [];
  for (let i = 0; i < chords; i++) {
    for (let j = 0; j < chords; j++) {
      const [a0, a1, b0, b1] = [p[i]!, p[i + 1]!, q[j]!, q[j + 1]!];
      const area = (a1.x - a0.x) * (b1.y - b0.y) - (a1.y - a0.y) * (b1.x - b0.x);
      const t = ((b0.x - a0.x) * (b1.y - b0.y) - (b0.y - a0.y) * (b1.x - b0.x)) / area;
      const u = ((b0.x - a0.x) * (a1.y - a0.y) - (b0.y - a0.y) * (a1.x - a0.x)) / area;
      if (t >= 0 && t < 1 && u >= 0 && u < 1)
        found.push(point(a0.x + t * (a1.x - a0.x), a0.y + t * (a1.y - a0.y)));
    }
  }
  return found;
}

/** The closed polygon through points given as pairs, one straight edge from each to the next. */
export function polygon(...corners: readonly (readonly [number, number])[]): Path[] {
  return corners.map(([x, y], i) => {
    const [nextX, nextY] = corners[(i + 1) % corners.length]!;
    return Path.line(point(x, y), point(nextX, nextY));
  });
}

/** The middles of `count` equal stretches of a path. */
export const spread = (path: Path, count: number): Point[] =>
  Array.from({ length: count }, (_, i) => path.pointAt(((i + 0.5) * path.length) / count));
