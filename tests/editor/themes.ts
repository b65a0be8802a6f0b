/** The themes that the window is looked at in. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Scene } from './scene';

/** The editor's name of a theme, and the class its window has. */
const THEMES = {
  light: ['Default Light Modern', 'vs'],
  dark: ['Default Dark Modern', 'vs-dark'],
  'high-contrast': ['Default High Contrast', 'hc-black'],
  'high-contrast-light': ['Default High Contrast Light', 'hc-light'],
} as const;

export type Theme = keyof typeof THEMES;

/** Puts the window into a theme, and waits until it wears it. */
export async function wear(scene: Scene, name: Theme): Promise<void> {
  const [theme, kind] = THEMES[name];
  mkdirSync(join(scene.folder, '.vscode'), { recursive: true });
  const settings = { 'workbench.colorTheme': theme, 'editor.minimap.enabled': false };
  writeFileSync(join(scene.folder, '.vscode', 'settings.json'), JSON.stringify(settings));
  await scene.page.locator(`.monaco-workbench.${kind}`).waitFor();
}
