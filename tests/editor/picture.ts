/** `npm run picture`: takes the README's picture anew in the real editor and puts it, with its words, in its place. */
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { pictured, picturePath, wordsPath } from '../support/pictured';
import { root } from '../support/sources';

const taken = join(root, 'out', 'pictures', 'readme.png');
rmSync(taken, { force: true });
const runner = join(root, 'tests', 'editor', 'run.ts');
const { status } = spawnSync(process.execPath, ['--import', 'tsx', runner, 'stories', 'readme'], {
  cwd: root,
  stdio: 'inherit',
});
if (status !== 0) throw new Error('the picture’s story failed; see its lines above');
mkdirSync(dirname(picturePath), { recursive: true });
copyFileSync(taken, picturePath);
writeFileSync(wordsPath, pictured.words());
console.log(`${picturePath}: ${(statSync(picturePath).size / 1024).toFixed(0)} KiB`);
