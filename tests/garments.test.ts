/** The company's garments have the shapes that a second, separate evaluator gave them before this one was written. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Pattern } from '../server/drafting/model';
import { Workshop } from '../server/drafting/workshop';
import { diskDoor } from './support/door';

interface Garment {
  readonly for: string;
  readonly values: Readonly<Record<string, number>>;
  readonly points: Readonly<Record<string, readonly [number, number]>>;
}

const { about: _, ...garments } = JSON.parse(readFileSync('tests/support/garments.json', 'utf8')) as Record<
  string,
  Garment
>;
const samples = join(process.cwd(), 'samples');

/** Millimetres: points and worked values; curves, whose handles are a choice of the evaluator. */
const POINT = 0.1;
const CURVE = 0.2;

const patternOf = (name: string): Pattern =>
  new Workshop(diskDoor(samples)).pattern(pathToFileURL(join(samples, `${name}.draft`)).href);

/** A value, or the length of a line or curve. */
function measured(pattern: Pattern, path: string): number | undefined {
  const value = pattern.values.get(path);
  if (value !== undefined && value.kind !== 'text') return value.amount;
  const shape = pattern.shapes.get(path);
  return shape === undefined || shape.kind === 'point' ? undefined : shape.path.length;
}

describe('the shapes of the garments', () => {
  for (const [name, garment] of Object.entries(garments)) {
    it(`lie where they should in ${name}: points within a tenth of a millimetre`, () => {
      const pattern = patternOf(name);
      const wrong = Object.entries(garment.points).filter(([path, [x, y]]) => {
        const shape = pattern.shapes.get(path);
        return shape?.kind !== 'point' || Math.hypot(shape.point.x - x, shape.point.y - y) > POINT;
      });
      assert.deepEqual(wrong, []);
    });

    it(`measure what they should in ${name}: curves within two tenths of a millimetre`, () => {
      const pattern = patternOf(name);
      const wrong = Object.entries(garment.values).filter(([path, wanted]) => {
        const found = measured(pattern, path);
        return found === undefined || Math.abs(found - wanted) > CURVE;
      });
      assert.deepEqual(wrong, []);
    });
  }
});
