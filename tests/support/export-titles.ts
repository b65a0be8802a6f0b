/** What an editor shows of the command line's exports: the title and the explanation of each and of its options. */
import { commandsFor } from '../../server/cli/commands';
import { exportTargets } from '../../server/cli/exports';
import { drafted } from './drafted';

const silent = { cwd: '.', out: () => undefined, err: () => undefined, width: 80, colour: false };

export function exportTitles(): readonly string[] {
  const targets = exportTargets(commandsFor(silent), drafted(''));
  const shown = targets.flatMap((target) => [target, ...target.options]);
  return [...new Set(shown.flatMap(({ title, words }) => [title, words]))];
}
