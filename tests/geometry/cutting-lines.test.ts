/** Cutting lines: allowances round an outline and its corners. */
import assert from 'node:assert/strict';
import {
  areaOf,
  circle,
  cubic,
  cuttingLine,
  distance,
  hobby,
  Path,
  perimeter,
  point,
  ringOf,
  rotate,
  selfCrossings,
  subtract,
  type CutEdge,
  type CuttingLine,
} from '../../server/geometry';
import { near, nearPoint, polygon, spread } from '../support/curves';
import { random } from '../support/random';

const allowing = (edges: readonly Path[], ...allowances: number[]): CutEdge[] =>
  edges.map((path, i) => ({ path, allowance: allowances[i % allowances.length]! }));

const kinds = (cut: CuttingLine): string[] => cut.corners.map((corner) => corner.kind);

function assertRing(outline: readonly Path[]): void {
  outline.forEach((path, i) => nearPoint(path.end, outline[(i + 1) % outline.length]!.start, 1e-6));
  assert.deepEqual(selfCrossings(outline), []);
}

/** A triangle whose first corner has an angle in degrees. */
function wedge(degrees: number): Path[] {
  const far = rotate(point(300, 0), (degrees * Math.PI) / 180);
  return polygon([0, 0], [300, 0], [far.x, far.y]);
}

describe('cutting lines', () => {
  it('a square with mitred corners grows by the allowance on every side', () => {
    // 10 by 10 with 1: perimeter 48.
    const cut = cuttingLine(allowing(polygon([0, 0], [10, 0], [10, 10], [0, 10]), 1));
    near(perimeter(cut.outline), 48, 1e-12);
    near(areaOf(cut.outline), 144, 1e-12);
    assert.deepEqual(kinds(cut), ['mitred', 'mitred', 'mitred', 'mitred']);
    nearPoint(cut.corners[0]!.tip, point(11, -1), 1e-12);
  });

  it('a mitre reaches as far as the sine of half the corner says', () => {
    // d / sin(½ corner), computed.
    const table = [
      [60, 2],
      [90, 1.41421],
      [120, 1.1547],
    ];
    for (const [degrees, reach] of table) {
      const corner = cuttingLine(allowing(wedge(degrees!), 10)).corners[2]!;
      assert.equal(corner.kind, 'mitred');
      near(distance(corner.tip, corner.at), 10 * reach!, 1e-4, `${degrees} degrees`);
    }
    const unlimited = cuttingLine(allowing(wedge(30), 10), { mitreLimit: 4 }).corners[2]!;
    near(distance(unlimited.tip, unlimited.at), 38.637, 1e-3);
    const wide = cuttingLine(allowing(wedge(45), 10), { mitreLimit: 4 }).corners[2]!;
    near(distance(wide.tip, wide.at), 26.1313, 1e-4);
  });

  it('a sharp corner goes blunt at two and a half widths', () => {
    const cut = cuttingLine(allowing(wedge(30), 10));
    const corner = cut.corners[2]!;
    assert.equal(corner.kind, 'blunt');
    near(distance(corner.tip, corner.at), 25, 1e-9);
    assertRing(cut.outline);
  });

  it('each edge has its own allowance and a fold has none', () => {
    const cut = cuttingLine(allowing(polygon([0, 0], [100, 0], [100, 80], [0, 80]), 10, 15, 40, 0));
    near(areaOf(cut.outline), (100 + 15) * (80 + 10 + 40), 1e-9);
    assert.equal(cut.outline[3]!.box.minX, 0);
    assert.equal(cut.outline[3]!.box.maxX, 0);
    assertRing(cut.outline);
  });

  it('the way round does not matter', () => {
    const edges = polygon([0, 0], [100, 0], [100, 50], [50, 50], [50, 100], [0, 100]);
    const one = cuttingLine(allowing(edges, 10));
    const other = cuttingLine(allowing(edges.map((edge) => edge.reversed()).reverse(), 10));
    near(areaOf(one.outline), areaOf(other.outline), 1e-9);
    near(areaOf(one.outline), 11_900, 1e-9);
    assert.equal(one.corners[2]!.kind, 'inner');
    nearPoint(one.corners[2]!.tip, point(60, 60), 1e-12);
  });

  it('a smooth outline grows as Steiner says', () => {
    const ring = circle(point(5, 5), 100);
    const edges = ring.splitAt(200).map((path) => ({ path, allowance: 15 }));
    const cut = cuttingLine(edges);
    near(perimeter(cut.outline), 2 * Math.PI * 115, 1e-3);
    near(areaOf(cut.outline), Math.PI * 115 * 115, 0.5);
    assert.deepEqual(kinds(cut), ['smooth', 'smooth']);
  });

  it('an allowance that changes along a smooth edge steps', () => {
    const edges = polygon([0, 0], [50, 0], [100, 0], [100, 60], [0, 60]);
    const cut = cuttingLine(allowing(edges, 10, 20, 10, 10, 10));
    assert.equal(cut.corners[0]!.kind, 'stepped');
    assert.deepEqual(cut.outline[0]!.polyline(1).slice(-2), [point(50, -10), point(50, -20)]);
    assertRing(cut.outline);
  });

  it('an allowance that runs from one width to another is straight beside a straight edge', () => {
    const edges = allowing(polygon([0, 0], [100, 0], [100, 60], [0, 60]), 0, 10, 0, 40);
    edges[0] = { ...edges[0]!, allowance: 40, allowanceAtEnd: 10 };
    const cut = cuttingLine(edges);
    const top = cut.outline[0]!;
    for (const p of spread(top.part(top.locate(point(0, -40)).s, top.locate(point(100, -10)).s), 20)) {
      near(p.y, -40 + 0.3 * p.x, 1e-9);
    }
    assertRing(cut.outline);
  });

  it('a curved edge with a running allowance keeps the width due at each place', () => {
    const curve = Path.of(
      hobby([{ point: point(0, 0) }, { point: point(80, -30) }, { point: point(160, 0) }]),
    );
    const rest = Path.polyline([point(160, 0), point(160, 100), point(0, 100), point(0, 0)]);
    const cut = cuttingLine([
      { path: curve, allowance: 10, allowanceAtEnd: 30 },
      { path: rest, allowance: 10 },
    ]);
    const middle = spread(cut.outline[0]!, 60).slice(15, 40);
    for (const p of middle) {
      const { s, distance: away } = curve.locate(p);
      near(away, 10 + (20 * s) / curve.length, 0.05);
    }
  });

  it('an armhole too tight for its allowance is cut cleanly and said so', () => {
    const scoop = Path.of([cubic(point(60, 0), point(56, 30), point(44, 30), point(40, 0))]);
    const rest = Path.polyline([
      point(40, 0),
      point(0, 0),
      point(0, 90),
      point(100, 90),
      point(100, 0),
      point(60, 0),
    ]);
    const cut = cuttingLine([
      { path: scoop, allowance: 12 },
      { path: rest, allowance: 12 },
    ]);
    assertRing(cut.outline);
    assert.ok(cut.tight.some((stretch) => stretch.edge === 0));
    assert.ok(areaOf(cut.outline) > 12_000);
  });

  it('a slot narrower than its allowances closes up', () => {
    const slot = polygon([0, 0], [100, 0], [100, 40], [50, 40], [50, 50], [100, 50], [100, 100], [0, 100]);
    const cut = cuttingLine(allowing(slot, 10));
    assertRing(cut.outline);
    near(areaOf(cut.outline), 120 * 120, 1e-6);
    assert.equal(cut.outline[3]!.length, 0);
  });

  it('no allowance at all leaves the outline as it is', () => {
    const edges = polygon([0, 0], [10, 0], [10, 10]);
    assert.deepEqual(
      cuttingLine(allowing(edges, 0)).outline.map((path) => path.segments),
      edges.map((path) => path.segments),
    );
  });

  it('edges of no size and nonsense allowances do no harm', () => {
    const stop = Path.line(point(10, 0), point(10, 0));
    const [a, b, c] = polygon([0, 0], [10, 0], [10, 10]) as [Path, Path, Path];
    const cut = cuttingLine(allowing([a, stop, b, c], 2, Number.NaN, 2, -5));
    assert.equal(cut.outline.length, 4);
    assertRing(cut.outline);
    assert.deepEqual(cuttingLine([]).outline, []);
  });
});

/** A star-shaped outline of lines and curves, the same for the same number. */
function strewnOutline(seed: number): Path[] {
  const next = random(seed);
  const share = (): number => next(10_000) / 10_000;
  const count = 3 + next(9);
  const corners = Array.from({ length: count }, (_, i) => {
    const angle = ((i + 0.8 * share()) * 2 * Math.PI) / count;
    return rotate(point(60 + 240 * share(), 0), angle);
  });
  return corners.map((p, i) => {
    const q = corners[(i + 1) % count]!;
    if (share() < 0.5) return Path.line(p, q);
    const lean = (): ReturnType<typeof point> => rotate(subtract(q, p), 2 * share() - 1);
    return Path.of(
      hobby([
        { point: p, leaving: lean() },
        { point: q, arriving: lean() },
      ]),
    );
  });
}

describe('cutting lines of strewn outlines', () => {
  const outlines = Array.from({ length: 400 }, (_, i) => strewnOutline(i + 1)).filter(
    (outline) => selfCrossings(outline).length === 0,
  );

  it('never cross themselves, whatever the allowances', () => {
    assert.ok(outlines.length > 250);
    const next = random(99);
    for (const outline of outlines) {
      const cut = cuttingLine(outline.map((path) => ({ path, allowance: next(6) === 0 ? 0 : 5 + next(40) })));
      assertRing(cut.outline);
      assert.ok(areaOf(cut.outline) >= areaOf(outline) - 1e-6);
    }
  });

  it('keep an even allowance everywhere', () => {
    for (const outline of outlines) {
      const cut = cuttingLine(allowing(outline, 15));
      const seam = ringOf(outline);
      for (const p of spread(ringOf(cut.outline), 120)) assert.ok(seam.locate(p).distance > 15 - 0.03);
    }
  });
});
