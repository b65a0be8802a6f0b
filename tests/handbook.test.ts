/** Published drafts come out as printed: each file of `handbook/` names its source and bears its figures. */
import assert from 'node:assert/strict';
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { check } from '../server/checks/index';
import { Workshop } from '../server/drafting/workshop';
import { diskDoor } from './support/door';
import { missed, readingsOf } from './support/readings';

const folder = join(process.cwd(), 'tests', 'handbook');
const workshop = new Workshop(diskDoor(folder));

/** How many figures each draft must bear, so that none is lost by a slip of the comment. */
const figures: Readonly<Record<string, number>> = {
  'bodice-by-measure-1884.draft': 41,
  'bodice-by-proportion-1884.draft': 16,
  'capes.draft': 5,
  'circle-skirts-inches.draft': 12,
  'circle-skirts.draft': 20,
  'dart-angles.draft': 4,
  'shirt-waist-back-1911.draft': 11,
  'skirt-block-wikieducator.draft': 19,
  'width-triangle-1918.draft': 4,
};

describe('the handbook', () => {
  it('holds the drafts that are counted here, and no others', () => {
    assert.deepEqual(readdirSync(folder).sort(), Object.keys(figures).sort());
  });

  for (const [name, count] of Object.entries(figures)) {
    const uri = pathToFileURL(join(folder, name)).href;
    const readings = readingsOf(readFileSync(join(folder, name), 'utf8'));

    it(`comes out as printed in ${name}`, () => {
      assert.equal(readings.length, count);
      assert.deepEqual(missed(workshop.pattern(uri), readings), []);
    });

    it(`finds no fault in ${name}`, () => {
      const found = check(workshop.pattern(uri)).map(({ severity, message }) => `${severity}: ${message}`);
      assert.deepEqual(found, []);
    });
  }
});
