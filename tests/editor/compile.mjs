/** Compiles the suites that run inside the editor, and packs the extension as a person would install it. */
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'esbuild';
import { root } from '../setup.mjs';

const SUITES = join(root, 'tests', 'editor', 'suites');

/** Bundles every suite into out/suites (one file each, CommonJS, as an extension host loads them). */
export async function compileSuites(only = '') {
  const outdir = join(root, 'out', 'suites');
  rmSync(outdir, { recursive: true, force: true });
  mkdirSync(outdir, { recursive: true });
  writeFileSync(join(outdir, 'package.json'), '{ "type": "commonjs" }\n');
  const files = readdirSync(SUITES).filter((name) => name.endsWith('.test.ts') && name.includes(only));
  await build({
    entryPoints: ['index.ts', ...files].map((name) => join(SUITES, name)),
    outdir,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    external: ['vscode', 'mocha'],
    sourcemap: 'inline',
    logLevel: 'warning',
  });
  return { folder: outdir, count: files.length };
}

/** Bundles the suite of the browser-only host into one file, with the test framework inside; answers its path. */
export async function compileWebSuite() {
  const outfile = join(root, 'out', 'web-suite', 'index.js');
  await build({
    entryPoints: [join(root, 'tests', 'editor', 'web', 'index.ts')],
    outfile,
    bundle: true,
    platform: 'browser',
    format: 'cjs',
    target: 'es2022',
    external: ['vscode'],
    define: { global: 'globalThis' },
    logLevel: 'warning',
  });
  return outfile;
}

/** A copy of the samples that a test may write to, in a new folder below `place`; the caller removes it. */
export function makeWorkspace(place = tmpdir()) {
  mkdirSync(place, { recursive: true });
  const folder = mkdtempSync(join(place, 'draftwright-samples-'));
  cpSync(join(root, 'samples'), folder, { recursive: true, filter: (path) => !path.endsWith('.mjs') });
  return folder;
}

/**
 * A workspace of two folders that a test may write to: a copy of the samples, and an empty annex. Answers the folder
 * that holds both (the caller removes it) and the file that names them.
 */
export function makeTwoFolders(place = tmpdir()) {
  mkdirSync(place, { recursive: true });
  const home = mkdtempSync(join(place, 'draftwright-folders-'));
  renameSync(makeWorkspace(home), join(home, 'samples'));
  mkdirSync(join(home, 'annex'));
  const file = join(home, 'wardrobe.code-workspace');
  writeFileSync(file, JSON.stringify({ folders: [{ path: 'samples' }, { path: 'annex' }] }));
  return { home, file };
}

/** Largest that the packed extension may be. */
const MOST_BYTES = 4 * 1024 * 1024;

/** Runs a Node program in a folder, quietly unless it fails or warns. */
function must(args, cwd = root) {
  const done = spawnSync(process.execPath, args, {
    cwd,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  if (done.status !== 0 || /\bwarn/i.test(done.stdout + done.stderr))
    throw new Error(`packing failed:\n${done.stdout}${done.stderr}`.slice(0, 4000));
}

/** Packs the extension in a folder into a file below out/; answers its path. */
function pack(folder, name, more) {
  const { version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = join(root, 'out', `${name}-${version}.vsix`);
  mkdirSync(join(root, 'out'), { recursive: true });
  const vsce = join(root, 'node_modules', '@vscode', 'vsce', 'vsce');
  const flags = ['--no-dependencies', '--allow-missing-repository', '--no-rewrite-relative-links'];
  must([vsce, 'package', ...flags, ...more, '--out', file], folder);
  if (statSync(file).size > MOST_BYTES) throw new Error(`${file} holds ${statSync(file).size} bytes`);
  return file;
}

/** Builds for release and packs out/draftwright-VERSION.vsix; answers its path. */
export function packExtension() {
  must([join(root, 'client', 'build.mjs'), '--production']);
  return pack(root, 'draftwright', ['--readme-path', 'client/page.md']);
}

/** Packs the helper that opens the first draft for `npm run editor`. */
export const packOpener = () => pack(join(root, 'tests', 'editor', 'opener'), 'opener', ['--skip-license']);
