/** Paths: places along them, parts, directions, flattening, turning. */
import assert from 'node:assert/strict';
import {
  arcByAngle,
  circle,
  cubic,
  distance,
  hobby,
  identity,
  line,
  ORIGIN,
  Path,
  point,
  rotation,
  samePoint,
} from '../../server/geometry';
import { near, nearPoint, spread, strewnCubics } from '../support/curves';

const L_SHAPE = Path.polyline([point(0, 0), point(30, 0), point(30, 40)]);

describe('paths', () => {
  it('a polyline is measured along its legs', () => {
    assert.equal(L_SHAPE.length, 70);
    assert.deepEqual(L_SHAPE.pointAt(30), point(30, 0));
    assert.deepEqual(L_SHAPE.pointAt(50), point(30, 20));
    assert.deepEqual(L_SHAPE.box, { minX: 0, minY: 0, maxX: 30, maxY: 40 });
  });

  it('a distance beyond an end is taken as the end', () => {
    assert.deepEqual(L_SHAPE.pointAt(-5), point(0, 0));
    assert.deepEqual(L_SHAPE.pointAt(1000), point(30, 40));
  });

  it('a corner has one direction before it and another after', () => {
    assert.deepEqual(L_SHAPE.tangentAt(30, 'before'), point(1, 0));
    assert.deepEqual(L_SHAPE.tangentAt(30, 'after'), point(0, 1));
    assert.deepEqual(L_SHAPE.tangentAt(30), point(0, 1));
  });

  it('a handle of no length still has a direction', () => {
    const seg = cubic(point(0, 0), point(0, 0), point(10, 10), point(20, 10));
    nearPoint(Path.of([seg]).tangentAt(0), point(Math.SQRT1_2, Math.SQRT1_2), 1e-12);
    nearPoint(Path.of([seg]).reversed().tangentAt(Infinity), point(-Math.SQRT1_2, -Math.SQRT1_2), 1e-12);
    const bare = Path.of([cubic(point(0, 0), point(0, 0), point(3, 4), point(3, 4))]);
    nearPoint(bare.tangentAt(0), point(0.6, 0.8), 1e-12);
    nearPoint(bare.tangentAt(5, 'before'), point(0.6, 0.8), 1e-12);
  });

  it('a cusp has opposite directions on its two sides', () => {
    const neile = Path.of([cubic(point(1, -1), point(-1 / 3, 1), point(-1 / 3, -1), point(1, 1))]);
    nearPoint(neile.tangentAt(neile.length / 2, 'before'), point(-1, 0), 1e-3);
    nearPoint(neile.tangentAt(neile.length / 2, 'after'), point(1, 0), 1e-3);
  });

  it('a segment of no size is passed over when a direction is asked for', () => {
    const stop = line(point(30, 0), point(30, 0));
    const path = Path.of([line(point(0, 0), point(30, 0)), stop, line(point(30, 0), point(30, 40))]);
    assert.deepEqual(path.tangentAt(30, 'before'), point(1, 0));
    assert.deepEqual(path.tangentAt(30, 'after'), point(0, 1));
    assert.deepEqual(Path.line(ORIGIN, ORIGIN).tangentAt(0), point(1, 0));
  });

  it('parts and what is left of them add up to the whole', () => {
    for (const seg of strewnCubics(20, 21)) {
      const path = Path.of([line(point(-50, 0), seg.p0), seg]);
      const [a, b] = path.splitAt(0.37 * path.length);
      near(a.length, 0.37 * path.length, 1e-8);
      near(a.length + b.length, path.length, 1e-8);
      nearPoint(a.end, b.start, 0);
    }
  });

  it('a part taken from the far end runs the other way', () => {
    const part = L_SHAPE.part(50, 10);
    assert.deepEqual([part.start, part.end], [point(30, 20), point(10, 0)]);
    assert.equal(part.length, 40);
    assert.deepEqual(L_SHAPE.part(30, 70).segments, [line(point(30, 0), point(30, 40))]);
    assert.equal(L_SHAPE.part(20, 20).length, 0);
  });

  it('a part of a curve lies on the curve', () => {
    const [seg] = strewnCubics(1, 4);
    const path = Path.of([seg!]);
    const part = path.part(20, 90);
    for (const p of spread(part, 50)) near(path.locate(p).distance, 0, 1e-9);
  });

  it('the nearest place is as near as the nearest of many samples', () => {
    const cubics = strewnCubics(30, 8);
    cubics.forEach((seg, i) => {
      const path = Path.of([seg]);
      const from = cubics[(i + 1) % cubics.length]!.p0;
      const sampled = Math.min(...spread(path, 4000).map((p) => distance(p, from)));
      const found = path.locate(from);
      assert.ok(found.distance <= sampled + 1e-9 && found.distance >= sampled - 0.1);
      nearPoint(path.pointAt(found.s), found.point, 1e-8);
    });
  });

  it('the chords of a flattened curve keep within the tolerance', () => {
    const path = Path.of(
      hobby([{ point: point(0, 0) }, { point: point(80, 90) }, { point: point(200, 10) }]),
    );
    for (const tolerance of [1, 0.1, 0.01]) {
      const chords = Path.polyline(path.polyline(tolerance));
      for (const p of spread(path, 500)) assert.ok(chords.locate(p).distance <= tolerance);
      assert.ok(chords.segments.length < 40 / Math.sqrt(tolerance));
    }
  });

  it('turning counts curves and corners, clockwise on paper as positive', () => {
    near(L_SHAPE.turning(), Math.PI / 2, 1e-12);
    near(arcByAngle(ORIGIN, point(50, 0), -4).turning(), -4, 1e-9);
    near(circle(ORIGIN, 20).reversed().turning(), -2 * Math.PI, 1e-9);
    const loop = cubic(point(0, 0), point(150, 100), point(-50, 100), point(100, 0));
    near(Path.of([loop]).turning(), -(2 * Math.PI - 2 * Math.atan2(2, 3)) + 4 * Math.PI - 2 * Math.PI, 7);
  });

  it('straightness is judged by the greatest distance from the chord', () => {
    const shallow = Path.of([cubic(point(0, 0), point(30, 1), point(60, 1), point(90, 0))]);
    assert.equal(shallow.isStraight(0.74), false);
    assert.equal(shallow.isStraight(0.76), true);
    assert.equal(Path.polyline([point(0, 0), point(50, 0), point(20, 0)]).isStraight(0.1), false);
  });

  it('a rigid map changes no length and no order of places', () => {
    const path = Path.of(strewnCubics(3, 2));
    const turned = path.transformed(rotation(point(10, 10), 1));
    near(turned.length, path.length, 1e-8);
    assert.deepEqual(path.transformed(identity).segments, path.segments);
  });

  it('an empty list of segments gives a path of no size', () => {
    const nothing = Path.of([]);
    assert.equal(nothing.length, 0);
    assert.ok(samePoint(nothing.start, nothing.end));
    assert.deepEqual(Path.polyline([point(2, 3)]).end, point(2, 3));
  });
});
