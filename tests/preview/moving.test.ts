/** Points moved in the preview with the real server behind it: by the pointer and by the arrow keys, into the text. */
import assert from 'node:assert/strict';
import { liveView, type Live } from '../support/live-view';
import { describePages, painted } from '../support/preview-suite';

const TEXT = `draft sheet {
  point a = origin
  point b = a right 30cm
  point c = b down 20cm
  point d = a down 20cm
  line hoist = a to d
  point pocket = on hoist 7cm from a
  curve belly = d to c hollow 1.2cm toward a
  point middle = midpoint of a and b
}
piece flag of sheet {
  cut 1
  outline from a {
    top straight to middle
      then straight to b
    fly straight to c
    foot along belly to d
    staff straight to a
  }
}
`;

describePages<Live>('points moved in the preview', (open) => {
  /** The flag with the lines of its draft in sight. */
  async function onDraft(text = TEXT): Promise<Live> {
    const view = await open((browser) => liveView(browser, text));
    await view.page.click('button.show');
    await view.page.click('input[name="construction"]');
    await view.settle();
    await view.page.click('button.show');
    return view;
  }

  const dotOf = (v: Live, name: string) => v.page.locator(`.dot[data-source="sheet/${name}"]`);
  const tip = (v: Live) => v.page.locator('.tip.shown').textContent();
  const lineOf = (v: Live, name: string) =>
    v
      .text()
      .split('\n')
      .find((line) => line.includes(` ${name} = `))!
      .trim();

  async function drag(v: Live, name: string, dx: number, dy: number): Promise<void> {
    const box = (await dotOf(v, name).locator('.spot').boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await v.page.mouse.move(x, y);
    await v.page.mouse.down();
    await v.page.mouse.move(x + dx / 2, y + dy / 2, { steps: 3 });
    await v.settle();
    await v.page.mouse.move(x + dx, y + dy, { steps: 3 });
    await v.settle();
  }

  async function press(v: Live, ...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      await v.page.keyboard.press(key);
      await v.settle();
    }
  }

  it('the draft is drawn beneath the piece when it is wanted, and gone when it is not', async () => {
    const v = await onDraft();
    assert.equal(await v.page.locator('.line.construction').count(), 2);
    assert.equal(await v.page.locator('.dot.point').count(), 2);
    await v.page.click('button.show');
    await v.page.click('input[name="construction"]');
    await v.settle();
    assert.equal(await v.page.locator('.line.construction').count(), 0);
  });

  it('a point along a line is drawn along it by the pointer, and its distance in the text follows', async () => {
    const v = await onDraft();
    await drag(v, 'pocket', 0, 40);
    const told = (await tip(v))!;
    await v.page.mouse.up();
    await v.settle();
    assert.notEqual(told, '7cm');
    assert.equal(lineOf(v, 'pocket'), `point pocket = on hoist ${told} from a`);
  });

  it('a hollow curve is drawn deeper by its deepest place', async () => {
    const v = await onDraft();
    const before = await v.page.locator('.line.construction').last().getAttribute('d');
    await drag(v, 'belly', 0, -30);
    const told = (await tip(v))!;
    await v.page.mouse.up();
    await v.settle();
    assert.ok(Number.parseFloat(told) > 1.2, told);
    assert.equal(lineOf(v, 'belly'), `curve belly = d to c hollow ${told} toward a`);
    assert.notEqual(await v.page.locator('.line.construction').last().getAttribute('d'), before);
  });

  it('a hollow stretch of an outline is drawn deeper by its deepest place', async () => {
    const v = await onDraft(TEXT.replace('foot along belly to d', 'foot curve to d hollow 1.2cm toward a'));
    const spot = v.page.locator('.dot[data-source="flag/foot#1"] > .spot');
    const box = (await spot.boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await v.page.mouse.move(x, y);
    await v.page.mouse.down();
    await v.page.mouse.move(x, y - 20, { steps: 3 });
    await v.settle();
    const told = (await tip(v))!;
    await v.page.mouse.up();
    await v.settle();
    assert.ok(Number.parseFloat(told) > 1.2, told);
    assert.match(v.text(), new RegExp(`foot curve to d hollow ${told} toward a`));
    assert.ok((await spot.boundingBox())!.y < box.y - 10, 'the handle went with the hand');
  });

  it('Space takes hold of a point, arrows move it a step and with Shift further, Enter lets go', async () => {
    const v = await onDraft();
    await dotOf(v, 'b').focus();
    await press(v, 'Space');
    assert.equal(await tip(v), '30cm: arrow keys move it, Enter lets go');
    await press(v, 'ArrowRight', 'ArrowRight', 'Shift+ArrowRight');
    assert.equal(lineOf(v, 'b'), 'point b = a right 31cm');
    await press(v, 'ArrowLeft');
    assert.equal(lineOf(v, 'b'), 'point b = a right 30.9cm');
    await press(v, 'ArrowUp');
    assert.equal(await tip(v), '30.9cm: it does not go that way');
    assert.equal(await dotOf(v, 'b').evaluate((node) => node === document.activeElement), true);
    const camera = await v.page.locator('.sheet').getAttribute('transform');
    await press(v, 'Enter');
    assert.equal(await v.page.locator('.tip.shown').count(), 0);
    await press(v, 'ArrowRight');
    await painted(v);
    assert.equal(lineOf(v, 'b'), 'point b = a right 30.9cm');
    assert.notEqual(await v.page.locator('.sheet').getAttribute('transform'), camera);
  });

  it('a point that is worked out says so to the keyboard as well', async () => {
    const v = await onDraft();
    await dotOf(v, 'middle').focus();
    await press(v, 'Space');
    assert.equal(await tip(v), 'middle is worked out from a, b: change that in the text.');
    assert.equal(lineOf(v, 'middle'), 'point middle = midpoint of a and b');
  });
});
