/** Where a band is notched: at the seams it passes, across from its opening, and at the end of its underlap. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Workshop } from '../../server/drafting/workshop';
import { drafted, edgeOf, pieceOf } from '../support/drafted';

/** A skirt of plain rectangles: a quarter of the front is 18cm wide, of the back 16cm. */
const skirt = (seams: string): string => `draft skirt {
  point a = origin
  point b = a right 18cm
  point c = b down 60cm
  point d = a down 60cm
  point e = a left 30cm
  point f = e left 16cm
  point g = f down 60cm
  point h = e down 60cm
}
piece front of skirt {
  cut 1 on fold
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  fold centre
  grain along centre
  allow 1cm
}
piece back of skirt {
  cut pair
  outline from f {
    waist straight to e
    side straight to h
    hem straight to g
    centre straight to f
  }
  grain along centre
  allow 1cm
}
seam waist front.waist + back.waist = waistband.lower
finish hem front.hem, back.hem turned up 2cm
${seams}`;

const ZIP = 'seam side front.side = back.side\nseam closing back.centre = its pair, zip 20cm from f\n';
const PLAIN = 'seam side front.side = back.side\nseam closing back.centre = its pair\n';
const band = (words = ''): string => `band waistband for waist, 4cm wide${words}\n`;

/** Names and places, mm from the end on the left of the paper, which is the wearer's right. */
function notches(text: string, edge = 'lower'): string[] {
  return pieceOf(drafted(text), 'waistband')
    .notches.filter((notch) => notch.edge === edge)
    .sort((a, b) => a.point.x - b.point.x)
    .map(({ name, point, count }) => `${name} ${point.x.toFixed(2)}${count === 1 ? '' : ` x${count}`}`);
}

describe('a band', () => {
  it('is notched where the edges join that it goes round, and across from its opening', () => {
    // back 160, front 2 x 180, back 160: from the closing round to the closing
    assert.deepEqual(notches(skirt(ZIP + band())), ['side 160.00', 'centre 340.00', 'side 520.00']);
    assert.deepEqual(notches(skirt(ZIP + band()), 'upper'), notches(skirt(ZIP + band())));
  });

  it('has a notch where its underlap begins, on the side where that lies', () => {
    const left = notches(skirt(ZIP + band(', underlap 3cm at left')));
    assert.deepEqual(left, ['side 160.00', 'centre 340.00', 'side 520.00', 'underlap 680.00']);
    const right = notches(skirt(ZIP + band(', underlap 3cm at right')));
    assert.deepEqual(right, ['underlap 30.00', 'side 190.00', 'centre 370.00', 'side 550.00']);
  });

  it('takes the notches of its seam, once on either side of the wearer', () => {
    const own = 'notch tuck on waist at 5cm from a, double\n';
    assert.deepEqual(notches(skirt(ZIP + band() + own)), [
      'side 160.00',
      'tuck 290.00 x2',
      'centre 340.00',
      'tuck 390.00 x2',
      'side 520.00',
    ]);
  });

  it('has no notch of its own where nothing tells where its ends lie', () => {
    assert.deepEqual(notches(skirt(PLAIN + band())), [], 'nothing opens');
    const twice = ZIP.replace('back.side\n', 'back.side, zip 20cm from b\n');
    assert.deepEqual(notches(skirt(twice + band())), [], 'two openings');
    const open = 'seam closing back.centre = its pair, zip 20cm from f\n';
    assert.deepEqual(notches(skirt(open + band())), [], 'the sides are not sewn');
  });

  it('has no notch when it is cut for another ring than the one it is sewn to', () => {
    assert.deepEqual(notches(skirt(`${ZIP}band waistband for front.waist, 4cm wide\n`)), []);
  });

  it('follows the seams as they are edited', () => {
    const workshop = new Workshop({ read: () => undefined, resolve: (_, path) => ({ uri: path }) });
    const places = (text: string): number => {
      workshop.setText('test.draft', text);
      return pieceOf(workshop.pattern('test.draft'), 'waistband').notches.length;
    };
    assert.deepEqual(
      [PLAIN, ZIP, PLAIN].map((seams) => places(skirt(seams + band()))),
      [0, 6, 0],
    );
  });

  it('of the harbour skirt is notched at sums of sewn lengths', () => {
    const door = {
      read: (uri: string) => readFileSync(uri, 'utf8'),
      resolve: (from: string, path: string) => ({ uri: join(dirname(from), path) }),
    };
    const pattern = new Workshop(door).pattern('samples/harbour-skirt.draft');
    const [back, front] = ['back', 'front'].map((name) => edgeOf(pieceOf(pattern, name), 'waist').sewn);
    const found = pieceOf(pattern, 'waistband').notches.filter(({ edge }) => edge === 'lower');
    const at = found.map(({ point }) => point.x).sort((a, b) => a - b);
    const expected = [back!, back! + front!, back! + 2 * front!, 2 * (back! + front!)];
    assert.equal(at.length, expected.length);
    at.forEach((x, i) => assert.ok(Math.abs(x - expected[i]!) < 1e-6, `${x} for ${expected[i]}`));
  });
});
