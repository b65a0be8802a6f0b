/**
 * `npm test`: builds, then runs every test there is, and ends with one line of counts.
 * `npm run check` (--quick) leaves out the editor, for the inner loop.
 */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { ensurePackages, root } from './setup.mjs';

const quick = process.argv.includes('--quick');
const total = { passed: 0, failed: 0, skipped: 0 };
const CLOSING = /^(\d+) passed, (\d+) failed, (\d+) skipped$/;

const bin = (name, ...path) => join(root, 'node_modules', name, ...path);

/** Runs a Node program; its lines go to the screen at once (or into the answer, when quiet). */
function run(args, { quiet = false } = {}) {
  return new Promise((resolve) => {
    const env = { ...process.env, FORCE_COLOR: '0', NO_COLOR: '1' };
    const child = spawn(process.execPath, args, { cwd: root, env, stdio: ['ignore', 'pipe', 'pipe'] });
    const lines = [];
    let rest = '';
    const take = (chunk) => {
      const parts = (rest + chunk).split('\n');
      rest = parts.pop();
      for (const line of parts) {
        lines.push(line);
        if (!quiet && !CLOSING.test(line)) console.log(line);
      }
    };
    child.stdout.setEncoding('utf8').on('data', take);
    child.stderr.setEncoding('utf8').on('data', take);
    child.on('close', (code) => resolve({ code, lines: rest === '' ? lines : [...lines, rest] }));
  });
}

const seconds = (since) => `${((performance.now() - since) / 1000).toFixed(1)} s`;

function tell(name, { passed, failed, skipped }, since) {
  total.passed += passed;
  total.failed += failed;
  total.skipped += skipped;
  console.log(`== ${name}: ${passed} passed, ${failed} failed, ${skipped} skipped (${seconds(since)})`);
}

/** A part that counts as one: it passes when its program ends with 0, else its lines are shown. */
async function single(name, args) {
  const since = performance.now();
  const { code, lines } = await run(args, { quiet: true });
  if (code !== 0) console.log(lines.join('\n'));
  tell(name, { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: 0 }, since);
  return code === 0;
}

/** A part that ends with a line of counts of its own; without one it counts as one failure. */
async function counted(name, args) {
  const since = performance.now();
  console.log(`-- ${name} …`);
  const { code, lines } = await run(args);
  const [, passed, failed, skipped] = lines
    .map((line) => CLOSING.exec(line))
    .filter(Boolean)
    .at(-1) ?? [0, 0, 1, 0];
  const counts = { passed: Number(passed), failed: Number(failed), skipped: Number(skipped) };
  if (code !== 0 && counts.failed === 0) counts.failed = 1;
  tell(name, counts, since);
}

/** What git says of the work tree, or undefined outside a checkout. */
function treeState() {
  const git = spawnSync('git', ['status', '--porcelain'], { cwd: root, encoding: 'utf8' });
  return git.status === 0 && existsSync(join(root, '.git')) ? git.stdout : undefined;
}

function compareTree(before) {
  const since = performance.now();
  const after = treeState();
  const same = before === after;
  if (!same) console.log(`The run changed the work tree:\n--- before\n${before}--- after\n${after}`);
  const known = before !== undefined;
  tell(
    'work tree as before',
    { passed: known && same ? 1 : 0, failed: same ? 0 : 1, skipped: known ? 0 : 1 },
    since,
  );
}

/** The files of tests that run in plain Node: all below tests/ but those for the editor. */
function unitFiles(folder = join(root, 'tests')) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return entry.name === 'editor' ? [] : unitFiles(path);
    return entry.name.endsWith('.test.ts') ? [path] : [];
  });
}

async function main() {
  if (process.env.CI && process.env.UPDATE_GOLDEN)
    throw new Error('UPDATE_GOLDEN is for a developer’s machine alone');
  ensurePackages();
  const before = treeState();
  const built = await single('build', [join(root, 'client', 'build.mjs')]);
  await Promise.all([
    single('lint', [
      bin('eslint', 'bin', 'eslint.js'),
      '-c',
      '.eslint.config.mjs',
      '--max-warnings',
      '0',
      '.',
    ]),
    single('layout', [bin('prettier', 'bin', 'prettier.cjs'), '--check', '--log-level', 'warn', '.']),
    single('types', [bin('typescript', 'bin', 'tsc'), '--noEmit']),
  ]);
  const reporter = ['--reporter', join(root, 'tests', 'reporter.cjs')];
  await counted('tests in Node', [bin('mocha', 'bin', 'mocha.js'), ...reporter, ...unitFiles().sort()]);
  if (!quick && built) await counted('tests in the editor', ['--import', 'tsx', 'tests/editor/run.ts']);
  if (!quick) compareTree(before);
}

for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => process.exit(130));
try {
  await main();
} catch (fault) {
  total.failed += 1;
  console.log(`FAILED: ${fault.message}`);
}
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);
process.exitCode = total.failed > 0 ? 1 : 0;
