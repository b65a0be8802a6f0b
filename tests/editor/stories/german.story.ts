/** A person whose editor speaks German reads German: preview, problems and repairs, pages, exports, comparisons. */
import assert from 'node:assert/strict';
import { execFileSync } from 'node:child_process';
import { readPdf } from '../../support/pdf';
import { Preview } from '../drawing';
import { choose, rows, takeAway, written } from '../exporting';
import type { Opens, Story } from '../scene';

export const opens: Opens = { language: 'de' };

const DRAFT = 'harbour-skirt.draft';

export const thePreviewAndTheProblemsAreGerman: Story = async (scene) => {
  await scene.openFile(DRAFT);
  const preview = await Preview.beside(scene);
  await preview.at('button.problems', { hasText: 'Keine Probleme' }).waitFor();
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'point hem-f = hem-b right 12cm');
  await scene.press('End');
  await scene.type(' up 6mm');
  assert.match(await scene.problemAbout('front.side ist'), /back\.side ist 6mm zu lang/);
  await preview.at('button.problems', { hasText: '1 Fehler' }).waitFor();
  await preview.at('.opens.show').click();
  await scene.picture('german-preview');
  await preview.at('.opens.show').click();
  await preview.at('.opens.tools').click();
  await scene.picture('german-tools');
};

export const theFormOfAnExportIsGerman: Story = async (scene) => {
  const preview = await Preview.of(scene);
  await preview.at('.opens.export').click();
  await preview.at('.tool.export').click();
  const rows = scene.page.locator('.quick-input-list .monaco-list-row');
  await rows.filter({ hasText: 'PDF in voller Größe' }).first().waitFor();
  await scene.picture('german-export');
};

export const whatIsExportedSpeaksGermanUnlessEnglishIsChosen: Story = async (scene) => {
  const form = scene.page.locator('.quick-input-widget input[placeholder^="Eingabetaste"]');
  await choose(scene, 'SVG');
  await form.waitFor();
  const language = rows(scene, 'Sprache der Wörter').first();
  assert.match(await language.innerText(), /Deutsch/);
  await scene.picture('german-export-form');
  await form.press('Enter');
  assert.match((await written(scene, 'harbour-skirt.svg')).toString(), />Schnittlinie</);
  await takeAway(scene, 'export');
  await choose(scene, 'Zuschneideliste');
  await form.waitFor();
  await language.click();
  await choose(scene, 'English');
  await form.waitFor();
  await form.press('Enter');
  const pages = await readPdf(await written(scene, 'harbour-skirt-cutting.pdf'));
  assert.match(pages[0]!.words.join(' '), /Cutting list of Harbour skirt/);
};

export const theCodeOfAProblemLeadsToItsPageInGerman: Story = async (scene) => {
  await scene.problemAbout('front.side ist');
  await scene.page.locator('.markers-panel a', { hasText: 'mismatched-seam' }).first().click();
  await scene.page.locator('.tab.active', { hasText: 'mismatched-seam.md' }).waitFor();
  const lines = scene.page.locator('.editor-instance .view-line');
  await lines
    .filter({ hasText: /Was.gefunden.wird/ })
    .first()
    .waitFor();
  await scene.picture('german-page');
};

export const aComparisonIsGerman: Story = async (scene) => {
  const who = ['-c', 'user.name=wardrobe', '-c', 'user.email=wardrobe@theatre.invalid'];
  const git = (...args: readonly string[]) =>
    execFileSync('git', [...who, ...args], { cwd: scene.folder, stdio: 'ignore' });
  git('init', '--quiet', '--initial-branch=main');
  git('add', '--all');
  git('commit', '--quiet', '-m', 'The wardrobe as it was');
  await scene.focusText(DRAFT);
  await scene.command('Draftwright: Mit dem letzten Commit vergleichen');
  const verdict = await scene.inside('.verdict');
  assert.match(
    (await verdict.textContent()) ?? '',
    /von 3 Teilen geändert; 1 Naht passt nicht mehr: side, \+/,
  );
  await scene.picture('german-comparison');
};
