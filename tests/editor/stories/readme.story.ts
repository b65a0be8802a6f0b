/** Takes the README's picture: text beside preview, with one seam that does not fit. `npm run picture` puts it in its place. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Story } from '../scene';
import { pictured } from '../../support/pictured';

/** Settings that leave text and drawing alone in the window. */
const SETTINGS = {
  'workbench.colorTheme': 'Default Light Modern',
  'workbench.activityBar.location': 'hidden',
  'workbench.statusBar.visible': false,
  'workbench.layoutControl.enabled': false,
  'window.commandCenter': false,
  'window.menuBarVisibility': 'hidden',
  'breadcrumbs.enabled': false,
  'editor.minimap.enabled': false,
  'editor.scrollbar.vertical': 'hidden',
  'editor.scrollbar.horizontal': 'hidden',
  'editor.stickyScroll.enabled': false,
  'editor.occurrencesHighlight': 'off',
  'editor.fontSize': 12,
  'editor.lightbulb.enabled': 'off',
};

export const theReadmesPictureShowsTextAndPiecesSideBySide: Story = async (scene) => {
  const { page } = scene;
  mkdirSync(join(scene.folder, '.vscode'), { recursive: true });
  writeFileSync(join(scene.folder, '.vscode', 'settings.json'), JSON.stringify(SETTINGS));
  writeFileSync(join(scene.folder, pictured.file), pictured.text());
  await page.setViewportSize({ width: 1280, height: 760 });
  await scene.openFile(pictured.file);
  await page.locator('.monaco-workbench.vs').waitFor();
  await scene.press('Control+B');
  await scene.press('Control+K');
  await scene.press('v');
  await (await scene.inside('#preview svg path')).first().waitFor();
  await page.locator('.tab', { hasText: pictured.file }).first().click();
  await scene.goTo(pictured.lineOf('seam waist'));
  await scene.goTo(pictured.lineOf('    side straight to hip-f'), 5);
  await (await scene.inside('#preview')).getByText('1 error').first().waitFor();
  await page.locator('.squiggly-error').first().waitFor();
  await page.locator('.explorer-folders-view').waitFor({ state: 'hidden' });
  await page.waitForTimeout(500);
  await scene.picture('readme');
};
