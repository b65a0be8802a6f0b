/** Writes files whole or not at all. */
import { say } from '../../grammar/say';
import {
  accessSync,
  chmodSync,
  constants,
  existsSync,
  mkdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { dirname } from 'node:path';
import { Unable } from './io';

/** Writes beside the file first and renames, so that nobody ever reads half of it. Throws Unable where that fails. */
export function writeWhole(file: string, content: string | Uint8Array, named: string): void {
  orUnable(named, () => {
    makeFolder(dirname(file));
    swap(file, content);
  });
}

/** A folder and those above it. Node's own way never comes to an end below a folder that takes none, like /proc. */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  makeFolder(dirname(folder));
  try {
    mkdirSync(folder);
  } catch (error) {
    if (!existsSync(folder)) throw error; // somebody else may have made it meanwhile
  }
}

/** Writes over a file that is there: links to it and its permissions stay, and a read-only one is left as it is. */
export function writeOver(path: string, content: string, named: string): void {
  orUnable(named, () => {
    const file = realpathSync(path);
    accessSync(file, constants.W_OK);
    swap(file, content, statSync(file).mode);
  });
}

function swap(file: string, content: string | Uint8Array, mode?: number): void {
  const half = `${file}.${process.pid}.part`;
  try {
    writeFileSync(half, content);
    if (mode !== undefined) chmodSync(half, mode);
    renameSync(half, file);
  } catch (fault) {
    remove(half);
    throw fault;
  }
}

function orUnable(named: string, work: () => void): void {
  try {
    work();
  } catch (fault) {
    throw new Unable(notWritten(named, (fault as NodeJS.ErrnoException).code));
  }
}

/** Why a file could not be written, in the words of whoever has to mend it; what was there before is untouched. */
export function notWritten(named: string, code: string | undefined): string {
  const why = code === undefined ? undefined : REASONS[code]?.();
  return why === undefined
    ? say`${named} can't be written (${code ?? say`unknown reason`}).`
    : say`${named} can't be written: ${why} (${code!}).`;
}

const READ_ONLY = (): string =>
  say`nothing may be written there. Look at its permissions, or write elsewhere`;
const NO_FOLDER = (): string => say`a file lies where a folder is needed. Write elsewhere`;

const REASONS: Readonly<Record<string, () => string>> = {
  ENOSPC: () => say`the disk is full. Make room, or write elsewhere`,
  EDQUOT: () => say`your share of the disk is full. Make room, or write elsewhere`,
  EACCES: READ_ONLY,
  EPERM: READ_ONLY,
  EROFS: READ_ONLY,
  ENOENT: () => say`no folder can be made there. Write elsewhere`,
  ENOTDIR: NO_FOLDER,
  EEXIST: NO_FOLDER,
  EISDIR: () => say`a folder of that name lies there. Write elsewhere`,
  ENAMETOOLONG: () => say`the name is too long for the disk`,
};

/** Removes what was half written; where even that can't be done there is nothing to remove. */
function remove(file: string): void {
  try {
    rmSync(file, { force: true });
  } catch {
    return;
  }
}
