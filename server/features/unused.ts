/** Names that nothing speaks of, neither their own file nor one that uses it: an editor fades them. */
import { say } from '../../grammar/say';
import { isUsed } from '../drafting/names/unused';
import type { Pattern } from '../drafting/model';
import type { Names } from './names';

export type Unused = Pattern['unused'][number];

/** @param users the names of the files that use the pattern's own; asked only where there is something to fade */
export function unused(pattern: Pattern, users: () => readonly Names[]): readonly Unused[] {
  if (pattern.unused.length === 0) return pattern.unused;
  const others = users();
  return pattern.unused.filter((one) => !others.some((names) => takes(names, pattern.uri, one)));
}

function takes({ files, network }: Names, uri: string, { source, name }: Unused): boolean {
  // a file that is used with values of another's own is there once for each
  const copies = files.files().filter((file) => file.uri === uri);
  return copies.some((copy) => isUsed(network, copy.key + source, name));
}

export const unusedMessage = ({ name }: Unused): string =>
  say`Nothing uses ${name}: no line of the pattern speaks of it.`;
