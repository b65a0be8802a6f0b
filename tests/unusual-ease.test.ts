/** Ease round the body: judged where it is plain what goes round what, and silent everywhere else. */
import assert from 'node:assert/strict';
import { check } from '../server/checks/index';
import { patternIn } from './support/drafts';

const body = `body ferrywoman {
  waist 74cm
  hip 98cm
  upper-arm 28cm
}
drafted for ferrywoman
`;

/** A half skirt, 49cm across at the hip: on the fold and sewn to its pair it is as wide as the body. */
const skirt = `draft skirt {
  point waist-cf = origin
  point hip-cf = waist-cf down 20cm
  point hem-cf = waist-cf down 60cm
  point waist-side = waist-cf left 37cm
  point hip-side = hip-cf left 49cm
  point hem-side = hem-cf left 49cm
}
piece front of skirt {
  cut 1 on fold
  outline from waist-cf {
    centre straight to hem-cf
    hem straight to hem-side
    side straight to hip-side
      then straight to waist-side
    waist straight to waist-cf
  }
  fold centre
  grain along centre
  balance line hip-line from hip-cf to hip-side
  allow 1.5cm
}
finish top front.waist bound 1cm
finish hem front.hem turned up 4cm
`;

const easesOf = (text: string): readonly string[] =>
  check(patternIn(body + text)).flatMap(({ code, message }) =>
    code === 'unusual-ease' ? [message.replace(/; usual.*/, '')] : [],
  );

const TIGHT = 'Round the hip the garment measures 98cm (hip-line of front), and ferrywoman 98cm: 0mm of ease';

describe('ease round the body', () => {
  it('is counted along balance lines from fold to seam', () =>
    assert.deepEqual(easesOf(`${skirt}seam side front.side = its pair\n`), [TIGHT]));

  it('is counted over the pieces that meet at their seams', () => {
    const halves = skirt.replaceAll('49cm', '24.5cm').replace('left 37cm', 'left 18cm');
    const back = 'piece back worked from front {\n  cut 1 on fold\n  fold centre\n}\n';
    const seam = 'seam side front.side = back.side\n';
    assert.deepEqual(easesOf(halves + back + seam), [TIGHT.replace('of front', 'of front and back')]);
  });

  it('is not counted where the ring stays open, is laced, or is sewn along a stretch alone', () => {
    assert.deepEqual(easesOf(`${skirt}finish side front.side turned up 2cm\n`), []);
    assert.deepEqual(easesOf(`${skirt}seam side front.side = its pair, laced\n`), []);
    assert.deepEqual(easesOf(`${skirt}seam side front.side from hip-side to hem-side = its pair\n`), []);
  });

  it('is not counted where a dart reaches over the line, or for nobody', () => {
    const dart =
      '  dart hip-dart on waist at 10cm from waist-cf, 2cm wide, 25cm long, pressed toward centre\n';
    const darted = skirt.replace('  allow 1.5cm\n', `  allow 1.5cm\n${dart}`);
    assert.deepEqual(easesOf(`${darted}seam side front.side = its pair\n`), []);
    const nobody = `${skirt}seam side front.side = its pair\n`;
    assert.ok(check(patternIn(nobody)).every(({ code }) => code !== 'unusual-ease'));
  });

  it('is counted round a limb once, for a sleeve is cut as a pair', () => {
    const sleeve = (width: string): string => `draft sleeve {
  point under-b = origin
  point under-f = under-b right ${width}
  point wrist-b = under-b down 40cm
  point wrist-f = under-f down 40cm
}
piece sleeve-piece of sleeve {
  cut pair
  outline from under-b {
    head straight to under-f
    under-front straight to wrist-f
    hem straight to wrist-b
    under-back straight to under-b
  }
  grain along under-back
  balance line upper-arm-line from (under-b down 2cm) to (under-f down 2cm)
  allow 1.5cm
}
seam under sleeve-piece.under-front = sleeve-piece.under-back
finish head sleeve-piece.head raw
finish hem sleeve-piece.hem turned up 3cm
`;
    assert.deepEqual(easesOf(sleeve('31cm')), []);
    assert.deepEqual(easesOf(sleeve('30cm')), [
      'Round the upper arm the garment measures 30cm (upper-arm-line of sleeve-piece), and ferrywoman 28cm: 2cm of ease',
    ]);
  });

  it('is counted by a band without its underlap', () => {
    const banded = (width: string): string =>
      `${skirt.replace('finish top front.waist bound 1cm\n', '').replace('left 37cm', `left ${width}`)}
seam side front.side = its pair
seam waist front.waist = waistband.lower
band waistband for front.waist, 4cm wide, underlap 3cm at left
accept unusual-ease at front because "only the waist is looked at"
`;
    const ofWaist = (width: string) =>
      easesOf(banded(width)).filter((line) => line.startsWith('Round the waist'));
    assert.deepEqual(ofWaist('37cm'), []);
    assert.deepEqual(ofWaist('36cm'), [
      'Round the waist the garment measures 72cm (waistband), and ferrywoman 74cm: 2cm less than the body',
    ]);
  });

  it('is not counted where a bib takes a part of the band', () => {
    const banded = `${skirt.replace('finish top front.waist bound 1cm\n', '')}
seam side front.side = its pair
seam waist front.waist = waistband.lower
band waistband for front.waist, 4cm wide
draft bib {
  point o = origin
  point side = o right 12cm
  point tip = side up 25cm
  point top = o up 25cm
}
piece bib-piece of bib {
  cut 1 on fold
  outline from o {
    waist straight to side
    side straight to tip
    top straight to top
    centre straight to o
  }
  fold centre
  grain along centre
  allow 1cm
}
seam bib bib-piece.waist = waistband.upper from 25cm from waistband.upper.start to 49cm from waistband.upper.start
finish bib-edges bib-piece.side, bib-piece.top turned twice 1cm
`;
    assert.deepEqual(
      easesOf(banded).filter((line) => line.startsWith('Round the waist')),
      [],
    );
  });
});
