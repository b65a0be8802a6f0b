/** The preview by an independent judge of accessibility, in every kind of theme; and its tree for a screen reader. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../editor/browser.mjs';
import { liveView, type Live } from '../support/live-view';
import type { ThemeName } from '../support/themes';
import { fullSheet } from '../support/preview-page';
import { skirt } from '../support/drawings';
import { describeView, problems } from '../support/preview-suite';

const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string; readonly failureSummary: string }[];
}

/** What the judge finds serious or worse, one line each. */
async function violations(view: Live): Promise<string[]> {
  await view.page.evaluate(AXE);
  const found = await view.page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } };
    return (await axe.run()).violations;
  });
  return found
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${html.slice(0, 120)} ${failureSummary}`),
    );
}

/** What a person may have open, each by what they do for it. */
const STATES: Readonly<Record<string, (view: Live) => Promise<void>>> = {
  'the drawing': async () => undefined,
  choices: (view) => view.page.click('button.choices'),
  show: (view) => view.page.click('button.show'),
  tools: (view) => view.page.click('button.tools'),
  problems: (view) => view.page.click('button.problems'),
  find: async (view) => {
    await view.page.click('button.find');
    await view.page.keyboard.type('wai');
  },
  contents: async (view) => {
    await view.send({ type: 'do', tool: 'contents' });
    await view.page.keyboard.press('ArrowRight');
  },
  'a walk': async (view) => {
    await view.send({ type: 'do', tool: 'walk' });
    await view.settle();
  },
};

/** The hem of the skirt is left raw, so that there is a problem to be listed. */
const faulty = () =>
  readFileSync(new URL('../../samples/harbour-skirt.draft', import.meta.url), 'utf8').replace(
    /^finish hem.*$/m,
    '',
  );

describe('accessibility of the preview, judged by axe', function () {
  this.timeout(120_000);
  let browser: Browser | undefined;

  before(async function () {
    ({ browser } = await launchBrowser());
    if (browser) return;
    process.stderr.write('SKIPPED: no browser starts here: accessibility of the preview\n');
    this.skip();
  });
  after(() => browser?.close());

  for (const theme of ['light', 'dark', 'high-contrast', 'high-contrast-light'] as ThemeName[]) {
    it(`has no serious violation in ${theme}, whatever is open`, async () => {
      const found: string[] = [];
      const view = await liveView(browser!, faulty(), { theme });
      for (const [name, open] of Object.entries(STATES)) {
        await open(view);
        found.push(...(await violations(view)).map((words) => `${name}: ${words}`));
        await view.page.keyboard.press('Escape');
        await view.settle();
      }
      await view.page.close();
      assert.deepEqual(found, []);
    });
  }

  it('the judge sees a button without a name', async () => {
    const view = await liveView(browser!, faulty());
    await view.page.locator('button.show').evaluate((button) => (button.textContent = ''));
    assert.ok((await violations(view)).some((words) => words.startsWith('button-name')));
    await view.page.close();
  });
});

describeView('tree of everything in the preview', ({ opened }) => {
  it('is walked by arrows: pieces with their problems first, then lines and points', async () => {
    const v = await opened();
    await v.send(fullSheet(skirt(), { problems }));
    await v.send({ type: 'do', tool: 'contents' });
    const here = () =>
      v.page.evaluate(() => (document.activeElement as HTMLElement).innerText.split('\n')[0]);
    assert.equal(await here(), 'back, cut pair, 4 edges, 1 problem');
    await v.page.keyboard.press('ArrowRight');
    await v.page.keyboard.press('ArrowRight');
    assert.equal(await here(), 'warning: The hem is raw.');
    await v.page.keyboard.press('ArrowLeft');
    await v.page.keyboard.press('End');
    assert.match((await here())!, /^waistband/);
    await v.page.keyboard.press('f');
    assert.match((await here())!, /^front/);
  });

  it('Space shows a thing in the drawing, Enter leads to its text', async () => {
    const v = await opened();
    await v.send(fullSheet(skirt()));
    await v.send({ type: 'do', tool: 'contents' });
    await v.page.keyboard.press('ArrowRight');
    await v.page.keyboard.press('ArrowDown');
    await v.told();
    await v.page.keyboard.press(' ');
    const [selected] = await v.told();
    assert.equal(selected?.type, 'select');
    await v.page.keyboard.press('Enter');
    assert.deepEqual((await v.told()).at(-1), { ...selected, type: 'goto' });
  });

  it('that stands open follows the text, with its branches and the keyboard where they were', async () => {
    const v = await opened();
    await v.send(fullSheet(skirt(), { problems }));
    await v.send({ type: 'do', tool: 'contents' });
    for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown']) await v.page.keyboard.press(key);
    const now = () =>
      v.page.evaluate(() => {
        const item = document.activeElement as HTMLElement;
        return [item.getAttribute('role'), item.dataset.source, item.textContent];
      });
    const before = await now();
    const [back, ...others] = skirt().pieces;
    const longer = back!.lines.map((line) => ({ ...line, tip: line.tip.replace(/\d+ cm/, '99 cm') }));
    await v.send(fullSheet({ ...skirt(), pieces: [{ ...back!, lines: longer }, ...others] }, { version: 2 }));
    const after = await now();
    assert.deepEqual(after.slice(0, 2), before.slice(0, 2));
    const listed = await v.page.locator('[role="treeitem"]:visible').allTextContents();
    assert.ok(
      listed.length > 4 && !listed.some((words) => /^(error|warning): /.test(words)),
      listed.join('\n'),
    );
    assert.ok(
      listed.some((words) => words.includes('99 cm')),
      listed.join('\n'),
    );
  });

  it('keeps the keyboard on a line, though a problem of that line stands before it', async () => {
    const v = await opened();
    const [about] = problems;
    const [back, ...others] = skirt().pieces;
    const { source } = back!.lines.find(({ role }) => role === 'sewing')!;
    const told = [{ ...about!, piece: back!.source, source }];
    const drawing = { ...skirt(), pieces: [back!, ...others] };
    await v.send(fullSheet(drawing, { problems: told }));
    await v.send({ type: 'do', tool: 'contents' });
    const now = () => v.page.evaluate(() => document.activeElement!.textContent);
    const sourceNow = () => v.page.evaluate(() => (document.activeElement as HTMLElement).dataset.source);
    for (const key of ['ArrowRight', 'ArrowDown', 'ArrowDown']) await v.page.keyboard.press(key);
    for (let down = 0; down < 50 && (await sourceNow()) !== source; down++)
      await v.page.keyboard.press('ArrowDown');
    const before = await now();
    assert.doesNotMatch(before!, /^(error|warning): /);
    await v.send(fullSheet(drawing, { version: 2, problems: told }));
    assert.equal(await now(), before);
  });

  it('reaches every drawn thing that has a name', async () => {
    const v = await opened();
    await v.send(fullSheet(skirt()));
    await v.send({ type: 'do', tool: 'contents' });
    const sources = (selector: string) =>
      v.page
        .locator(selector)
        .evaluateAll((all) => [...new Set(all.map((node) => (node as HTMLElement).dataset.source!))].sort());
    const drawn = await sources('.sheet .thing, .sheet .dot');
    const listed = new Set(await sources('[role="treeitem"]'));
    assert.deepEqual(
      drawn.filter((source) => !listed.has(source)),
      [],
    );
  });

  it('nothing of it moves for those who asked for less motion', async () => {
    const v = await opened();
    await v.page.emulateMedia({ reducedMotion: 'reduce' });
    await v.send(fullSheet(skirt()));
    const moving = await v.page.locator('.preview, .preview *').evaluateAll(
      (all) =>
        all.filter((node) => {
          const { transitionDuration, animationName } = getComputedStyle(node);
          return (
            animationName !== 'none' || transitionDuration.split(',').some((time) => parseFloat(time) > 0)
          );
        }).length,
    );
    assert.equal(moving, 0);
  });
});
