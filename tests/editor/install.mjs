/**
 * Puts a real VS Code (code-server and the Node it wants) into a cache folder, from the npm registry alone and without
 * a compiler: with install scripts off no native part is built, which costs the editor its terminal and nothing else.
 */
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
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

function install(folder) {
  const quiet = ['--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error', '--no-package-lock'];
  const editor = join(folder, 'node_modules', 'code-server', 'lib', 'vscode');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'package.json'), '{ "private": true }\n');
  const steps = [
    [['install', ...quiet, `code-server@${CODE_SERVER}`, `${nodePackage()}@${NODE}`], folder],
    [['install', '--omit=dev', ...quiet], editor],
    [['install', '--omit=dev', ...quiet], join(editor, 'extensions')],
  ];
  for (const [args, where] of steps) {
    if (npm(args, where) !== 0) throw new Error(`npm ${args.join(' ')} failed in ${where}`);
  }
}

/** Answers where the editor and its Node are, after installing them if need be. Throws when that is impossible. */
export function ensureEditor() {
  const folder = join(cache(), `editor-${CODE_SERVER}`);
  const mark = join(folder, 'ready');
  if (existsSync(mark) && readFileSync(mark, 'utf8') === NODE) return placesIn(folder);
  console.log('Installing the editor for the tests (about half a minute, once) …');
  const partial = `${folder}.${process.pid}`;
  try {
    install(partial);
    writeFileSync(join(partial, 'ready'), NODE);
    rmSync(folder, { recursive: true, force: true });
    renameSync(partial, folder);
  } finally {
    rmSync(partial, { recursive: true, force: true });
  }
  return placesIn(folder);
}
