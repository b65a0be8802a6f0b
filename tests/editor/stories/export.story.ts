/** A person exports the skirt from the preview: the files hold what is seen, also what is not saved. */
import assert from 'node:assert/strict';
import { existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { readCsv } from '../../support/csv';
import { readPdf } from '../../support/pdf';
import { Preview } from '../drawing';
import type { Scene, Story } from '../scene';

const DRAFT = 'harbour-skirt.draft';

const rows = (scene: Scene, words: string) =>
  scene.page.locator('.quick-input-list .monaco-list-row', { hasText: words });

/** The list of options, which may be longer than what is seen of it. */
const theForm = (scene: Scene) =>
  scene.page.locator('.quick-input-widget input[placeholder^="Enter exports"]');

/** Chooses a row of the list that is open. */
async function choose(scene: Scene, words: string): Promise<void> {
  await rows(scene, words).first().click();
}

/** Chooses a line of the *Export* list in the bar of the preview. */
async function takeAway(scene: Scene, how: string): Promise<void> {
  const preview = await Preview.of(scene);
  const line = preview.at(`button.tool.${how}`);
  await scene.until('the list', async () => {
    if (!(await line.isVisible())) await preview.at('.opens.export').click();
    return line.isVisible();
  });
  await line.click();
}

/** Opens the form from the bar of the preview, and chooses what is to be made. */
async function form(scene: Scene, what: string): Promise<void> {
  await takeAway(scene, 'export');
  await choose(scene, what);
  await theForm(scene).waitFor();
}

/** The first line of the form exports. */
async function start(scene: Scene): Promise<void> {
  await theForm(scene).press('Enter');
  await theForm(scene).waitFor({ state: 'hidden' });
}

/** What the editor says of a file in its list of notifications, which stays open for the picture. */
async function told(scene: Scene, words: string): Promise<string> {
  await scene.command('Notifications: Show Notifications');
  const said = scene.page
    .locator('.notifications-center .notification-list-item', { hasText: words })
    .first();
  await said.waitFor();
  return said.innerText();
}

async function written(scene: Scene, name: string): Promise<Buffer> {
  const path = join(scene.folder, name);
  await scene.until(name, async () => existsSync(path) && statSync(path).size > 0);
  return readFileSync(path);
}

export const thePreviewOffersWhatTheCommandLineMakes: Story = async (scene) => {
  await scene.openFile(DRAFT);
  await scene.press('Control+K');
  await scene.press('v');
  const preview = await Preview.of(scene);
  await preview.at('.opens.export').click();
  await scene.picture('export-list');
  await preview.at('button.tool.export').click();
  await rows(scene, 'Cutting list').waitFor();
  await scene.picture('export-what');
  await scene.press('Escape');
};

export const thePdfOfThePreviewHoldsEveryPiece: Story = async (scene) => {
  await form(scene, 'PDF in full size');
  await scene.picture('export-form');
  await start(scene);
  const pages = await readPdf(await written(scene, 'harbour-skirt.pdf'));
  assert.match(await told(scene, 'harbour-skirt.pdf'), /Open[^]*Reveal[^]*3 pieces on \d+ sheets of A4/);
  await scene.picture('export-told');
  const words = pages.flatMap((page) => page.words).join(' ');
  for (const piece of ['back', 'front', 'waistband']) assert.ok(words.includes(piece), piece);
};

export const theSvgHoldsWhatIsNotSaved: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'skirt-length = 68', 'skirt-length = 68'.length);
  await scene.press('Backspace');
  await scene.type('0');
  await preview.tells('back/centre', '59cm');
  await form(scene, 'SVG');
  await start(scene);
  const svg = (await written(scene, 'harbour-skirt.svg')).toString();
  assert.match(svg, /<svg [^>]*width="[\d.]+mm"/);
  assert.match(svg, /centre 59cm/);
  await scene.focusText(DRAFT);
  await scene.command('File: Revert File');
  await scene.page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
};

export const aCuttingListIsWrittenInTheFormatThatIsChosen: Story = async (scene) => {
  await form(scene, 'Cutting list');
  await choose(scene, 'Format');
  await choose(scene, 'csv');
  await start(scene);
  const records = readCsv((await written(scene, 'harbour-skirt-cutting.csv')).toString());
  assert.deepEqual(
    records.map((record) => record.slice(2, 4)),
    [
      ['piece', 'cut'],
      ['back', '2'],
      ['front', '1'],
      ['waistband', '1'],
      ['in all', '4'],
    ],
  );
};

export const theLastChoiceStandsFirst: Story = async (scene) => {
  await takeAway(scene, 'export');
  const first = scene.page.locator('.quick-input-list .monaco-list-row').first();
  await first.filter({ hasText: 'as last time' }).waitFor();
  assert.match(await first.innerText(), /Cutting list/);
  await scene.press('Enter');
  await theForm(scene).waitFor();
  assert.match(await rows(scene, 'Format').first().innerText(), /csv/);
  await scene.press('Escape');
};

/** What lies on the clipboard, by its kind. */
const clipboard = (scene: Scene): Promise<string[]> =>
  scene.page.evaluate(async () => (await navigator.clipboard.read()).flatMap(({ types }) => [...types]));

export const theDrawingIsCopiedAsTextAndAsAPicture: Story = async (scene) => {
  await scene.page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await takeAway(scene, 'copy-svg');
  await scene.until('an SVG on the clipboard', async () =>
    (await scene.page.evaluate(() => navigator.clipboard.readText())).includes('<svg '),
  );
  await takeAway(scene, 'copy-png');
  await scene.until('a picture on the clipboard', async () => (await clipboard(scene)).includes('image/png'));
};
