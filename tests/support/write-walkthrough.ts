/** Draws the pictures of the walkthrough anew: `npx tsx tests/support/write-walkthrough.ts`. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './sources';
import { walkthroughPictures } from './walkthrough';

const folder = join(root, 'client', 'walkthrough');
mkdirSync(folder, { recursive: true });
for (const [name, picture] of Object.entries(walkthroughPictures))
  writeFileSync(join(folder, `${name}.svg`), picture());
