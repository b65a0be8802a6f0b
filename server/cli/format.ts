/** `draftwright format`: brings pattern files into the canonical layout, or says which are not in it. */
import { say } from '../../grammar/say';
import { format } from '../../grammar';
import { CLEAN, FAULTY, Unable, UNABLE, type Exit, type Io } from './io';
import { readNamed } from './open';
import { writeOver } from './write';

export interface FormatOptions {
  /** Says what would change, and writes nothing. */
  readonly check?: boolean;
}

/** Lays every file out that can be read; one that can't be read or written ends the command with 2 after the others. */
export function runFormat(paths: readonly string[], { check = false }: FormatOptions, io: Io): Exit {
  let [changed, refused] = [false, false];
  for (const path of new Set(paths)) {
    try {
      changed = layOut(path, check, io) || changed;
    } catch (reason) {
      if (!(reason instanceof Unable)) throw reason;
      io.err(`${reason.message}\n`);
      refused = true;
    }
  }
  if (refused) return UNABLE;
  return check && changed ? FAULTY : CLEAN;
}

/** Whether the file was in another layout; it is written unless that is only to be checked. */
function layOut(path: string, check: boolean, io: Io): boolean {
  const { full, written, text } = readNamed(io, path, true);
  const laid = format(text);
  if (laid === text) return false;
  if (!check) writeOver(full, laid, written);
  io.out(`${written}: ${check ? say`not in the canonical layout` : say`laid out anew`}\n`);
  return true;
}
