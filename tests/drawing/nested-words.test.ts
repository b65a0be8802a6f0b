/** What stands on a nest of sizes as it is printed: figures that are not alike in all sizes are told of each. */
import assert from 'node:assert/strict';
import { nested, sizedFacts } from '../../server/drawing/paper/nested';
import { Workshop } from '../../server/drafting/workshop';
import { doorTo, MAIN } from '../support/drafts';

const SIZES = ['S', 'M', 'L'];

/** Its front is as long as half the hip. */
const skirt = (side: string, foot: string): string => `pattern "Deck skirt"
drafted for hands M

sizes hands {
  size S M L
  hip 92cm 100cm 100cm
}

draft flat {
  point a = origin
  point b = a right 25cm
  point c = b down hip / 2
  point d = a down hip / 2
  point k = origin right 60cm
  point l = k right 25cm
  point m = l down hip / 2
  point n = k down hip / 2
}
piece front of flat {
  cut pair
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    centre straight to a
  }
  grain along centre
  allow 1cm
}
piece back of flat {
  cut pair
  outline from k {
    waist straight to l
    side straight to m
    hem straight to n
    centre straight to k
  }
  grain along centre
  allow 1cm
}
seam side front.side = back.side${side}
seam front-seam front.centre = its pair
seam back-seam back.centre = its pair
finish hems front.hem, back.hem turned up ${foot}
finish waists front.waist, back.waist raw
`;

function wordsOf(text: string): string {
  const workshop = new Workshop(doorTo(text));
  workshop.setText(MAIN, text);
  const sized = SIZES.map((size) =>
    sizedFacts(workshop.pattern(MAIN, { for: { name: 'hands', size } }), size, SIZES, {}),
  );
  const { drawing } = nested(sized, {});
  return drawing.pieces[0]!.texts.map((one) => one.text).join(' ');
}

describe('the words on a nest of sizes', () => {
  it('tell what is said of some sizes alone with their names, and of all of them once', () => {
    const text = skirt('', '3cm');
    const workshop = new Workshop(doorTo(text));
    workshop.setText(MAIN, text);
    const sized = SIZES.map((size) =>
      sizedFacts(workshop.pattern(MAIN, { for: { name: 'hands', size } }), size, SIZES, {
        errorsOf: () => (size === 'S' ? 0 : 1),
      }),
    );
    const lines = nested(sized, {}).drawing.pieces[0]!.texts.map((one) => one.text);
    assert.ok(lines.includes('M, L: 1 error: mend before you cut'), lines.join(' | '));
    assert.equal(lines.filter((line) => line.includes('piece 1 of 2')).length, 1);
  });

  it('tell of each size how long an opening is', () => {
    assert.match(
      wordsOf(skirt(', zip hip / 5 from b', '3cm')),
      /side 46cm \/ 50cm \/ 50cm, sewn to back side, a zip over 18\.4cm \/ 20cm \/ 20cm, allow 1cm/,
    );
  });

  it('tell an opening once that is alike in all of them', () => {
    assert.match(wordsOf(skirt(', zip 20cm from b', '3cm')), /sewn to back side, a zip over 20cm, allow 1cm/);
  });

  it('tell of each size how far a hem is turned up, and how wide it is allowed', () => {
    assert.match(
      wordsOf(skirt('', 'hip / 25')),
      /hem 25cm, turned up 3\.68cm \/ 4cm \/ 4cm, allow 3\.68cm \/ 4cm \/ 4cm /,
    );
  });

  it('tell of each size how much fuller its hem is than where it lies', () => {
    const flared = skirt('', '3cm')
      .replace(
        '  point k',
        '  point low = d right 12cm down (hip - 88cm)\n  curve foot = c to d through low\n  point k',
      )
      .replace('hem straight to d', 'hem along foot to d');
    const found = /turned up 3cm, ([\d.]+)% \/ ([\d.]+)% \/ ([\d.]+)% fuller than where it lies/.exec(
      wordsOf(flared),
    );
    assert.ok(found, wordsOf(flared));
    const [small, medium, large] = found.slice(1).map(Number);
    assert.ok(small! < medium! && medium === large, found[0]);
  });
});
