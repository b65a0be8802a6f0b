/** The window in every kind of theme, with a stale piece, a selected line, a marked line and a tip: to be looked at. */
import assert from 'node:assert/strict';
import { Preview } from '../drawing';
import type { Scene, Story } from '../scene';
import { wear, type Theme } from '../themes';

const DRAFT = 'harbour-skirt.draft';

/** How much brighter one colour is than the other, as WCAG 2.2 counts contrast. */
async function contrast(preview: Preview, selector: string): Promise<number> {
  const colours = await preview
    .at(selector)
    .first()
    .evaluate((node) => {
      const ground = getComputedStyle(document.querySelector('#preview')!).backgroundColor;
      return [getComputedStyle(node).stroke, ground].map((colour) => colour.match(/[\d.]+/g)!.map(Number));
    });
  const [a, b] = colours.map(([r = 0, g = 0, blue = 0]) => {
    const [red, green, last] = [r, g, blue].map((value) => {
      const share = value / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * red! + 0.7152 * green! + 0.0722 * last!;
  });
  return (Math.max(a!, b!) + 0.05) / (Math.min(a!, b!) + 0.05);
}

const SOUND_LINE = '.piece:not(.stale) > .thing:not(.marked) > .line.sewing';

async function looksWell(scene: Scene, name: Theme): Promise<void> {
  await wear(scene, name);
  const preview = await Preview.of(scene);
  await preview.click('back/side');
  await scene.page.waitForTimeout(300); // the theme reaches the view a moment after the window
  await scene.picture(`in-${name}`);
  const [line, marked] = [await contrast(preview, SOUND_LINE), await contrast(preview, '.marked > .line')];
  assert.ok(line > 7, `a sewing line has a contrast of ${line.toFixed(1)} with its ground`);
  assert.ok(marked > 3, `a marked line has a contrast of ${marked.toFixed(1)} with its ground`);
}

export const aPieceIsBrokenAndALineMarked: Story = async (scene) => {
  await scene.openFile(DRAFT);
  const preview = await Preview.beside(scene);
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'hem straight to hem-f', 'hem straight to hem-f'.length);
  await scene.type('x');
  await preview.staleAre(['front', 'waistband']);
  await scene.goToText(DRAFT, 'hem straight to hem-cb');
  await preview.at('.marked > .line').first().waitFor({ state: 'attached' }); // a level line has no height
};

export const theWindowLooksWellInLight: Story = (scene) => looksWell(scene, 'light');
export const theWindowLooksWellInDark: Story = (scene) => looksWell(scene, 'dark');
export const theWindowLooksWellInHighContrast: Story = (scene) => looksWell(scene, 'high-contrast');
export const theWindowLooksWellInHighContrastLight: Story = (scene) =>
  looksWell(scene, 'high-contrast-light');

export const theListOfProblemsIsReadable: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.at('button.problems').click();
  await preview.at('.problem').first().waitFor();
  await scene.picture('list-of-problems');
  await preview.at('button.problems').click();
};
