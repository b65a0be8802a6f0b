/** Brings a fresh clone to life: installs the locked packages when they are missing or differ from the lock file. */
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { spawnSync } from 'node:child_process';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(fileURLToPath(import.meta.url)));

/** Runs npm in a folder, whichever way npm is installed, and answers its exit code. */
export function npm(args, folder = root) {
  const script = process.env.npm_execpath;
  const viaNode = script !== undefined && /npm-cli\.c?js$/.test(script);
  const windows = process.platform === 'win32';
  const [command, first] = viaNode ? [process.execPath, [script]] : [windows ? 'npm.cmd' : 'npm', []];
  const options = { cwd: folder, stdio: ['ignore', 'inherit', 'inherit'], shell: windows && !viaNode };
  return spawnSync(command, [...first, ...args], options).status ?? 1;
}

/** True when every package of the lock that this platform needs is installed in the locked version. */
function installedAsLocked() {
  const record = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(record)) return false;
  const locked = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  const installed = JSON.parse(readFileSync(record, 'utf8')).packages;
  return Object.entries(locked).every(([place, { version, optional }]) => {
    if (place === '') return true;
    const found = installed[place];
    return found === undefined ? optional === true : found.version === version;
  });
}

/**
 * Installs what the lock file names unless it is there already. Install scripts are not run: every package that
 * we use ships its binary inside, so nothing is fetched from elsewhere.
 */
export function ensurePackages() {
  const major = Number(process.versions.node.split('.')[0]);
  if (major < 20) throw new Error(`Draftwright needs Node 20 or newer; this is ${process.version}.`);
  if (installedAsLocked()) return;
  console.log('Installing the locked packages (about a minute, once) …');
  const code = npm(['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--loglevel=error']);
  if (code !== 0) throw new Error(`npm ci ended with ${code}; see its lines above.`);
}

if (process.argv[1] && realpathSync(process.argv[1]) === fileURLToPath(import.meta.url)) ensurePackages();
