/** The well-known measurements are complete, tell a person how to take them, and have ranges that real bodies fit. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { measurementNamed, measurements } from '../../server/drafting/values/measurements';

/**
 * 5th and 95th percentile in millimetres, women and men, the wider of the two surveys: ANSUR I (1988) and ANSUR II
 * (2012), US Army, public domain.
 */
const surveyed: readonly (readonly [name: string, low: number, high: number])[] = [
  ['waist', 637, 1131],
  ['bust', 824, 1207],
  ['hip', 901, 1156],
  ['nape-to-waist', 327, 524],
  ['neck', 340, 479],
  ['mid-neck', 302, 443],
  ['shoulder', 120, 167],
  ['across-back', 326, 501],
  ['nape-to-wrist', 746, 963],
  ['crotch-length', 549, 701],
  ['inside-leg', 712, 925],
  ['thigh', 527, 723],
  ['upper-arm', 259, 418],
  ['wrist', 142, 191],
  ['bust-separation', 158, 212],
  ['neck-to-bust', 234, 306],
  ['waist-to-hip', 114, 182],
  ['scye-depth', 163, 210],
  ['armhole', 336, 411],
];

describe('the well-known measurements', () => {
  it('are about fifty, each named once, in lower case with hyphens', () => {
    assert.equal(measurementNamed.size, measurements.length);
    assert.ok(measurements.length >= 45 && measurements.length <= 60, `${measurements.length}`);
    for (const { name } of measurements) assert.match(name, /^[a-z]+(-[a-z]+)*$/);
  });

  it('each say what they are and how they are taken, in whole sentences', () => {
    for (const { name, definition, howToTake, source } of measurements) {
      for (const sentence of [definition, howToTake]) assert.match(sentence, /^[A-Z].*\.$/, name);
      assert.match(source, /ISO 8559-1.*from memory|common practice/, name);
    }
  });

  it('have a range that holds the middle nine tenths of two surveys', () => {
    for (const [name, low, high] of surveyed) {
      const range = measurementNamed.get(name);
      assert.ok(range !== undefined && range.low < low && high < range.high, name);
    }
  });

  it('hold every measurement of the company, within its range', () => {
    const sheet = readFileSync('samples/bodies/company.draft', 'utf8');
    const rows = [...sheet.matchAll(/^ {2}([a-z-]+)((?: (?:left |right )?[\d.]+cm)+)$/gm)];
    assert.ok(rows.length > 150);
    for (const [, name = '', cells = ''] of rows) {
      if (name === 'half-waist') continue;
      const range = measurementNamed.get(name);
      assert.ok(range !== undefined, name);
      for (const [, cm] of cells.matchAll(/([\d.]+)cm/g)) {
        const length = Number(cm) * 10;
        assert.ok(range.low <= length && length <= range.high, `${name} ${length}`);
      }
    }
  });
});
