/** A person opens a draft and its preview, and follows the pieces through changes, mistakes and mending. */
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Preview } from '../drawing';
import { told } from '../exporting';
import type { Scene, Story } from '../scene';

const DRAFT = 'harbour-skirt.draft';
const BODIES = 'bodies/company.draft';

/** A broken front takes the waistband with it, whose length it gives; the back stays live. */
const BROKEN = ['front', 'waistband'];

const line = (name: string, scene: Scene) => scene.goToText(DRAFT, name);

/** Takes back every change to the text in front. */
async function takeBack(scene: Scene): Promise<void> {
  await scene.command('File: Revert File');
  await scene.page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
}

export const aSampleOpensInItsOwnLanguage: Story = async (scene) => {
  await scene.openFile(DRAFT);
  await scene.page.locator('#status\\.editor\\.mode', { hasText: 'Draftwright' }).waitFor();
};

export const thePreviewOpensBesideTheTextWithEveryPiece: Story = async (scene) => {
  const preview = await Preview.beside(scene);
  assert.equal(await preview.at('.piece').count(), 3);
  assert.deepEqual(await preview.stale(), []);
  await scene.picture('preview-beside-the-text');
};

export const anUnsavedNumberMovesThePieces: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'skirt-length = 68', 'skirt-length = 68'.length);
  await scene.press('Backspace');
  await scene.type('0');
  await preview.tells('back/centre', '59cm');
  await scene.page.locator('.tab.active.dirty').waitFor();
  await takeBack(scene);
  await preview.tells('back/centre', '67cm');
};

export const anUnsavedMeasurementOfTheUsedFileMovesThePieces: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const before = await preview.tip('back/hem');
  await scene.openFile(BODIES);
  await scene.goToText(BODIES, 'hip 101', 'hip 101'.length);
  await scene.press('Backspace');
  await scene.type('9');
  await scene.until('a wider hem', async () => (await preview.tip('back/hem')) !== before);
  await scene.page.locator('.tab.active.dirty').waitFor();
  await takeBack(scene);
  await preview.tells('back/hem', before);
  await scene.command('View: Close Editor');
};

export const aDeletedRunIsToldAndMendedByItsFix: Story = async (scene) => {
  await scene.focusText(DRAFT);
  await line('then along hip-curve-f', scene);
  await scene.press('Control+Shift+K');
  assert.match(await scene.problemAbout('outline of front'), /has a gap of 21\.9\dcm: side ends, and waist/);
  await scene.picture('a-deleted-run');
  await scene.page.keyboard.press('Enter');
  await scene.until('the cursor at the run after the gap', async () => /selected/.test(await scene.cursor()));
  await scene.repairs('Run side straight on to waist-f');
  await scene.picture('its-quick-fix');
  await scene.press('Enter');
  const row = scene.page.locator('.markers-panel .monaco-list-row', { hasText: 'outline of front' });
  await row.waitFor({ state: 'detached' });
  await scene.focusText(DRAFT);
  await takeBack(scene);
};

export const aSeamThatDoesNotFitIsToldWithBothLengths: Story = async (scene) => {
  await scene.focusText(DRAFT);
  await line('point hem-f = hem-b right 12cm', scene);
  await scene.press('End');
  await scene.type(' down 1cm');
  assert.match(
    await scene.problemAbout('front.side is'),
    /front\.side is 70\.5\d*cm long, back\.side 69\.5\d*cm/,
  );
  await scene.picture('a-seam-that-does-not-fit');
  await scene.focusText(DRAFT);
  await takeBack(scene);
  await scene.command('View: Toggle Panel');
};

/** The line of the file, from 1, on which a text stands. */
const lineOf = (scene: Scene, text: string) =>
  readFileSync(join(scene.folder, DRAFT), 'utf8').split(text)[0]!.split('\n').length;

export const theDrawingLeadsToTheText: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.click('back/side', 'Control');
  const side = lineOf(scene, 'side along hip-curve-b');
  await scene.until('the cursor at the side', async () => (await scene.cursor()).startsWith(`Ln ${side},`));
  await scene.textHasKeyboard();
  await preview.click('front/hem');
  await preview.hasKeyboard();
  await scene.press('Enter');
  const hem = lineOf(scene, 'hem straight to hem-f');
  await scene.until('the cursor at the hem', async () => (await scene.cursor()).startsWith(`Ln ${hem},`));
  await scene.textHasKeyboard();
};

export const theTextLeadsToTheDrawing: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await scene.focusText(DRAFT);
  await line('dart outer on waist at 2/3 from waist-cf', scene);
  await preview.at('.thing.marked[data-source="front/outer"]').waitFor();
  await scene.picture('the-cursor-marks-a-dart');
  await line('pattern "Harbour', scene);
  await preview.at('.marked').first().waitFor({ state: 'detached' });
};

export const aChoiceIsTriedThenWrittenToTheFile: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const before = readFileSync(join(scene.folder, DRAFT), 'utf8');
  await preview.at('.opens.choices').click();
  const row = preview.at('.choice[data-path="skirt-length"]');
  await row.getByRole('button', { name: 'skirt-length larger' }).click();
  await preview.tells('back/centre', '67.5cm');
  await scene.picture('a-choice-is-tried');
  assert.equal(readFileSync(join(scene.folder, DRAFT), 'utf8'), before);
  await preview.at('.choices-end .write').click();
  await scene.until('the choice in the text', async () => (await preview.at('.choice.tried').count()) === 0);
  await preview.tells('back/centre', '67.5cm');
  await preview.at('.opens.choices').click();
  await scene.focusText(DRAFT);
  await scene.press('Control+z');
  await preview.tells('back/centre', '67cm');
};

export const aDraggedPointWritesItsLengthAndIsUndoneAtOnce: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const dot = preview.at('.piece[data-piece="back"] .dot[data-source$="/waist-cb"] > .spot');
  await preview.drag(dot, 0, 30);
  await scene.until('a shorter centre', async () => !(await preview.tip('back/centre')).includes('67cm'));
  await scene.picture('a-point-was-dragged');
  await preview.hasKeyboard();
  await scene.press('Control+z');
  await preview.tells('back/centre', '67cm');
  await preview.hasKeyboard();
  await scene.press('Control+Shift+z');
  await scene.until(
    'the shorter centre again',
    async () => !(await preview.tip('back/centre')).includes('67cm'),
  );
  await preview.hasKeyboard();
  await scene.press('Control+z');
  await preview.tells('back/centre', '67cm');
  await preview.hasKeyboard();
};

/**
 * Whether keys rested shortly before a moment for as long as makes a word count as typed: a busy machine types with
 * rests, and what is told of one arrives a little later.
 */
function hasRested(keys: readonly number[], moment: number): boolean {
  const before = [...keys.filter((at) => at < moment), moment].filter((at) => at > moment - 2500);
  return before.some((at, i) => at - (before[i - 1] ?? at) > 400);
}

export const aHundredKeystrokesLeaveNothingBehind: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.zoomIn(3);
  const camera = await preview.camera();
  await scene.focusText(DRAFT);
  await line('  # half way up the hip', scene);
  await scene.press('Home');
  await scene.press('Enter');
  await scene.press('ArrowUp');
  const [seen, keys] = [await preview.watch(), await scene.keyTimes()];
  await scene.page.keyboard.type('  point knee-level = waist-level down waist-to-hip + 36.5cm', {
    delay: 60,
  });
  await scene.press('Escape');
  await scene.goToText(DRAFT, 'skirt-length = 68', 'skirt-length = 68'.length);
  for (const digit of ['0', '7', '6', '4', '5', '2', '3', '1', '6', '9', '4', '0']) {
    await scene.page.keyboard.press('Backspace', { delay: 30 });
    await scene.page.keyboard.press(digit, { delay: 30 });
    await scene.page.keyboard.press('ArrowLeft', { delay: 30 });
    await scene.page.keyboard.press('ArrowRight', { delay: 30 });
  }
  await preview.tells('back/centre', '59cm');
  const { problems, sheets } = await seen();
  const times = await keys();
  const early = problems.filter(({ told, at }) => told !== 'No problems' && !hasRested(times, at));
  assert.deepEqual(early, [], 'errors came and went with half-typed words');
  assert.ok(sheets > 1 && sheets < 82, `${sheets} drawings of 82 edits`);
  await scene.page.waitForTimeout(1000); // whatever was queued would be drawn by now
  assert.equal((await seen()).sheets, sheets);
  await preview.tells('back/centre', '59cm');
  assert.deepEqual(await preview.stale(), []);
  assert.equal(await preview.camera(), camera);
  await takeBack(scene);
};

export const aBrokenPieceKeepsItsLastDrawingWhileTheOthersLive: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await scene.goToText(DRAFT, 'hem straight to hem-f', 'hem straight to hem-f'.length);
  await scene.type('x');
  await preview.staleAre(BROKEN);
  await scene.goToText(DRAFT, 'skirt-length = 68', 'skirt-length = 68'.length);
  await scene.press('Backspace');
  await scene.type('0');
  await preview.tells('back/centre', '59cm');
  assert.deepEqual(await preview.stale(), BROKEN);
  await scene.picture('a-stale-piece');
};

export const aHiddenPreviewStillHasItsStalePiece: Story = async (scene) => {
  const preview = await Preview.of(scene);
  const camera = await preview.camera();
  await preview.click('back/side');
  await scene.page.locator('.tab', { hasText: 'Preview: ' }).click();
  await preview.hasKeyboard();
  await scene.openFile('neckerchief.draft');
  await scene.until('the end of the hidden view', () => preview.isGone());
  await scene.command('View: Close Editor');
  const again = await Preview.of(scene);
  await again.staleAre(BROKEN);
  await scene.until('the zoom', async () => (await again.camera()) === camera);
  await scene.focusText(DRAFT);
  await takeBack(scene);
  await again.staleAre([]);
};

export const aServerThatDiesLeavesThePreviewAsItWasAndIsTold: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'hip-ease = 4cm', 'hip-ease = 4'.length);
  const narrow = await preview.tip('back/hem');
  await scene.type('.5');
  await scene.until('a wider hem', async () => (await preview.tip('back/hem')) !== narrow);
  const wide = await preview.tip('back/hem');
  const camera = await preview.camera();
  if (process.platform === 'win32') return;
  const listed = execFileSync('ps', ['-A', '-o', 'pid=,args='], { encoding: 'utf8' }).split('\n');
  const server = listed.filter((text) => text.includes(scene.home) && text.includes('server.js')).at(-1);
  process.kill(Number.parseInt(server!, 10), 'SIGKILL');
  assert.match(await told(scene, 'were started again'), /Your texts are as they were/);
  await scene.picture('a-server-started-again');
  await scene.command('Notifications: Clear All Notifications');
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'skirt-length = 68', 'skirt-length = 68'.length);
  await scene.press('Backspace');
  await scene.type('6');
  await preview.tells('back/centre', '65cm');
  await preview.tells('back/hem', wide);
  assert.equal(await preview.camera(), camera);
  await takeBack(scene);
};

export const aReloadedWindowFindsThePreviewAsItWas: Story = async (scene) => {
  const before = await Preview.of(scene);
  const camera = await before.camera();
  await scene.reload();
  const preview = await Preview.of(scene);
  await scene.until('zoom and place', async () => (await preview.camera()) === camera);
  await scene.picture('after-a-reload');
};
