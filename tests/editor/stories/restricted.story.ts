/** A person opens a folder that they have not trusted: the pattern is checked and drawn all the same. */
import assert from 'node:assert/strict';
import { Preview } from '../drawing';
import type { Opens, Story } from '../scene';

export const opens: Opens = { restricted: true };

const DRAFT = 'harbour-skirt.draft';

export const aFolderThatIsNotTrustedIsCheckedAndDrawn: Story = async (scene) => {
  await scene.page.locator('[id="status.workspaceTrust"]', { hasText: 'Restricted Mode' }).waitFor();
  await scene.openFile(DRAFT);
  const preview = await Preview.beside(scene);
  assert.equal(await preview.at('.sheet .piece').count(), 3);
  await scene.focusText(DRAFT);
  await scene.goToText(DRAFT, 'point hem-f = hem-b right 12cm');
  await scene.press('End');
  await scene.type(' up 6mm');
  assert.match(await scene.problemAbout('front.side is'), /back\.side is 6mm too long/);
  await preview.at('button.problems', { hasText: '1 error' }).waitFor();
  await scene.picture('restricted-mode');
};
