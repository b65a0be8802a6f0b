/** A person whose editor speaks German reads German: in the preview, in the problems and their repairs, in the export. */
import assert from 'node:assert/strict';
import { Preview } from '../drawing';
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
