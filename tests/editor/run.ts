/**
 * Runs everything that needs a real VS Code, and prints the counts as its last line.
 *
 *   node --import tsx tests/editor/run.ts [suites|stories|web] [NAME]
 *
 * Suites (`suites/NAME.test.ts`) run inside the extension host with the extension from its folder. Stories
 * (`stories/NAME.story.ts`, exporting async functions of a Scene) click and type in the browser on the packaged
 * extension; a story's name is its title, the stories of one file share a window, and pictures go to out/pictures.
 * A file that wants another window than one on the samples says so in `export const opens: Opens`.
 * The web part (`web/`) runs in an editor that is a page alone, with no machine behind it.
 * To add a suite or a story, add a file; nothing lists them. Build first (`npm run build`).
 * Where no browser starts, everything here counts as skipped, and a loud line says so.
 */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { format } from 'node:util';
import type { Browser } from 'playwright-core';
import { root } from '../setup.mjs';
import { launchBrowser } from './browser.mjs';
import { compileSuites, compileWebSuite, makeTwoFolders, makeWorkspace, packExtension } from './compile.mjs';
import { address, Scene, type Editor, type Opens, type Story } from './scene';
import { startEditor, startWebEditor } from './server.mjs';

interface Counts {
  passed: number;
  failed: number;
  skipped: number;
}

const NONE: Counts = { passed: 0, failed: 0, skipped: 0 };
const STORIES = join(root, 'tests', 'editor', 'stories');
const SUITES_TAKE_AT_MOST = 300_000;

const add = (a: Counts, b: Counts): Counts => ({
  passed: a.passed + b.passed,
  failed: a.failed + b.failed,
  skipped: a.skipped + b.skipped,
});

const summary = ({ passed, failed, skipped }: Counts) =>
  `${passed} passed, ${failed} failed, ${skipped} skipped`;

/** Reads the counts from the line with which the suites end; a run that never printed one has failed. */
function countsOf(lines: readonly string[]): Counts {
  const closing = /^(\d+) passed, (\d+) failed, (\d+) skipped$/;
  const found = lines
    .map((line) => closing.exec(line))
    .filter((match) => match !== null)
    .at(-1);
  if (!found) return { ...NONE, failed: 1 };
  return { passed: Number(found[1]), failed: Number(found[2]), skipped: Number(found[3]) };
}

/** Opens an editor that runs compiled suites by itself, and waits for their end. */
async function suitesAt(browser: Browser, url: string, log: string): Promise<Counts> {
  const page = await browser.newPage();
  const lines: string[] = [];
  const code = await new Promise<number>((resolve, reject) => {
    const patience = setTimeout(
      () => reject(new Error('the suites did not end in time')),
      SUITES_TAKE_AT_MOST,
    );
    const open = async () => {
      await page.exposeFunction('codeAutomationLog', (_type: string, args: unknown[]) => {
        const text = format(...args);
        lines.push(...text.split('\n'));
        if (text.startsWith('  ')) console.log(text); // the reporter's; the rest is the editor's own and goes to the log
      });
      await page.exposeFunction('codeAutomationExit', (exit: number) => {
        clearTimeout(patience);
        resolve(exit);
      });
      await page.goto(url, { timeout: 60_000 });
    };
    open().catch(reject);
  }).finally(() => writeFileSync(join(root, 'out', log), lines.join('\n')));
  await page.close();
  const counts = countsOf(lines);
  return code !== 0 && counts.failed === 0 ? { ...counts, failed: 1 } : counts;
}

/** Opens the editor so that its extension host runs the compiled suites. */
function suitesIn(
  browser: Browser,
  editor: { url: string; port: number },
  suites: string,
  workspace: string,
): Promise<Counts> {
  const authority = `vscode-remote://localhost:${editor.port}`;
  const payload: [string, string][] = [
    ['extensionDevelopmentPath', authority + pathToFileURL(root).pathname],
    ['extensionTestsPath', authority + pathToFileURL(suites).pathname],
    ['skipWelcome', 'true'],
  ];
  return suitesAt(browser, address(editor.url, workspace, payload), 'editor-suites-console.log');
}

async function runSuites(browser: Browser, only: string): Promise<Counts> {
  const { folder, count } = await compileSuites(only);
  if (count === 0) return NONE;
  const workspace = makeTwoFolders();
  const editor = await startEditor({ log: join(root, 'out', 'editor-suites.log') });
  try {
    return await suitesIn(browser, editor, join(folder, 'index.js'), workspace.file);
  } finally {
    await editor.stop();
    rmSync(workspace.home, { recursive: true, force: true });
  }
}

/** The same extension where there is no machine behind the page. */
async function runWeb(browser: Browser): Promise<Counts> {
  const workspace = makeWorkspace();
  const editor = await startWebEditor({ tests: await compileWebSuite(), workspace });
  try {
    return await suitesAt(browser, editor.url, 'editor-web-console.log');
  } finally {
    await editor.stop();
    rmSync(workspace, { recursive: true, force: true });
  }
}

const sentence = (name: string) => name.replace(/([A-Z])/g, ' $1').toLowerCase();

/** Plays one story; a failure is told with its reason and a picture of what the person would have seen. */
async function play(scene: Scene, name: string, story: Story): Promise<Counts> {
  const start = performance.now();
  const told = () => `${sentence(name)} (${((performance.now() - start) / 1000).toFixed(1)} s)`;
  try {
    await story(scene);
    console.log(`  ${told()}`);
    return { ...NONE, passed: 1 };
  } catch (fault) {
    await scene.picture(`failed-${name}`).catch(() => undefined);
    console.log(`  FAILED ${told()}, see out/pictures/failed-${name}.png\n`, fault);
    return { ...NONE, failed: 1 };
  }
}

interface StoryFile {
  readonly opens: Opens;
  readonly stories: readonly [string, Story][];
}

/** The stories of a file in the order in which they stand there; a module's exports come by the alphabet. */
async function storiesOf(file: string): Promise<StoryFile> {
  const path = join(STORIES, file);
  const text = readFileSync(path, 'utf8');
  const { opens = {}, ...stories } = (await import(pathToFileURL(path).href)) as { opens?: Opens };
  const place = (name: string) => text.indexOf(`export const ${name}:`);
  const told = Object.entries(stories as Record<string, Story>);
  return { opens, stories: told.sort(([a], [b]) => place(a) - place(b)) };
}

/** A folder of somebody who has drawn nothing yet: only the editor's settings of it lie there. */
function makeEmptyFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'draftwright-empty-'));
  mkdirSync(join(folder, '.vscode'));
  writeFileSync(join(folder, '.vscode', 'settings.json'), '{}');
  return folder;
}

async function playFile(browser: Browser, editor: Editor, { opens, stories }: StoryFile): Promise<Counts> {
  const workspace = opens.emptyFolder ? makeEmptyFolder() : makeWorkspace();
  const scene = await Scene.open(browser, editor, workspace, opens);
  let counts = NONE;
  try {
    for (const [name, story] of stories) counts = add(counts, await play(scene, name, story));
  } finally {
    await scene.close();
    rmSync(workspace, { recursive: true, force: true });
  }
  return counts;
}

/**
 * Plays a file, and once more from its beginning in a fresh workspace when a story failed: a window that loses a key on
 * a busy machine fails once, a fault fails twice. What was played again is told.
 */
async function playTwice(browser: Browser, editor: Editor, file: string): Promise<Counts> {
  const told = await storiesOf(file);
  const first = await playFile(browser, editor, told);
  if (first.failed === 0) return first;
  console.log(`  AGAIN: ${file} from the beginning, since ${first.failed} of its stories failed`);
  return playFile(browser, editor, told);
}

/** Plays files in one editor. */
async function playFiles(browser: Browser, files: readonly string[], vsix: string, restricted: boolean) {
  let counts = NONE;
  if (files.length === 0) return counts;
  const log = join(root, 'out', restricted ? 'editor-restricted.log' : 'editor-stories.log');
  const editor = await startEditor({ vsix: [vsix], log, restricted });
  try {
    for (const file of files) counts = add(counts, await playTwice(browser, editor, file));
  } finally {
    await editor.stop();
  }
  return counts;
}

async function runStories(browser: Browser, only: string, packed: () => string): Promise<Counts> {
  const files = readdirSync(STORIES).filter((name) => name.endsWith('.story.ts') && name.includes(only));
  if (files.length === 0) return NONE;
  const restricted = new Set<string>();
  for (const file of files) if ((await storiesOf(file)).opens.restricted) restricted.add(file);
  const trusted = files.filter((file) => !restricted.has(file));
  const counts = await playFiles(browser, trusted.sort(), packed(), false);
  return add(counts, await playFiles(browser, [...restricted].sort(), packed(), true));
}

/** How many tests the files name, for saying how many are skipped where no browser starts. */
function countWithoutRunning(): number {
  const count = (folder: string, pattern: RegExp) => {
    const place = join(root, 'tests', 'editor', folder);
    const texts = readdirSync(place).map((name) => readFileSync(join(place, name), 'utf8'));
    return texts.reduce((sum, text) => sum + (text.match(pattern)?.length ?? 0), 0);
  };
  return (
    count('suites', /^\s*it\(/gm) +
    count('web', /^\s*it\(/gm) +
    count('stories', /^export const \w+: Story/gm)
  );
}

/** Runs a part; one that can't be run counts as one failure, and the others still run. */
async function guarded(part: () => Promise<Counts>): Promise<Counts> {
  try {
    return await part();
  } catch (fault) {
    console.log('FAILED: this part could not be run:', fault);
    return { ...NONE, failed: 1 };
  }
}

/**
 * Packs before anything starts, since packing rewrites dist/, from which the suites' editor loads the extension.
 * A failure is told where the package is asked for.
 */
function packedFirst(): () => string {
  try {
    const file = packExtension();
    return () => file;
  } catch (fault) {
    return () => {
      throw fault;
    };
  }
}

async function main(): Promise<Counts> {
  const [part = '', only = ''] = process.argv.slice(2);
  mkdirSync(join(root, 'out'), { recursive: true });
  const { browser, reasons } = await launchBrowser();
  if (!browser) {
    console.log(
      `SKIPPED: no browser starts on this machine, so nothing was tested in the editor.\n  ${reasons?.join('\n  ')}`,
    );
    return { ...NONE, skipped: countWithoutRunning() };
  }
  try {
    const packed = part === 'suites' ? () => '' : packedFirst();
    // One after the other: two editors at once starve each other on a small machine, and keys then fall beside the text.
    const suites =
      part === 'stories' || part === 'web' ? NONE : await guarded(() => runSuites(browser, only));
    const stories =
      part === 'suites' || part === 'web' ? NONE : await guarded(() => runStories(browser, only, packed));
    const web = part === '' || part === 'web' ? await guarded(() => runWeb(browser)) : NONE;
    return add(add(suites, stories), web);
  } finally {
    await browser.close();
  }
}

for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => process.exit(130));
const counts = await guarded(main);
console.log(summary(counts));
process.exit(counts.failed > 0 ? 1 : 0);
