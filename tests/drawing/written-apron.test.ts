/** Written sheets of an apron, of which not every turned edge is a hem and not every edge of the band goes round the body. */
import assert from 'node:assert/strict';
import { rowsOf, sheetOfText } from '../support/written';

/** A skirt on a band, a bib on a part of the same band, and a pocket that is put on by hand. */
const apron = `pattern "Apron"
body scullion {
  waist 72cm
}
drafted for scullion
draft flat {
  point o = origin
  point a = o right 36cm
  point b = a down 50cm
  point c = o down 50cm
  point d = o right 12cm
  point e = d up 25cm
  point f = o up 25cm
}
piece skirt of flat {
  cut 1 on fold
  outline from o {
    waist straight to a
    side straight to b
    hem straight to c
    centre straight to o
  }
  fold centre
  grain along centre
  allow 1cm
}
piece bib of flat {
  cut 1 on fold
  outline from o {
    foot straight to d
    side straight to e
    top straight to f
    centre straight to o
  }
  fold centre
  grain along centre
  allow 1cm
}
piece pocket worked from bib {
  cut 1 on fold
}
band waistband for skirt.waist, 4cm wide
seam waist skirt.waist = waistband.lower
seam bib bib.foot = waistband.upper from 24cm from waistband.upper.start to 48cm from waistband.upper.start
finish hem skirt.hem turned twice 3cm
finish sides skirt.side, bib.side, bib.top turned twice 1cm
finish pocket pocket.foot, pocket.side, pocket.top turned up 1cm
`;

describe('finished measurements of an apron', () => {
  it('tell a band round the body alone where it is sewn all round, not where a bib takes a part of it', () => {
    const [girths] = sheetOfText('finished', apron).tables;
    assert.deepEqual(
      girths!.rows.map(({ cells }) => cells.slice(0, 4)),
      [['waist', 'waistband', 'all round', '72.00']],
    );
  });
});

describe('a fit sheet of an apron', () => {
  it('measures from the floor what hangs there: no side of a bib, and no pocket', () => {
    const [, looks] = sheetOfText('fit', apron).tables;
    const hem = looks!.rows.find(({ cells }) => cells[0]!.startsWith('The hem is level'));
    assert.equal(hem?.cells[1], 'hem');
  });
});

describe('a sewing order of an apron', () => {
  it('makes a pocket before it is put on, whatever seams there are', () => {
    const [first, ...rest] = rowsOf(sheetOfText('sewing', apron)).map(
      ([, step, , , , why]) => `${step}: ${why}`,
    );
    assert.equal(first, 'turn up pocket: by itself, before it is put on the others');
    assert.equal(rest.at(-1), 'turn twice sides: hems last, once the length was tried on');
  });
});
