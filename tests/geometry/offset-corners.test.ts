/** Corners of a cutting line that follow a rule: turned back, squared off, as the seam folds, stepped. */
import assert from 'node:assert/strict';
import {
  add,
  areaOf,
  cuttingLine,
  distance,
  hobby,
  mirror,
  Path,
  point,
  ringOf,
  rotate,
  scale,
  selfCrossings,
  type CornerRule,
  type CutEdge,
  type CuttingLine,
  type Point,
} from '../../server/geometry';
import { near, nearPoint, polygon, spread } from '../support/curves';
import { random } from '../support/random';

/**
 * A panel from a seam on the right to a hem below: the seam arrives at the origin leaning `lean` degrees from upright
 * (outward where it is more than nothing), the hem leaves it to the left.
 */
function panel(lean: number): Path[] {
  const top = rotate(point(0, -300), (-lean * Math.PI) / 180);
  return polygon([top.x, top.y], [0, 0], [-200, 0], [-200, top.y]);
}

/** Allowances of seam, hem and the others; the rule of the corner between the first two. */
const allowing = (edges: readonly Path[], seam: number, hem: number, corner: CornerRule): CutEdge[] =>
  edges.map((path, i) => ({
    path,
    allowance: [seam, hem][i] ?? 10,
    ...(i === 0 && { corner }),
  }));

function assertClean({ outline }: CuttingLine): void {
  outline.forEach((path, i) => nearPoint(path.end, outline[(i + 1) % outline.length]!.start, 1e-6));
  assert.deepEqual(selfCrossings(outline), []);
}

/** How far the hem's allowance, folded up along the line y = 0, lies from the cutting line of the piece above the fold. */
function apartWhenFolded(cut: CuttingLine, depth: number): number {
  const ring = ringOf(cut.outline);
  const right = ([from, to]: readonly [number, number]): Point[] =>
    spread(ring, 4000).filter(({ x, y }) => x > -100 && y > from && y < to);
  const above = Path.polyline(right([-depth, 0.5]).sort((a, b) => a.y - b.y));
  const below = right([0, depth - 0.5]).map(({ x, y }) => ({ x, y: -y }));
  return Math.max(...below.map((p) => above.locate(p).distance));
}

const BACK: CornerRule = { how: 'turned-back', edge: 'after', folds: 1 };

describe('a hem that is turned back', () => {
  for (const lean of [-25, -8, 0, 8, 25]) {
    it(`lies on the edge of a piece that leans ${lean} degrees, to a twentieth of a millimetre`, () => {
      const cut = cuttingLine(allowing(panel(lean), 15, 40, BACK));
      assertClean(cut);
      assert.equal(cut.corners[0]!.kind, 'turned-back');
      assert.ok(apartWhenFolded(cut, 40) < 0.05, `${apartWhenFolded(cut, 40)} mm`);
    });
  }

  it('lies on a curved seam as well', () => {
    const side = Path.of(
      hobby([
        { point: point(30, -300) },
        { point: point(-15, -140) },
        { point: point(0, 0), arriving: point(0.4, 1) },
      ]),
    );
    const rest = polygon([30, -300], [0, 0], [-200, 0], [-200, -300]).slice(1);
    const cut = cuttingLine(allowing([side, ...rest], 15, 60, BACK));
    assertClean(cut);
    assert.equal(cut.corners[0]!.kind, 'turned-back');
    assert.ok(apartWhenFolded(cut, 60) < 0.05, `${apartWhenFolded(cut, 60)} mm`);
  });

  it('turned twice, has a second layer that is the first one shifted', () => {
    // The mirror image of a mirror image across a parallel line is shifted by twice their distance.
    const cut = cuttingLine(allowing(panel(15), 15, 40, { ...BACK, folds: 2 }));
    assertClean(cut);
    const ring = ringOf(cut.outline);
    const piece = spread(ring, 4000).filter(({ x, y }) => x > -100 && y > -20 && y < 0);
    for (const p of piece) near(ring.locate(add(p, point(0, 40))).distance, 0, 0.05);
    const first = spread(ring, 4000).filter(({ x, y }) => x > -100 && y > 0.5 && y < 20);
    for (const p of first) near(ring.locate(point(p.x, -p.y)).distance, 0, 0.05);
  });

  it('is the same whichever way round the outline is drawn', () => {
    const edges = panel(12);
    const one = cuttingLine(allowing(edges, 15, 40, BACK));
    const turned = edges.map((edge) => edge.reversed()).reverse();
    const widths = [10, 10, 40, 15];
    const other = cuttingLine(
      turned.map((path, i) => ({
        path,
        allowance: widths[i]!,
        ...(i === 2 && { corner: { how: 'turned-back', edge: 'before', folds: 1 } as const }),
      })),
    );
    near(areaOf(one.outline), areaOf(other.outline), 1e-6);
    for (const p of spread(ringOf(one.outline), 200)) near(ringOf(other.outline).locate(p).distance, 0, 1e-6);
  });

  it('is mitred where the seam leans more than forty degrees from square', () => {
    const leaning = cuttingLine(allowing(panel(39), 15, 20, BACK));
    const toppling = cuttingLine(allowing(panel(41), 15, 20, BACK));
    assert.equal(leaning.corners[0]!.kind, 'turned-back');
    assert.equal(toppling.corners[0]!.kind, 'mitred');
    assertClean(toppling);
  });

  it('is mitred at an inner corner', () => {
    const edges = polygon([0, -100], [0, 0], [100, 0], [100, 100], [-100, 100], [-100, -100]);
    const cut = cuttingLine(
      edges.map((path, i) => ({ path, allowance: 10, ...(i === 0 && { corner: BACK }) })),
    );
    assert.equal(cut.corners[0]!.kind, 'inner');
    assertClean(cut);
  });
});

/** Ends of the seam's allowance: on its sewing line run on, and on its cutting line; counted along the seam. */
function endsOf(cut: CuttingLine, lean: number): { atSewing: number; atCutting: number } {
  const along = rotate(point(0, 1), (-lean * Math.PI) / 180);
  const out = point(along.y, -along.x);
  const far = (off: number): number => {
    const start = add(scale(out, off), scale(along, -40));
    const beam = Path.line(start, add(start, scale(along, 140)));
    const ring = ringOf(cut.outline);
    return Math.max(
      ...spread(beam, 28_000)
        .filter((p) => ring.locate(p).distance < 0.01)
        .map((p) => p.x * along.x + p.y * along.y),
    );
  };
  return { atSewing: far(0), atCutting: far(14.999) };
}

describe('the end of a seam', () => {
  for (const lean of [-30, -10, 10, 30]) {
    const sine = Math.cos((lean * Math.PI) / 180);

    it(`that is squared off leaning ${lean} degrees ends square where its line meets the other cutting line`, () => {
      const cut = cuttingLine(allowing(panel(lean), 15, 10, { how: 'squared', edge: 'before' }));
      assertClean(cut);
      const { atSewing, atCutting } = endsOf(cut, lean);
      // The sewing line runs on by the width over the sine of the corner.
      near(atSewing, 10 / sine, 0.02);
      near(atCutting, 10 / sine, 0.02);
    });

    it(`that is folded leaning ${lean} degrees ends in the mirror image of the other cutting line`, () => {
      const cut = cuttingLine(allowing(panel(lean), 15, 10, { how: 'folded', edge: 'before' }));
      assertClean(cut);
      const along = rotate(point(0, 1), (-lean * Math.PI) / 180);
      const over = mirror(point(0, 0), along);
      const ring = ringOf(cut.outline);
      // between the sewing line and the seam's cutting line, beyond the end of the seam
      const tip = cut.corners[0]!.tip;
      near(distance(tip, point(0, 0)), 10 / sine, 1e-6);
      const slope = Path.line(tip, add(tip, point(-9, 0))).transformed(over);
      for (const p of spread(slope, 20)) near(ring.locate(p).distance, 0, 0.01);
    });
  }

  it('folds over beside an edge without allowance, too', () => {
    const cut = cuttingLine(allowing(panel(25), 15, 0, { how: 'folded', edge: 'before' }));
    assertClean(cut);
    assert.equal(cut.corners[0]!.kind, 'folded');
    const over = mirror(point(0, 0), rotate(point(0, 1), (-25 * Math.PI) / 180));
    const end = Path.line(point(0, 0), point(-14, 0)).transformed(over);
    for (const p of spread(end, 20)) near(ringOf(cut.outline).locate(p).distance, 0, 0.01);
  });

  it('has one length on both of two pieces that lie beside each other, when they are squared off', () => {
    // The other edge runs on across the seam: the corners of the two pieces make 180 degrees.
    const ends = [20, -20].map((lean) => {
      const cut = cuttingLine(allowing(panel(lean), 15, 10, { how: 'squared', edge: 'before' }));
      return endsOf(cut, lean).atCutting;
    });
    near(ends[0]!, ends[1]!, 0.02);
  });

  it('steps square to the wider of two allowances', () => {
    const cut = cuttingLine(allowing(panel(0), 30, 10, { how: 'stepped' }));
    assertClean(cut);
    nearPoint(cut.corners[0]!.tip, point(0, 10), 1e-9);
    const slanting = cuttingLine(allowing(panel(20), 30, 10, { how: 'stepped' }));
    assert.equal(slanting.corners[0]!.kind, 'squared');
  });

  it('gives way to the mitre where it would lie beyond it', () => {
    const cut = cuttingLine(allowing(panel(75), 15, 10, { how: 'squared', edge: 'before' }));
    assert.notEqual(cut.corners[0]!.kind, 'squared');
    assertClean(cut);
  });
});

describe('corners of strewn outlines', () => {
  it('never make a cutting line cross itself, whatever rule is asked of them', () => {
    const next = random(7);
    const share = (): number => next(10_000) / 10_000;
    const rules: readonly (CornerRule | undefined)[] = [
      undefined,
      { how: 'stepped' },
      ...(['before', 'after'] as const).flatMap((edge): CornerRule[] => [
        { how: 'squared', edge },
        { how: 'folded', edge },
        { how: 'turned-back', edge, folds: 1 },
        { how: 'turned-back', edge, folds: 2 },
      ]),
    ];
    let ruled = 0;
    for (let i = 0; i < 200; i++) {
      const count = 3 + next(8);
      const corners = Array.from({ length: count }, (_, k) =>
        rotate(point(60 + 240 * share(), 0), ((k + 0.8 * share()) * 2 * Math.PI) / count),
      );
      const edges = corners.map((p, k): CutEdge => {
        const q = corners[(k + 1) % count]!;
        const corner = rules[next(rules.length)];
        return { path: bentLine(p, q, share() - 0.5), allowance: 5 + next(40), ...(corner && { corner }) };
      });
      if (selfCrossings(edges.map(({ path }) => path)).length > 0) continue;
      const cut = cuttingLine(edges);
      assertClean(cut);
      assert.ok(areaOf(cut.outline) >= areaOf(edges.map(({ path }) => path)) - 1e-6);
      ruled += cut.corners.filter(({ kind }) => ['squared', 'folded', 'turned-back'].includes(kind)).length;
    }
    assert.ok(ruled > 300, `${ruled} corners followed a rule`);
  });
});

/** From one point to another, bent to a side by a share of the way. */
function bentLine(p: Point, q: Point, by: number): Path {
  const middle = point((p.x + q.x) / 2 - by * 0.4 * (q.y - p.y), (p.y + q.y) / 2 + by * 0.4 * (q.x - p.x));
  return Path.of(hobby([{ point: p }, { point: middle }, { point: q }]));
}
