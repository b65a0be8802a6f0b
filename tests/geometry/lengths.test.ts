/** Lengths of curves against closed forms, a slow sum and a reference library. */
import assert from 'node:assert/strict';
import { svgPathProperties } from 'svg-path-properties';
import {
  circle,
  cubic,
  gaussLegendre,
  lengthBetween,
  line,
  ORIGIN,
  parameterAtLength,
  point,
  scaling,
  segmentLength,
} from '../../server/geometry';
import { lengthBySteps, near, strewnCubics } from '../support/curves';

describe('lengths of curves', () => {
  it('the nodes and weights of the quadrature are those of the handbook', () => {
    // Abramowitz & Stegun, Handbook of Mathematical Functions, table 25.4, n = 8 (from memory), carried to 0..1.
    const { nodes, weights } = gaussLegendre(8);
    const table = [
      [0.960289856497536, 0.10122853629037626],
      [0.796666477413627, 0.22238103445337447],
      [0.525532409916329, 0.31370664587788729],
      [0.18343464249565, 0.36268378337836198],
    ];
    table.forEach(([x, w], i) => {
      near(nodes[i]!, (1 - x!) / 2, 1e-14);
      near(weights[i]!, w! / 2, 1e-14);
    });
  });

  it('a parabola is as long as the logarithm says, for every accuracy asked', () => {
    // y = x² from 0 to 1 is √5/2 + asinh(2)/4 long; as a cubic by raising the degree of (0,0) (1/2,0) (1,1).
    const parabola = cubic(point(0, 0), point(1 / 3, 0), point(2 / 3, 1 / 3), point(1, 1));
    const exact = Math.sqrt(5) / 2 + Math.asinh(2) / 4;
    for (let digits = 1; digits <= 12; digits++) {
      const accuracy = 10 ** -digits;
      near(segmentLength(parabola, accuracy), exact, accuracy, `accuracy ${accuracy}`);
    }
  });

  it('a cubic with an exact cusp has the length of its two branches', () => {
    // x = t², y = t³ from -1 to 1 (Neile's parabola): 2 (13√13 - 8)/27.
    const neile = cubic(point(1, -1), point(-1 / 3, 1), point(-1 / 3, -1), point(1, 1));
    near(segmentLength(neile, 1e-12), (2 * (13 * Math.sqrt(13) - 8)) / 27, 1e-12);
  });

  it('a curve that runs out and back along one line counts both ways', () => {
    const back = cubic(point(0, 0), point(90, 0), point(90, 0), point(0, 0));
    near(segmentLength(back), 2 * 67.5, 1e-9);
    const handles = cubic(point(0, 0), point(200, 0), point(-100, 0), point(100, 0));
    near(segmentLength(handles), lengthBySteps(handles, 400_000), 1e-6);
  });

  it('curves with a sharp turn that is nearly a cusp are still measured truly', () => {
    for (const miss of [1, 0.1, 0.01]) {
      const sharp = cubic(point(0, 0), point(100 + miss, 100), point(0, 100), point(100, 0));
      near(segmentLength(sharp), lengthBySteps(sharp, 300_000), 1e-7, `miss ${miss}`);
    }
  });

  it('strewn cubics agree with a slow sum to a millionth of a millimetre', () => {
    for (const seg of strewnCubics(60, 11)) near(segmentLength(seg), lengthBySteps(seg), 1e-6);
  });

  it('strewn cubics agree with an independent library', () => {
    // svg-path-properties takes one Gauss-Legendre sum over the whole curve, so gentle curves are compared.
    for (const { p0, p1, p2, p3 } of strewnCubics(40, 5)) {
      const gentle = cubic(
        p0,
        point(p0.x + 60, p1.y / 4 + p0.y),
        point(p0.x + 120, p2.y / 4 + p0.y),
        point(p0.x + 180, p3.y),
      );
      const [a, b, c, d] = [gentle.p0, gentle.p1, gentle.p2, gentle.p3].map(({ x, y }) => `${x},${y}`);
      const other = new svgPathProperties(`M${a} C${b} ${c} ${d}`).getTotalLength();
      near(segmentLength(gentle), other, 1e-6);
    }
  });

  it('an ellipse drawn as a chain of cubics has the perimeter of the ellipse', () => {
    // Exact perimeters by the arithmetic-geometric mean, computed.
    const table = [
      [2, 1, 9.6884482205],
      [5, 3, 25.5269988634],
      [10, 8, 56.7233357779],
      [12.5, 7.5, 63.8174971585],
      [20, 1, 80.3885123829],
    ];
    for (const [a, b, perimeter] of table) {
      const ellipse = circle(ORIGIN, 1).transformed(scaling(ORIGIN, a!, b!));
      near(ellipse.length, perimeter!, 2e-8 * perimeter!, `axes ${a}, ${b}`);
    }
  });

  it('the place at a length is found back to a billionth', () => {
    for (const seg of strewnCubics(40, 3)) {
      const total = segmentLength(seg);
      for (const share of [0.01, 0.3, 0.77]) {
        const t = parameterAtLength(seg, share * total, total);
        near(lengthBetween(seg, 0, t), share * total, 1e-9);
      }
    }
  });

  it('a length taken backwards is the negative of the same length', () => {
    const seg = strewnCubics(1, 9)[0]!;
    near(lengthBetween(seg, 0.8, 0.1) + lengthBetween(seg, 0.1, 0.8), 0, 1e-12);
    assert.equal(segmentLength(line(point(0, 0), point(3, 4))), 5);
  });
});
