/** Mends `use` lines before files or folders get other names, so that every path still leads where it led. */
import type { SourceFile } from '../../grammar/syntax';
import type { FileRange } from '../drafting/model';
import { links } from './links';

export interface Renaming {
  readonly from: string;
  readonly to: string;
}

export interface PathEdit extends FileRange {
  readonly text: string;
}

interface Used {
  readonly uri: string;
  readonly file: SourceFile;
}

/**
 * The edits of `use` lines, in the files as they are called now.
 *
 * @param resolve the address of the file that a path in a file means; undefined where it leads nowhere
 */
export function mendedUses(
  files: readonly Used[],
  renamings: readonly Renaming[],
  resolve: (from: string, path: string) => string | undefined,
): readonly PathEdit[] {
  return files.flatMap(({ uri, file }) =>
    links(file).flatMap(({ from, to, path }): PathEdit[] => {
      const target = resolve(uri, path);
      if (target === undefined) return [];
      const [user, used] = [renamed(uri, renamings), renamed(target, renamings)];
      if (user === uri && used === target) return [];
      const text = pathBetween(user, used);
      return text === undefined || text === path ? [] : [{ uri, from, to, text }];
    }),
  );
}

/** The address of a file once it, or a folder round it, has another name. */
function renamed(uri: string, renamings: readonly Renaming[]): string {
  for (const { from, to } of renamings) {
    if (uri === from) return to;
    if (uri.startsWith(`${from}/`)) return to + uri.slice(from.length);
  }
  return uri;
}

/** The way from one file to another, with `/`; undefined between roots that no path joins. */
export function pathBetween(from: string, to: string): string | undefined {
  const [rootOf, rootTo] = [root(from), root(to)];
  if (rootOf === undefined || rootOf !== rootTo) return undefined;
  const here = from.slice(rootOf.length).split('/').slice(0, -1);
  const there = to.slice(rootOf.length).split('/');
  let shared = 0;
  while (shared < here.length && shared < there.length - 1 && here[shared] === there[shared]) shared++;
  const up = here.slice(shared).map(() => '..');
  return [...up, ...there.slice(shared).map(readable)].join('/');
}

const root = (uri: string): string | undefined => /^[a-z][a-z0-9+.-]*:(?:\/\/[^/]*)?\//i.exec(uri)?.[0];

function readable(segment: string): string {
  try {
    return decodeURIComponent(segment);
  } catch {
    return segment; // a percent sign that encodes nothing
  }
}
