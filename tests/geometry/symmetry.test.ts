/** The same shape turned, mirrored, reversed or ten metres away measures the same. */
import assert from 'node:assert/strict';
import {
  areaOf,
  compose,
  contains,
  cubic,
  cuttingLine,
  hobby,
  identity,
  intersections,
  mirror,
  Path,
  perimeter,
  point,
  rotation,
  selfCrossings,
  translation,
  apply,
  type Rigid,
} from '../../server/geometry';
import { near, polygon } from '../support/curves';

/** A bodice front of a sort: straight centre and hem, curved neck, armhole and side. */
function bodice(): Path[] {
  const neck = cubic(point(0, 70), point(45, 70), point(70, 40), point(70, 0));
  const armhole = hobby([{ point: point(190, 40) }, { point: point(165, 130) }, { point: point(240, 210) }]);
  const side = cubic(point(240, 210), point(225, 290), point(225, 330), point(235, 400));
  return [
    Path.of([neck]),
    Path.line(point(70, 0), point(190, 40)),
    Path.of(armhole),
    Path.of([side]),
    Path.line(point(235, 400), point(0, 410)),
    Path.line(point(0, 410), point(0, 70)),
  ];
}

const SHAPES: Readonly<Record<string, readonly Path[]>> = {
  'a bodice front': bodice(),
  'an L with an inner corner': polygon([0, 0], [100, 0], [100, 50], [50, 50], [50, 100], [0, 100]),
  'a bow tie': polygon([0, 0], [90, 80], [90, 0], [0, 70]),
  'a sharp gore': polygon([0, 0], [20, 400], [-20, 400]),
};

const WAYS: Readonly<Record<string, Rigid>> = {
  'turned by a quarter': rotation(point(3, 4), Math.PI / 2),
  'turned by a half': rotation(point(3, 4), Math.PI),
  'turned by three quarters': rotation(point(3, 4), (3 * Math.PI) / 2),
  'turned by one radian': rotation(point(-50, 20), 1),
  mirrored: mirror(point(0, 0), point(3, 7)),
  'ten metres away': translation(point(10_000, -10_000)),
  'mirrored and ten metres away': compose(
    mirror(point(0, 0), point(1, 0)),
    translation(point(-10_000, 9_000)),
  ),
};

interface Measured {
  readonly area: number;
  readonly round: number;
  readonly crossings: number;
  readonly cutArea: number;
  readonly cutRound: number;
  readonly corners: string;
}

const ALLOWANCES = [10, 15, 10, 20, 40, 0];

function measured(outline: readonly Path[], allowances = ALLOWANCES): Measured {
  const cut = cuttingLine(outline.map((path, i) => ({ path, allowance: allowances[i]! })));
  return {
    area: areaOf(outline),
    round: perimeter(outline),
    crossings: selfCrossings(outline).length,
    cutArea: areaOf(cut.outline),
    cutRound: perimeter(cut.outline),
    corners: cut.corners.map((corner) => corner.kind).join(' '),
  };
}

function assertSame(actual: Measured, wanted: Measured): void {
  near(actual.area, wanted.area, 1e-5, 'area');
  near(actual.round, wanted.round, 1e-8, 'perimeter');
  near(actual.cutArea, wanted.cutArea, 1e-4, 'area cut');
  near(actual.cutRound, wanted.cutRound, 1e-6, 'perimeter cut');
  assert.deepEqual([actual.crossings, actual.corners], [wanted.crossings, wanted.corners]);
}

describe('symmetry', () => {
  for (const [name, outline] of Object.entries(SHAPES)) {
    for (const [way, map] of Object.entries(WAYS)) {
      it(`${name} ${way} measures and cuts the same`, () => {
        assertSame(measured(outline.map((path) => path.transformed(map))), measured(outline));
        const centre = point(40, 60);
        assert.equal(
          contains(
            outline.map((path) => path.transformed(map)),
            apply(map, centre),
          ),
          contains(outline, centre),
        );
      });
    }

    it(`${name} walked the other way measures and cuts the same`, () => {
      const back = outline.map((path) => path.reversed()).reverse();
      const { corners: _corners, ...there } = measured(outline);
      const allowances = ALLOWANCES.slice(0, outline.length).reverse();
      const { corners, ...here } = measured(back, allowances);
      assertSame({ ...here, corners }, { ...there, corners });
    });
  }

  it('crossings come out the same from either path and under every map', () => {
    const [a, b] = [bodice()[2]!, Path.line(point(100, 60), point(300, 180))];
    const wanted = intersections(a, b);
    assert.equal(wanted.length, 1);
    for (const map of [identity, ...Object.values(WAYS)]) {
      const found = intersections(b.transformed(map), a.transformed(map));
      assert.equal(found.length, 1);
      near(found[0]!.sB, wanted[0]!.sA, 1e-7);
      near(found[0]!.sA, wanted[0]!.sB, 1e-7);
    }
  });
});
