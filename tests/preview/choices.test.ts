/** What a person does with the list of choices, in a real browser. */
import assert from 'node:assert/strict';
import type { Sheet, TriedChoice } from '../../client/preview/protocol';
import { skirt } from '../support/drawings';
import { fullSheet, type Opened } from '../support/preview-page';
import { describeView } from '../support/preview-suite';

const LENGTH: TriedChoice = {
  ...{ path: 'skirt-length', doc: 'finished length from the waist', value: '68cm', written: '68cm' },
  ...{ low: '40cm', high: '95cm', among: [] },
};
const CLOSURE: TriedChoice = {
  ...{ path: 'closure', doc: '', value: 'zip', written: 'zip', among: ['zip', 'buttons'] },
};
const sheet = (more: Partial<Sheet> = {}): Sheet =>
  fullSheet(skirt(), { choices: [LENGTH, CLOSURE], everybody: ['ferrywoman', 'chorus M'], ...more });

describeView('the list of choices in the preview', ({ opened }) => {
  const withChoices = async (more: Partial<Sheet> = {}): Promise<Opened> => {
    const v = await opened();
    await v.send(sheet({ body: 'ferrywoman', ...more }));
    await v.page.getByRole('button', { name: 'Choices' }).click();
    await v.told();
    return v;
  };
  const row = (v: Opened) => v.page.locator('.choice[data-path="skirt-length"]');
  const tried = async (v: Opened) => (await v.told()).filter(({ type }) => type === 'try').at(-1);

  it('a step up tries the next half centimetre and says what the file has', async () => {
    const v = await withChoices();
    await row(v).getByRole('button', { name: 'skirt-length larger' }).click();
    assert.deepEqual(await tried(v), { type: 'try', trial: { set: { 'skirt-length': '68.5cm' } } });
    assert.equal(await row(v).locator('.in-the-file').textContent(), 'in the file: 68cm');
    assert.equal(await row(v).locator('.value').inputValue(), '68.5cm');
  });

  it('a typed value is tried as it stands, and an arrow key steps it', async () => {
    const v = await withChoices();
    await row(v).locator('.value').fill('70cm');
    await v.page.keyboard.press('ArrowDown');
    assert.deepEqual(await tried(v), { type: 'try', trial: { set: { 'skirt-length': '69.5cm' } } });
  });

  it('the ruled range goes from end to end of what the file allows', async () => {
    const v = await withChoices();
    await row(v).locator('input[type=range]').press('End');
    assert.deepEqual(await tried(v), { type: 'try', trial: { set: { 'skirt-length': '95cm' } } });
  });

  it('a word is chosen among those of the file', async () => {
    const v = await withChoices();
    await v.page.locator('[data-path="closure"] select').selectOption('buttons');
    assert.deepEqual(await tried(v), { type: 'try', trial: { set: { closure: 'buttons' } } });
  });

  it('another body or size is tried without touching the text', async () => {
    const v = await withChoices();
    await v.page.getByLabel('Drawn for').selectOption('chorus M');
    assert.deepEqual(await tried(v), {
      type: 'try',
      trial: { for: { name: 'chorus', size: 'M' }, set: {} },
    });
  });

  it('the value of the file itself is no trial', async () => {
    const v = await withChoices();
    await row(v).locator('.value').fill('70cm');
    await row(v).locator('.value').press('Enter');
    await row(v).locator('.value').fill('68cm');
    await row(v).locator('.value').press('Enter');
    assert.deepEqual(await tried(v), { type: 'try', trial: { set: {} } });
    assert.equal(await v.page.locator('.choices-end .write').isDisabled(), true);
  });

  it('what is tried is written on demand, and is a trial until the text says so', async () => {
    const v = await withChoices();
    await row(v).getByRole('button', { name: 'skirt-length smaller' }).click();
    await v.page.getByRole('button', { name: 'Write to the file' }).click();
    const trial = { set: { 'skirt-length': '67.5cm' } };
    assert.deepEqual((await v.told()).at(-1), { type: 'write', trial });
    assert.equal(await v.page.locator('.opens.choices').textContent(), 'Choices: 1 tried');
    await v.send({ type: 'written' });
    assert.equal(await v.page.locator('.opens.choices').textContent(), 'Choices');
  });

  it('what is tried in a new text is still tried in the file that it was saved as', async () => {
    const fresh = await withChoices();
    await row(fresh).getByRole('button', { name: 'skirt-length smaller' }).click();
    await fresh.page.waitForFunction(() => (window as unknown as { state?: object }).state !== undefined);
    const was = 'untitled:Untitled-1';
    const state = { ...(await fresh.state())!, uri: was };
    const trial = { set: { 'skirt-length': '67.5cm' } };
    for (const [from, kept] of [
      [was, trial],
      ['untitled:Untitled-2', { set: {} }],
    ] as const) {
      const saved = await opened({ state, was: from });
      const ready = (await saved.told()).find(({ type }) => type === 'ready');
      assert.deepEqual(ready?.type === 'ready' && ready.trial, kept, from);
    }
  });

  it('Escape closes the list, even after a button that it disabled had the keyboard', async () => {
    const v = await withChoices();
    await row(v).getByRole('button', { name: 'skirt-length smaller' }).click();
    await v.page.getByRole('button', { name: 'Back to the file' }).click();
    await v.page.keyboard.press('Escape');
    assert.equal(await v.page.locator('.choices-list').isVisible(), false);
  });

  it('a sheet that arrives leaves what is being typed alone', async () => {
    const v = await withChoices();
    await row(v).locator('.value').fill('7');
    const value = row(v).locator('.value');
    await v.send(sheet({ version: 2 }));
    assert.equal(await value.inputValue(), '7');
  });

  it('back to the file ends every trial', async () => {
    const v = await withChoices();
    await row(v).getByRole('button', { name: 'skirt-length larger' }).click();
    await v.page.getByRole('button', { name: 'Back to the file' }).click();
    assert.deepEqual(await tried(v), { type: 'try', trial: { set: {} } });
    assert.equal(await row(v).locator('.value').inputValue(), '68cm');
  });

  it('a reload finds what was tried', async () => {
    const v = await withChoices();
    await row(v).getByRole('button', { name: 'skirt-length larger' }).click();
    await v.page.waitForFunction(
      () =>
        Object.keys((window as unknown as { state?: { trial?: { set: object } } }).state?.trial?.set ?? {})
          .length > 0,
    );
    const state = await v.page.evaluate(() => (window as unknown as { state: never }).state);
    const again = await opened({ state });
    assert.deepEqual(await again.told(), [
      { type: 'ready', protocol: 1, trial: { set: { 'skirt-length': '68.5cm' } }, pinned: true, want: {} },
    ]);
  });

  it('a pattern that leaves nothing to choose has no list to open', async () => {
    const v = await opened();
    await v.send(fullSheet(skirt()));
    assert.equal(await v.page.getByRole('button', { name: 'Choices' }).isDisabled(), true);
  });
});
