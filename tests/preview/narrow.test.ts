/** The preview in a column that is hardly wider than a hand: what its lists say can be read to the end. */
import assert from 'node:assert/strict';
import { skirt } from '../support/drawings';
import { fullSheet } from '../support/preview-page';
import { describeView } from '../support/preview-suite';
import { read } from '../support/sources';

const german: Record<string, string> = JSON.parse(read('client/l10n/bundle.l10n.de.json'));
/** With a row of its own, so that there is a list of choices. */
const choices = [
  { path: 'hip-ease', doc: '', value: '4cm', written: '4cm', low: '2cm', high: '9cm', among: [] },
];

const LISTS = ['choices', 'show', 'find', 'tools', 'export'];

describeView('preview in a narrow column', ({ opened, withSkirt }) => {
  for (const width of [300, 320, 390, 420]) {
    it(`no list leaves the page or cuts its words off at ${width} pixels, in German either`, async () => {
      const v = await opened({ width, height: 700, words: german });
      await v.send(fullSheet(skirt(), { choices }));
      for (const name of LISTS) {
        await v.page.locator(`.opens.${name}`).click();
        const seen = await v.page.locator(`.${name}-list`).evaluate((panel) => {
          const { left, right } = panel.getBoundingClientRect();
          return { left, right, hidden: panel.scrollWidth - panel.clientWidth };
        });
        assert.ok(seen.left >= 0 && seen.right <= width, `${name} lies from ${seen.left} to ${seen.right}`);
        assert.equal(seen.hidden, 0, `pixels of ${name} that are cut off`);
        await v.page.keyboard.press('Escape');
      }
    });
  }

  it('a row of the list of everything that goes on below stands under its own name', async () => {
    const v = await withSkirt({ width: 300, height: 700 });
    await v.page.locator('.opens.tools').click();
    await v.page.locator('.tools-list .tool.contents').press('Enter');
    const lefts = await v.page
      .locator('.contents-list [aria-level="1"]')
      .first()
      .evaluate((row) => {
        row.textContent =
          'a front that is cut once on the fold of the cloth and has four edges and three seams';
        const range = document.createRange();
        range.selectNodeContents(row);
        return [...range.getClientRects()].map(({ left }) => Math.round(left));
      });
    assert.ok(lefts.length > 1, 'the row goes on below');
    assert.equal(new Set(lefts).size, 1, `its lines begin at ${lefts.join(', ')}`);
  });
});
