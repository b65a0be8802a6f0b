/**
 * Areas in which outlines differ, against an independent polygon library (clipper2-ts, a port of Angus Johnson's
 * Clipper2, Boost licence): random pairs, stars that cross themselves, and outlines that share most of their way.
 */
import assert from 'node:assert/strict';
import { areaPathsD, differenceD, FillRule, type PathD } from 'clipper2-ts';
import { difference, point, type Point } from '../../server/geometry';
import { random } from '../support/random';

/** Digits after the point that the other library rounds corners to. */
const PRECISION = 6;

type Ring = readonly Point[];

const other = (first: Ring, second: Ring): number => {
  const paths = (ring: Ring): PathD[] =>
    ring.length === 0 ? [] : [ring.map(({ x, y }) => ({ x, y })) as PathD];
  return areaPathsD(differenceD(paths(first), paths(second), FillRule.EvenOdd, PRECISION));
};

function star(next: (limit: number) => number, at: Point): Ring {
  const count = 3 + next(20);
  return Array.from({ length: count }, (_, i) => {
    const [turn, far] = [((i + next(1000) / 1100) * 2 * Math.PI) / count, 30 + next(300)];
    return point(at.x + far * Math.cos(turn), at.y + far * Math.sin(turn));
  });
}

/** The same outline with some corners moved a little: most of its way is shared. */
const altered = (ring: Ring, next: (limit: number) => number): Ring =>
  ring.map((p) => (next(4) > 0 ? p : point(p.x + next(200) / 10 - 10, p.y + next(200) / 10 - 10)));

const strewn = (next: (limit: number) => number): Ring =>
  Array.from({ length: 3 + next(6) }, () => point(next(4000) / 10, next(4000) / 10));

function agrees(first: Ring, second: Ring, seed: number): void {
  const { lostArea, gainedArea, commonArea, lost, gained } = difference([first], [second]);
  const close = (ours: number, theirs: number, what: string) =>
    assert.ok(Math.abs(ours - theirs) < 0.01, `${what} of pair ${seed}: ${ours} here, ${theirs} there`);
  close(lostArea, other(first, second), 'lost');
  close(gainedArea, other(second, first), 'gained');
  close(lostArea + commonArea, other(first, []), 'the whole');
  const shown = [...lost, ...gained].reduce((sum, { area }) => sum + area, 0);
  assert.ok(shown <= lostArea + gainedArea + 0.01, 'what is shown is no more than what differs');
}

describe('areas in which outlines differ', () => {
  it('agree with another library on a thousand random pairs to a hundredth of a square millimetre', () => {
    for (let seed = 1; seed <= 400; seed++) {
      const next = random(seed * 7919);
      const first = star(next, point(200, 200));
      agrees(first, star(next, point(180 + next(60), 190)), seed);
      agrees(first, altered(first, next), seed);
      if (seed <= 200) agrees(strewn(next), strewn(next), seed);
    }
  });

  it('are nothing between an outline and itself, from whichever corner it is told', () => {
    const next = random(11);
    for (let i = 0; i < 50; i++) {
      const ring = star(next, point(0, 0));
      const turned = [...ring.slice(2), ...ring.slice(0, 2)].reverse();
      const { lost, gained, lostArea, gainedArea } = difference([ring], [turned]);
      assert.ok(lostArea + gainedArea < 1e-6);
      assert.deepEqual([lost, gained], [[], []]);
    }
  });

  it('of two rectangles are the strips between them, one region each', () => {
    const box = (left: number, top: number, right: number, low: number): Ring => [
      point(left, top),
      point(right, top),
      point(right, low),
      point(left, low),
    ];
    const { lost, gained } = difference([box(0, 0, 100, 50)], [box(0, 0, 90, 60)]);
    assert.deepEqual([lost.map(({ area }) => area), gained.map(({ area }) => area)], [[500], [900]]);
  });

  it('leave a hole out on both sides', () => {
    const outer = [point(0, 0), point(100, 0), point(100, 100), point(0, 100)];
    const hole = [point(40, 40), point(60, 40), point(60, 60), point(40, 60)];
    assert.equal(difference([outer, hole], [outer]).gainedArea, 400);
    assert.equal(difference([outer], [outer, hole]).lostArea, 400);
  });
});
