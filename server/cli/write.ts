/** Writes files whole or not at all. */
import {
  accessSync,
  chmodSync,
  constants,
  mkdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { Unable } from './io';

/** Writes beside the file first and renames, so that nobody ever reads half of it. Throws Unable where that fails. */
export function writeWhole(file: string, content: string | Uint8Array, named: string): void {
  orUnable(named, () => {
    mkdirSync(join(file, '..'), { recursive: true });
    swap(file, content);
  });
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
    const why = (fault as NodeJS.ErrnoException).code ?? 'unknown reason';
    throw new Unable(`${named} can't be written (${why}).`);
  }
}

/** Removes what was half written; where even that can't be done there is nothing to remove. */
function remove(file: string): void {
  try {
    rmSync(file, { force: true });
  } catch {
    return;
  }
}
