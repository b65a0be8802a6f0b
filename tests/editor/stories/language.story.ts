/** What the language server says, as a person sees it: the picture of a hover in every kind of theme. */
import assert from 'node:assert/strict';
import { wear, type Theme } from '../themes';
import type { Scene, Story } from '../scene';

const DRAFT = 'harbour-skirt.draft';

/** Points at a name by the keyboard, and looks at what comes. */
async function pointedAt(scene: Scene, text: string, columns: number, name: string): Promise<void> {
  await scene.goToText(DRAFT, text, columns);
  await scene.textHasKeyboard();
  const picture = scene.page.locator('.monaco-hover:visible img').first();
  // a server that only just starts has none yet, and the colours and lengths that come then take it away again
  await scene.until('a hover that stays', async () => {
    await scene.press('ControlOrMeta+K');
    await scene.press('ControlOrMeta+I');
    await scene.page.waitForTimeout(500);
    if (!(await picture.isVisible())) return false;
    await scene.page.waitForTimeout(1500);
    return picture.isVisible();
  });
  await scene.until('the picture', () =>
    picture.evaluate((img) => img instanceof HTMLImageElement && img.complete && img.naturalWidth > 50),
  );
  await scene.picture(`hover-${name}`);
  const { width = 0, height = 0 } = (await picture.boundingBox()) ?? {};
  assert.ok(width > 50 && height > 50, `the picture takes ${width} by ${height}`);
  assert.match((await picture.getAttribute('alt')) ?? '', /front/);
  await scene.press('Escape');
}

async function looksWell(scene: Scene, theme: Theme): Promise<void> {
  await wear(scene, theme);
  await scene.openFile(DRAFT);
  await pointedAt(scene, 'piece front of', 'piece f'.length, `piece-${theme}`);
  await pointedAt(scene, '    side straight to hip-f', 6, `edge-${theme}`);
}

export const aHoverShowsItsPictureInLight: Story = (scene) => looksWell(scene, 'light');
export const aHoverShowsItsPictureInDark: Story = (scene) => looksWell(scene, 'dark');
export const aHoverShowsItsPictureInHighContrast: Story = (scene) => looksWell(scene, 'high-contrast');
