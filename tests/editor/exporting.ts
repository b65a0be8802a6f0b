/** What a person does to take something away from the preview: the list in its bar, the form, what is told. */
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { Preview } from './drawing';
import type { Scene } from './scene';

/** The rows of the list that is open with these words in them. */
export const rows = (scene: Scene, words: string) =>
  scene.page.locator('.quick-input-list .monaco-list-row', { hasText: words });

/** The list of options, which may be longer than what is seen of it. */
export const theForm = (scene: Scene) =>
  scene.page.locator('.quick-input-widget input[placeholder^="Enter exports"]');

/** Chooses a row of the list that is open. */
export async function choose(scene: Scene, words: string): Promise<void> {
  await rows(scene, words).first().click();
}

/** Chooses a line of the *Export* list in the bar of the preview. */
export async function takeAway(scene: Scene, how: string): Promise<void> {
  const preview = await Preview.of(scene);
  const line = preview.at(`button.tool.${how}`);
  await scene.until('the list', async () => {
    if (!(await line.isVisible())) await preview.at('.opens.export').click();
    return line.isVisible();
  });
  await line.click();
}

/** Opens the form from the bar of the preview, and chooses what is to be made. */
export async function form(scene: Scene, what: string): Promise<void> {
  await takeAway(scene, 'export');
  await choose(scene, what);
  await theForm(scene).waitFor();
}

/** The first line of the form exports. */
export async function start(scene: Scene): Promise<void> {
  await theForm(scene).press('Enter');
  await theForm(scene).waitFor({ state: 'hidden' });
}

/** What the editor says of a file in its list of notifications, which stays open for the picture. */
export async function told(scene: Scene, words: string): Promise<string> {
  await scene.command('Notifications: Show Notifications');
  const said = scene.page
    .locator('.notifications-center .notification-list-item', { hasText: words })
    .first();
  await said.waitFor();
  return said.innerText();
}

/** A file of the folder once it is there. */
export async function written(scene: Scene, name: string): Promise<Buffer> {
  const path = join(scene.folder, name);
  await scene.until(name, async () => existsSync(path) && statSync(path).size > 0);
  return readFileSync(path);
}
