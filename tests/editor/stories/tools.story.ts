/** A person works with the preview: measures, finds, walks a seam, lays pieces together, and looks at two at once. */
import assert from 'node:assert/strict';
import { Preview } from '../drawing';
import type { Scene, Story } from '../scene';

const DRAFT = 'harbour-skirt.draft';

export const aRulerIsLaidFromEdgeToEdge: Story = async (scene) => {
  await scene.openFile(DRAFT);
  const preview = await Preview.beside(scene);
  await preview.choose('measure');
  await preview.click('back/waist');
  await preview.click('back/side');
  const told = preview.at('.tip.measured.shown');
  await scene.until('the length along the outline', async () =>
    /along waist and side/.test((await told.textContent()) ?? ''),
  );
  await scene.picture('a-ruler-is-laid');
  await preview.hasKeyboard();
  await scene.press('Escape');
  await scene.press('Escape');
};

export const aNameIsFoundByTheEditorsOwnKey: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.click('back/hem');
  await preview.hasKeyboard();
  await scene.press('ControlOrMeta+F');
  await preview.at('.find-list input').waitFor();
  await scene.type('front side');
  await preview.at('[role="option"][aria-selected="true"]').waitFor();
  await scene.picture('a-name-is-found');
  await scene.press('Enter');
  await preview.at('.thing.selected[data-source="front/side"]').waitFor();
};

export const aSeamIsWalkedAndFollowsTheText: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.choose('walk');
  await scene.until('both lengths', async () => /they match/.test(await preview.sentence(0)));
  await scene.press('PageDown');
  await scene.until('the notch', async () => /hip-level meets/.test(await preview.sentence(2)));
  await scene.picture('a-seam-is-walked');
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'point hem-f = hem-b right 12cm');
  await scene.press('End');
  await scene.type(' down 1cm');
  await scene.until('what is left over', async () => /is left over/.test(await preview.sentence(0)));
  await scene.picture('a-seam-with-something-left-over');
  await scene.command('File: Revert File');
  await scene.until('both lengths alike', async () => /they match/.test(await preview.sentence(0)));
  await preview.at('.strip .done').click();
};

export const piecesAreLaidTogetherAndDartsClosed: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.choose('together');
  await scene.until('how the hem runs on', async () => /Where it/.test(await preview.sentence(1)));
  await scene.picture('pieces-laid-together');
  await preview.choose('darts');
  await preview.at('.laid-line.closed').first().waitFor();
  await scene.picture('darts-closed');
  await preview.at('.strip .done').click();
  await preview.at('.sheet .piece').first().waitFor();
};

const tabs = (scene: Scene) => scene.page.locator('.tab', { hasText: `Preview: ${DRAFT}` });

export const aSecondPreviewShowsAnotherLength: Story = async (scene) => {
  await scene.focusText(DRAFT);
  await scene.command('Draftwright: Open Another Preview');
  await scene.until('two previews', async () => (await tabs(scene).count()) === 2);
  await scene.until('both drawn', async () => {
    const frames = scene.page.frames();
    const counts = await Promise.all(frames.map((frame) => frame.locator('#preview .sheet .piece').count()));
    return counts.filter((count) => count === 3).length === 2;
  });
  const shown = await Preview.all(scene);
  const second = shown.at(-1)!;
  await second.at('.opens.choices').click();
  await second
    .at('.choice[data-path="skirt-length"]')
    .getByRole('button', { name: 'skirt-length larger' })
    .click();
  await scene.until('two lengths side by side', async () => {
    const lengths = await Promise.all(shown.map((one) => one.tip('back/centre')));
    return lengths.some((tip) => tip.includes('67cm')) && lengths.some((tip) => tip.includes('67.5cm'));
  });
  await second.at('.opens.choices').click();
  await scene.picture('two-previews');
  assert.equal(await tabs(scene).count(), 2);
};

export const aPreviewThatNeedNotStayFollowsTheText: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.at('button.tools').click();
  await preview.at('.tools-list input[name="pinned"]').press('Space');
  await scene.focusText(DRAFT);
  await scene.openFile('neckerchief.draft');
  await scene.page.locator('.tab', { hasText: 'Preview: neckerchief.draft' }).first().waitFor();
  assert.equal(await tabs(scene).count(), 1);
};

export const aPreviewHasAWindowOfItsOwn: Story = async (scene) => {
  await tabs(scene).last().click();
  const [window] = await Promise.all([
    scene.page.context().waitForEvent('page', { timeout: 30_000 }),
    scene.command('View: Move Editor into New Window'),
  ]);
  await scene.until('its pieces in that window', async () => {
    const counts = await Promise.all(
      window.frames().map((frame) => frame.locator('#preview .sheet .piece').count()),
    );
    return counts.includes(3);
  });
  await window.close();
  await scene.until('no preview of it here', async () => (await tabs(scene).count()) === 0);
};
