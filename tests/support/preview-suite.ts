/** A suite of tests on the view of the preview: one browser, a fresh page a test, and no page may have had a fault. */
import assert from 'node:assert/strict';
import type { Browser } from 'playwright-core';
import type { PreviewProblem } from '../../client/preview/protocol';
import { launchBrowser } from '../editor/browser.mjs';
import { skirt } from './drawings';
import { fullSheet, openView, type OpenOptions, type Opened } from './preview-page';

export const problems: PreviewProblem[] = [
  {
    severity: 'warning',
    code: 'unfinished-edge',
    message: 'The hem is raw.',
    source: 'back/hem',
    piece: 'back',
  },
  {
    severity: 'error',
    code: 'mismatched-seam',
    message: 'The sides differ by 5 mm.',
    source: 'front/side',
    piece: 'front',
  },
];

interface Views {
  opened(options?: OpenOptions): Promise<Opened>;
  /** A view that holds the skirt and has said all it had to say. */
  withSkirt(options?: OpenOptions): Promise<Opened>;
}

interface Page {
  readonly page: { close(): Promise<void> };
  /** What the page complained of. */
  readonly faults: readonly unknown[];
}

/** @param tests gets what opens a page in the browser of the suite; it is closed and held to no fault after the test */
export function describePages<V extends Page>(
  title: string,
  tests: (open: (make: (browser: Browser) => Promise<V>) => Promise<V>) => void,
): void {
  describe(title, function () {
    this.timeout(60_000);
    let browser: Browser | undefined;
    let view: V | undefined;

    before(async function () {
      const launched = await launchBrowser();
      browser = launched.browser;
      if (browser) return;
      process.stderr.write(`SKIPPED: no browser starts here (${launched.reasons?.join('; ')}): ${title}\n`);
      this.skip();
    });

    after(() => browser?.close());

    afterEach(async () => {
      const faults = view?.faults ?? [];
      await view?.page.close();
      view = undefined;
      assert.deepEqual(faults, [], 'the page had no fault and loaded nothing that its policy forbids');
    });

    tests(async (make) => (view = await make(browser!)));
  });
}

export function describeView(title: string, tests: (views: Views) => void): void {
  describePages<Opened>(title, (open) => {
    const opened = (options?: OpenOptions) => open((browser) => openView(browser, options));

    const withSkirt = async (options?: OpenOptions) => {
      const v = await opened(options);
      await v.send(fullSheet(skirt(), { problems }));
      await v.told();
      return v;
    };

    tests({ opened, withSkirt });
  });
}

/** A pixel on the line of a source, about a third of its way along. */
export async function onLine(v: Opened, source: string): Promise<{ x: number; y: number }> {
  const line = v.page.locator(`[data-source="${source}"] > .hit`).first();
  return line.evaluate((node) => {
    const path = node as SVGPathElement;
    const at = path.getPointAtLength(path.getTotalLength() * 0.37).matrixTransform(path.getScreenCTM()!);
    return { x: at.x, y: at.y };
  });
}

/** The browser has painted what was asked for. */
export function painted(v: Opened): Promise<unknown> {
  return v.page.evaluate(
    () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
  );
}

/** How the sheet lies on the stage. */
export function transform(v: Opened): Promise<string | null> {
  return v.page.locator('.sheet').getAttribute('transform');
}
