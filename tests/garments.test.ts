/** The company's garments have the shapes that a second, separate evaluator gave them before this one was written. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import type { Pattern } from '../server/drafting/model';
import type { Point } from '../server/geometry';
import { patternOf } from './support/faults';

interface Garment {
  readonly for: string;
  readonly values: Readonly<Record<string, number>>;
  readonly points: Readonly<Record<string, readonly [number, number]>>;
}

const { about: _, ...garments } = JSON.parse(readFileSync('tests/support/garments.json', 'utf8')) as Record<
  string,
  Garment
>;

/** Millimetres: points and worked values; curves, whose handles are a choice of the evaluator. */
const POINT = 0.1;
const CURVE = 0.2;

/** Rests on edges of pieces whose darts are not drawn yet: what it has must be right, and something must be lacking. */
const waiting: ReadonlySet<string> = new Set([]);

/** A value, or the length of a line or curve. */
function measured(pattern: Pattern, path: string): number | undefined {
  const value = pattern.values.get(path);
  if (value !== undefined && value.kind !== 'text') return value.amount;
  const shape = pattern.shapes.get(path);
  return shape === undefined || shape.kind === 'point' ? undefined : shape.path.length;
}

function placed(pattern: Pattern, path: string): Point | undefined {
  const shape = pattern.shapes.get(path);
  return shape?.kind === 'point' ? shape.point : undefined;
}

/** Names whose figure is wrong; names that have none, unless the garment waits for something. */
function wrong<T, F>(
  name: string,
  wanted: Readonly<Record<string, T>>,
  find: (path: string) => F | undefined,
  same: (found: F, wanted: T) => boolean,
): string[] {
  const found = Object.entries(wanted).map(([path, figure]) => [path, find(path), figure] as const);
  const lacking = found.flatMap(([path, it]) => (it === undefined ? [path] : []));
  if (waiting.has(name)) assert.notEqual(lacking.length, 0, `${name} waits for nothing any more`);
  const off = found.flatMap(([path, it, figure]) => (it !== undefined && !same(it, figure) ? [path] : []));
  return waiting.has(name) ? off : [...lacking, ...off];
}

describe('the shapes of the garments', () => {
  for (const [name, garment] of Object.entries(garments)) {
    it(`lie where they should in ${name}: points within a tenth of a millimetre`, () => {
      const pattern = patternOf(`${name}.draft`);
      const near = (found: Point, [x, y]: readonly [number, number]): boolean =>
        Math.hypot(found.x - x, found.y - y) <= POINT;
      assert.deepEqual(
        wrong(name, garment.points, (path) => placed(pattern, path), near),
        [],
      );
    });

    it(`measure what they should in ${name}: curves within two tenths of a millimetre`, () => {
      const pattern = patternOf(`${name}.draft`);
      const near = (found: number, figure: number): boolean => Math.abs(found - figure) <= CURVE;
      assert.deepEqual(
        wrong(name, garment.values, (path) => measured(pattern, path), near),
        [],
      );
    });
  }
});
