/** A person exports the skirt from the preview: the files hold what is seen, also what is not saved. */
import assert from 'node:assert/strict';
import { readCsv } from '../../support/csv';
import { readPdf } from '../../support/pdf';
import { Preview } from '../drawing';
import { choose, form, rows, start, takeAway, theForm, told, written } from '../exporting';
import type { Scene, Story } from '../scene';

const DRAFT = 'harbour-skirt.draft';

export const thePreviewOffersWhatTheCommandLineMakes: Story = async (scene) => {
  await scene.openFile(DRAFT);
  const preview = await Preview.beside(scene);
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
