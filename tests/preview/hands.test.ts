/** What a person does with the preview, by mouse and by keyboard, in a real browser. */
import assert from 'node:assert/strict';
import { skirt } from '../support/drawings';
import { fullSheet } from '../support/preview-page';
import { describeView, onLine, painted, transform } from '../support/preview-suite';

describeView('preview under the hands', ({ withSkirt }) => {
  it('a click selects a line and draws it heavier; the text is not touched', async () => {
    const v = await withSkirt();
    const width = () =>
      v.page
        .locator('[data-source="front/side"] > .line')
        .evaluate((node) => parseFloat(getComputedStyle(node).strokeWidth));
    const before = await width();
    const { x, y } = await onLine(v, 'front/side');
    await v.page.mouse.click(x, y);
    await v.page.mouse.move(5, 5);
    assert.deepEqual(await v.told(), [{ type: 'select', source: 'front/side' }]);
    assert.ok((await width()) > before + 1.5);
  });

  it('a click with Ctrl goes to the text', async () => {
    const v = await withSkirt();
    const { x, y } = await onLine(v, 'back/side');
    await v.page.keyboard.down('Control');
    await v.page.mouse.click(x, y);
    await v.page.keyboard.up('Control');
    assert.deepEqual((await v.told()).at(-1), { type: 'goto', source: 'back/side' });
  });

  it('a click beside every piece clears the selection', async () => {
    const v = await withSkirt();
    const { x, y } = await onLine(v, 'back/side');
    await v.page.mouse.click(x, y);
    await v.page.mouse.click(880, 620);
    assert.deepEqual((await v.told()).at(-1), { type: 'select', source: '' });
  });

  it('the tip near the pointer says name and length of an edge', async () => {
    const v = await withSkirt();
    const { x, y } = await onLine(v, 'back/side');
    await v.page.mouse.move(x, y);
    assert.equal(await v.page.locator('.tip.shown').textContent(), 'side, 69.5 cm, sewn to front side');
    await v.page.mouse.move(880, 620);
    assert.equal(await v.page.locator('.tip.shown').count(), 0);
  });

  it('a dot that is dragged moves its point and not the sheet', async () => {
    const v = await withSkirt();
    const dot = v.page.locator('.dot.corner').first();
    const source = (await dot.getAttribute('data-source'))!;
    const box = (await dot.locator('.spot').boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const before = await transform(v);
    await v.page.mouse.move(x, y);
    await v.page.mouse.down();
    await v.page.mouse.move(x + 10, y, { steps: 2 });
    assert.deepEqual(await v.told(), [{ type: 'grip', source, piece: 'back' }]);
    const axes = [{ x: 1, y: 0, amount: 5, unit: 'cm', mm: 10 }];
    await v.send({ type: 'gripped', source, grip: { axes } });
    await v.page.mouse.move(x + 20, y, { steps: 2 });
    await v.page.mouse.up();
    const told = await v.told();
    const zoom = Number(/matrix\((\S+) /.exec(before!)![1]);
    const amount = Math.round((5 + 20 / zoom / 10) * 10) / 10;
    assert.deepEqual(told.slice(-2), [{ type: 'pull', source, amounts: [amount] }, { type: 'release' }]);
    assert.equal(await transform(v), before);
  });

  it('a dot that can’t be moved says why, near the pointer', async () => {
    const v = await withSkirt();
    const dot = v.page.locator('.dot.corner').first();
    const source = (await dot.getAttribute('data-source'))!;
    const box = (await dot.locator('.spot').boundingBox())!;
    await v.page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await v.page.mouse.down();
    await v.page.mouse.move(box.x + 30, box.y + 30, { steps: 3 });
    await v.send({ type: 'gripped', source, grip: { reason: 'hip-b is worked out from back-hip.' } });
    assert.equal(await v.page.locator('.tip.shown').textContent(), 'hip-b is worked out from back-hip.');
    await v.page.mouse.up();
    assert.equal(await v.page.locator('.tip.shown').count(), 0);
  });

  it('dragging moves the sheet with the pointer and selects nothing', async () => {
    const v = await withSkirt();
    await v.page.keyboard.press('1');
    const left = async () => Number(/matrix\(.* (\S+) \S+\)/.exec((await transform(v))!)![1]);
    await painted(v);
    const before = await left();
    await v.page.mouse.move(400, 300);
    await v.page.mouse.down();
    await v.page.mouse.move(430, 330, { steps: 4 });
    await v.page.mouse.up();
    await painted(v);
    assert.ok(Math.abs((await left()) - before - 30) < 0.01);
    assert.deepEqual(await v.told(), []);
  });

  it('the wheel with Ctrl zooms about the pointer, without it scrolls', async () => {
    const v = await withSkirt();
    const at = await onLine(v, 'back/side');
    await v.page.mouse.move(at.x, at.y);
    await v.page.keyboard.down('Control');
    await v.page.mouse.wheel(0, -200);
    await v.page.keyboard.up('Control');
    await painted(v);
    const zoomed = await onLine(v, 'back/side');
    assert.ok(Math.hypot(zoomed.x - at.x, zoomed.y - at.y) < 0.5);
    await v.page.mouse.wheel(0, 50);
    await painted(v);
    assert.ok(Math.abs((await onLine(v, 'back/side')).y - (at.y - 50)) < 0.5);
  });

  it('the key 0 fits the drawing and 1 shows it in full size', async () => {
    const v = await withSkirt();
    const size = () => v.page.locator('.percent').textContent();
    const fitted = await size();
    await v.page.keyboard.press('1');
    await painted(v);
    assert.equal(await size(), '100 %');
    await v.page.keyboard.press('0');
    await painted(v);
    assert.equal(await size(), fitted);
  });

  it('Tab walks from piece to edge, Enter goes to the text and Escape clears', async () => {
    const v = await withSkirt();
    await v.page.locator('.piece').first().focus();
    await v.page.keyboard.press('Tab');
    await v.page.keyboard.press('Enter');
    const [selected, gone] = await v.told();
    assert.equal(selected!.type, 'select');
    assert.equal(gone!.type, 'goto');
    assert.match((gone as { source: string }).source, /^back\//);
    await v.page.keyboard.press('PageDown');
    const focused = () => v.page.evaluate(() => (document.activeElement as SVGElement).dataset.source);
    assert.equal(await focused(), 'front');
    await v.page.keyboard.press('Escape');
    assert.deepEqual(await v.told(), [{ type: 'select', source: '' }]);
  });

  it('the editor’s keys take back and make again what changed in the text, but in a box of text', async () => {
    const v = await withSkirt();
    await v.page.locator('.piece').first().focus();
    for (const keys of ['Control+z', 'Control+Shift+z', 'Meta+z', 'Control+y'])
      await v.page.keyboard.press(keys);
    const ways = (await v.told()).flatMap((one) => (one.type === 'history' ? [one.way] : []));
    assert.deepEqual(ways, ['undo', 'redo', 'undo', 'redo']);
    await v.send({ type: 'do', tool: 'find' });
    await v.page.keyboard.type('hem');
    await v.page.keyboard.press('Control+z');
    assert.deepEqual(
      (await v.told()).filter(({ type }) => type === 'history'),
      [],
    );
  });

  it('the editor’s key for saving saves the text, from a box of text as well', async () => {
    const v = await withSkirt();
    await v.page.locator('.piece').first().focus();
    await v.page.keyboard.press('Control+s');
    await v.send({ type: 'do', tool: 'find' });
    await v.page.keyboard.press('Meta+s');
    await v.page.keyboard.press('Control+Shift+s');
    await v.page.keyboard.press('s');
    assert.equal((await v.told()).filter(({ type }) => type === 'save').length, 2);
  });

  it('one stop of the drawing takes part in the tab order, and Tab leaves at its end', async () => {
    const v = await withSkirt();
    assert.equal(await v.page.locator('.stage [tabindex="0"]').count(), 1);
    const stops = await v.page.locator('.stage [tabindex]').count();
    await v.page.locator('.piece').first().focus();
    for (let i = 0; i < stops + 1; i++) await v.page.keyboard.press('Tab');
    assert.equal(await v.page.evaluate(() => document.activeElement!.closest('.stage') === null), true);
  });

  it('the keyboard keeps its place when its piece is drawn anew', async () => {
    const v = await withSkirt();
    await v.page.locator('.thing[data-source="front/side"]').focus();
    await v.send(fullSheet(skirt(), { full: false, version: 2, since: 1, pieces: [skirt().pieces[1]!] }));
    assert.equal(
      await v.page.evaluate(() => (document.activeElement as SVGElement).dataset.source),
      'front/side',
    );
  });

  it('the badge counts problems in words, and a row of its list leads to the text', async () => {
    const v = await withSkirt();
    assert.equal(await v.page.locator('button.problems').textContent(), '1 error, 1 warning');
    await v.page.click('button.problems');
    const rows = await v.page.locator('.problem .severity').allTextContents();
    assert.deepEqual(rows, ['error', 'warning']);
    await v.page.click('.problem >> nth=0');
    assert.deepEqual(await v.told(), [
      { type: 'select', source: 'front/side' },
      {
        ...{ type: 'goto', source: 'front/side' },
        problem: { code: 'mismatched-seam', message: 'The sides differ by 5 mm.' },
      },
    ]);
  });

  it('the Show list switches kinds of lines, and is remembered', async () => {
    const v = await withSkirt();
    await v.page.click('button.show');
    await v.page.locator('input[name="sewing"]').uncheck();
    assert.equal(await v.page.locator('.line.sewing').first().isVisible(), false);
    await v.page.waitForTimeout(250);
    const { shown } = (await v.state())!;
    assert.deepEqual(
      [shown.includes('sewing'), shown.includes('balance'), shown.includes('construction')],
      [false, true, false],
    );
  });
});
