/** Lists and reads the project's own source files, for tests that look at the sources themselves. */
import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

const HIDDEN = new Set(['node_modules', 'dist', 'out', '.cache', '.git', '.vscode-test']);

/** Every file of the repository (with forward slashes, from its top), sorted; what git ignores is left out. */
export function files(folder = ''): string[] {
  const entries = readdirSync(join(root, folder), { withFileTypes: true });
  return entries
    .filter(({ name }) => !HIDDEN.has(name) && !name.endsWith('.vsix'))
    .flatMap((entry) => {
      const path = folder === '' ? entry.name : `${folder}/${entry.name}`;
      return entry.isDirectory() ? files(path) : [path];
    })
    .sort();
}

/** The source files among them. */
export const sources = (): string[] => files().filter((path) => /\.(ts|mjs|cjs)$/.test(path));

/** The text of a file of the repository. */
export const read = (path: string): string => readFileSync(join(root, path), 'utf8');
