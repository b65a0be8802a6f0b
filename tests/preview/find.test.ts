/** The search for a name in the preview: what letters mean, and where Enter leads. */
import assert from 'node:assert/strict';
import { findables, found } from '../../client/preview/view/finding';
import { skirt } from '../support/drawings';
import { describeView } from '../support/preview-suite';

const meant = (letters: string) =>
  found(findables(skirt().pieces), letters).map(({ piece, name }) => `${piece}.${name}`);

describe('what typed letters mean', () => {
  it('a whole name comes before its beginning, and that before letters within', () => {
    const names = meant('hip').map((one) => one.split('.')[1]!);
    const first = names.findIndex((name) => !name.startsWith('hip'));
    assert.ok(names.length > 0);
    assert.ok(names.slice(first < 0 ? names.length : first).every((name) => !name.startsWith('hip')));
  });

  it('a word of the piece narrows what is meant', () => {
    assert.deepEqual(meant('side back').slice(0, 1), ['back.side']);
    assert.deepEqual(meant('front side').slice(0, 1), ['front.side']);
  });

  it('nothing is meant by no letters, nor by a name that is not there', () => {
    assert.deepEqual([meant(' '), meant('sleeve')], [[], []]);
  });
});

describeView('search of the preview', ({ withSkirt }) => {
  it('Enter shows what was found and puts the keyboard on it; with Ctrl it leads to the text', async () => {
    const v = await withSkirt();
    await v.send({ type: 'do', tool: 'find' });
    await v.page.keyboard.type('front side');
    assert.equal(await v.page.locator('[role="option"][aria-selected="true"] .name').textContent(), 'side');
    await v.page.keyboard.press('Enter');
    assert.deepEqual(await v.told(), [{ type: 'select', source: 'front/side' }]);
    const focused = await v.page.evaluate(() => (document.activeElement as SVGElement).dataset.source);
    assert.equal(focused, 'front/side');
    await v.send({ type: 'do', tool: 'find' });
    await v.page.keyboard.press('Control+Enter');
    assert.deepEqual(await v.told(), [{ type: 'goto', source: 'front/side' }]);
  });

  it('a name that is not there is said to be missing', async () => {
    const v = await withSkirt();
    await v.page.click('button.find');
    await v.page.keyboard.type('sleeve');
    assert.equal(await v.page.locator('.find-list .none').textContent(), 'Nothing here is called sleeve.');
    await v.page.keyboard.press('Escape');
    assert.equal(await v.page.locator('.find-list').isVisible(), false);
  });
});
