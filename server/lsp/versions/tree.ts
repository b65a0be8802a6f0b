/** One side of a comparison: the pattern files of a folder as they stand on the disk, or as a revision has them. */
import { say } from '../../../grammar/say';

/** Why something can't be compared, in a sentence for the person who asked. */
export class Refusal extends Error {}

export type Content =
  { readonly text: string } | { readonly fault: 'missing' | 'binary' | 'unreadable' | 'too-large' };

export interface Tree {
  /** What a person calls it: `main`, `the working tree`, `old/skirt.draft`. */
  readonly name: string;
  /** Paths of the pattern files, counted from the top of the tree, with forward slashes. */
  list(): readonly string[];
  read(path: string): Content;
  /** Reads many at once, where that is cheaper. */
  readAhead(paths: readonly string[]): void;
}

const FAULTS = {
  missing: (path: string, name: string) => say`${path} is not in ${name}.`,
  binary: (path: string, name: string) =>
    say`${path} in ${name} isn't text in UTF-8, so it can't be a pattern.`,
  unreadable: (path: string, name: string) => say`${path} in ${name} can't be read. Look at its permissions.`,
  'too-large': (path: string, name: string) => say`${path} in ${name} is far too large for a pattern.`,
};

/** The text of a file that has to be there and to be settled; throws Refusal where it isn't. */
export function textIn(tree: Tree, path: string): string {
  const content = tree.read(path);
  if ('fault' in content) throw new Refusal(FAULTS[content.fault](path, tree.name));
  const line = unsettledLine(content.text);
  if (line !== undefined) throw unsettled(path, tree, line);
  return content.text;
}

/** @param line on which the marks begin, from one */
export const unsettled = (path: string, { name }: Tree, line: number): Refusal =>
  new Refusal(
    say`${path} in ${name} holds the marks of an unfinished merge (line ${line}), so it isn't compared. Choose between the two versions there, take the marks out, and compare again.`,
  );

/** The first line, from one, on which git left both versions of a merge; undefined in a settled text. */
export function unsettledLine(text: string): number | undefined {
  if (!/^(<<<<<<<|>>>>>>>)/m.test(text)) return undefined;
  return text.split(/\r\n|\n|\r/).findIndex((line) => /^(<{7}|>{7})( |$)/.test(line)) + 1 || undefined;
}

/** The text of bytes that claim to be a pattern. */
export function contentOf(bytes: Uint8Array): Content {
  if (bytes.includes(0)) return { fault: 'binary' };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    return { fault: 'binary' };
  }
}
