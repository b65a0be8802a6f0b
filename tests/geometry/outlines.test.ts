/** Closed outlines: area, inside, crossings. */
import assert from 'node:assert/strict';
import {
  areaOf,
  circle,
  contains,
  cubic,
  distance,
  hobby,
  line,
  ORIGIN,
  orientation,
  outlineBounds,
  Path,
  perimeter,
  point,
  rotation,
  selfCrossings,
  signedArea,
} from '../../server/geometry';
import { near, nearPoint, polygon, strewnCubics } from '../support/curves';

const SQUARE = polygon([0, 0], [10, 0], [10, 10], [0, 10]);

describe('outlines', () => {
  it('a square has its area, its perimeter and its way round', () => {
    assert.equal(signedArea(SQUARE), 100);
    assert.equal(perimeter(SQUARE), 40);
    assert.equal(orientation(SQUARE), 1);
    const other = SQUARE.map((edge) => edge.reversed()).reverse();
    assert.equal(signedArea(other), -100);
    assert.equal(orientation(other), -1);
    assert.deepEqual(outlineBounds(SQUARE), { minX: 0, minY: 0, maxX: 10, maxY: 10 });
  });

  it('the area under a parabola is a third of its box', () => {
    // Archimedes, The Quadrature of the Parabola; y = x² from 0 to 1.
    const parabola = cubic(point(0, 0), point(1 / 3, 0), point(2 / 3, 1 / 3), point(1, 1));
    const under = [Path.of([parabola, line(point(1, 1), point(1, 0)), line(point(1, 0), point(0, 0))])];
    near(areaOf(under), 1 / 3, 1e-15);
  });

  it('the area of strewn curves is that of very many chords', () => {
    for (const seg of strewnCubics(20, 51)) {
      const outline = [Path.of([seg]), Path.line(seg.p3, seg.p0)];
      const chords = Path.polyline(Path.of([seg]).polyline(1e-5));
      near(signedArea(outline), signedArea([chords, outline[1]!]), 3e-3);
    }
  });

  it('area keeps its digits ten metres from the origin', () => {
    const moved = [circle(point(10_000, 10_000), 50)];
    near(areaOf(moved), areaOf([circle(ORIGIN, 50)]), 1e-6);
  });

  it('a point is inside where its distance to a circle says so', () => {
    const ring = [circle(point(3.3, 4.1), 50, 0.2)];
    for (let x = -60; x <= 60; x += 7) {
      for (let y = -60; y <= 60; y += 7) {
        const p = point(x, y);
        assert.equal(contains(ring, p), distance(p, point(3.3, 4.1)) < 50, `${x}, ${y}`);
      }
    }
  });

  it('a ray through corners counts them once', () => {
    const diamond = polygon([0, -10], [10, 0], [0, 10], [-10, 0]);
    assert.equal(contains(diamond, point(-5, 0)), true);
    assert.equal(contains(diamond, point(-15, 0)), false);
    assert.equal(contains(diamond, point(-5, 10)), false);
    const steps = polygon([0, 0], [10, 0], [10, 5], [20, 5], [20, 10], [0, 10]);
    assert.equal(contains(steps, point(5, 5)), true);
    assert.equal(contains(steps, point(-1, 5)), false);
  });

  it('a bow tie crosses itself where its diagonals meet', () => {
    const tie = polygon([0, 0], [10, 10], [10, 0], [0, 10]);
    const found = selfCrossings(tie);
    assert.equal(found.length, 1);
    nearPoint(found[0]!.point, point(5, 5), 1e-12);
    near(found[0]!.sA, Math.sqrt(50), 1e-9);
    near(found[0]!.sB, Math.sqrt(200) + 10 + Math.sqrt(50), 1e-9);
  });

  it('the loop of a single cubic is found at its knot', () => {
    const loop = cubic(point(0, 0), point(150, 100), point(-50, 100), point(100, 0));
    const found = selfCrossings([
      Path.of([loop]),
      Path.polyline([point(100, 0), point(50, -50), point(0, 0)]),
    ]);
    assert.equal(found.length, 1);
    near(found[0]!.point.x, 50, 1e-9);
  });

  it('corners, smooth joints and sharp points are no crossings', () => {
    assert.deepEqual(selfCrossings(SQUARE), []);
    assert.deepEqual(selfCrossings([circle(ORIGIN, 30)]), []);
    assert.deepEqual(selfCrossings(polygon([0, 0], [100, 0.05], [100, -0.05])), []);
    const petal = cubic(point(0, 0), point(80, 60), point(80, -60), point(0, 0));
    assert.deepEqual(selfCrossings([Path.of([petal])]), []);
  });

  it('an edge that crosses its neighbour beyond their corner is found', () => {
    const bulge = cubic(point(0, 0), point(-20, 60), point(60, 60), point(60, 0));
    const outline = [Path.of([bulge]), ...polygon([60, 0], [-30, 30], [0, 0]).slice(0, 2)];
    assert.equal(selfCrossings(outline).length, 1);
  });

  it('a touching is no crossing, and a hair beyond it is two', () => {
    const touched = (depth: number) =>
      polygon([0, 0], [100, 0], [100, 50], [60, 50], [50, depth], [40, 50], [0, 50]);
    assert.equal(selfCrossings(touched(1)).length, 0);
    assert.equal(selfCrossings(touched(0)).length, 0);
    assert.equal(selfCrossings(touched(-9e-7)).length, 0);
    assert.equal(selfCrossings(touched(-1e-3)).length, 2);
  });

  it('a curve that touches an edge smoothly is no crossing', () => {
    const dip = (y: number) => {
      const under = cubic(point(80, 60), point(60, y), point(40, y), point(20, 60));
      const rest = [point(20, 60), point(0, 60), point(0, 0), point(100, 0), point(100, 60), point(80, 60)];
      return [Path.of([under]), Path.polyline(rest)];
    };
    assert.equal(selfCrossings(dip(-20)).length, 0);
    assert.equal(selfCrossings(dip(-20.01)).length, 2);
  });

  it('a crossing by way of a shared stretch is found once', () => {
    const outline = polygon([0, 0], [60, 0], [60, 50], [30, 50], [30, 40], [60, 40], [60, 90], [0, 90]);
    assert.equal(selfCrossings(outline).length, 1);
  });

  it('a large outline of sixty curves has no crossing that is not there', () => {
    const knots = Array.from({ length: 60 }, (_, i) => {
      const angle = (i * Math.PI) / 30;
      const reach = 300 + 60 * Math.cos(5 * angle);
      return { point: point(reach * Math.cos(angle), reach * Math.sin(angle)) };
    });
    const ring = Path.of(hobby(knots, { closed: true }));
    assert.deepEqual(selfCrossings([ring]), []);
    assert.deepEqual(selfCrossings([ring.transformed(rotation(point(7, 7), 1))]), []);
  });
});
