/** The ruler of the preview: places that the pointer means, and what is done by mouse and by keyboard. */
import assert from 'node:assert/strict';
import type { Measured } from '../../client/preview/protocol';
import { hop, inPiece, movedBy, nearestOn, onPaper, pointsOf, snapped } from '../../client/preview/view/snap';
import { line, smallPiece, spot } from '../support/drawings';
import type { Opened } from '../support/preview-page';
import { describeView, onLine } from '../support/preview-suite';

const spreads = [
  { drawing: smallPiece('pocket'), by: movedBy({ x: 0, y: 0 }) },
  { drawing: smallPiece('flap'), by: movedBy({ x: 140, y: 0 }) },
];

describe('places that a pointer means', () => {
  it('a point is meant before a line that passes nearer', () => {
    const found = snapped(spreads, spot(3, 0.5), 5, true);
    assert.deepEqual([found.words, found.at], ['pocket a', { x: 0, y: 0 }]);
  });

  it('the nearest place of a line is meant where no point is near, in the piece’s own millimetres', () => {
    const found = snapped(spreads, spot(190, 2), 5, true);
    assert.deepEqual([found.at, found.own], [spot(190, 0), spot(50, 0)]);
  });

  it('far from every line the pointer means where it is', () => {
    assert.deepEqual(snapped(spreads, spot(20, 30), 5, true), { at: spot(20, 30), words: '' });
  });

  it('the nearest place of a curve lies where a circle has it', () => {
    const k = (4 / 3) * (Math.SQRT2 - 1) * 100; // a quarter of a circle about the origin, true to 0.03 %
    const arc = line('sewing', 'a/b', spot(100, 0), [[100, k, k, 100, 0, 100]]);
    const { x, y } = nearestOn(arc, spot(150, 150));
    assert.ok(
      Math.abs(x - 100 * Math.SQRT1_2) < 0.05 && Math.abs(y - 100 * Math.SQRT1_2) < 0.05,
      `${x} ${y}`,
    );
  });

  it('a piece that is turned and turned over is left and entered by the same way', () => {
    const by = [0.6, 0.8, 0.8, -0.6, 30, 40] as const;
    const { x, y } = inPiece(by, onPaper(by, spot(12, 7)));
    assert.deepEqual([Number(x.toFixed(9)), Number(y.toFixed(9))], [12, 7]);
  });

  it('an arrow hops to the nearest point that lies its way', () => {
    const points = pointsOf(spreads, true);
    assert.equal(hop(points, spot(60, 0), 1, 0)?.words, 'flap a');
    assert.equal(hop(points, spot(0, 0), -1, 0), undefined);
  });
});

const told: Measured = { straight: '24.1cm', apart: '12cm across, 20.9cm down' };

/** Answers what the view asked, till it asks no more; what it wanted to know last. */
async function answer(v: Opened, measured: Measured): Promise<object> {
  let params: object = {};
  for (;;) {
    const [question] = (await v.told()).flatMap((one) => (one.type === 'question' ? [one] : []));
    if (question === undefined) return params;
    params = question.params;
    await v.send({ type: 'answered', id: question.id, answer: measured });
  }
}

describeView('ruler of the preview', ({ withSkirt }) => {
  it('two clicks lay it from point to line, and what it tells stands beside it', async () => {
    const v = await withSkirt();
    await v.send({ type: 'do', tool: 'measure' });
    const box = (await v.page.locator('.piece[data-piece="back"] .dot > .spot').first().boundingBox())!;
    await v.page.mouse.click(box.x + box.width / 2 + 2, box.y + box.height / 2 + 2);
    const { x, y } = await onLine(v, 'back/hem');
    await v.page.mouse.click(x, y);
    const params = (await answer(v, told)) as { from: { piece: string }; to: { piece: string } };
    assert.deepEqual([params.from.piece, params.to.piece], ['back', 'back']);
    assert.equal(await v.page.locator('.tip.measured.shown').innerText(), '24.1cm\n12cm across, 20.9cm down');
    assert.equal(await v.page.locator('.measure .between').count(), 1);
    assert.equal(await v.page.locator('.selected').count(), 0);
  });

  it('arrows and Enter lay it without a mouse, and the two ends are spoken', async () => {
    const v = await withSkirt();
    await v.send({ type: 'do', tool: 'measure' });
    const said = () => v.page.locator('.room > .spoken').first().textContent();
    assert.match((await said())!, /^Measuring\. Arrow keys/);
    await v.page.keyboard.press('ArrowRight');
    const first = await said();
    await v.page.keyboard.press('Enter');
    assert.equal(await said(), `From ${first}`);
    await v.page.keyboard.press('ArrowDown');
    const second = await said();
    await v.page.keyboard.press('Enter');
    await answer(v, told);
    assert.equal(await said(), `24.1cm\n12cm across, 20.9cm down, to ${second}`);
  });

  it('Escape takes the ruler up, and once more puts it away', async () => {
    const v = await withSkirt();
    await v.send({ type: 'do', tool: 'measure' });
    await v.page.keyboard.press('ArrowRight');
    await v.page.keyboard.press('Enter');
    await v.page.keyboard.press('Escape');
    assert.equal(await v.page.locator('.measure > *').count(), 0);
    assert.equal(await v.page.locator('.preview.measuring').count(), 1);
    await v.page.keyboard.press('Escape');
    assert.equal(await v.page.locator('.preview.measuring').count(), 0);
  });
});
