/** Takes pictures of the preview's tools in every kind of theme, to be looked at: `npx tsx tests/preview/tool-pictures.ts`. */
import { mkdirSync, readFileSync } from 'node:fs';
import { launchBrowser } from '../editor/browser.mjs';
import { liveView, type Live } from '../support/live-view';
import { onLine } from '../support/preview-suite';
import type { ThemeName } from '../support/themes';

const FOLDER = 'out/pictures';

/** A yoke for a body whose shoulders differ. */
const UNEVEN = `drafted for gatekeeper
body gatekeeper {
  shoulder left 13cm right 12cm
}
draft yoke {
  point neck = origin
  point tip = neck right shoulder down 3cm
  point foot = neck down 16cm
  point side = foot right 14cm
}
piece front of yoke each side {
  cut pair
  outline from neck {
    shoulder straight to tip
    armhole straight to side
    waist straight to foot
    centre straight to neck
  }
  grain along centre
  allow 1cm
}
`;

/** The skirt with a slanting hem, so that its sides do not fit. */
const SLANTED = readFileSync(new URL('../../samples/harbour-skirt.draft', import.meta.url), 'utf8').replace(
  'hem-b right 12cm',
  'hem-b right 12cm down 1cm',
);

type Scene = readonly [name: string, sample: string, act: (view: Live) => Promise<void>];

async function clickOn(view: Live, source: string): Promise<void> {
  const { x, y } = await onLine(view, source);
  await view.page.mouse.click(x, y);
  await view.settle();
}

const scenes: readonly Scene[] = [
  [
    'measure',
    'harbour-skirt.draft',
    async (view) => {
      await view.send({ type: 'do', tool: 'measure' });
      await clickOn(view, 'back/waist');
      await clickOn(view, 'back/side');
    },
  ],
  [
    'find',
    'harbour-skirt.draft',
    async (view) => {
      await view.send({ type: 'do', tool: 'find' });
      await view.page.keyboard.type('wai');
      await view.page.keyboard.press('ArrowDown');
    },
  ],
  [
    'sizes',
    'crew-shirt.draft',
    async (view) => {
      await view.page.click('button.show');
      await view.page.click('input[name="sizes"]');
      await view.settle();
      await view.page.click('button.show');
      await view.page.mouse.move(150, 380);
      await view.page.keyboard.down('Control');
      await view.page.mouse.wheel(0, -640);
      await view.page.keyboard.up('Control');
    },
  ],
  [
    'walk',
    'harbour-skirt.draft',
    async (view) => {
      await clickOn(view, 'back/side');
      await view.send({ type: 'do', tool: 'walk' });
      await view.settle();
      for (const key of ['PageDown', 'PageDown', 'ArrowRight', 'ArrowRight']) {
        await view.page.keyboard.press(key);
        await view.settle();
      }
    },
  ],
  [
    'together',
    'crew-shirt.draft',
    async (view) => {
      await view.send({ type: 'do', tool: 'together' });
      await view.settle();
    },
  ],
  [
    'darts',
    'harbour-skirt.draft',
    async (view) => {
      await view.send({ type: 'do', tool: 'darts' });
      await view.settle();
    },
  ],
  [
    'problems',
    SLANTED,
    async (view) => {
      await view.page.click('button.problems');
    },
  ],
  [
    'whole',
    'harbour-skirt.draft',
    async (view) => {
      await view.page.click('button.show');
      await view.page.click('input[name="whole"]');
      await view.settle();
      await view.page.click('button.show');
    },
  ],
  [
    'draft',
    'sleeve.draft',
    async (view) => {
      await view.page.click('button.show');
      await view.page.click('input[name="construction"]');
      await view.settle();
      await view.page.click('button.show');
      await view.page.locator('.dot[data-source="set-in/head-base"]').focus();
    },
  ],
  [
    'sides',
    UNEVEN,
    async (view) => {
      await view.send({ type: 'do', tool: 'sides' });
      await view.settle();
    },
  ],
  [
    'tools',
    'harbour-skirt.draft',
    async (view) => {
      await view.page.click('button.tools');
    },
  ],
];

async function main(only: readonly string[]): Promise<void> {
  mkdirSync(FOLDER, { recursive: true });
  const { browser, reasons } = await launchBrowser();
  if (!browser) throw new Error(`No browser starts here: ${reasons?.join('; ')}`);
  for (const [name, sample, act] of scenes.filter(([one]) => only.length === 0 || only.includes(one))) {
    for (const theme of ['light', 'dark', 'high-contrast'] as ThemeName[]) {
      const view = await liveView(browser, sample, { theme, width: 760, height: 560 });
      await act(view).catch((fault) => view.faults.push(String(fault)));
      await view.page.waitForTimeout(150);
      await view.page.screenshot({ path: `${FOLDER}/tool-${name}-${theme}.png` });
      if (view.faults.length) process.stderr.write(`${name}: ${view.faults.join('; ')}\n`);
      await view.page.close();
    }
  }
  await browser.close();
}

await main(process.argv.slice(2));
