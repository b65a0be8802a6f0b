/** What a browser story works with: the editor's page, and words for what a person does in it. */
import { mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Frame, Locator, Page } from 'playwright-core';
import { root } from '../setup.mjs';

/** Milliseconds that a story waits for something to appear before it counts as missing. */
const PATIENCE = 40_000;

/** The address of a folder, or of a file that names several, in a running editor, with further values in its payload. */
export function address(
  url: string,
  folder: string,
  payload: readonly (readonly [string, string])[] = [],
): string {
  const place = new URL(url);
  place.searchParams.set(
    folder.endsWith('.code-workspace') ? 'workspace' : 'folder',
    pathToFileURL(folder).pathname,
  );
  if (payload.length > 0) place.searchParams.set('payload', JSON.stringify(payload));
  return place.href;
}

/** A running editor, as a scene needs it. */
export interface Editor {
  readonly url: string;
  readonly home: string;
}

/** One window of the editor on one folder of drafts; a story may change the files of that folder. */
export class Scene {
  private constructor(
    readonly page: Page,
    readonly folder: string,
    /** The folder of the editor's own files: what it started can be told by it. */
    readonly home: string,
  ) {}

  /** Opens the editor on a folder and waits until a person could start to work. */
  static async open(
    browser: Browser,
    { url, home }: Editor,
    folder: string,
    { language }: Opens = {},
  ): Promise<Scene> {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    if (language !== undefined)
      await page.addInitScript({ content: `globalThis._VSCODE_NLS_LANGUAGE = ${JSON.stringify(language)};` });
    page.setDefaultTimeout(PATIENCE);
    await page.goto(address(url, folder), { timeout: 60_000 });
    await page.locator('.explorer-folders-view .monaco-list-row').first().waitFor({ timeout: 60_000 });
    return new Scene(page, folder, home);
  }

  /** Opens a file of the folder by its name, as quick open does. */
  async openFile(name: string): Promise<void> {
    await this.page.keyboard.press('ControlOrMeta+P');
    await this.pick(name, name.split('/').at(-1)!);
    const tab = this.page.locator('.tab.active', { hasText: name.split('/').at(-1)! });
    await tab.waitFor();
    await this.page.locator('.editor-instance .monaco-editor .view-line').first().waitFor();
  }

  /** Runs a command by its title in the command palette. */
  async command(title: string): Promise<void> {
    await this.page.keyboard.press('F1');
    await this.pick(`>${title}`, title);
  }

  /** Reads the window anew by the editor's own command, which keeps first what is to be found again. */
  async reload(): Promise<void> {
    await Promise.all([this.page.waitForEvent('load'), this.command('Developer: Reload Window')]);
    await this.page.locator('.editor-instance').first().waitFor();
  }

  /** Types into the open quick pick and takes the first row that shows the label. */
  private async pick(text: string, label: string): Promise<void> {
    const input = this.page.locator('.quick-input-widget:visible input').first();
    await input.waitFor();
    await input.fill(text);
    await this.page.locator('.quick-input-list .monaco-list-row', { hasText: label }).first().click();
  }

  /** Goes to a line and column (from 1) of the active editor. */
  async goTo(line: number, column = 1): Promise<void> {
    await this.page.keyboard.press('Control+G');
    const input = this.page.locator('.quick-input-widget:visible input').first();
    await input.fill(`:${line}:${column}`);
    await input.press('Enter');
    await input.waitFor({ state: 'hidden' });
  }

  /** Types as on a keyboard into whatever has the focus; suggestions are dismissed. */
  async type(text: string): Promise<void> {
    await this.page.keyboard.type(text, { delay: 10 });
  }

  /** Keeps when keys are pressed from now on, by the clock of the machine in milliseconds. */
  async keyTimes(): Promise<() => Promise<readonly number[]>> {
    await this.page.evaluate(() => {
      const times: number[] = [];
      addEventListener('keydown', () => times.push(performance.timeOrigin + performance.now()), {
        capture: true,
      });
      Object.assign(window, { times });
    });
    return () => this.page.evaluate(() => (window as unknown as { times: readonly number[] }).times);
  }

  /** Presses a key or a chord, such as 'Control+S'. */
  async press(keys: string): Promise<void> {
    await this.page.keyboard.press(keys);
  }

  /** Saves the untitled text in front under a name in the folder. */
  async saveNew(name: string): Promise<void> {
    await this.press('ControlOrMeta+S');
    const input = this.page.locator('.quick-input-widget:visible input').first();
    const path = join(this.folder, name);
    let kept = 0;
    // the dialog fills its box itself once it has looked at the folder, over what stands there
    await this.until('the name of the new file', async () => {
      kept = (await input.inputValue()) === path ? kept + 1 : 0;
      if (kept === 0) await input.fill(path);
      return kept > 10;
    });
    await input.press('Enter');
    await this.page.locator(`.tab.active:not(.dirty)[data-resource-name="${name}"]`).waitFor();
  }

  /** Saves the active editor and answers the text of that file on disk. */
  async save(name: string): Promise<string> {
    await this.press('ControlOrMeta+S');
    await this.page.locator('.tab.active.dirty').waitFor({ state: 'detached' });
    return readFileSync(join(this.folder, name), 'utf8');
  }

  /** The frame (a webview's content lies in nested ones) that holds an element; waits for it. */
  async frameWith(selector: string, withinMs = PATIENCE): Promise<Frame> {
    for (let waited = 0; waited < withinMs; waited += 100) {
      for (const frame of this.page.frames()) {
        const there = await frame.$(selector).catch(() => null);
        if (there) return frame;
      }
      await this.page.waitForTimeout(100);
    }
    throw new Error(`no frame shows ${selector} within ${withinMs / 1000} s`);
  }

  /** An element inside the preview, or any other webview. */
  async inside(selector: string): Promise<Locator> {
    return (await this.frameWith(selector)).locator(selector);
  }

  /** Goes to the first place where a text stands in a file as it is on disk, plus some columns. */
  async goToText(name: string, text: string, columns = 0): Promise<void> {
    const whole = readFileSync(join(this.folder, name), 'utf8');
    if (!whole.includes(text)) throw new Error(`${name} holds no ${JSON.stringify(text)}`);
    const before = whole.split(text)[0]!.split('\n');
    await this.goTo(before.length, before.at(-1)!.length + 1 + columns);
  }

  /** Brings the tab of a text to the front, with the keyboard in it. */
  async focusText(name: string): Promise<void> {
    await this.page.locator(`.tab[data-resource-name="${name}"]`).first().click();
    await this.textHasKeyboard();
  }

  /** Waits until keys go to a text: the keyboard follows the cursor a moment later. */
  async textHasKeyboard(): Promise<void> {
    await this.page.locator('.editor-instance .monaco-editor.focused').first().waitFor();
  }

  /** Waits until something holds, for what no locator can say. */
  async until(what: string, holds: () => Promise<boolean>): Promise<void> {
    for (const end = performance.now() + PATIENCE; performance.now() < end;) {
      if (await holds().catch(() => false)) return;
      await this.page.waitForTimeout(50);
    }
    throw new Error(`waited in vain for ${what}`);
  }

  /** The text of the status bar that tells the cursor's line and column. */
  async cursor(): Promise<string> {
    return this.page.locator('#status\\.editor\\.selection').innerText();
  }

  /** Opens the Problems panel and waits for a row that holds the text; answers the whole row. */
  async problemAbout(text: string): Promise<string> {
    const rows = this.page.locator('.markers-panel .monaco-list-row');
    const focus = () => this.command('Problems: Focus on Problems View');
    await focus();
    const row = rows.filter({ hasText: text }).first();
    await row.waitFor();
    // a list that was empty when it was asked for has no row to press Enter on
    if ((await this.page.locator('.markers-panel .monaco-list-row.focused').count()) === 0) await focus();
    return row.innerText();
  }

  /** Opens the menu of repairs at the cursor, and waits until it offers one. */
  async repairs(title: string): Promise<void> {
    await this.textHasKeyboard();
    const menu = this.page.locator('.action-widget', { hasText: title });
    // the menu does not open while the editor still asks for repairs: a person presses again
    await this.until('the menu of repairs', async () => {
      if (!(await menu.isVisible())) await this.press('Control+.');
      return menu.waitFor({ timeout: 3000 }).then(() => true);
    });
  }

  /** Saves a picture of the window as out/pictures/NAME.png. */
  async picture(name: string): Promise<void> {
    const folder = join(root, 'out', 'pictures');
    mkdirSync(folder, { recursive: true });
    // what fades in or out is shown as it will be
    await this.page.screenshot({ path: join(folder, `${name}.png`), animations: 'disabled' });
  }

  async close(): Promise<void> {
    await this.page.close();
  }
}

/** What the window of a file of stories opens, where that is not the samples in a folder that is trusted. */
export interface Opens {
  readonly emptyFolder?: boolean;
  /** The editor asks whether folders are trusted, and nobody has trusted this one. */
  readonly restricted?: boolean;
  /** The language that the editor tells its extensions: `de`. Its own words stay English, for want of a language pack. */
  readonly language?: string;
}

/** A story: what a person does and sees. Throws when the editor does not keep up. */
export type Story = (scene: Scene) => Promise<void>;
