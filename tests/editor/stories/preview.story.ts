/** A person opens the preview, changes a number and sees the pieces follow, breaks a line and is told so. */
import assert from 'node:assert/strict';
import type { Scene, Story } from '../scene';

const DRAFT = 'harbour-skirt.draft';

/** What the preview shows now, as its text of SVG. */
const drawn = async (scene: Scene): Promise<string> =>
  (await scene.inside('#preview'))
    .locator('svg')
    .first()
    .evaluate((svg) => svg.outerHTML);

/** Waits until the preview shows something else than before. */
async function drawnOtherwise(scene: Scene, before: string): Promise<void> {
  for (let tries = 0; tries < 100; tries += 1) {
    if ((await drawn(scene)) !== before) return;
    await scene.page.waitForTimeout(50);
  }
  assert.fail('the preview still shows what it showed before the change');
}

export const thePreviewOpensBesideTheText: Story = async (scene) => {
  await scene.openFile(DRAFT);
  await scene.press('Control+K');
  await scene.press('v');
  await (await scene.inside('#preview svg path')).first().waitFor();
  await scene.picture('preview-beside-the-text');
};

export const aChangedLengthIsDrawnAtOnce: Story = async (scene) => {
  const before = await drawn(scene);
  await scene.page.locator('.tab', { hasText: DRAFT }).first().click();
  await scene.goTo(6, 'choose skirt-length = 68'.length + 1);
  await scene.press('Backspace');
  await scene.type('0');
  await drawnOtherwise(scene, before);
  await scene.picture('preview-after-a-change');
};

export const aBrokenLineIsToldInTheProblemsPanel: Story = async (scene) => {
  await scene.goTo(6, 1);
  await scene.type('chose ');
  await scene.problemAbout('chose');
  await scene.picture('a-broken-line');
};
