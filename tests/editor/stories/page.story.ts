/** The page of the extension as a stranger reads it in the editor, before anything was opened. */
import assert from 'node:assert/strict';
import type { Story } from '../scene';
import { wear } from '../themes';

export const aStrangerReadsThePageOfTheExtension: Story = async (scene) => {
  await wear(scene, 'light');
  await scene.command('View: Show Extensions');
  await scene.page.locator('.extension-list-item', { hasText: 'Draftwright' }).first().click();
  const page = await scene.frameWith('h2:text("What it never does")');
  await scene.picture('extension-page');
  const links = await page
    .locator('a[href]:not([href="#"])')
    .evaluateAll((all) => all.map((a) => a.getAttribute('href')!));
  assert.deepEqual(links, [], 'a path would lead nowhere');
  assert.equal(await page.locator('img').count(), 0, 'a picture would not be fetched');
  await page.locator('h2', { hasText: 'What it never does' }).scrollIntoViewIfNeeded();
  await scene.picture('extension-page-end');
};
