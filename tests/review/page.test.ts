/** The page of a comparison that is kept and sent: in a real browser, without a network, in every scheme of colours. */
import assert from 'node:assert/strict';
import { mkdirSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser } from '../editor/browser.mjs';
import { axeFaults } from '../support/axe';
import { CommandFolder } from '../support/command';
import { read } from '../support/sources';

const SCHEMES = {
  light: { colorScheme: 'light' },
  dark: { colorScheme: 'dark' },
  contrast: { colorScheme: 'dark', forcedColors: 'active' },
} as const;

describe('the page of a comparison', () => {
  let browser: Browser | undefined;
  let [html, german] = ['', ''];
  before(async function () {
    this.timeout(60000);
    mkdirSync('out/pictures', { recursive: true });
    const skirt = read('samples/harbour-skirt.draft').replace('bodies/company.draft', 'company.draft');
    const folder = new CommandFolder({
      'a.draft': skirt,
      'b.draft': skirt
        .replace('skirt-length = 68cm', 'skirt-length = 62cm')
        .replace('hip-ease = 4cm', 'hip-ease = 8cm'),
      'company.draft': read('samples/bodies/company.draft'),
    });
    const asked = ['compare', 'a.draft', 'b.draft', '--format', 'html'];
    html = (await folder.run(...asked)).out;
    german = (await folder.run(...asked, '--language', 'de')).out;
    folder.remove();
    const launched = await launchBrowser();
    browser = launched.browser;
    if (browser === undefined) {
      process.stderr.write(`NOT TESTED, no browser starts here: ${launched.reasons?.join('; ')}\n`);
      this.skip();
    }
  });
  after(() => browser?.close());

  /** The page, what it complains of, and what it asked a network for. */
  async function opened(
    scheme: keyof typeof SCHEMES,
    body = html,
  ): Promise<{ page: Page; faults: string[] }> {
    const page = await browser!.newPage({ viewport: { width: 1280, height: 800 }, ...SCHEMES[scheme] });
    const faults: string[] = [];
    page.on('pageerror', (error) => faults.push(error.message));
    page.on('console', (message) => void (message.type() === 'error' && faults.push(message.text())));
    await page.route('**/*', (route) => {
      if (new URL(route.request().url()).pathname === '/page.html')
        return route.fulfill({ body, contentType: 'text/html' });
      if (!route.request().url().endsWith('favicon.ico')) faults.push(`asked for ${route.request().url()}`);
      return route.fulfill({ status: 404 });
    });
    await page.goto('http://review.invalid/page.html');
    return { page, faults };
  }

  const viewBoxes = (page: Page) =>
    page.locator('.stage svg').evaluateAll((all) => all.map((svg) => svg.getAttribute('viewBox')));

  it('is whole in itself: nothing is asked for and its policy refuses nothing of its own', async () => {
    const { page, faults } = await opened('light');
    assert.equal(await page.locator('.verdict').textContent(), '3 of 3 pieces changed.');
    assert.doesNotMatch(html, /(src|href)="?[a-z]+:/);
    for (const mode of ['Side by side', 'Swipe', 'On one another', 'Whole drawing'])
      await page.getByRole('button', { name: mode }).click();
    assert.deepEqual(faults, []);
    await page.close();
  }).timeout(60000);

  it('is told in German where that is asked, its script and its language as well', async () => {
    const { page, faults } = await opened('light', german);
    assert.equal(await page.locator('html').getAttribute('lang'), 'de');
    assert.equal(await page.locator('.verdict').textContent(), '3 von 3 Teilen geändert.');
    await page.getByRole('button', { name: 'Nebeneinander' }).click();
    assert.deepEqual(await page.locator('figcaption').allTextContents(), ['Wie es war', 'Wie es jetzt ist']);
    await page.getByRole('button', { name: 'Wischen' }).click();
    await page.getByRole('slider', { name: 'Wie viel von der alten Zeichnung zu sehen ist' }).fill('30');
    await page.screenshot({ path: 'out/pictures/review-german.png' });
    assert.deepEqual(await axeFaults(page), []);
    assert.deepEqual(faults, []);
    await page.close();
  }).timeout(60000);

  it('has a key whose words keep off the next sign and within the drawing, in either language', async () => {
    for (const body of [html, german]) {
      const { page } = await opened('light', body);
      const edges = await page.locator('.key > *').evaluateAll((all) =>
        all.map((node) => {
          const { left, right, top } = node.getBoundingClientRect();
          return { left, right, top };
        }),
      );
      const row = edges.slice(0, 5);
      row
        .slice(1)
        .forEach(({ left }, i) => assert.ok(row[i]!.right < left, `${i}: ${row[i]!.right} < ${left}`));
      const stage = (await page.locator('.stage svg').boundingBox())!;
      for (const { right } of edges) assert.ok(right <= stage.x + stage.width);
      await page.close();
    }
  }).timeout(60000);

  it('enlarges both drawings together, side by side', async () => {
    const { page } = await opened('light');
    await page.getByRole('button', { name: 'Side by side' }).click();
    const [before] = await viewBoxes(page);
    await page.locator('.stage svg').first().hover();
    await page.mouse.wheel(0, -300);
    await page.waitForFunction(
      (was) => document.querySelector('.stage svg')!.getAttribute('viewBox') !== was,
      before,
    );
    const [one, other] = await viewBoxes(page);
    assert.equal(one, other);
    await page.screenshot({ path: 'out/pictures/review-beside.png' });
    const shown = (only: string, look: string) =>
      page.locator(`.${only} .plate .${look}`).first().isVisible();
    assert.deepEqual(
      [
        await shown('only-was', 'was'),
        await shown('only-was', 'now'),
        await shown('only-now', 'was'),
        await shown('only-now', 'now'),
      ],
      [true, false, false, true],
    );
    await page.close();
  }).timeout(60000);

  it('swipes from the old to the new', async () => {
    const { page } = await opened('light');
    await page.getByRole('button', { name: 'Swipe' }).click();
    await page.getByRole('slider').fill('25');
    await page.screenshot({ path: 'out/pictures/review-swipe.png' });
    const clip = await page
      .locator('.stage figure')
      .first()
      .evaluate((node) => getComputedStyle(node).clipPath);
    assert.equal(clip, 'inset(0px 75% 0px 0px)');
    await page.close();
  }).timeout(60000);

  it('leads from a row to its mark and back', async () => {
    const { page } = await opened('light');
    const marks = await page
      .locator('svg .mark')
      .evaluateAll((all) => all.map((node) => node.getAttribute('data-row')));
    const rows = await page
      .locator('.rows [data-row]')
      .evaluateAll((all) => all.map((node) => node.getAttribute('data-row')));
    assert.deepEqual(marks, rows);
    await page.locator('.rows [data-row="2a"]').press('Enter');
    assert.equal(await page.locator('svg .mark.chosen').getAttribute('data-row'), '2a');
    await page.locator('svg [data-row="1b"] text').click();
    assert.equal(await page.locator('.rows .chosen').getAttribute('data-row'), '1b');
    await page.close();
  }).timeout(60000);

  it('can be read in light, in dark and with forced colours', async () => {
    for (const scheme of Object.keys(SCHEMES) as (keyof typeof SCHEMES)[]) {
      const { page, faults } = await opened(scheme);
      assert.deepEqual(await axeFaults(page), [], scheme);
      await page.locator('.rows [data-row="1c"]').click();
      await page.screenshot({ path: `out/pictures/review-${scheme}.png` });
      const [ink, ground] = await page
        .locator('svg .plate .now')
        .first()
        .evaluate((node) => [getComputedStyle(node).stroke, getComputedStyle(document.body).backgroundColor]);
      assert.notEqual(ink, ground);
      assert.deepEqual(faults, []);
      await page.close();
    }
  }).timeout(90000);
});
