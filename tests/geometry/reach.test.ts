/** How near and how far, feet of squares, hollows and roots. */
import assert from 'node:assert/strict';
import {
  circle,
  distance,
  farthestFrom,
  hollowCurve,
  lerp,
  nearestBetween,
  nearestTo,
  ORIGIN,
  Path,
  perpendicularFeet,
  point,
  solveBracketed,
} from '../../server/geometry';
import { near, nearPoint, spread, strewnCubics } from '../support/curves';

describe('near and far', () => {
  it('two circles are as far apart as their centres less their radii', () => {
    const found = nearestBetween(circle(ORIGIN, 10), circle(point(30, 40), 15));
    near(found.distance, 25, 1e-7);
    nearPoint(found.pointA, point(6, 8), 1e-6);
    nearPoint(found.pointB, point(21, 28), 1e-6);
  });

  it('paths that cross are no distance apart', () => {
    near(nearestBetween(circle(ORIGIN, 10), Path.line(point(0, 0), point(20, 3))).distance, 0, 1e-7);
  });

  it('strewn cubics are as near as the nearest of many samples', () => {
    const cubics = strewnCubics(24, 42).map((seg) => Path.of([seg]));
    cubics.forEach((a, i) => {
      const b = cubics[(i + 1) % cubics.length]!.transformed({ a: 1, b: 0, c: 0, d: 1, e: 150, f: 90 });
      const sampled = Math.min(...spread(a, 800).map((p) => b.locate(p).distance));
      const found = nearestBetween(a, b);
      assert.ok(found.distance <= sampled + 1e-6 && found.distance >= sampled - 0.2, `pair ${i}`);
      near(distance(a.pointAt(found.sA), b.pointAt(found.sB)), found.distance, 1e-7);
    });
  });

  it('the farthest place of a circle lies straight across', () => {
    const found = farthestFrom(circle(ORIGIN, 10), point(3, 4));
    near(found.distance, 15, 1e-7);
    nearPoint(found.point, point(-6, -8), 1e-4);
    near(nearestTo(circle(ORIGIN, 10), point(3, 4)).distance, 5, 1e-7);
  });

  it('a square dropped on a curve stands at a right angle', () => {
    for (const seg of strewnCubics(30, 6)) {
      const path = Path.of([seg]);
      const from = point(100, 100);
      for (const { s, point: foot } of perpendicularFeet(path, from)) {
        const along = path.tangentAt(s);
        near((foot.x - from.x) * along.x + (foot.y - from.y) * along.y, 0, 1e-6);
      }
    }
    assert.equal(perpendicularFeet(circle(ORIGIN, 10, 0.1), point(25, 0)).length, 2);
    assert.equal(perpendicularFeet(Path.line(point(0, 0), point(10, 0)), point(12, 5)).length, 0);
  });
});

describe('hollow curves', () => {
  it('the deepest point lies at the depth and the share asked for, on the side asked for', () => {
    const [p, q] = [point(10, 20), point(110, 95)];
    for (const share of [0.1, 0.2, 1 / 3, 0.5, 0.62, 0.8, 0.93]) {
      for (const toward of [point(0, 200), point(200, 0)]) {
        const curve = hollowCurve(p, q, 12, toward, share);
        const deepest = spread(curve, 20_000).reduce(
          (best, at) => (heightOf(at, p, q) > heightOf(best, p, q) ? at : best),
          p,
        );
        near(heightOf(deepest, p, q), 12, 1e-5, `share ${share}`);
        const foot = lerp(p, q, share);
        near(distance(deepest, foot), 12, 1e-2, `place at share ${share}`);
        assert.ok(distance(deepest, toward) < distance(foot, toward));
      }
    }
  });

  it('a depth of nothing is straight and a side on the chord means the left of travel', () => {
    assert.ok(hollowCurve(point(0, 0), point(50, 0), 0, point(0, 9)).isStraight(0));
    near(hollowCurve(point(0, 0), point(50, 0), 5, point(20, 0)).box.minY, -5, 1e-12);
    assert.equal(hollowCurve(point(1, 1), point(1, 1), 5, point(2, 0)).length, 0);
  });
});

function heightOf(
  at: { x: number; y: number },
  p: { x: number; y: number },
  q: { x: number; y: number },
): number {
  const along = { x: q.x - p.x, y: q.y - p.y };
  return Math.abs(along.x * (at.y - p.y) - along.y * (at.x - p.x)) / Math.hypot(along.x, along.y);
}

describe('roots between two ends', () => {
  it('finds the roots that the textbooks use, in few steps', () => {
    // x³ - 2x - 5 is Wallis's (and Newton's) example, root 2.0945514815423265; cos x = x has 0.7390851332151607.
    const table: [(x: number) => number, number, number, number][] = [
      [(x) => x ** 3 - 2 * x - 5, 2, 3, 2.0945514815423265],
      [(x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
      [(x) => x ** 9, -1, 1.3, 0],
      [(x) => Math.exp(x) - 1e4, 0, 30, Math.log(1e4)],
    ];
    for (const [f, lo, hi, root] of table) {
      const found = solveBracketed(f, lo, hi, 1e-10);
      assert.ok(found.kind === 'root');
      near(found.x, root, 1e-10);
      assert.ok(found.steps <= Math.ceil(Math.log2((hi - lo) / 2e-10)) + 1, `${found.steps} steps`);
    }
  });

  it('says both ends where they do not bracket', () => {
    assert.deepEqual(
      solveBracketed((x) => x * x + 1, -1, 2, 1e-9),
      { kind: 'no-bracket', fLo: 2, fHi: 5 },
    );
    assert.equal(solveBracketed(() => Number.NaN, 0, 1, 1e-9).kind, 'no-bracket');
    assert.equal(solveBracketed((x) => (x < 0.5 ? -1 : Number.NaN), 0, 1, 1e-9).kind, 'no-bracket');
  });

  it('takes ends in either order and a root at an end at once', () => {
    assert.deepEqual(
      solveBracketed((x) => x - 1, 1, 5, 1e-9),
      { kind: 'root', x: 1, steps: 0, jump: 0 },
    );
    const found = solveBracketed((x) => x - 2, 5, 1, 1e-9);
    assert.ok(found.kind === 'root');
    near(found.x, 2, 1e-9);
  });

  it('a jump is closed in on within the steps of halving', () => {
    const found = solveBracketed((x) => (x < 1 / 3 ? -7 : 2), 0, 1, 1e-12);
    assert.ok(found.kind === 'root' && found.steps <= 41);
    near(found.x, 1 / 3, 1e-12);
    near(found.jump, 9, 1e-12);
  });
});
