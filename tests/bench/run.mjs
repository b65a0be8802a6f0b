/**
 * `npm run bench`: bundles the bench as it would ship, runs it, and measures what only a fresh process shows. Ends with
 * 0 however slow it was: a bench measures and refuses nothing.
 */
import { spawnSync } from 'node:child_process';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { ensurePackages, root } from '../setup.mjs';

/** The extension is awake when every command answers; the server starts meanwhile. */
const WAKES_WITHIN_MS = 60;

ensurePackages();
const esbuild = await import('esbuild');
const bundle = join(root, 'out', 'bench', 'bench.cjs');
/** Apart from the others, so that what they carry (fonts, a map of their sources) is not in the figures. */
const memory = join(root, 'out', 'bench', 'memory.cjs');
const bundled = (entry, outfile, sourcemap) =>
  esbuild.build({
    entryPoints: [join(root, 'tests', 'bench', entry)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'cjs',
    target: 'node20',
    sourcemap,
    mainFields: ['module', 'main'],
    external: ['@resvg/resvg-js'],
    loader: { '.md': 'text', '.ttf': 'binary', '.wasm': 'binary' },
    logLevel: 'warning',
    logOverride: { 'empty-import-meta': 'silent' },
  });
await bundled('main.ts', bundle, 'inline');
await bundled('memory.ts', memory, false);
const idle = join(root, 'out', 'bench', 'idle.cjs');
await bundled('idle.ts', idle, false);

/** Node's own switches come before `--`: `npm run bench -- --cpu-prof -- edits` profiles one part. */
const given = process.argv.slice(2);
const cut = given.indexOf('--');
const [switches, parts] = cut < 0 ? [[], given] : [given.slice(0, cut), given.slice(cut + 1)];
const start = (flags, program, ...args) =>
  spawnSync(process.execPath, [...flags, program, ...args], {
    cwd: root,
    stdio: ['ignore', 'inherit', 'inherit'],
  });
const run = (flags, ...args) => start(flags, bundle, ...args);

const wanted = (part) => parts.length === 0 || parts.includes(part);
if (wanted('whole')) run(switches, 'whole');
if (wanted('edits')) run(switches, 'edits');
if (wanted('compare')) run(switches, 'compare');
if (wanted('floods')) run(switches, 'floods');
if (wanted('server')) run(switches, 'server');
if (wanted('features')) run(switches, 'features');
if (wanted('paper')) run(switches, 'paper');
if (wanted('opening')) for (const lines of ['2000', '10000']) run(switches, 'opening', lines);
/** Without the translations of our own code, which Node goes on adding for minutes. */
const UNTRANSLATED = ['--no-opt', '--no-sparkplug'];
if (wanted('memory')) start(['--expose-gc', ...UNTRANSLATED, ...switches], memory);
if (wanted('idle')) idling();
if (wanted('bundles')) bundles();

/** All that a server takes of the machine, as it ships. */
function idling() {
  const built = spawnSync(process.execPath, [join(root, 'client', 'build.mjs'), '--production'], {
    cwd: root,
  });
  if (built.status !== 0) return console.log('idle: the build failed');
  start(switches, idle);
  spawnSync(process.execPath, [join(root, 'client', 'build.mjs')], { cwd: root });
}

/** How long the extension takes to wake, from nothing read to every command registered, in processes of their own. */
function waking() {
  const script = join(root, 'tests', 'bench', 'waking.cjs');
  const runs = Array.from({ length: 9 }, () =>
    JSON.parse(spawnSync(process.execPath, [script], { encoding: 'utf8' }).stdout),
  );
  const [{ read, awake }] = runs.sort((a, b) => a.awake.cpu - b.awake.cpu).slice(4);
  const clock = Math.min(...runs.map((run) => run.awake.clock));
  const budget = `of ${WAKES_WITHIN_MS} ms${awake.cpu > WAKES_WITHIN_MS ? ' OVER BUDGET' : ''}`;
  console.log(
    `  waking: ${awake.cpu.toFixed(0)} ms ${budget}, ${read.cpu.toFixed(0)} of them reading the bundle ` +
      `(processor time, median of 9; by the clock ${clock.toFixed(0)} at best)`,
  );
}

/** Sizes of what ships, how long the extension takes to wake, and how long the command line takes from nothing to the findings of one garment. */
function bundles() {
  const built = spawnSync(process.execPath, [join(root, 'client', 'build.mjs'), '--production'], {
    cwd: root,
  });
  if (built.status !== 0) return console.log('bundles: the build failed');
  console.log('\nBundles (minified)');
  for (const name of ['extension.cjs', 'server.js', 'programs.js', 'preview.js']) {
    console.log(
      `  dist/${name.padEnd(14)} ${(statSync(join(root, 'dist', name)).size / 1024).toFixed(0)} KiB`,
    );
  }
  waking();
  const times = Array.from({ length: 7 }, () => {
    const since = performance.now();
    spawnSync(process.execPath, [
      join(root, 'dist', 'cli.js'),
      'check',
      join(root, 'samples', 'shift.draft'),
    ]);
    return performance.now() - since;
  }).sort((a, b) => a - b);
  console.log(
    `  cold start: check samples/shift.draft ${times[3].toFixed(0)} ms (median of 7, ${times[0].toFixed(0)} at best)`,
  );
  spawnSync(process.execPath, [join(root, 'client', 'build.mjs')], { cwd: root });
}
