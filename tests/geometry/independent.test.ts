/** Lengths and crossings of strewn cubics, held against bezier-js, which was written by others in another way. */
import assert from 'node:assert/strict';
import { Bezier } from 'bezier-js';
import { intersections, lineIntersections, Path, point, type Cubic, type Point } from '../../server/geometry';
import { near, strewnCubics } from '../support/curves';

const WITHIN = 1e-6;

const foreign = ({ p0, p1, p2, p3 }: Cubic): Bezier => new Bezier(p0, p1, p2, p3);

/** Its own length is one Gauss rule of 24 points: taken over many short parts, it is right near cusps as well. */
const lengthOf = (curve: Bezier, parts = 400): number =>
  Array.from({ length: parts }, (_, i) => curve.split(i / parts, (i + 1) / parts).length()).reduce(
    (a, b) => a + b,
  );

/** Its crossings are midpoints of small boxes; Newton's rule on its own points and derivatives makes them exact. */
function crossingsOf(a: Bezier, b: Bezier): readonly Point[] {
  const found: Point[] = [];
  for (const pair of a.intersects(b, 0.01)) {
    let [s = 0, t = 0] = String(pair).split('/').map(Number);
    for (let i = 0; i < 20; i++) {
      const [p, q, dp, dq] = [a.get(s), b.get(t), a.derivative(s), b.derivative(t)];
      const [x, y] = [q.x - p.x, q.y - p.y];
      const det = dp.y * dq.x - dp.x * dq.y;
      s += (y * dq.x - x * dq.y) / det;
      t += (y * dp.x - x * dp.y) / det;
    }
    const at = a.get(s);
    const inside = [s, t].every((share) => share >= 0 && share <= 1);
    if (inside && !found.some(({ x, y }) => Math.hypot(x - at.x, y - at.y) < 1e-5))
      found.push(point(at.x, at.y));
  }
  return found;
}

/** Every point of one list lies on one of the other, and there are as many. */
function samePoints(ours: readonly Point[], theirs: readonly Point[], what: string): void {
  assert.equal(ours.length, theirs.length, `${what}: ${JSON.stringify({ ours, theirs })}`);
  for (const { x, y } of ours) {
    near(Math.min(...theirs.map((other) => Math.hypot(other.x - x, other.y - y))), 0, WITHIN, what);
  }
}

describe('geometry beside an independent library', () => {
  const cubics = strewnCubics(60, 20261014);

  it('measures the lengths that bezier-js measures, to a millionth of a millimetre', () => {
    cubics.forEach((one, i) => near(Path.of([one]).length, lengthOf(foreign(one)), WITHIN, `cubic ${i}`));
  });

  it('finds where strewn lines cross cubics as bezier-js does, to a millionth of a millimetre', () => {
    let crossings = 0;
    cubics.forEach((one, i) => {
      const { p0, p3 } = cubics[(i + 7) % cubics.length]!;
      const ours = lineIntersections(p0, { x: p3.x - p0.x, y: p3.y - p0.y }, Path.of([one]));
      const segment = ours.filter(({ point: at }) => between(at, p0, p3)).map(({ point: at }) => at);
      const curve = foreign(one);
      const theirs = curve.intersects({ p1: p0, p2: p3 }).map((t) => curve.get(Number(t)));
      crossings += theirs.length;
      samePoints(segment, theirs, `cubic ${i}`);
    });
    assert.ok(crossings > 30, `${crossings} crossings`);
  });

  it('finds where strewn cubics cross each other as bezier-js does, to a millionth of a millimetre', function () {
    this.timeout(60_000);
    let crossings = 0;
    cubics.forEach((one, i) => {
      const other = cubics[(i + 1) % cubics.length]!;
      const theirs = crossingsOf(foreign(one), foreign(other));
      crossings += theirs.length;
      samePoints(
        intersections(Path.of([one]), Path.of([other])).map(({ point: at }) => at),
        theirs,
        `cubics ${i} and ${i + 1}`,
      );
    });
    assert.ok(crossings > 30, `${crossings} crossings`);
  });
});

const between = (at: Point, a: Point, b: Point): boolean =>
  at.x >= Math.min(a.x, b.x) - WITHIN &&
  at.x <= Math.max(a.x, b.x) + WITHIN &&
  at.y >= Math.min(a.y, b.y) - WITHIN &&
  at.y <= Math.max(a.y, b.y) + WITHIN;
