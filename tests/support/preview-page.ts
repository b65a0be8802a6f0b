/** The view of the preview in a plain page of a real browser: a stand-in for the editor round the shipped bundle. */
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import type { Browser, Page } from 'playwright-core';
import { previewPage } from '../../client/preview/host/page';
import type { FromView, Sheet, ToView, ViewState } from '../../client/preview/protocol';
import type { Drawing } from '../../server/drawing/model';
import { themes, type ThemeName } from './themes';

const ORIGIN = 'http://preview.invalid';
export const URI = 'file:///wardrobe/harbour-skirt.draft';

export interface Opened {
  readonly page: Page;
  send(message: ToView): Promise<void>;
  /** What the view has told the editor since the last call. */
  told(): Promise<FromView[]>;
  state(): Promise<ViewState | undefined>;
  /** Faults of the page: errors, and what its security policy refused. */
  readonly faults: string[];
}

export interface OpenOptions {
  readonly theme?: ThemeName;
  readonly width?: number;
  readonly height?: number;
  readonly state?: ViewState;
  /** The text that was saved as the file. */
  readonly was?: string;
  /** Of the German bundle, or of any other. */
  readonly words?: Readonly<Record<string, string>>;
}

/** Bundles the view as the build does. */
export async function bundleView(): Promise<{ script: string; style: string }> {
  const from = fileURLToPath(new URL('../../client/preview/view/main.ts', import.meta.url));
  const { outputFiles } = await build({
    entryPoints: [from],
    bundle: true,
    write: false,
    outdir: 'preview',
    format: 'iife',
    target: 'es2022',
    platform: 'browser',
  });
  const text = (ending: string) => outputFiles.find(({ path }) => path.endsWith(ending))!.text;
  return { script: text('.js'), style: text('.css') };
}

let bundle: ReturnType<typeof bundleView> | undefined;

export async function openView(browser: Browser, options: OpenOptions = {}): Promise<Opened> {
  const { theme = 'light', width = 900, height = 640 } = options;
  const { script, style } = await (bundle ??= bundleView());
  const page = await browser.newPage({ viewport: { width, height } });
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => void (message.type() === 'error' && faults.push(message.text())));
  // The loader of the tests wraps named functions in a helper that the page does not have.
  await page.addInitScript({ content: 'globalThis.__name = (named) => named;' });
  await page.addInitScript(standIn, { state: options.state, theme: themes[theme] });
  const html = previewPage({
    source: ORIGIN,
    script: `${ORIGIN}/view.js`,
    style: `${ORIGIN}/view.css`,
    nonce: 'n0nce',
    uri: URI,
    was: options.was,
    seat: 'preview',
    language: options.words === undefined ? 'en' : 'de',
    words: options.words,
  });
  const answers: Record<string, { body: string; contentType: string }> = {
    '/': { body: html, contentType: 'text/html' },
    '/view.js': { body: script, contentType: 'text/javascript' },
    '/view.css': { body: style, contentType: 'text/css' },
  };
  await page.route('**/*', (route) => {
    const answer = answers[new URL(route.request().url()).pathname];
    return answer ? route.fulfill(answer) : route.fulfill({ status: 404 });
  });
  await page.goto(`${ORIGIN}/`);
  return {
    page,
    faults,
    send: async (message) => {
      await page.evaluate((data) => window.dispatchEvent(new MessageEvent('message', { data })), message);
      await page.evaluate(
        () => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))),
      );
    },
    told: () => page.evaluate(() => (window as unknown as StandIn).told.splice(0)),
    state: () => page.evaluate(() => (window as unknown as StandIn).state),
  };
}

interface StandIn {
  told: FromView[];
  state: ViewState | undefined;
}

interface StandInOptions {
  readonly state: ViewState | undefined;
  readonly theme: { readonly kind: string; readonly variables: Readonly<Record<string, string>> };
}

/** Runs in the page, before its scripts: what the editor gives a webview. */
function standIn({ state, theme }: StandInOptions): void {
  const store = window as unknown as StandIn & Record<string, unknown>;
  store.told = [];
  store.state = state;
  store.acquireVsCodeApi = () => ({
    postMessage: (message: FromView) => void store.told.push(message),
    getState: () => store.state,
    setState: (kept: ViewState) => void (store.state = kept),
  });
  document.addEventListener('readystatechange', () => {
    for (const [name, value] of Object.entries(theme.variables))
      document.documentElement.style.setProperty(name, value);
    document.body.classList.add(theme.kind);
  });
}

/** A full sheet of a drawing. */
export function fullSheet(drawing: Drawing, more: Partial<Sheet> = {}): Sheet {
  const { title, body, unit, placements, frame, pieces } = drawing;
  return {
    type: 'sheet',
    protocol: 1,
    uri: URI,
    seat: 'preview',
    version: 1,
    since: 0,
    full: true,
    title,
    body,
    everybody: [],
    choices: [],
    trial: { set: {} },
    sizes: [],
    nested: [],
    unit,
    placements,
    frame,
    pieces,
    stale: [],
    problems: [],
    ...more,
  };
}
