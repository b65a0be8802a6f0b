/** Trees without git: one file with those around it, or a folder. */
import { readdirSync, realpathSync, statSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import { homeOf, readText } from '../disk';
import type { Content, Tree } from './tree';

/** How many folders are looked into. A wardrobe has dozens. */
const MOST_FOLDERS = 2000;

/** A tree, and the path in it of what was named. */
export interface Named {
  readonly tree: Tree;
  /** `''` for the whole of a folder. */
  readonly path: string;
}

/** What a file or a folder of the disk is compared as; files that it uses are read beside it. */
export function named(full: string, written: string, workingFolder: string): Named {
  const isFolder = statSync(full).isDirectory();
  const top = realpathSync(isFolder ? full : homeOf(full, workingFolder));
  const path = isFolder
    ? ''
    : relative(top, join(realpathSync(dirname(full)), full.slice(dirname(full).length + 1)));
  return { tree: folderTree(top, written), path: path.split(sep).join('/') };
}

export function folderTree(top: string, name: string): Tree {
  let listed: readonly string[] | undefined;
  return {
    name,
    list: () => (listed ??= patternsIn(top)),
    readAhead: () => undefined,
    read: (path): Content => {
      const reading = readText(join(top, path));
      return 'text' in reading ? reading : { fault: reading.fault === 'folder' ? 'missing' : reading.fault };
    },
  };
}

function patternsIn(top: string): readonly string[] {
  const found: string[] = [];
  const folders = [''];
  for (let i = 0; i < folders.length && i < MOST_FOLDERS; i++) {
    for (const entry of readdirSync(join(top, folders[i]!), { withFileTypes: true })) {
      const path = folders[i] === '' ? entry.name : `${folders[i]}/${entry.name}`;
      if (entry.isDirectory() && !entry.name.startsWith('.') && entry.name !== 'node_modules')
        folders.push(path);
      else if (entry.isFile() && entry.name.endsWith('.draft')) found.push(path);
    }
  }
  return found.sort();
}
