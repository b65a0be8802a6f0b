/** The first steps of somebody who has never seen a pattern: the walkthrough, its first two buttons and its pictures. */
import { Preview } from '../drawing';
import type { Scene, Story } from '../scene';
import { wear } from '../themes';

const step = (scene: Scene, title: string) =>
  scene.page.locator('.getting-started-step', { hasText: title }).first();

async function turnTo(scene: Scene, title: string): Promise<void> {
  await step(scene, title).click();
  await scene.page.waitForTimeout(400); // the picture follows the step a moment later
}

export const theWalkthroughIsReadableInEveryThemeAndOpensASampleBesideItself: Story = async (scene) => {
  await scene.page.keyboard.press('F1');
  const input = scene.page.locator('.quick-input-widget:visible input').first();
  await input.fill('>Welcome: Open Walkthrough');
  await scene.page.locator('.quick-input-list .monaco-list-row', { hasText: 'Walkthrough' }).first().click();
  await scene.page
    .locator('.quick-input-list .monaco-list-row', { hasText: 'First steps with Draftwright' })
    .first()
    .click();
  await step(scene, 'Open a sample').waitFor();
  for (const theme of ['dark', 'high-contrast', 'light'] as const) {
    await wear(scene, theme);
    await turnTo(scene, theme === 'light' ? 'Open a sample' : 'Break a seam');
    await scene.picture(`first-steps-${theme}`);
  }
  await scene.page.getByRole('button', { name: 'Begin a skirt' }).click();
  await scene.page.locator('.tab', { hasText: 'Untitled' }).first().waitFor();
};

export const theSecondStepOpensThePreviewOfThatSample: Story = async (scene) => {
  await turnTo(scene, 'Change a number');
  await scene.page.getByRole('button', { name: 'Open the preview' }).click();
  await (await scene.inside('#preview svg path')).first().waitFor();
  await scene.picture('first-steps-preview');
};

export const theNewPatternIsSavedAndItsPreviewGoesWithIt: Story = async (scene) => {
  const before = await Preview.of(scene);
  await before.at('.opens.choices').click();
  await before.at('.choice[data-path="skirt-length"]').getByRole('button', { name: 'larger' }).click();
  await before.at('.opens.choices', { hasText: '1 tried' }).click();
  await scene.page.locator('.tab', { hasText: 'Untitled' }).first().click();
  await scene.textHasKeyboard();
  await scene.saveNew('first-skirt.draft');
  const preview = scene.page.locator('.tab', { hasText: 'Preview: first-skirt.draft' }).first();
  await preview.waitFor();
  // the page of the preview is set anew: whoever looks into the old one looks again
  await scene.until('its pieces drawn', async () => (await (await Preview.of(scene)).stale()).length === 0);
  await (await Preview.of(scene)).at('.opens.choices', { hasText: '1 tried' }).waitFor();
  await scene.picture('first-steps-saved');
};
