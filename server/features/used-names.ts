/** The files whose names a file may write, bare or behind a name of its own for them; and what they measure. */
import type { SourceFile } from '../../grammar/syntax';
import type { ReadFile } from './definition';

export interface UsedFiles {
  /** Those whose names are written bare, and theirs, nearest first. */
  readonly bare: readonly SourceFile[];
  /** By the name that stands before the dot: `block` in `use "block.draft" as block`. */
  readonly named: ReadonlyMap<string, SourceFile>;
}

export const NO_FILES: UsedFiles = { bare: [], named: new Map() };

/**
 * @param files the files of a pattern, its own first
 * @param resolve the address of the file that a path in a file means; undefined where it leads nowhere
 */
export function usedFiles(
  files: readonly ReadFile[],
  resolve: (from: string, path: string) => string | undefined,
): UsedFiles {
  const byUri = new Map(files.map((one) => [one.uri, one]));
  const named = new Map<string, SourceFile>();
  const bare = new Set<ReadFile>();
  const visit = (from: ReadFile, own: boolean): void => {
    for (const { statement } of from.file.items) {
      const { node } = statement;
      if (node.kind !== 'use') continue;
      const used = byUri.get(resolve(from.uri, node.path.text) ?? '');
      if (used === undefined || bare.has(used)) continue;
      if (node.as !== undefined) {
        if (own) named.set(node.as.text, used.file);
        continue;
      }
      bare.add(used);
      visit(used, false);
    }
  };
  if (files[0] !== undefined) visit(files[0], true);
  return { bare: [...bare].filter((one) => one !== files[0]).map(({ file }) => file), named };
}

/** Measurements that files give a meaning of their own, with the words for how each is taken. */
export function ownMeasurements(files: readonly SourceFile[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const { statement } of files.flatMap(({ items }) => items)) {
    const { node, block = [] } = statement;
    if (node.kind === 'measure') found.set(node.name.text, node.how.text);
    if (node.kind !== 'body' && node.kind !== 'sizes') continue;
    for (const { node: row } of block) {
      if (row.kind !== 'measured' && row.kind !== 'row') continue;
      if (!found.has(row.name.text)) found.set(row.name.text, '');
    }
  }
  return found;
}
