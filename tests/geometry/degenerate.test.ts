/** Whatever numbers come in, the geometry answers: no error, no endless loop. */
import assert from 'node:assert/strict';
import {
  arc,
  arcByAngle,
  circle,
  circleIntersections,
  contains,
  cubic,
  cuttingLine,
  farthestFrom,
  hobby,
  hollowCurve,
  intersections,
  layOn,
  line,
  lineIntersections,
  lineLine,
  mirror,
  nearestBetween,
  parallel,
  Path,
  perpendicularFeet,
  point,
  selfCrossings,
  signedArea,
  type Point,
} from '../../server/geometry';

/** Points at which something usually goes wrong. */
const AWKWARD: readonly Point[] = [
  point(Number.NaN, 0),
  point(0, 0),
  point(1e9, -1e9),
  point(1e300, 1),
  point(Infinity, 3),
  point(5, 5),
];

/** Everything that can be asked of a path that runs by four points. */
function askEverything(a: Point, b: Point, c: Point, d: Point): void {
  const path = Path.of([cubic(a, b, c, d), line(d, a)]);
  const other = Path.of([cubic(d, a, b, point(50, 30))]);
  void [path.length, path.box, path.turning(), path.isStraight(1), path.tangentAt(3), path.pointAt(2)];
  void [path.part(1, 5), path.part(5, 1), path.polyline(1), path.locate(b), path.reversed()];
  void [farthestFrom(path, c), perpendicularFeet(path, c), nearestBetween(path, other)];
  void [intersections(path, other), lineIntersections(a, b, other), circleIntersections(a, 5, other)];
  void [selfCrossings([path]), signedArea([path]), contains([path], point(1, 1)), lineLine(a, b, c, d)];
  void [hobby([{ point: a }, { point: b }, { point: c, leaving: d }]), layOn(a, b, c, d), mirror(a, b)];
  void [hobby([{ point: a }, { point: b }, { point: c }], { closed: true }), hollowCurve(a, b, c.x, d, c.y)];
  void [arc(a, b, c, true), arcByAngle(a, b, c.x), circle(a, b.x, c.y), parallel(path, 3)];
  void cuttingLine([
    { path: Path.line(a, b), allowance: 5 },
    { path: Path.of([cubic(b, c, d, a)]), allowance: 10 },
  ]);
}

describe('awkward numbers', () => {
  for (const a of AWKWARD) {
    it(`curves that start at ${a.x}, ${a.y} are answered without an error`, () => {
      for (const b of AWKWARD) {
        for (const c of AWKWARD) for (const d of AWKWARD) askEverything(a, b, c, d);
      }
    }).timeout(60_000);
  }

  it('a curve of no size has no length, one place and no crossings', () => {
    const p = point(7, 8);
    const path = Path.of([cubic(p, p, p, p)]);
    assert.equal(path.length, 0);
    assert.deepEqual(path.pointAt(3), p);
    assert.equal(path.locate(point(10, 12)).distance, 5);
    assert.deepEqual(parallel(path, 4), []);
  });

  it('a curve laid over itself is answered by its ends', () => {
    const path = Path.of([cubic(point(0, 0), point(30, 90), point(60, -90), point(100, 0))]);
    const found = intersections(path, path.reversed());
    assert.equal(found.length, 2);
  });
});
