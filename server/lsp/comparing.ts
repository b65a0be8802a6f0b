/** A text of the editor compared with another state of it: what the panel shows, and what there is to compare it with. */
import { say } from '../../grammar/say';
import { existsSync } from 'node:fs';
import { dirname, join, relative, sep } from 'node:path';
import {
  methods,
  type Against,
  type ComparedPanel,
  type SourcePlace,
  type Versions,
} from '../../client/preview/protocol';
import type { FileRange } from '../drafting/model';
import {
  compare,
  followedWords,
  platesOf,
  problemWords,
  sheetElement,
  undraftedWords,
  verdict,
  type Both,
  type Taken,
} from '../review';
import type { Desk } from './desk';
import { homeOf, pathOfUri, uriOfPath } from './disk';
import { service, type Room, type Service } from './service';
import { canonical } from './uris';
import { pairFiles } from './versions/changed';
import { git, parts } from './versions/git';
import { Places } from './versions/places';
import { Repository } from './versions/revision';
import { Refusal, type Tree } from './versions/tree';
import { TwoSided, pathOf } from './versions/two-sided';

/** One side: a tree, the path in it, and where its files lie in the editor. */
interface Standing {
  readonly tree: Tree;
  readonly path: string;
  /** The folder of this machine that the tree stands for; undefined for a revision. */
  readonly top?: string;
  readonly body?: { readonly name: string; readonly size?: string };
}

interface Asked {
  readonly uri: string;
  readonly against: Against;
}

export const compareServices: readonly Service[] = [
  service(methods.compare, 'nothing', {}, (asked: Asked, room: Room) =>
    refusable(() => panelOf(asked, room.desk)),
  ),
  service(methods.versions, 'nothing', {}, ({ uri }: { uri: string }, { desk }: Room) =>
    versionsOf(uri, desk),
  ),
];

function refusable(work: () => ComparedPanel): ComparedPanel {
  try {
    return work();
  } catch (reason) {
    if (reason instanceof Refusal) return { refusal: reason.message };
    throw reason;
  }
}

function panelOf({ uri, against }: Asked, desk: Desk): ComparedPanel {
  const full = pathOfUri(canonical(uri));
  if (full === undefined)
    throw new Refusal(say`Only files of this machine can be compared. Save the draft first.`);
  const repository = Repository.around(dirname(full));
  const top = repository?.top ?? homeOf(full, dirname(full));
  const now = standing(desk, top, full, say`the text as it is`);
  const was = before(now, { full, top, against, ...(repository && { repository }) }, desk);
  const bench = new TwoSided();
  const [old, fresh] = [takenOf(bench, was), takenOf(bench, now)];
  return shown({ was: old, now: fresh }, { was, now });
}

const takenOf = (bench: TwoSided, { tree, path, body }: Standing): Taken =>
  bench.taken(tree, path, body === undefined ? {} : { for: body });

interface Place {
  readonly full: string;
  readonly top: string;
  readonly repository?: Repository;
  readonly against: Against;
}

function before(now: Standing, { full, top, repository, against }: Place, desk: Desk): Standing {
  switch (against.kind) {
    case 'body':
      return { ...now, tree: { ...now.tree, name: bodyWords(against) }, body: against };
    case 'file': {
      const other = pathOfUri(canonical(against.uri));
      if (other === undefined || !existsSync(other)) throw new Refusal(say`That is no file of this machine.`);
      const home = Repository.around(dirname(other))?.top ?? homeOf(other, dirname(other));
      return standing(desk, home, other, relative(top, other).split(sep).join('/'));
    }
    case 'revision': {
      if (repository === undefined)
        throw new Refusal(
          say`This file lies in no git repository, so it has no earlier revisions. Compare it with a saved file.`,
        );
      const tree = repository.revision(against.name);
      const path = renamedFrom(tree, now);
      if (path === undefined)
        throw new Refusal(
          say`${relative(top, full)} is not in ${against.name}, nor anything like it under another name.`,
        );
      return { tree, path };
    }
  }
}

const bodyWords = ({ name, size }: { readonly name: string; readonly size?: string }): string =>
  size === undefined ? name : `${name} ${size}`;

/** A file of the disk with those around it, as they are open. */
function standing(desk: Desk, top: string, full: string, name: string): Standing {
  const read: Tree['read'] = (path) => {
    const text = desk.files.read(uriOfPath(join(top, path)));
    return text === undefined ? { fault: 'missing' } : { text };
  };
  const path = relative(top, full).split(sep).join('/');
  return { tree: { name, list: () => [path], readAhead: () => undefined, read }, path, top };
}

/** Where a revision has the file: under its name, or under that of the file there that is most like it. */
function renamedFrom(tree: Tree, now: Standing): string | undefined {
  const there = tree.list();
  if (there.includes(now.path)) return now.path;
  const gone = there.filter((path) => 'fault' in now.tree.read(path));
  return pairFiles(tree, now.tree, gone, [now.path]).find((pair) => pair.now === now.path)?.was;
}

function shown(
  taken: Required<Both<Taken>>,
  sides: { readonly was: Standing; readonly now: Standing },
): ComparedPanel {
  const { was, now } = taken;
  const review = compare(was, now);
  const places = new Places(taken);
  const names = { before: sides.was.tree.name, after: sides.now.tree.name };
  const attributes = (place: Both<FileRange>): Readonly<Record<string, string>> => {
    const both = {
      was: sourcePlace(places, sides.was, 'was', place.was),
      now: sourcePlace(places, sides.now, 'now', place.now),
    };
    if (both.was === undefined && both.now === undefined) return {};
    return { 'data-place': JSON.stringify(both), tabindex: '0' };
  };
  const html = sheetElement({
    title: '',
    review,
    plates: platesOf(review, was, now),
    problems: review.problems.map((one) => problemWords(one, places.words)),
    undrafted: undraftedWords(review, names),
    followed: followedWords(review),
    place: attributes,
  });
  const texts =
    sides.was.top === undefined
      ? Object.fromEntries(was.files.map(({ uri, source }) => [pathOf(uri), source.text]))
      : {};
  return {
    title: `${sides.now.path}: ${names.before} → ${names.after}`,
    verdict: verdict(review),
    html,
    texts,
  };
}

function sourcePlace(
  places: Places,
  { top, tree }: Standing,
  side: 'was' | 'now',
  place: FileRange | undefined,
): SourcePlace | undefined {
  const found = places.of(side, place);
  if (found === undefined) return undefined;
  const { file, range } = found;
  return top === undefined
    ? { revision: tree.name, path: file, range }
    : { uri: uriOfPath(join(top, file)), range };
}

/** How many commits of a file are offered. */
const MOST_COMMITS = 40;

function versionsOf(uri: string, desk: Desk): Versions {
  const full = pathOfUri(canonical(uri));
  const bodies = desk.pattern(uri).everybody;
  const repository = full === undefined ? undefined : quietly(() => Repository.around(dirname(full)));
  if (full === undefined || repository === undefined) return { bodies, branches: [], commits: [] };
  const { top } = repository;
  const lines = (...args: string[]): string[] =>
    parts(git(top, args))
      .map((line) => line.trim())
      .filter(Boolean);
  const branches = lines(
    'for-each-ref',
    '--format=%(refname:short)%00',
    'refs/heads',
    'refs/tags',
    'refs/remotes',
  );
  const log = lines(
    'log',
    `-n${MOST_COMMITS}`,
    '--follow',
    '--format=%h%x09%s%x00',
    '--',
    relative(top, full),
  );
  const commits = log.map((line) => {
    const [name, subject] = line.split('\t');
    return { name: name!, subject: subject ?? '' };
  });
  return { bodies, branches, commits };
}

function quietly<T>(work: () => T | undefined): T | undefined {
  try {
    return work();
  } catch (reason) {
    if (reason instanceof Refusal) return undefined;
    throw reason;
  }
}
