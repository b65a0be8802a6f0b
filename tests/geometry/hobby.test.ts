/** Smooth curves through points against the figures of the books. */
import assert from 'node:assert/strict';
import { hobby, type Knot, Path, point, signedArea, type Segment } from '../../server/geometry';
import { near, nearPoint } from '../support/curves';

const through = (...places: [number, number][]): Knot[] => places.map(([x, y]) => ({ point: point(x, y) }));

function assertHandles(
  curves: readonly Segment[],
  table: readonly (readonly number[])[],
  within: number,
): void {
  assert.equal(curves.length, table.length);
  curves.forEach((seg, i) => {
    assert.equal(seg.kind, 'cubic');
    if (seg.kind !== 'cubic') return;
    const [x1, y1, x2, y2] = table[i]! as [number, number, number, number];
    nearPoint(seg.p1, point(x1, y1), within, `first handle ${i}`);
    nearPoint(seg.p2, point(x2, y2), within, `second handle ${i}`);
  });
}

const FIVE = through([0, 0], [60, 40], [40, 90], [10, 70], [30, 50]);

describe('smooth curves through points', () => {
  it('the five points of the MetaPost manual get the handles printed there', () => {
    // MetaPost: a user's manual, section 4 (from memory), tension 1 and curl 1.
    const printed = [
      [26.765, -1.845, 51.409, 14.584],
      [67.099, 61.002, 59.763, 84.575],
      [25.357, 94.019, 10.481, 84.502],
      [9.629, 58.804, 18.804, 49.629],
    ];
    assertHandles(hobby(FIVE), printed, 1e-3);
  });

  it('the same five points as a ring get the handles of the closed form', () => {
    // Computed with an independent dense solver.
    const ring = [
      [5.188, -26.835, 60.361, -18.4],
      [59.877, 59.889, 57.339, 81.642],
      [22.4, 98.484, 4.724, 84.464],
      [13.386, 60.717, 26.356, 59.135],
      [39.194, 26.952, -4.106, 21.238],
    ];
    assertHandles(hobby(FIVE, { closed: true }), ring, 1e-3);
  });

  it('three points of an armhole get the handles worked out for them', () => {
    const handles = [
      [-1.209, 5.045, 0.308, 10.355],
      [6.175, 16.148, 8.977, 17.549],
    ];
    assertHandles(hobby(through([0, 0], [4, 14], [12, 18])), handles, 1e-3);
  });

  it('the corners of a square give very nearly the circle', () => {
    const ring = hobby(through([0, 0], [1, 0], [1, 1], [0, 1]), { closed: true });
    const first = ring[0]!;
    assert.ok(first.kind === 'cubic');
    // A quarter of the circle about the square has the radius √½ and handles of 0.5523 of it.
    near(Math.hypot(first.p1.x, first.p1.y) / Math.SQRT1_2, 0.5523, 1e-3);
    near(signedArea([Path.of(ring)]), Math.PI / 2, 1e-3);
  });

  it('two points without a heading are joined by a straight line', () => {
    assert.deepEqual(hobby(through([0, 0], [10, 5])), [{ kind: 'line', p0: point(0, 0), p3: point(10, 5) }]);
  });

  it('one heading makes the free end lean by the same angle, as an arc does', () => {
    const [seg] = hobby([{ point: point(0, 0), leaving: point(1, 1) }, { point: point(10, 0) }]);
    const path = Path.of([seg!]);
    nearPoint(path.tangentAt(path.length), point(Math.SQRT1_2, -Math.SQRT1_2), 1e-12);
    nearPoint(path.pointAt(path.length / 2), point(5, 5 * Math.tan(Math.PI / 8)), 2e-3);
  });

  it('a heading at a knot in the middle is kept on both sides', () => {
    const knots = [
      { point: point(0, 0) },
      { point: point(5, 5), leaving: point(1, 0) },
      { point: point(10, 0) },
    ];
    const path = Path.of(hobby(knots));
    nearPoint(path.tangentAt(path.length / 2, 'before'), point(1, 0), 1e-12);
    nearPoint(path.tangentAt(path.length / 2, 'after'), point(1, 0), 1e-12);
  });

  it('different headings before and after a knot make a corner', () => {
    const middle = { point: point(5, 5), arriving: point(1, 0), leaving: point(0, -1) };
    const path = Path.of(hobby([{ point: point(0, 0) }, middle, { point: point(10, 0) }]));
    const at = path.locate(point(5, 5)).s;
    nearPoint(path.tangentAt(at, 'before'), point(1, 0), 1e-12);
    nearPoint(path.tangentAt(at, 'after'), point(0, -1), 1e-12);
  });

  it('fuller and flatter change the length of the handles alone', () => {
    const knots = [
      { point: point(0, 0), leaving: point(0, 1) },
      { point: point(10, 0), arriving: point(0, -1) },
    ];
    const [plain, fuller] = [hobby(knots)[0]!, hobby(knots, { scaleHandles: 1.2 })[0]!];
    assert.ok(plain.kind === 'cubic' && fuller.kind === 'cubic');
    near(fuller.p1.y, 1.2 * plain.p1.y, 1e-12);
    near(fuller.p1.x, plain.p1.x, 1e-12);
  });

  it('repeated points count once and a single place gives no curve', () => {
    assert.deepEqual(hobby(through([0, 0], [0, 0], [10, 5])), hobby(through([0, 0], [10, 5])));
    assert.deepEqual(hobby(through([3, 3], [3, 3])), []);
    assert.deepEqual(hobby(through([0, 0], [Number.NaN, 1])), []);
  });

  it('a ring with one heading keeps it and still closes smoothly', () => {
    const knots = [{ point: point(0, 0), leaving: point(1, 0) }, ...through([10, 4], [4, 12])];
    const ring = Path.of(hobby(knots, { closed: true }));
    nearPoint(ring.tangentAt(0), point(1, 0), 1e-12);
    nearPoint(ring.tangentAt(ring.length, 'before'), point(1, 0), 1e-12);
    nearPoint(ring.end, ring.start, 0);
  });

  it('a ring of two points is two equal bulges', () => {
    const ring = hobby(through([0, 0], [10, 0]), { closed: true });
    assert.equal(ring.length, 2);
    near(Path.of([ring[0]!]).length, Path.of([ring[1]!]).length, 1e-9);
  });
});
