/** Starts and stops a real VS Code in throw-away folders on a free port of this machine. */
import { spawn, spawnSync } from 'node:child_process';
import { createWriteStream, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from '../setup.mjs';
import { ensureEditor, ensureWebEditor, WEB_COMMIT } from './install.mjs';

/** Settings that keep the editor still: no welcome, no assistants, no look-ups. */
const SETTINGS = {
  'chat.disableAIFeatures': true,
  'workbench.startupEditor': 'none',
  'workbench.tips.enabled': false,
  'workbench.secondarySideBar.defaultVisibility': 'hidden',
  'telemetry.telemetryLevel': 'off',
  'update.mode': 'none',
  'extensions.autoCheckUpdates': false,
  'extensions.ignoreRecommendations': true,
  'git.openRepositoryInParentFolders': 'never',
  'security.workspace.trust.enabled': false,
  'window.restoreWindows': 'none',
  'files.hotExit': 'off',
  'files.autoSave': 'off',
};

/** Settings with which every folder opens in Restricted Mode, without a question that hides the window. */
const UNTRUSTED = {
  'security.workspace.trust.enabled': true,
  'security.workspace.trust.startupPrompt': 'never',
  'security.workspace.trust.banner': 'always',
};

/** A port that nobody listens on now. */
function freePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

/** Makes the folders that one run of the editor may write to; nothing of the person's own is read or written. */
function makeFolders(settings) {
  const home = mkdtempSync(join(tmpdir(), 'draftwright-editor-'));
  const folders = { home, user: join(home, 'user'), extensions: join(home, 'extensions') };
  mkdirSync(join(folders.user, 'User'), { recursive: true });
  mkdirSync(folders.extensions);
  writeFileSync(join(folders.user, 'User', 'settings.json'), JSON.stringify({ ...SETTINGS, ...settings }));
  writeFileSync(join(home, 'config.yaml'), 'auth: none\n');
  return folders;
}

function environment({ home }) {
  const kept = Object.entries(process.env).filter(
    ([name]) => !/^(npm_|VSCODE_|ELECTRON_|NODE_OPTIONS)/.test(name),
  );
  const own = { HOME: home, XDG_CONFIG_HOME: home, XDG_DATA_HOME: home, EXTENSIONS_GALLERY: '{}' };
  return { ...Object.fromEntries(kept), ...own };
}

async function waitForAnswer(url, child, withinMs = 60_000) {
  for (let waited = 0; waited < withinMs; waited += 100) {
    if (child.exitCode !== null)
      throw new Error(`the editor ended with ${child.exitCode} before it answered`);
    if (
      await fetch(url)
        .then((answer) => answer.ok)
        .catch(() => false)
    )
      return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`the editor did not answer within ${withinMs / 1000} s`);
}

/**
 * Starts the editor, with packaged extensions installed into it if some are named.
 * `restricted`: folders are not trusted. Answers { url, port, home, log, stop() }: `home` is the folder of its own files, `log` is the file that holds what the editor printed.
 * @param {{ vsix?: string[], settings?: Record<string, unknown>, env?: Record<string, string>, restricted?: boolean, log: string }} options
 */
export async function startEditor({ vsix = [], settings = {}, env: extra = {}, restricted = false, log }) {
  const { node, entry } = ensureEditor();
  const folders = makeFolders(restricted ? { ...UNTRUSTED, ...settings } : settings);
  const port = await freePort();
  const common = ['--user-data-dir', folders.user, '--extensions-dir', folders.extensions];
  common.push('--config', join(folders.home, 'config.yaml'));
  const env = { ...environment(folders), ...extra };
  for (const file of vsix) {
    const done = spawnSync(node, [entry, ...common, '--install-extension', file], { env, encoding: 'utf8' });
    if (done.status !== 0) throw new Error(`installing ${file} failed:\n${done.stdout}${done.stderr}`);
  }
  const flags = ['--auth', 'none', '--bind-addr', `127.0.0.1:${port}`, '--disable-telemetry'];
  flags.push('--disable-update-check', '--disable-getting-started-override');
  if (!restricted) flags.push('--disable-workspace-trust');
  flags.push('--vscode-option', 'enable-smoke-test-driver');
  const child = spawn(node, [entry, ...common, ...flags], {
    env,
    detached: true,
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  const last = () => {
    end(child, 'SIGKILL');
    rmSync(folders.home, { recursive: true, force: true });
  };
  process.once('exit', last);
  const sink = createWriteStream(log);
  child.stdout.pipe(sink, { end: false });
  child.stderr.pipe(sink, { end: false });
  const stop = async () => {
    await stopEditor(child, folders, sink);
    process.removeListener('exit', last);
  };
  try {
    await waitForAnswer(`http://127.0.0.1:${port}/healthz`, child);
  } catch (fault) {
    await stop();
    throw fault;
  }
  return { port, url: `http://localhost:${port}/`, home: folders.home, log, stop };
}

/**
 * Starts an editor that is a page alone: the extension runs in a worker over a virtual copy of a folder, and runs the
 * tests by itself. Answers { url, stop() }.
 * @param {{ tests: string, workspace: string }} options
 */
export async function startWebEditor({ tests, workspace }) {
  const { runner, data } = ensureWebEditor();
  const { open } = await import(pathToFileURL(runner).href);
  const port = await freePort();
  const server = await open({
    ...{ browserType: 'none', quality: 'stable', commit: WEB_COMMIT, testRunnerDataDir: data, port },
    ...{
      extensionDevelopmentPath: root,
      extensionTestsPath: tests,
      folderPath: workspace,
      printServerLog: false,
    },
  });
  return { url: `http://localhost:${port}/`, stop: async () => server.dispose() };
}

/**
 * Ends the editor with everything it started. It leads a process group of its own (detached), because its extension
 * host outlives it otherwise; Windows ends a tree by the id of its root.
 */
function end(child, signal) {
  if (process.platform === 'win32') {
    spawnSync('taskkill', ['/pid', String(child.pid), '/T', '/F']);
    return;
  }
  try {
    process.kill(-child.pid, signal);
  } catch {
    // the whole group is gone already
  }
}

async function stopEditor(child, { home }, sink) {
  if (child.exitCode === null) {
    const ended = new Promise((resolve) => child.once('exit', resolve));
    end(child, 'SIGTERM');
    const patience = setTimeout(() => end(child, 'SIGKILL'), 3000);
    await ended;
    clearTimeout(patience);
  }
  end(child, 'SIGKILL');
  sink.end();
  rmSync(home, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
}
