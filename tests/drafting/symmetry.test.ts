/** A pattern drawn elsewhere on the paper, or its pieces turned and mirrored, measures the same and has the same faults. */
import assert from 'node:assert/strict';
import { check } from '../../server/checks/index';
import type { Pattern } from '../../server/drafting/model';
import { areaOf, mirror, point, rotation, translation, type Affine } from '../../server/geometry';
import { near } from '../support/curves';
import { drafts, patternOf, sampleText } from '../support/faults';

/** A millionth of a millimetre, and of a square centimetre. */
const WITHIN = 1e-6;
const AREA_WITHIN = 1e-4;

/** Every origin of the drafts ten metres away; comments and texts stay. */
const shifted = (text: string): string =>
  text
    .split('\n')
    .map((line) =>
      /^\s*#/.test(line) ? line : line.replace(/(?<![\w"-])origin(?![\w-])/g, '(origin right 10m down 10m)'),
    )
    .join('\n');

interface Figure {
  readonly what: string;
  readonly amount: number;
  readonly within: number;
}

/** Every length and area of a pattern. */
function figures(pattern: Pattern): readonly Figure[] {
  const length = (what: string, amount: number): Figure => ({ what, amount, within: WITHIN });
  return [
    ...[...pattern.values].flatMap(([path, value]) =>
      value.kind === 'text' ? [] : [length(path, value.amount)],
    ),
    ...[...pattern.shapes].flatMap(([path, shape]) =>
      shape.kind === 'point' ? [] : [length(path, shape.path.length)],
    ),
    ...pattern.pieces.flatMap(({ name, area, edges }) => [
      { what: name, amount: area, within: AREA_WITHIN },
      ...edges.flatMap((edge) => [
        length(`${name}.${edge.name} drawn`, edge.drawn),
        length(`${name}.${edge.name} sewn`, edge.sewn),
      ]),
    ]),
    ...pattern.seams.map(({ name, difference }) => length(`seam ${name}`, difference)),
  ];
}

const said = (pattern: Pattern) =>
  check(pattern).map(({ code, severity, message }) => `${severity} ${code}: ${message}`);

const WAYS: Readonly<Record<string, Affine>> = {
  'a quarter turn': rotation(point(0, 0), Math.PI / 2),
  'a half turn': rotation(point(0, 0), Math.PI),
  'three quarter turns': rotation(point(0, 0), -Math.PI / 2),
  'one radian': rotation(point(100, 50), 1),
  'a mirror': mirror(point(0, 0), point(1, 2)),
  'ten metres': translation(point(10_000, 10_000)),
};

describe('patterns elsewhere on the paper', () => {
  for (const path of drafts('.')) {
    it(`measure and say the same ten metres away: ${path}`, () => {
      const [here, there] = [patternOf(path), patternOf(path, shifted(sampleText(path)))];
      const moved = figures(there);
      assert.deepEqual(
        moved.map(({ what }) => what),
        figures(here).map(({ what }) => what),
      );
      figures(here).forEach(({ what, amount, within }, i) => near(moved[i]!.amount, amount, within, what));
      assert.deepEqual(said(there), said(here));
    });

    it(`have pieces that measure the same turned, mirrored and moved: ${path}`, () => {
      for (const { name, edges, area } of patternOf(path).pieces) {
        for (const [way, m] of Object.entries(WAYS)) {
          const paths = edges.map((edge) => edge.path.transformed(m));
          paths.forEach((moved, i) =>
            near(moved.length, edges[i]!.path.length, WITHIN, `${name}.${edges[i]!.name}, ${way}`),
          );
          near(
            Math.abs(areaOf(paths)),
            Math.abs(areaOf(edges.map((edge) => edge.path))),
            AREA_WITHIN,
            `${name}, ${way}`,
          );
        }
        assert.ok(Math.abs(area) > 0, name);
      }
    });
  }
});
