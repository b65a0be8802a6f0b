/** Where paths, lines and circles meet. */
import assert from 'node:assert/strict';
import {
  circle,
  circleIntersections,
  cubic,
  distance,
  intersections,
  lineIntersections,
  lineLine,
  ORIGIN,
  Path,
  point,
  type Point,
} from '../../server/geometry';
import { chordCrossings, near, nearPoint, spread, strewnCubics } from '../support/curves';

describe('crossings', () => {
  it('strewn cubics cross as often, and where, their chords do', () => {
    const cubics = strewnCubics(80, 31);
    let crossings = 0;
    for (let i = 0; i + 1 < cubics.length; i++) {
      const [a, b] = [cubics[i]!, cubics[i + 1]!];
      const found = intersections(Path.of([a]), Path.of([b]));
      const wanted = chordCrossings(a, b);
      assert.equal(found.length, wanted.length, `pair ${i}`);
      for (const { point: p } of found) assert.ok(wanted.some((q) => distance(p, q) < 0.5));
      crossings += found.length;
    }
    assert.ok(crossings > 40);
  });

  it('a crossing lies on both curves to a billionth', () => {
    const cubics = strewnCubics(300, 77);
    for (let i = 0; i + 1 < cubics.length; i++) {
      const [a, b] = [Path.of([cubics[i]!]), Path.of([cubics[i + 1]!])];
      for (const { point: p, sA, sB } of intersections(a, b)) {
        nearPoint(a.pointAt(sA), p, 1e-8);
        nearPoint(b.pointAt(sB), p, 1e-8);
      }
    }
  });

  it('two cubics may cross nine times', () => {
    // Chebyshev's cubic along x against the same along y, a little taller than the square that they cross in.
    const wave = [-1, 5, -5, 1].map((c) => 50 + 52 * c) as [number, number, number, number];
    const even = [-2, 98 / 3, 202 / 3, 102] as const;
    const [a, b, c, d] = even.map((x, i) => point(x, wave[i]!)) as [Point, Point, Point, Point];
    const level = cubic(a, b, c, d);
    const [e, f, g, h] = even.map((y, i) => point(wave[i]!, y)) as [Point, Point, Point, Point];
    const upright = cubic(e, f, g, h);
    const found = intersections(Path.of([upright]), Path.of([level]));
    assert.equal(found.length, 9);
  });

  it('two circles cross where the radical line says', () => {
    const found = intersections(circle(ORIGIN, 100), circle(point(150, 0), 100, 0.3));
    assert.equal(found.length, 2);
    for (const { point: p } of found) near(Math.abs(p.y), Math.sqrt(10000 - 5625), 1e-6);
  });

  it('two circles that touch are seen to touch once', () => {
    for (const start of [0, 0.3, 1]) {
      const outside = intersections(circle(ORIGIN, 100), circle(point(200, 0), 100, start));
      assert.equal(outside.length, 1);
      nearPoint(outside[0]!.point, point(100, 0), 1e-4);
      assert.equal(intersections(circle(ORIGIN, 100), circle(point(40, 0), 60, start)).length, 1);
    }
  });

  it('a tangent touches its circle once wherever the joints lie', () => {
    for (const start of [0, 0.01, 0.3, 2]) {
      const found = lineIntersections(point(100, -40), point(0, 1), circle(ORIGIN, 100, start));
      assert.equal(found.length, 1, `joints from ${start}`);
      nearPoint(found[0]!.point, point(100, 0), 2e-2);
      near(found[0]!.u, 40, 2e-2);
    }
  });

  it('a crossing at a joint of both paths counts once', () => {
    const a = Path.polyline([point(0, 0), point(50, 50), point(100, 100)]);
    const b = Path.polyline([point(100, 0), point(50, 50), point(0, 100)]);
    assert.equal(intersections(a, b).length, 1);
    near(intersections(a, b)[0]!.sA, Math.sqrt(5000), 1e-9);
  });

  it('a closed path met at its start counts once', () => {
    const ring = circle(ORIGIN, 10);
    assert.equal(intersections(ring, Path.line(point(5, 0), point(15, 0))).length, 1);
    assert.equal(lineIntersections(point(0, 0), point(1, 0), ring).length, 2);
    assert.equal(circleIntersections(point(10, 0), 2, ring).length, 2);
    assert.equal(circleIntersections(point(20, 0), 10, ring).length, 1);
  });

  it('a stretch that two paths share is given by its two ends', () => {
    const a = Path.polyline([point(0, 0), point(30, 0), point(60, 0), point(100, 0)]);
    const b = Path.polyline([point(20, 0), point(45, 0), point(80, 0)]);
    assert.deepEqual(
      intersections(a, b).map((m) => [m.sA, m.sB]),
      [
        [20, 0],
        [80, 60],
      ],
    );
    const curve = Path.of(strewnCubics(1, 15));
    const ends = intersections(curve, curve.part(0.2 * curve.length, 0.7 * curve.length));
    assert.equal(ends.filter((m) => m.sB < 1e-6 || m.sB > 0.5 * curve.length - 1e-6).length, 2);
  });

  it('a corner that just reaches a line meets it', () => {
    const corner = Path.polyline([point(0, 0), point(50, 30), point(100, 0)]);
    assert.equal(intersections(corner, Path.line(point(0, 30), point(100, 30))).length, 1);
    assert.equal(intersections(corner, Path.line(point(0, 30.001), point(100, 30.001))).length, 0);
  });

  it('an endless line counts its own direction in millimetres or as it is given', () => {
    const path = Path.line(point(10, -5), point(10, 5));
    near(lineIntersections(point(0, 0), point(1, 0), path)[0]!.u, 10, 1e-12);
    near(lineIntersections(point(0, 0), point(-5, 0), path)[0]!.u, -2, 1e-12);
    assert.deepEqual(lineIntersections(point(0, 0), point(0, 0), path), []);
  });

  it('the compass finds every place at its distance', () => {
    for (const seg of strewnCubics(40, 19)) {
      const path = Path.of([seg]);
      const centre = point(100, 100);
      const found = circleIntersections(centre, 60, path);
      for (const { point: p, s } of found) {
        near(distance(p, centre), 60, 1e-9);
        nearPoint(path.pointAt(s), p, 1e-8);
      }
      const inside = spread(path, 2000).map((p) => distance(p, centre) < 60);
      const changes = inside.filter((now, i) => i > 0 && now !== inside[i - 1]).length;
      assert.equal(found.length, changes);
    }
  });

  it('straight lines meet where algebra says, and parallels nowhere', () => {
    nearPoint(lineLine(point(0, 0), point(1, 1), point(10, 0), point(-2, 2)), point(5, 5), 1e-12);
    assert.equal(lineLine(point(0, 0), point(1, 2), point(5, 0), point(2, 4)), undefined);
  });
});
