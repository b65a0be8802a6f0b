/** One person's whole way, by keyboard and mouse: from an empty folder to a skirt that is corrected and exported. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readPdf } from '../../support/pdf';
import { Preview } from '../drawing';
import { form, rows, start, told, written } from '../exporting';
import type { Opens, Scene, Story } from '../scene';
import { wear, type Theme } from '../themes';

export const opens: Opens = { emptyFolder: true };

const DRAFT = 'first-skirt.draft';
const PIECES = ['back', 'front', 'waistband'];
const FRONT_HEM = 'point hem-f = hem-b right 12cm';

const onDisk = (scene: Scene) => readFileSync(join(scene.folder, DRAFT), 'utf8');

/** Takes a picture in every kind of theme, and ends in the light one. */
async function inEveryTheme(scene: Scene, name: string): Promise<void> {
  for (const theme of ['dark', 'high-contrast', 'light'] as const satisfies Theme[]) {
    await wear(scene, theme);
    const preview = await Preview.of(scene);
    const kind =
      theme === 'light' ? 'vscode-light' : theme === 'dark' ? 'vscode-dark' : 'vscode-high-contrast';
    await preview.at(`body.${kind}`).waitFor();
    await scene.picture(`long-${name}-${theme}`);
  }
}

/** Waits until the preview counts its problems so. */
async function counts(scene: Scene, words: string): Promise<void> {
  await (await Preview.of(scene)).at('button.problems', { hasText: words }).waitFor();
}

export const aSkirtIsBegunInAnEmptyFolder: Story = async (scene) => {
  await wear(scene, 'light');
  await scene.command('Draftwright: New Pattern');
  await rows(scene, 'Skirt').first().waitFor();
  await scene.picture('long-1-begin');
  await rows(scene, 'Skirt').first().click();
  await scene.textHasKeyboard();
  await scene.saveNew(DRAFT);
  assert.match(onDisk(scene), /^pattern "Straight skirt"/);
  await scene.picture('long-2-saved');
};

export const itsPiecesAreSeenBesideTheText: Story = async (scene) => {
  const preview = await Preview.beside(scene);
  await counts(scene, 'No problems');
  const names = await preview
    .at('.sheet .piece')
    .evaluateAll((all) => all.map((one) => (one as SVGElement).dataset.piece));
  assert.deepEqual(names.sort(), PIECES);
  await scene.picture('long-3-preview');
};

export const aShorterLengthIsTypedAndSeen: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.tells('back/centre', '67cm');
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'skirt-length = 68', 'skirt-length = 68'.length);
  await scene.press('Backspace');
  await scene.type('0');
  await preview.tells('back/centre', '59cm');
  assert.match(await scene.save(DRAFT), /skirt-length = 60cm/);
  await scene.picture('long-4-shorter');
};

export const aSeamThatDoesNotFitIsSeenInTheListAndInTheDrawing: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await scene.goToText(DRAFT, FRONT_HEM);
  await scene.press('End');
  await scene.type(' up 6mm');
  await counts(scene, '1 error');
  assert.match(await scene.problemAbout('front.side is'), /back\.side is 6mm too long/);
  await preview.at('button.problems').click();
  await preview.at('.problem', { hasText: '6mm too long' }).waitFor();
  await inEveryTheme(scene, '5-fault');
};

export const itsRepairMendsTheSeam: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.at('.problem', { hasText: '6mm too long' }).click();
  await scene.until('the cursor at the seam', async () => /selected/.test(await scene.cursor()));
  await scene.repairs('easing 6mm of back');
  await scene.picture('long-6-repairs');
  await scene.press('Enter');
  await counts(scene, 'No problems');
  assert.match(await scene.save(DRAFT), /seam side front\.side = back\.side easing 6mm of back/);
  await scene.command('View: Toggle Panel');
  await scene.page.locator('.markers-panel').first().waitFor({ state: 'hidden' });
  await scene.picture('long-7-mended');
};

export const thePointAtTheCentreBackIsDragged: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const dot = preview.at('.piece[data-piece="back"] .dot[data-source$="/waist-cb"] > .spot');
  await preview.drag(dot, 0, 4);
  await scene.until('a shorter centre', async () => !(await preview.tip('back/centre')).includes('59cm'));
  await scene.picture('long-8-dragged');
  await counts(scene, 'No problems');
  await scene.focusText(DRAFT);
  assert.match(await scene.save(DRAFT), /point waist-cb = waist-level down (?!1cm)[\d.]+cm\n/);
};

export const theSideSeamIsWalked: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.click('back/side');
  await preview.hasKeyboard();
  await preview.choose('walk');
  await scene.until('both lengths', async () => /6mm/.test(await preview.sentence(0)));
  await scene.press('PageDown');
  await scene.until('the notch', async () => /hip-level meets/.test(await preview.sentence(2)));
  await inEveryTheme(scene, '9-walk');
  await preview.at('.strip .done').click();
  await preview.at('.sheet .piece').first().waitFor();
};

export const theSkirtIsExportedForPaper: Story = async (scene) => {
  await form(scene, 'PDF in full size');
  await scene.picture('long-10-form');
  await start(scene);
  const pages = await readPdf(await written(scene, 'first-skirt.pdf'));
  assert.match(await told(scene, 'first-skirt.pdf'), /3 pieces on \d+ sheets of A4/);
  await scene.picture('long-11-exported');
  const words = pages.flatMap((page) => page.words).join(' ');
  for (const piece of PIECES) assert.ok(words.includes(piece), piece);
};

export const afterAReloadThePreviewIsAsItWas: Story = async (scene) => {
  const before = await Preview.of(scene);
  await before.zoomIn(2);
  const camera = await before.camera();
  const centre = await before.tip('back/centre');
  await scene.reload();
  const preview = await Preview.of(scene);
  await scene.until('zoom and place', async () => (await preview.camera()) === camera);
  await preview.tells('back/centre', centre);
  await counts(scene, 'No problems');
  await inEveryTheme(scene, '12-reloaded');
};
