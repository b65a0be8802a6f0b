/** A person opens a draft with the packaged extension and finds its language at work. */
import type { Story } from '../scene';

export const aDraftIsShownInItsOwnLanguage: Story = async (scene) => {
  await scene.openFile('harbour-skirt.draft');
  await scene.page.locator('#status\\.editor\\.mode', { hasText: 'Draftwright' }).waitFor();
  await scene.picture('a-draft-open');
};
