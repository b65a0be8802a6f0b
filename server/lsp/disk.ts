/** Files of this machine: the only place of the language server that reads a disk. */
import { existsSync, readdirSync, readFileSync, realpathSync, statSync } from 'node:fs';
import { dirname, join, sep } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import type { Behind } from './files';
import { canonical } from './uris';

/**
 * The largest file that is read, in bytes. A pattern of ten thousand lines is about half a million; what is larger
 * than this is a photograph or a recording under a wrong name, and reading it would only cost time.
 */
export const MOST_BYTES = 16 * 1024 * 1024;

export type Reading =
  | { readonly text: string }
  | { readonly fault: 'missing' | 'folder' | 'unreadable' | 'binary' | 'too-large' };

/** Reads a text file in UTF-8, without its byte order mark unless `keepMark`, and says why where it can't. */
export function readText(path: string, keepMark = false): Reading {
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) return { fault: 'folder' };
    if (!stat.isFile()) return { fault: 'unreadable' };
    if (stat.size > MOST_BYTES) return { fault: 'too-large' };
    return decoded(readFileSync(path), keepMark);
  } catch (fault) {
    const { code } = fault as NodeJS.ErrnoException;
    return { fault: code === 'ENOENT' || code === 'ENOTDIR' ? 'missing' : 'unreadable' };
  }
}

function decoded(bytes: Uint8Array, keepMark: boolean): Reading {
  if (bytes.includes(0)) return { fault: 'binary' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true, ignoreBOM: keepMark }).decode(bytes) };
  } catch {
    return { fault: 'binary' };
  }
}

export const uriOfPath = (path: string): string => canonical(pathToFileURL(path).href);

/** The path of a file address; undefined for another scheme and for an address that this machine can't read. */
export function pathOfUri(uri: string): string | undefined {
  try {
    return uri.startsWith('file:') ? fileURLToPath(uri) : undefined;
  } catch {
    return undefined;
  }
}

/** The nearest folder at or above `folder` that a repository begins in. */
export function repositoryOf(folder: string): string | undefined {
  for (let here = folder; ; here = dirname(here)) {
    if (existsSync(join(here, '.git'))) return here;
    if (dirname(here) === here) return undefined;
  }
}

/**
 * The folder that a file's `use` lines may not leave when no workspace is named: the repository it lies in, else the
 * working folder that holds it, else its own folder.
 */
export function homeOf(path: string, workingFolder: string): string {
  const holds = path.startsWith(workingFolder.endsWith(sep) ? workingFolder : workingFolder + sep);
  return repositoryOf(dirname(path)) ?? (holds ? workingFolder : dirname(path));
}

/** Where the pages about codes lie: beside the bundled program, or beside the checks of the project. */
const PAGE_PLACES = ['checks', join('..', 'checks')];

function readPage(file: string): string | undefined {
  const here = typeof __dirname === 'string' ? __dirname : dirname(fileURLToPath(import.meta.url));
  const readings = PAGE_PLACES.map((place) => readText(join(here, place, file)));
  const found = readings.find((reading) => 'text' in reading);
  return found && 'text' in found ? found.text : undefined;
}

/** The disk behind the open buffers. */
export function diskBehind(workingFolder: string): Behind {
  return {
    read(uri) {
      const path = pathOfUri(uri);
      const reading = path === undefined ? undefined : readText(path);
      return reading !== undefined && 'text' in reading ? reading.text : undefined;
    },
    home(uri) {
      const path = pathOfUri(uri);
      return path === undefined ? undefined : uriOfPath(homeOf(path, workingFolder));
    },
    staysIn(uri, folders) {
      const [path, ...homes] = [uri, ...folders].map(pathOfUri);
      return path === undefined || homes.some((home) => home === undefined || leadsInto(path, home));
    },
    list(uri) {
      const folder = pathOfUri(uri);
      return folder === undefined ? [] : patternsIn(folder).map(uriOfPath);
    },
    page: readPage,
  };
}

/**
 * How many folders of a workspace are looked into for patterns. A wardrobe has dozens; a home folder opened by mistake
 * has a hundred thousand, and listing those would keep a person waiting for seconds.
 */
const MOST_FOLDERS = 2000;

/** The pattern files below a folder, the nearest first; folders of programs and hidden ones are left out. */
function patternsIn(top: string): readonly string[] {
  const found: string[] = [];
  const folders = [top];
  for (let i = 0; i < folders.length && i < MOST_FOLDERS; i++) {
    for (const entry of entriesOf(folders[i]!)) {
      const path = join(folders[i]!, entry.name);
      if (entry.isDirectory()) {
        if (!entry.name.startsWith('.') && entry.name !== 'node_modules') folders.push(path);
      } else if (entry.name.endsWith('.draft')) found.push(path);
    }
  }
  return found;
}

function entriesOf(folder: string) {
  try {
    return readdirSync(folder, { withFileTypes: true });
  } catch {
    return []; // gone, or not for us to read
  }
}

/** True where a path lies in a folder once links are followed; what does not exist leads nowhere else. */
function leadsInto(path: string, folder: string): boolean {
  try {
    const [file, home] = [realpathSync(path), realpathSync(folder)];
    return file === home || file.startsWith(home.endsWith(sep) ? home : home + sep);
  } catch {
    return true;
  }
}
