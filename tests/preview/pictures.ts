/** Takes pictures of the preview in every kind of theme, to be looked at: `npx tsx tests/preview/pictures.ts`. */
import { mkdirSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../editor/browser.mjs';
import { manyPieces, skirt } from '../support/drawings';
import { fullSheet, openView, type OpenOptions, type Opened } from '../support/preview-page';
import type { ThemeName } from '../support/themes';
import type { PreviewProblem } from '../../client/preview/protocol';

const FOLDER = 'out/pictures';

const problems: PreviewProblem[] = [
  {
    severity: 'error',
    code: 'mismatched-seam',
    message: 'The two sides of the seam “side” differ by 5 mm: front side 69.5 cm, back side 70 cm.',
    source: 'front/side',
    piece: 'front',
  },
  {
    severity: 'warning',
    code: 'unfinished-edge',
    message: 'The hem of “back” is neither sewn nor finished.',
    source: 'back/hem',
    piece: 'back',
  },
  {
    severity: 'note',
    code: 'trued',
    message: 'Truing moved the dart ends by 1.9 mm.',
    source: 'back/waist',
    piece: 'back',
  },
];

async function shot(
  browser: Browser,
  name: string,
  options: OpenOptions,
  act: (view: Opened) => Promise<void>,
): Promise<void> {
  const view = await openView(browser, options);
  await act(view).catch((fault) => view.faults.push(String(fault)));
  await view.page.screenshot({ path: `${FOLDER}/${name}.png` });
  if (view.faults.length) process.stderr.write(`${name}: ${view.faults.join('; ')}\n`);
  await view.page.close();
}

async function busy(view: Opened): Promise<void> {
  const stale = [{ piece: 'waistband', reason: 'the name “front.waits” is not known' }];
  await view.send(fullSheet(skirt(), { problems, stale }));
  await view.send({ type: 'marked', sources: ['front/side'] });
  const edge = view.page.locator('[data-source="back/side"] .hit').first();
  const box = (await edge.boundingBox({ timeout: 2000 }))!;
  await view.page.mouse.click(box.x + box.width - 7, box.y + box.height * 0.7);
  await view.page.mouse.move(box.x + box.width - 7, box.y + box.height * 0.6);
}

async function main(): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const { browser, reasons } = await launchBrowser();
  if (!browser) throw new Error(`No browser starts here: ${reasons?.join('; ')}`);
  for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as ThemeName[]) {
    await shot(browser, theme, { theme }, busy);
  }
  await shot(browser, 'empty', {}, (view) =>
    view.send(fullSheet({ ...skirt(), pieces: [], placements: [] })),
  );
  await shot(browser, 'narrow', { width: 400, height: 700 }, async (view) => {
    await view.send(fullSheet(skirt(), { problems }));
    await view.page.click('button.problems');
  });
  await shot(browser, 'many', { theme: 'dark' }, (view) => view.send(fullSheet(manyPieces(30))));
  await shot(browser, 'close', { theme: 'light' }, async (view) => {
    await view.send(fullSheet({ ...skirt(), unit: 'in' }));
    await view.page.mouse.move(300, 130);
    await view.page.keyboard.down('Control');
    await view.page.mouse.wheel(0, -460);
    await view.page.keyboard.up('Control');
    await view.page.click('button.show');
  });
  await shot(browser, 'keyboard', { theme: 'light' }, async (view) => {
    await view.send(fullSheet(skirt()));
    for (let i = 0; i < 12; i++) await view.page.keyboard.press('Tab');
    await view.page.waitForTimeout(100);
  });
  await browser.close();
}

await main();
