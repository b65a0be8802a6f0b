/** What is laid out in the preview instead of the sheet: a seam walked by keys and by hand, and the way back. */
import assert from 'node:assert/strict';
import { liveView, type Live } from '../support/live-view';
import { describePages, painted } from '../support/preview-suite';

const SKIRT = 'harbour-skirt.draft';

describePages<Live>('the bench of the preview', (open) => {
  /** The skirt with one of its tools in use. */
  async function withTool(tool: string, text = SKIRT): Promise<Live> {
    const view = await open((browser) => liveView(browser, text));
    await view.send({ type: 'do', tool });
    await view.settle();
    return view;
  }

  async function press(v: Live, ...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      await v.page.keyboard.press(key);
      await v.settle();
    }
  }

  const sentences = (v: Live) => v.page.locator('.sentences p').allTextContents();

  it('a seam is walked step by step, and from stop to stop', async () => {
    const v = await withTool('walk');
    assert.match((await sentences(v))[0]!, /^front side is .*, back side .*: they match\.$/);
    await press(v, 'ArrowRight', 'ArrowRight');
    assert.equal((await sentences(v))[1], '2cm along front side lies on 2cm along back side.');
    await press(v, 'PageDown');
    assert.equal((await sentences(v)).at(-1), 'Notch hip-level meets its fellow.');
    await press(v, 'End');
    assert.equal(await v.page.locator('.strip button[aria-label="On to the next stop"]').isDisabled(), true);
  });

  it('a seam is walked by the hand that draws the place where the edges touch', async () => {
    const v = await withTool('walk');
    const box = (await v.page.locator('.touch .ring').boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await v.page.mouse.move(x, y);
    await v.page.mouse.down();
    await v.page.mouse.move(x, y - 60, { steps: 4 });
    await v.page.mouse.up();
    await v.settle();
    const at = await v.page
      .locator('.strip input[type="range"]')
      .evaluate((node) => (node as HTMLInputElement).valueAsNumber);
    const zoom = Number(
      /matrix\((\S+) /.exec((await v.page.locator('.bench').getAttribute('transform'))!)![1],
    );
    assert.ok(Math.abs(at - 60 / zoom) < 5, `${at} mm for ${60 / zoom} mm of the hand`);
  });

  it('two pieces alone are laid out, and Escape brings back the sheet as it was seen', async () => {
    const view = await open((browser) => liveView(browser, SKIRT));
    const seen = () => view.page.locator('.sheet').getAttribute('transform');
    await view.page.keyboard.press('+');
    await painted(view);
    const before = await seen();
    await view.send({ type: 'do', tool: 'together' });
    await view.settle();
    assert.equal(await view.page.locator('.laid-out .piece').count(), 2);
    assert.equal(await view.page.locator('.sheet').isVisible(), false);
    await press(view, 'Escape');
    await painted(view);
    assert.deepEqual([await seen(), await view.page.locator('.sheet').isVisible()], [before, true]);
  });

  it('the seam of the edge that was pointed at is taken', async () => {
    const view = await open((browser) => liveView(browser, SKIRT));
    await view.page.locator('.thing[data-source="back/centre"]').first().focus();
    await press(view, ' ');
    await view.send({ type: 'do', tool: 'walk' });
    await view.settle();
    assert.match((await sentences(view))[0]!, /^back centre .* its pair/);
  });

  it('what can’t be laid out is said, and the sheet stays', async () => {
    const v = await withTool('sides');
    assert.match((await v.page.locator('.tip.shown').textContent())!, /No piece here is different/);
    assert.equal(await v.page.locator('.sheet').isVisible(), true);
  });

  it('closed darts are drawn over a faint piece, with what the edge comes to', async () => {
    const v = await withTool('darts');
    assert.match((await sentences(v))[0]!, /^waist is 22\.7cm on paper and 17\.14cm when sewn, and runs on/);
    assert.ok((await v.page.locator('.laid-line.closed').count()) >= 5);
    assert.equal(await v.page.locator('.laid-out .piece.faint').count(), 1);
  });

  it('a page that begins again lays out what it had', async () => {
    const v = await withTool('walk');
    await press(v, 'ArrowRight');
    await v.page.waitForTimeout(250);
    const state = await v.state();
    await v.page.close();
    const view = await open((browser) => liveView(browser, SKIRT, { state }));
    assert.equal((await sentences(view))[1], '1cm along front side lies on 1cm along back side.');
  });
});
