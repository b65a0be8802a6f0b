/** Pieces sewn to copies of themselves: a ring of gores is as long as all of them. */
import assert from 'node:assert/strict';
import { writtenSheet } from '../../server/drawing/written';
import { patternIn } from '../support/drafts';

const gores = (cut: string, seam: string, more = ''): string => `draft gore {
  point a = origin
  point b = a right 6cm
  point c = b right 4cm down 60cm
  point d = a down 60cm
}
piece panel of gore {
  cut ${cut}
  outline from a {
    waist straight to b
    side straight to c
    hem straight to d
    middle straight to a
  }
  ${cut.includes('fold') ? 'fold middle\n  ' : ''}grain along middle
  allow 1cm
}
${seam}
band waistband for panel.waist, 3cm wide, underlap 3cm at left
${more}`;

/** The band without its underlap, in cm. */
function ring(text: string): number {
  const band = patternIn(text).pieces.find(({ name }) => name === 'waistband')!;
  return Math.round(band.edges.find(({ name }) => name === 'lower')!.sewn - 30) / 10;
}

describe('pieces sewn to copies of themselves', () => {
  it('go round as often as they are cut, on the fold twice each', () => {
    assert.equal(ring(gores('6 on fold', 'seam joins panel.side = its pair')), 72);
    assert.equal(ring(gores('8 alike', 'seam joins panel.side = panel.middle')), 48);
    assert.equal(
      ring(gores('3 pairs', 'seam joins panel.side = its pair\nseam backs panel.middle = its pair')),
      36,
    );
  });

  it('go round as often as a choice has them cut', () => {
    const text = `choose count = 6 among 6, 8\n${gores('(count) alike', 'seam joins panel.side = panel.middle')}`;
    assert.equal(ring(text), 36);
    assert.equal(ring(text.replace('= 6 among', '= 8 among')), 48);
  });

  it('go round once where nothing sews them to each other, as layers of a yoke do', () => {
    assert.equal(ring(gores('2 on fold', '')), 12);
    assert.equal(ring(gores('4 alike', '')), 6);
  });

  it('lie in layers where their seams leave one opening alone, as the ends of a collar do', () => {
    const collar = 'seam ends panel.side = its pair\nseam outer panel.hem = its pair';
    assert.equal(ring(gores('2 on fold', collar)), 12);
  });

  it('are counted anew when a seam comes or goes', () => {
    const seam = 'seam joins panel.side = its pair';
    assert.equal(ring(gores('6 on fold', seam)), 72);
    assert.equal(ring(gores('6 on fold', seam.replace('its pair', 'panel.hem'))), 12);
  });

  it('are told as often in the sheets: the girth of all, each seam of six', () => {
    const pattern = patternIn(
      gores('6 on fold', 'seam joins panel.side = its pair', 'seam waist panel.waist = waistband.lower'),
    );
    const rows = writtenSheet('finished', pattern, {}).tables.flatMap(({ rows: of }) => of);
    const told = rows.map(({ cells }) => [cells[0], cells[2], cells[3]].join(' '));
    assert.ok(told.includes('waist all round 72.00'), told.join('; '));
    assert.ok(told.includes('joins each of 6 60.13'), told.join('; '));
    const [order] = writtenSheet('sewing', pattern, {}).tables;
    assert.ok(order!.rows.some(({ cells }) => cells.includes('6 times')));
  });

  it('are a front and a back alike where there are two of them, with a seam on each side', () => {
    const pattern = patternIn(
      gores('2 on fold', 'seam joins panel.side = its pair', 'seam waist panel.waist = waistband.lower'),
    );
    const rows = writtenSheet('finished', pattern, {}).tables.flatMap(({ rows: of }) => of);
    const told = rows.map(({ cells }) => [cells[0], cells[2], cells[3]].join(' '));
    assert.ok(told.includes('waist all round 24.00'), told.join('; '));
    assert.ok(told.includes('joins each side 60.13'), told.join('; '));
    const [order] = writtenSheet('sewing', pattern, {}).tables;
    assert.ok(order!.rows.some(({ cells }) => cells.includes('once a side')));
  });
});
