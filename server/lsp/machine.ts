/** What a machine with Node gives the server: its disk, git for comparisons, and a way to give memory back. */
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { compareServices } from './comparing';
import { diskBehind } from './disk';
import type { Machine } from './server';

/** @param workingFolder the folder that a file with no workspace belongs to */
export const machine = (workingFolder: string): Machine => ({
  behind: diskBehind(workingFolder),
  services: compareServices,
  collect,
});

let collector: (() => void) | undefined;

/** Collects garbage at once. Node shows its collector to programs that were started with a switch; others ask for it so. */
function collect(): void {
  if (collector === undefined) {
    setFlagsFromString('--expose-gc');
    collector = runInNewContext('gc') as () => void;
  }
  collector();
}
