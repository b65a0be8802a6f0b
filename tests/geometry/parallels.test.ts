/** Parallels of open runs against Steiner's formulas and by their distance. */
import assert from 'node:assert/strict';
import {
  arcByAngle,
  areaOf,
  circle,
  cubic,
  hobby,
  intersections,
  ORIGIN,
  parallel,
  parallelWithTight,
  Path,
  point,
  type Point,
} from '../../server/geometry';
import { near, nearPoint, spread, strewnCubics } from '../support/curves';

/** Asserts that all of the parallel lies at its distance from the source, except where a corner is mitred. */
function assertKeepsDistance(source: Path, beside: readonly Path[], wanted: number, tolerance: number): void {
  for (const path of beside) {
    for (const p of spread(path, 300)) near(source.locate(p).distance, wanted, tolerance);
  }
}

const ARCH = Path.of(hobby([{ point: point(0, 0) }, { point: point(60, 80) }, { point: point(120, 0) }]));

describe('parallels', () => {
  it('left of travel is up when travelling to the right', () => {
    const [left] = parallel(Path.line(point(0, 0), point(10, 0)), 2);
    assert.deepEqual([left!.start, left!.end], [point(0, -2), point(10, -2)]);
    const [right] = parallel(Path.line(point(0, 0), point(10, 0)), -2);
    assert.deepEqual([right!.start, right!.end], [point(0, 2), point(10, 2)]);
  });

  it('the parallel of a circle is the circle that Steiner says', () => {
    // Length L + 2πd, area A + Ld + πd²; radius 10, distance 1: 69.115038.
    const [wider] = parallel(circle(ORIGIN, 10), 1);
    near(wider!.length, 69.115038, 1e-6);
    near(areaOf([wider!]), Math.PI * 121, 1e-5);
    const [narrower] = parallel(circle(ORIGIN, 10), -4);
    near(narrower!.length, 12 * Math.PI, 1e-6);
  });

  it('a parallel is longer by the distance times the turning', () => {
    for (const d of [3, 15, -5]) {
      const [beside] = parallel(ARCH, d, 1e-5);
      near(beside!.length, ARCH.length + d * ARCH.turning(), 1e-2, `distance ${d}`);
    }
  });

  it('every tolerance is kept, at a modest cost in pieces', () => {
    for (const tolerance of [0.1, 0.01, 1e-3, 1e-5]) {
      const beside = parallel(ARCH, -20, tolerance);
      assertKeepsDistance(ARCH, beside, 20, tolerance);
      const pieces = beside.reduce((sum, path) => sum + path.segments.length, 0);
      assert.ok(pieces <= 4 * tolerance ** -0.25 + 12, `${pieces} pieces at ${tolerance}`);
    }
  });

  it('the curves of a pattern keep their distance on either side', () => {
    for (const { p0, p1, p2, p3 } of strewnCubics(40, 61)) {
      const [a, b, c, d] = [p0, p1, p2, p3].map((p, i) => point(100 * i, p.y / 2)) as [
        Point,
        Point,
        Point,
        Point,
      ];
      const path = Path.of([cubic(a, b, c, d)]);
      for (const wide of [12, -12]) assertKeepsDistance(path, parallel(path, wide), 12, 0.03);
    }
  });

  it('an inner curve tighter than the distance is trimmed to a clean corner', () => {
    const tip = Path.of([cubic(point(0, 0), point(70, 10), point(70, 30), point(0, 40))]);
    const { paths, tight } = parallelWithTight(tip, -15);
    assert.equal(paths.length, 1);
    assert.equal(tight.length, 1);
    assert.ok(tight[0]!.s0 > 0.2 * tip.length && tight[0]!.s1 < 0.8 * tip.length);
    assertKeepsDistance(tip, paths, 15, 0.02);
    near(paths[0]!.pointAt(paths[0]!.length / 2).y, 20, 0.05);
    assert.deepEqual(parallelWithTight(tip, 15).tight, []);
  });

  it('an arc of a radius below the distance leaves nothing inside', () => {
    assert.deepEqual(parallel(arcByAngle(ORIGIN, point(10, 0), 2), -12), []);
  });

  it('outer corners are mitred and inner corners trimmed', () => {
    const path = Path.polyline([point(0, 0), point(40, 0), point(40, 30)]);
    const [outer] = parallel(path, 5);
    const [inner] = parallel(path, -5);
    near(outer!.length, 70 + 10, 1e-12);
    near(outer!.locate(point(45, -5)).distance, 0, 1e-12);
    assert.deepEqual(inner!.polyline(1), [point(0, 5), point(35, 5), point(35, 30)]);
  });

  it('a corner too sharp for a mitre is cut blunt', () => {
    const spike = Path.polyline([point(0, 0), point(100, 0), point(0, 20)]);
    const [beside] = parallel(spike, 5);
    near(beside!.box.maxX, 100 + 12.5 * Math.cos(Math.atan2(20, 100) / 2), 1.5);
  });

  it('a handle of no length has a parallel too', () => {
    const path = Path.of([cubic(point(0, 0), point(0, 0), point(40, 40), point(80, 40))]);
    for (const d of [6, -6]) assertKeepsDistance(path, parallel(path, d), 6, 0.02);
  });

  it('a parallel at no distance is the path itself', () => {
    assert.deepEqual(parallel(ARCH, 0), [ARCH]);
    assert.deepEqual(parallel(ARCH, Number.NaN), []);
  });

  it('a parallel nowhere crosses its source', () => {
    for (const d of [-30, -10, 10, 30]) {
      for (const beside of parallel(ARCH, d)) assert.deepEqual(intersections(ARCH, beside), []);
    }
    nearPoint(parallel(ARCH, 10)[0]!.start, ARCH.start, 10 + 1e-9);
  });
});
