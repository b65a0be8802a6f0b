/**
 * Cutting lines against an independent polygon offsetter (clipper2-ts, a port of Angus Johnson's Clipper2, Boost licence):
 * five hundred strewn outlines, straight and curved, even allowances, mitred corners.
 */
import assert from 'node:assert/strict';
import { areaD, EndType, inflatePathsD, JoinType, type PathD } from 'clipper2-ts';
import {
  add,
  areaOf,
  cuttingLine,
  hobby,
  normalised,
  Path,
  point,
  rotate,
  selfCrossings,
  subtract,
  type Point,
} from '../../server/geometry';
import { random } from '../support/random';

/** Mitres as long as these outlines ever need, so that none is cut blunt: the two would blunt it differently. */
const MITRE_LIMIT = 30;

/** Corners sharper than this (radians) are not strewn. */
const SHARPEST = 0.12;

/** A star-shaped outline; `curved` of its edges (a share) are curves. */
function strewn(seed: number, curved: number): Path[] {
  const next = random(seed);
  const share = (): number => next(10_000) / 10_000;
  const count = 3 + next(8);
  const corners = Array.from({ length: count }, (_, i) =>
    rotate(point(80 + 240 * share(), 0), ((i + 0.8 * share()) * 2 * Math.PI) / count),
  );
  return corners.map((p, i) => {
    const q = corners[(i + 1) % count]!;
    if (share() >= curved) return Path.line(p, q);
    const lean = (): Point => normalised(rotate(subtract(q, p), 1.6 * share() - 0.8))!;
    return curve(p, lean(), q, lean());
  });
}

/**
 * A curve with a millimetre of straight at either end: a flattened curve arrives at its end in another direction than the
 * curve itself, and a sharp mitre shows that many times over.
 */
function curve(p: Point, leaving: Point, q: Point, arriving: Point): Path {
  const [from, to] = [add(p, leaving), subtract(q, arriving)];
  const middle = Path.of(
    hobby([
      { point: from, leaving },
      { point: to, arriving },
    ]),
  );
  return Path.line(p, from).joinedTo(middle).joinedTo(Path.line(to, q));
}

function sharpest(edges: readonly Path[]): number {
  const angles = edges.map((edge, i) => {
    const back = edge.tangentAt(edge.length, 'before');
    const onward = edges[(i + 1) % edges.length]!.tangentAt(0);
    return Math.acos(Math.max(-1, Math.min(1, -(back.x * onward.x + back.y * onward.y))));
  });
  return Math.min(...angles);
}

/** Curves flattened so finely that what is lost does not count. */
const flat = (edges: readonly Path[]): Point[] => edges.flatMap((edge) => edge.polyline(0.01).slice(0, -1));

/** The outer ring of the independent offset. */
function offsetRing(edges: readonly Path[], by: number): Point[] {
  const ring = flat(edges).map(({ x, y }) => ({ x, y }));
  const rings: PathD[] = inflatePathsD([ring], by, JoinType.Miter, EndType.Polygon, MITRE_LIMIT, 6);
  return rings.reduce((a, b) => (Math.abs(areaD(b)) > Math.abs(areaD(a)) ? b : a)) as Point[];
}

const toSegment = (p: Point, a: Point, b: Point): number => {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const square = x * x + y * y;
  const t = square === 0 ? 0 : Math.max(0, Math.min(1, ((p.x - a.x) * x + (p.y - a.y) * y) / square));
  return Math.hypot(a.x + t * x - p.x, a.y + t * y - p.y);
};

/** Millimetres of a cell in which the sides of a ring are looked up. */
const CELL = 8;

const cellOf = (x: number, y: number): number => Math.floor(x / CELL) * 100_003 + Math.floor(y / CELL);

/** The sides of a ring by the cells that they pass, and those around. */
function sidesByCell(ring: readonly Point[]): Map<number, number[]> {
  const cells = new Map<number, number[]>();
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    const steps = Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / CELL) + 1;
    const passed = new Set<number>();
    for (let k = 0; k <= steps; k++) {
      const [x, y] = [a.x + ((b.x - a.x) * k) / steps, a.y + ((b.y - a.y) * k) / steps];
      for (const dx of [-1, 0, 1])
        for (const dy of [-1, 0, 1]) passed.add(cellOf(x + dx * CELL, y + dy * CELL));
    }
    for (const key of passed) {
      const sides = cells.get(key);
      if (sides === undefined) cells.set(key, [i]);
      else sides.push(i);
    }
  });
  return cells;
}

/** The greatest distance of any corner of a ring from another ring; a whole cell and more counts as endless. */
function farthest(ring: readonly Point[], from: readonly Point[]): number {
  const cells = sidesByCell(from);
  return Math.max(
    ...ring.map((p) => {
      const near = cells.get(cellOf(p.x, p.y)) ?? [];
      return Math.min(...near.map((i) => toSegment(p, from[i]!, from[(i + 1) % from.length]!)));
    }),
  );
}

/** The greatest distance between two rings, from the corners of either. */
const apart = (one: readonly Point[], other: readonly Point[]): number =>
  Math.max(farthest(one, other), farthest(other, one));

function compared(curved: number, from: number): { count: number; worst: number; area: number; at: number } {
  const outlines = Array.from({ length: 600 }, (_, i) => ({
    seed: from + i,
    edges: strewn(from + i, curved),
  }))
    .filter(({ edges }) => selfCrossings(edges).length === 0 && sharpest(edges) > SHARPEST)
    .slice(0, 250);
  let [worst, area, at] = [0, 0, 0];
  for (const { seed, edges } of outlines) {
    const by = 5 + (seed % 40);
    const ours = cuttingLine(
      edges.map((path) => ({ path, allowance: by })),
      { mitreLimit: MITRE_LIMIT },
    ).outline;
    const theirs = offsetRing(edges, by);
    const off = apart(flat(ours), theirs);
    if (off > worst) [worst, at] = [off, seed];
    area = Math.max(area, Math.abs(areaOf(ours) - Math.abs(areaD(theirs))) / areaOf(ours));
  }
  return { count: outlines.length, worst, area, at };
}

describe('cutting lines beside an independent offsetter', () => {
  it('two hundred and fifty polygons come out the same', () => {
    const { count, worst, area, at } = compared(0, 1);
    assert.equal(count, 250);
    assert.ok(worst < 0.05, `${worst.toFixed(4)} mm apart at outline ${at}`);
    assert.ok(area < 1e-5, `areas differ by a share of ${area}`);
  });

  it('two hundred and fifty curved outlines come out the same', () => {
    const { count, worst, area, at } = compared(0.6, 10_001);
    assert.equal(count, 250);
    assert.ok(worst < 0.05, `${worst.toFixed(4)} mm apart at outline ${at}`);
    assert.ok(area < 1e-4, `areas differ by a share of ${area}`);
  });
});
