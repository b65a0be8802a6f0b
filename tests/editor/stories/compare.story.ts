/** A person compares a changed skirt with its last commit: a panel with rows and drawing, from which a click leads to both texts. */
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { wear } from '../themes';
import type { Scene, Story } from '../scene';

const DRAFT = 'harbour-skirt.draft';

function git(scene: Scene, ...args: readonly string[]): void {
  const who = ['-c', 'user.name=wardrobe', '-c', 'user.email=wardrobe@theatre.invalid'];
  execFileSync('git', [...who, ...args], { cwd: scene.folder, stdio: 'ignore' });
}

/** Makes the folder a repository with the skirt as it was, and takes the skirt in. */
function history(scene: Scene): void {
  git(scene, 'init', '--quiet', '--initial-branch=main');
  git(scene, 'add', '--all');
  git(scene, 'commit', '--quiet', '-m', 'The wardrobe as it was');
  const file = join(scene.folder, DRAFT);
  const text = readFileSync(file, 'utf8');
  writeFileSync(
    file,
    text.replace('skirt-length = 68cm', 'skirt-length = 62cm').replace('hip-ease = 4cm', 'hip-ease = 6cm'),
  );
}

export const aSkirtIsComparedWithItsLastCommit: Story = async (scene) => {
  history(scene);
  await scene.openFile(DRAFT);
  await scene.command('Draftwright: Compare With Last Commit');
  const verdict = await scene.inside('.verdict');
  assert.equal(await verdict.textContent(), '3 of 3 pieces changed.');
  const frame = await scene.frameWith('.stage svg');
  assert.ok((await frame.locator('svg .mark').count()) > 10);
  await scene.picture('compare-light');
};

export const aClickLeadsToBothTexts: Story = async (scene) => {
  const frame = await scene.frameWith('[data-place]');
  await frame.locator('li[data-place]', { hasText: 'skirt-length' }).click();
  await scene.page.locator('.monaco-diff-editor').first().waitFor();
  await scene.until('both lengths', async () => {
    const text = await scene.page.locator('.monaco-diff-editor').first().innerText();
    return /68cm/.test(text) && /62cm/.test(text);
  });
  await scene.picture('compare-both-texts');
};

export const thePanelCanBeReadInDarkAndInHighContrast: Story = async (scene) => {
  for (const theme of ['dark', 'high-contrast'] as const) {
    await wear(scene, theme);
    await scene.picture(`compare-${theme}`);
  }
  await wear(scene, 'light');
};

export const theListOffersRevisionsFilesAndBodies: Story = async (scene) => {
  await scene.command('View: Close All Editors');
  await scene.openFile(DRAFT);
  await scene.command('Draftwright: Compare With…');
  const row = (words: string) =>
    scene.page.locator('.quick-input-list .monaco-list-row', { hasText: words }).first();
  await row('Last commit').waitFor();
  for (const words of ['Saved file', 'Another body or size', 'main', 'The wardrobe as it was'])
    await row(words).waitFor();
  await scene.picture('compare-with');
  await row('Another body or size').click();
  await row('understudy').click();
  const verdict = await scene.frameWith('.verdict');
  await scene.until(
    'the other body',
    async () => (await verdict.locator('li', { hasText: 'drafted for' }).count()) > 0,
  );
};

export const sourceControlAndTheExplorerOfferIt: Story = async (scene) => {
  await scene.press('Control+Shift+G');
  await scene.press('g');
  const resource = scene.page.locator('.scm-view .monaco-list-row', { hasText: DRAFT }).first();
  await resource.click({ button: 'right' });
  await scene.picture('compare-source-control');
  await scene.page
    .locator('.monaco-menu .action-item', { hasText: 'Compare With Last Commit' })
    .first()
    .waitFor();
  await scene.press('Escape');
  await scene.command('File: Focus on Files Explorer');
  await scene.page
    .locator('.explorer-folders-view .monaco-list-row', { hasText: DRAFT })
    .first()
    .click({ button: 'right' });
  await scene.page.locator('.monaco-menu .action-item', { hasText: 'Compare With…' }).first().waitFor();
  await scene.press('Escape');
};

export const anEntryOfTheTimelineIsComparedWith: Story = async (scene) => {
  await scene.command('View: Close All Editors');
  await scene.openFile(DRAFT);
  await scene.command('Explorer: Focus on Timeline View');
  const entry = scene.page.locator('.timeline-tree-view .monaco-list-row', { hasText: 'as it was' }).first();
  await entry.click({ button: 'right' });
  const offer = scene.page
    .locator('.monaco-menu .action-item', { hasText: 'Compare With This Commit' })
    .first();
  await offer.waitFor();
  await scene.picture('compare-timeline');
  await offer.click();
  const frame = await scene.frameWith('.verdict');
  await scene.until('the change since that commit', async () =>
    ((await frame.locator('.verdict').textContent()) ?? '').includes('3 of 3 pieces changed.'),
  );
  await scene.picture('compare-with-an-entry');
};
