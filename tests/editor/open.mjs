/**
 * `npm run editor [-- FOLDER]`: opens a folder of drafts (the samples, if none is named) in a real VS Code that runs
 * in the browser of this machine, with the packed extension and the preview open. It stays until Ctrl+C.
 */
import { spawn } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensurePackages, root } from '../setup.mjs';

/** The draft that is opened first: the skirt among the samples, else the first one of the folder. */
function firstDraft(folder) {
  const drafts = readdirSync(folder)
    .filter((name) => name.endsWith('.draft'))
    .sort();
  const first = drafts.includes('harbour-skirt.draft') ? 'harbour-skirt.draft' : drafts[0];
  return first === undefined ? undefined : join(folder, first);
}

/** Asks the desktop, if there is one, to show an address in its browser; nothing is lost when it does not. */
function show(url) {
  const desktop = process.platform !== 'linux' || process.env.DISPLAY || process.env.WAYLAND_DISPLAY;
  if (!desktop || process.env.CI) return;
  const [command, ...args] = { darwin: ['open'], win32: ['cmd', '/c', 'start', ''] }[process.platform] ?? [
    'xdg-open',
  ];
  const child = spawn(command, [...args, url], { detached: true, stdio: 'ignore' });
  child.on('error', () => console.log('No browser opened by itself; use the address.'));
  child.unref();
}

async function main() {
  const folder = resolve(process.argv[2] ?? join(root, 'samples'));
  if (!existsSync(folder)) throw new Error(`there is no folder ${folder}`);
  ensurePackages();
  const { packExtension, packOpener } = await import('./compile.mjs');
  const { startEditor } = await import('./server.mjs');
  console.log('Packing the extension and starting the editor …');
  mkdirSync(join(root, 'out'), { recursive: true });
  const editor = await startEditor({
    vsix: [packExtension(), packOpener()],
    env: { DRAFTWRIGHT_OPEN: firstDraft(folder) },
    log: join(root, 'out', 'editor.log'),
  });
  const url = `${editor.url}?folder=${encodeURI(pathToFileURL(folder).pathname)}`;
  console.log(`\n  ${url}\n\nOpen this address in a browser on this machine. Ctrl+C ends the editor.`);
  show(url);
}

for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, () => process.exit(0));
try {
  await main();
} catch (fault) {
  console.error(`npm run editor: ${fault.message}`);
  process.exit(1);
}
