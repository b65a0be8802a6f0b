/** Bundles the extension, the language server, the command line and the preview into dist/. */
import {
  chmodSync,
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import * as esbuild from 'esbuild';

const root = dirname(dirname(fileURLToPath(import.meta.url)));
const watch = process.argv.includes('--watch');
const production = process.argv.includes('--production');

const node = { platform: 'node', format: 'cjs', target: 'node20', mainFields: ['module', 'main'] };

const browser = { platform: 'browser', format: 'iife', target: 'es2022' };

/** The command line's door starts the program that is wanted and lies beside it: an idle server pays for no other. */
const beside = {
  name: 'beside',
  setup: (build) => {
    build.onResolve({ filter: /^\.\/programs$/ }, () => ({ path: './programs.js', external: true }));
    build.onResolve({ filter: /^\.\.\/lsp\/node$/ }, () => ({ path: './server.js', external: true }));
  },
};

/**
 * What is built from what. The extension ends in .cjs because newer editors load a .js of a package of ES modules
 * as an ES module; the others are CommonJS by dist/package.json. To the browser's entry editors add a .js themselves.
 */
const bundles = [
  { from: 'client/extension.ts', to: 'extension.cjs', ...node, external: ['vscode'] },
  { from: 'server/lsp/node.ts', to: 'server.js', ...node, external: ['@resvg/resvg-js'] },
  { from: 'server/cli/main.ts', to: 'cli.js', ...node, shebang: true, plugins: [beside] },
  {
    from: 'server/cli/programs.ts',
    to: 'programs.js',
    ...node,
    external: ['@resvg/resvg-js'],
    plugins: [beside],
  },
  { from: 'client/browser.ts', to: 'browser.cjs.js', ...browser, format: 'cjs', external: ['vscode'] },
  { from: 'server/lsp/worker.ts', to: 'worker.js', ...browser },
  {
    from: 'client/preview/view/main.ts',
    to: 'preview.js',
    ...browser,
  },
];

/** Files that ship beside the bundles: the font of the drawings, and the drawing engine where no native one fits. */
const assets = [
  [
    'node_modules/@expo-google-fonts/noto-sans/400Regular/NotoSans_400Regular.ttf',
    'fonts/NotoSans-Regular.ttf',
  ],
  ['node_modules/@expo-google-fonts/noto-sans/LICENSE_FONT', 'fonts/LICENSE.txt'],
  ['node_modules/@resvg/resvg-wasm/index_bg.wasm', 'resvg.wasm'],
];

/** The pages about problems, which lie beside their checks, and in German in a folder of their own. */
const CHECKS = join(root, 'server', 'checks');
const pages = ['.', 'de'].flatMap((folder) =>
  readdirSync(join(CHECKS, folder))
    .filter((name) => name.endsWith('.md'))
    .map((name) => `${folder}/${name}`),
);

function options({ from, to, shebang, ...rest }) {
  return {
    ...rest,
    entryPoints: [join(root, from)],
    outfile: join(root, 'dist', to),
    bundle: true,
    minify: production,
    sourcemap: production ? false : 'linked',
    legalComments: 'none', // gatherLicences() collects the whole texts instead
    metafile: true,
    logLevel: 'warning',
    logOverride: { 'empty-import-meta': 'silent' }, // asked only where __dirname is not there, so never in a bundle
    loader: { '.md': 'text', '.ttf': 'binary', '.wasm': 'binary' },
    define: { 'process.env.DRAFTWRIGHT_VERSION': JSON.stringify(version) },
    ...(shebang ? { banner: { js: '#!/usr/bin/env node' } } : {}),
  };
}

const version = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')).version;

function copyAssets() {
  const copied = pages.map((name) => [`server/checks/${name}`, `checks/${name}`]);
  for (const [from, to] of [...assets, ...copied]) {
    const target = join(root, 'dist', to);
    mkdirSync(dirname(target), { recursive: true });
    copyFileSync(join(root, from), target);
  }
  // editors look for the words of a manifest beside it
  for (const name of ['package.nls.json', 'package.nls.de.json'])
    copyFileSync(join(root, 'client', 'l10n', name), join(root, name));
  writeFileSync(join(root, 'dist', 'package.json'), '{ "type": "commonjs" }\n');
}

function report({ to, shebang }) {
  const file = join(root, 'dist', to);
  if (shebang) chmodSync(file, 0o755);
  console.log(`  dist/${to}  ${(statSync(file).size / 1024).toFixed(0)} KiB`);
}

/** Writes one file with the licence of every package that went into a bundle, as those licences ask. */
function gatherLicences(results) {
  const inputs = results.flatMap(({ metafile }) => Object.keys(metafile.inputs));
  const names = inputs.map((path) => /.*node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(path)?.[1]).filter(Boolean);
  const texts = [...new Set([...names, '@resvg/resvg-wasm'])].sort().map((name) => {
    const folder = join(root, 'node_modules', name);
    const { version: packed, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
    const text = file ? readFileSync(join(folder, file), 'utf8').trim() : `Licence: ${license}`;
    return `${name} ${packed}\n${'-'.repeat(60)}\n${text}\n`;
  });
  writeFileSync(join(root, 'dist', 'LICENCES.txt'), texts.join('\n\n'));
}

copyAssets();
if (watch) {
  for (const bundle of bundles) await (await esbuild.context(options(bundle))).watch();
  console.log('Watching; Ctrl+C ends it.');
} else {
  try {
    gatherLicences(await Promise.all(bundles.map((bundle) => esbuild.build(options(bundle)))));
    bundles.forEach(report);
  } catch {
    process.exitCode = 1; // esbuild has printed what is wrong
  }
}
