/** A door to the files of one folder on disk, which a `use` may not leave. */
import { readFileSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Door } from '../../server/drafting/model';

export function diskDoor(folder: string): Door {
  const root = pathToFileURL(`${folder}/`).href;
  return {
    read: (uri) => {
      try {
        return readFileSync(fileURLToPath(uri), 'utf8');
      } catch {
        return undefined;
      }
    },
    resolve: (from, path) => {
      const uri = new URL(path, from).href;
      return uri.startsWith(root) ? { uri } : { outside: true };
    },
  };
}
