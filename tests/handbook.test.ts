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
  'bodice-by-measure-1884.draft': 43,
  'bodice-by-proportion-1884.draft': 16,
  'capes.draft': 5,
  'child-skirt-1911.draft': 9,
  'circle-skirts-inches.draft': 12,
  'circle-skirts.draft': 20,
  'circular-foundation-1916.draft': 3,
  'collars-1918.draft': 13,
  'dart-angles.draft': 4,
  'shirt-waist-back-1911.draft': 11,
  'skirt-block-wikieducator.draft': 19,
  'trousers-rules.draft': 12,
  'two-piece-sleeve-1918.draft': 9,
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

  it('reports the darts of 1884 when they are sewn as they are drawn', () => {
    const path = join(folder, 'bodice-by-measure-1884.draft');
    const uri = pathToFileURL(path).href;
    const cut = new Workshop(diskDoor(folder));
    cut.setText(uri, `${readFileSync(path, 'utf8')}${front}`);
    const found = check(cut.pattern(uri)).filter(({ code }) => code === 'unequal-legs');
    // the front legs are 0.207 inches apart; the back ones 0.035, nine tenths of a millimetre, which the needle eases
    assert.deepEqual(
      found.map(({ message }) => message.split(', and ')[0]),
      ['The legs of front-dart are 4.4106in and 4.2033in long: they differ by 0.207in'],
    );
  });
});

/** The front of the tight bodice from the breast line down, with both darts in its outline. */
const front = `
piece front of bodice {
  outline from D {
    centre straight to U
    waist straight to dart5
      then dart front-dart by tip22 to dart6
      then straight to dart7
      then dart back-dart by tip23 to dart8
      then straight to waist-under-h
    side straight to H
    upper straight to D
  }
}
`;
