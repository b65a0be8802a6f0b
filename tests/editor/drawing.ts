/** The preview as a story sees it: what is drawn in it, where a line lies on the screen, what is stale. */
import type { Frame, Locator } from 'playwright-core';
import type { Scene } from './scene';

/** A webview starts slowly where the machine has other work. */
const STARTS_WITHIN_MS = 90_000;

/** What was seen of a preview for a while; times as the clock of the machine has them, in milliseconds. */
export interface Watched {
  readonly problems: { readonly told: string; readonly at: number }[];
  sheets: number;
}

export class Preview {
  private constructor(
    private readonly scene: Scene,
    private readonly frame: Frame,
  ) {}

  /** The preview that is open; waits until it has drawn its pieces. */
  static async of(scene: Scene): Promise<Preview> {
    const frame = await scene.frameWith('#preview .piece', STARTS_WITHIN_MS);
    return new Preview(scene, frame);
  }

  /** Opens it beside the text in front, by its keys. */
  static async beside(scene: Scene): Promise<Preview> {
    await scene.press('Control+K');
    await scene.press('v');
    return Preview.of(scene);
  }

  /** Every preview that is seen, in the order in which they were opened. */
  static async all(scene: Scene): Promise<Preview[]> {
    const drawn = await Promise.all(
      scene.page.frames().map(async (frame) => {
        const count = await frame
          .locator('#preview .piece')
          .count()
          .catch(() => 0);
        return count > 0 ? [new Preview(scene, frame)] : [];
      }),
    );
    return drawn.flat();
  }

  /** True once the editor has thrown the view away, as it does when it is hidden. */
  async isGone(): Promise<boolean> {
    return this.frame.isDetached();
  }

  at(selector: string, that: { hasText?: string } = {}): Locator {
    return this.frame.locator(selector, that);
  }

  /** What a person reads when pointing at a thing. */
  async tip(source: string): Promise<string> {
    return (await this.at(`[data-source="${source}"][data-tip]`).first().getAttribute('data-tip')) ?? '';
  }

  /** Waits until pointing at a thing tells a text. */
  async tells(source: string, text: string): Promise<void> {
    await this.scene.until(`the tip of ${source} with ${text}`, async () =>
      (await this.tip(source)).includes(text),
    );
  }

  /** The names of the pieces that show an older text. */
  async stale(): Promise<string[]> {
    return this.at('.piece.stale').evaluateAll((all) =>
      all.map((node) => (node as SVGElement).dataset.piece!),
    );
  }

  async staleAre(names: readonly string[]): Promise<void> {
    await this.scene.until(`stale: ${names.join(', ') || 'none'}`, async () => {
      return (await this.stale()).join() === names.join();
    });
  }

  /** Counts the sheets that come from now on, and keeps when the count of problems changed and to what. */
  async watch(): Promise<() => Promise<Watched>> {
    const button = this.at('button.problems');
    await button.evaluate((node) => {
      const seen: Watched = { problems: [], sheets: 0 };
      new MutationObserver(() => {
        const told = node.textContent ?? '';
        if (told !== seen.problems.at(-1)?.told)
          seen.problems.push({ told, at: performance.timeOrigin + performance.now() });
      }).observe(node, { childList: true, characterData: true, subtree: true });
      addEventListener('message', ({ data }: MessageEvent<{ type?: string }>) => {
        if (data.type === 'sheet') seen.sheets++;
      });
      Object.assign(window, { seen });
    });
    return () => button.evaluate(() => (window as unknown as { seen: Watched }).seen);
  }

  /** Takes a tool out of the list in the bar. */
  async choose(tool: string): Promise<void> {
    await this.at('button.tools').click();
    await this.at(`.tools-list .tool.${tool}`).press('Enter');
  }

  /** What the strip says of the pieces that are laid out. */
  async sentence(index: number): Promise<string> {
    return (await this.at('.sentences p').nth(index).textContent()) ?? '';
  }

  /** Zoom and place of the sheet. */
  async camera(): Promise<string> {
    return (await this.at('.sheet').getAttribute('transform')) ?? '';
  }

  async zoomIn(times: number): Promise<void> {
    for (let i = 0; i < times; i++) {
      const before = await this.camera();
      await this.at('.zoom button').last().click();
      await this.scene.until('a larger drawing', async () => (await this.camera()) !== before);
    }
  }

  /** The middle of a thing on the screen; where it is just drawn anew it is looked for again. */
  async middle(thing: Locator): Promise<{ readonly x: number; readonly y: number }> {
    let spot = { x: 0, y: 0 };
    await this.scene.until('its place on the screen', async () => {
      const box = await thing.boundingBox();
      if (box !== null) spot = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
      return box !== null;
    });
    return spot;
  }

  /** Takes hold of the middle of a thing and moves it by pixels. */
  async drag(thing: Locator, dx: number, dy: number): Promise<void> {
    const { x, y } = await this.middle(thing);
    const { mouse } = this.scene.page;
    await mouse.move(x, y);
    await mouse.down();
    await mouse.move(x + dx, y + dy, { steps: 6 });
    await this.scene.page.waitForTimeout(300); // a hand that rests before it lets go
    await mouse.up();
  }

  /** Waits until keys go to the view: the keyboard follows a click a moment later. */
  async hasKeyboard(): Promise<void> {
    await this.scene.until('the keyboard in the view', () =>
      this.at('body').evaluate((body) => body.ownerDocument.hasFocus()),
    );
  }

  /** Clicks on the middle of a line. */
  async click(source: string, keys: 'Control' | undefined = undefined): Promise<void> {
    const hit = this.at(`[data-source="${source}"] > .hit`).first();
    const inside = await hit.evaluate((node) => {
      const path = node as unknown as SVGPathElement;
      const { x, y } = path
        .getPointAtLength(path.getTotalLength() * 0.4)
        .matrixTransform(path.getScreenCTM()!);
      return { x, y };
    });
    const box = (await (await this.frame.frameElement()).boundingBox())!;
    if (keys) await this.scene.page.keyboard.down(keys);
    await this.scene.page.mouse.click(box.x + inside.x, box.y + inside.y);
    if (keys) await this.scene.page.keyboard.up(keys);
  }
}
