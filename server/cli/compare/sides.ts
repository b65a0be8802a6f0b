/** What `draftwright compare` was asked to hold against each other: two files, two folders, or two revisions of a path. */
import { say } from '../../../grammar/say';
import { existsSync, realpathSync } from 'node:fs';
import { dirname, relative, resolve, sep } from 'node:path';
import { homeOf, readText } from '../../lsp/disk';
import { folderTree, named } from '../../lsp/versions/folder';
import { Repository } from '../../lsp/versions/revision';
import { Refusal, type Content, type Tree } from '../../lsp/versions/tree';
import { absolute, type Io } from '../io';

export interface Sides {
  readonly before: Tree;
  readonly after: Tree;
  /** Two files that were named one by one, whatever they are called. */
  readonly files?: { readonly was: string; readonly now: string };
  /** The path that the comparison is limited to, from the top of both trees; '' for everything. */
  readonly path: string;
  /** Where the two are revisions of a repository. */
  readonly range?: { readonly repository: Repository; readonly from: string; readonly to: string };
}

/** Reads the words of the command line; throws Refusal where they name nothing that can be compared. */
export function sidesOf(words: readonly string[], io: Io): Sides {
  const [first = '', second, third] = words;
  const there = (word: string | undefined): boolean => word !== undefined && existsSync(absolute(io, word));
  const range = there(first) ? null : /^(.*?)(\.\.\.?)(.*)$/.exec(first);
  if (range !== null) return ofRange(range, second, third, io);
  if (third !== undefined) return ofRevisions(first, second!, third, io);
  if (there(first) && second === undefined) return ofRevisions('HEAD', '', first, io);
  if (there(first) && there(second)) return ofDisk(first, second!, io);
  if (there(first))
    throw new Refusal(say`There is no file or folder ${second ?? ''} here to compare ${first} with.`);
  const repository = repositoryFor(first, io);
  if (second === undefined || (there(second) && !repository.has(second)))
    return ofRevisions(first, '', second, io);
  return ofRevisions(first, second, undefined, io);
}

function ofDisk(first: string, second: string, io: Io): Sides {
  const slashes = (path: string): string => path.split('\\').join('/');
  const one = named(resolve(absolute(io, first)), slashes(first), io.cwd);
  const other = named(resolve(absolute(io, second)), slashes(second), io.cwd);
  if ((one.path === '') !== (other.path === ''))
    throw new Refusal(say`${first} and ${second} are a file and a folder. Name two files or two folders.`);
  const files = one.path === '' ? {} : { files: { was: one.path, now: other.path } };
  return { before: one.tree, after: other.tree, path: '', ...files };
}

function ofRange(
  [, from, dots, to]: RegExpExecArray,
  path: string | undefined,
  more: string | undefined,
  io: Io,
): Sides {
  if (more !== undefined) throw new Refusal(say`One path at a time: ${path ?? ''} or ${more}.`);
  const repository = repositoryFor(`${from}${dots}${to}`, io);
  const start = from || 'HEAD';
  if (dots === '..') return ofRevisions(start, to!, path, io);
  const parting = repository.parting(start, to || 'HEAD');
  return ofRevisions(parting, to!, path, io, start);
}

/** Two texts as if both lay at a path of the working tree: what they use is read there. */
export function sidesAs(path: string, words: readonly string[], io: Io): Sides {
  const [first, second] = words;
  if (first === undefined || second === undefined || words.length > 2)
    throw new Refusal(say`With --as two files are compared: draftwright compare --as skirt.draft OLD NEW.`);
  const full = resolve(absolute(io, path));
  const top = homeOf(full, io.cwd);
  const place = relative(top, full).split(sep).join('/');
  const side = (file: string, name: string): Tree => {
    const tree = folderTree(top, name);
    const reading = readText(resolve(absolute(io, file)));
    // git hands over an empty device for a side that lacks the file
    const content: Content =
      'text' in reading ? reading : file === '/dev/null' ? { text: '' } : { fault: 'missing' };
    return { ...tree, read: (of) => (of === place ? content : tree.read(of)) };
  };
  return {
    before: side(first, say`before`),
    after: side(second, say`after`),
    path: '',
    files: { was: place, now: place },
  };
}

/** An empty second revision is the working tree. */
function ofRevisions(from: string, to: string, path: string | undefined, io: Io, called = from): Sides {
  const repository = repositoryFor(from, io);
  const tree = repository.revision(from);
  const before = called === from ? tree : { ...tree, name: say`${called} (where the other left it)` };
  const after = to === '' ? repository.workingTree() : repository.revision(to);
  return {
    before,
    after,
    path: path === undefined ? '' : within(repository, path, io),
    ...(to !== '' && { range: { repository, from, to } }),
  };
}

function repositoryFor(what: string, io: Io): Repository {
  const repository = Repository.around(io.cwd);
  if (repository !== undefined) return repository;
  throw new Refusal(
    say`${what} is no file or folder here, and this folder lies in no git repository that could know it as a revision. Compare two files or two folders, or go to the folder of the repository.`,
  );
}

/** A path as the repository counts it; it need not be there any more. */
function within(repository: Repository, path: string, io: Io): string {
  const full = resolve(absolute(io, path));
  const real = existsSync(full)
    ? realpathSync(full)
    : resolve(realpathOf(dirname(full)), full.slice(dirname(full).length + 1));
  const inside = relative(realpathSync(repository.top), real).split(sep).join('/');
  if (inside === '..' || inside.startsWith('../'))
    throw new Refusal(say`${path} lies outside of this repository.`);
  return inside;
}

const realpathOf = (folder: string): string => (existsSync(folder) ? realpathSync(folder) : folder);
