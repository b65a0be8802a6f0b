/**
 * `npm start`: checks and draws every garment of the wardrobe into out/wardrobe, and packs the extension.
 * A fresh clone needs nothing else: what is missing is installed first.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { basename, join, relative } from 'node:path';
import { ensurePackages, root } from '../tests/setup.mjs';

const WARDROBE = join(root, 'out', 'wardrobe');

/** Runs the built command line; answers its exit code and what it printed. */
function draftwright(...args) {
  const cli = join(root, 'dist', 'cli.js');
  const done = spawnSync(process.execPath, [cli, ...args], { cwd: root, encoding: 'utf8' });
  return { code: done.status ?? 2, out: done.stdout, err: done.stderr };
}

function build() {
  const done = spawnSync(process.execPath, [join(root, 'client', 'build.mjs')], {
    cwd: root,
    stdio: 'inherit',
  });
  if (done.status !== 0) throw new Error('the build failed; see its lines above');
  if (!existsSync(join(root, 'dist', 'cli.js'))) throw new Error('the build made no command line');
}

/** The drafts of this folder that have pieces, each with the words that say how each piece is cut. */
function garments() {
  const names = readdirSync(join(root, 'samples')).filter((name) => name.endsWith('.draft'));
  return names.sort().flatMap((name) => {
    const file = join(root, 'samples', name);
    const cuts = cutWords(readFileSync(file, 'utf8'));
    return cuts.size > 0 ? [{ file, name: basename(name, '.draft'), cuts }] : [];
  });
}

/** Piece → its cut words, read from the lines `piece NAME …` and `cut …` below it. */
function cutWords(text) {
  const cuts = new Map();
  let piece;
  for (const line of text.split(/\r?\n/)) {
    const head = /^\s*piece\s+(\S+)/.exec(line);
    if (head) cuts.set((piece = head[1]), '');
    const cut = /^\s+cut\s+([^#]*)/.exec(line);
    if (cut && piece !== undefined && cuts.get(piece) === '') cuts.set(piece, cut[1].trim());
  }
  return cuts;
}

const centimetres = (millimetres) => `${(millimetres / 10).toFixed(2)} cm`;

/** Reads what the command line answered as JSON; an answer that is none is told as a problem. */
function parsed({ out, err, code }) {
  try {
    return { answer: JSON.parse(out) };
  } catch {
    return { fault: err.trim() || `the command line ended with ${code} and no answer` };
  }
}

/** A piece that came out as two is told as two, each with the cutting words of the one in the text. */
function tellPieces(cuts, pieces = {}) {
  const drawn = Object.keys(pieces);
  const sides = (name) => [`${name}-right`, `${name}-left`];
  const missing = [...cuts.keys()].filter(
    (name) => !drawn.includes(name) && !sides(name).some((side) => drawn.includes(side)),
  );
  const cutOf = (name) => cuts.get(name) ?? cuts.get(name.replace(/-(right|left)$/, ''));
  const words = (name) => (cutOf(name) ? `${name} (cut ${cutOf(name)})` : name);
  console.log(`  pieces   ${[...drawn, ...missing].map(words).join(', ')}`);
}

function tellSeams(seams = {}) {
  for (const [name, { left, right, difference }] of Object.entries(seams)) {
    const apart = `${centimetres(Math.abs(difference))} apart`;
    const fit = Math.abs(difference) >= 0.05 ? apart : Math.abs(left - right) < 0.05 ? 'equal' : 'as eased';
    console.log(`  seam     ${name}: ${centimetres(left)} to ${centimetres(right)}, ${fit}`);
  }
}

function tellProblems({ answer, fault }, own) {
  if (fault !== undefined) console.log(`  problem  ${fault}`);
  for (const { severity, message, file, range } of answer?.problems ?? []) {
    const place = basename(file) === basename(own) ? 'line' : `${basename(file)} line`;
    console.log(`  ${severity.padEnd(8)} ${place} ${range.start.line + 1}: ${message.split('\n')[0]}`);
  }
  if (answer && answer.problems.length === 0) console.log('  problems none');
}

/** Draws a garment as SVG and PNG; answers the files that were made. */
function drawn(file, name) {
  for (const format of ['svg', 'png']) draftwright('draw', file, '--out', WARDROBE, '--format', format);
  const made = [`${name}.svg`, `${name}.png`].map((made) => join(WARDROBE, made)).filter(existsSync);
  return made.map((path) => relative(root, path));
}

function tellGarment({ file, name, cuts }) {
  const measured = parsed(draftwright('measure', file, '--format', 'json'));
  console.log(`\n${name}${measured.answer?.body ? `, for ${measured.answer.body}` : ''}`);
  tellPieces(cuts, measured.answer?.pieces);
  tellSeams(measured.answer?.seams);
  tellProblems(parsed(draftwright('check', file, '--format', 'json')), file);
  const files = drawn(file, name);
  console.log(`  drawn    ${files.length > 0 ? files.join(', ') : 'nothing'}`);
  return files.length > 0;
}

async function main() {
  ensurePackages();
  console.log('Building …');
  build();
  rmSync(WARDROBE, { recursive: true, force: true });
  mkdirSync(WARDROBE, { recursive: true });
  const wardrobe = garments().map(tellGarment);
  const count = wardrobe.filter(Boolean).length;
  if (count === 0) throw new Error('no garment of the wardrobe could be drawn');
  const { packExtension } = await import('../tests/editor/compile.mjs');
  const vsix = relative(root, packExtension());
  console.log(`\n${count} of ${wardrobe.length} garments are drawn in ${relative(root, WARDROBE)}.`);
  console.log(`The extension is packed as ${vsix}.`);
  console.log('Next: `npm run editor` opens the wardrobe in a real editor with the live preview,');
  console.log(`or install the extension in yours: code --install-extension ${vsix}`);
}

try {
  await main();
} catch (fault) {
  console.error(`npm start: ${fault.message}`);
  process.exitCode = 1;
}
