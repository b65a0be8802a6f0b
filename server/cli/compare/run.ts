/** `draftwright compare`: what a change did to the patterns of two files, two folders or two revisions. */
import { say } from '../../../grammar/say';
import type { Dialect } from '../../../grammar/dialect';
import type { Choice } from '../../drafting/workshop';
import { compare, isSame, type Review, type Taken } from '../../review';
import { changedFiles, pairFiles, readable, type FilePair } from '../../lsp/versions/changed';
import { Refusal, type Tree } from '../../lsp/versions/tree';
import { TwoSided } from '../../lsp/versions/two-sided';
import { absolute, CLEAN, FAULTY, Unable, type Exit, type Io } from '../io';
import { dialectIn } from '../language';
import { writeWhole } from '../write';
import { takenIn } from './dialect';
import { runEach } from './each';
import { compareHtml } from './html';
import { compareJson } from './json';
import { compareMarkdown } from './markdown';
import { sidesAs, sidesOf, type Sides } from './sides';
import { compareSvg } from './svg';
import { compareText } from './text';

export interface CompareOptions extends Choice {
  readonly format: 'text' | 'markdown' | 'json' | 'svg' | 'html';
  /** The dialect of the trade. */
  readonly words: string;
  readonly failOn: 'differences' | 'errors';
  readonly out?: string;
  /** Where both files are to be taken to lie. */
  readonly as?: string;
  /** Commit by commit. */
  readonly each?: boolean;
}

/** One pattern of the two sides: compared, or there on one of them alone. */
export interface Compared {
  readonly file: FilePair;
  readonly was?: Taken;
  readonly now?: Taken;
  readonly review?: Review;
}

export interface Comparison {
  readonly before: string;
  readonly after: string;
  readonly patterns: readonly Compared[];
}

const PRINTERS: Readonly<Record<CompareOptions['format'], (comparison: Comparison, io: Io) => string>> = {
  text: compareText,
  markdown: compareMarkdown,
  json: compareJson,
  svg: compareSvg,
  html: compareHtml,
};

export function runCompare(words: readonly string[], options: CompareOptions, io: Io): Exit {
  if (options.each && (options.format !== 'text' || options.out !== undefined))
    throw new Unable(
      say`--each prints lines of text: leave --format and --out away, or compare without --each.`,
    );
  const dialect = dialectIn(options.words, io);
  if (options.each) return refusable(() => runEach(sidesOf(words, io), { ...options, dialect }, io));
  const comparison = refusable(() =>
    comparedSides(options.as === undefined ? sidesOf(words, io) : sidesAs(options.as, words, io), {
      ...options,
      dialect,
    }),
  );
  const text = PRINTERS[options.format](comparison, io);
  if (options.out === undefined) io.out(text);
  else {
    writeWhole(absolute(io, options.out), text, options.out);
    io.out(`${options.out.split('\\').join('/')}: ${told(comparison)}\n`);
  }
  const fails = options.failOn === 'errors' ? hasNewErrors(comparison) : differs(comparison);
  return fails ? FAULTY : CLEAN;
}

function refusable<T>(work: () => T): T {
  try {
    return work();
  } catch (reason) {
    if (reason instanceof Refusal) throw new Unable(reason.message);
    throw reason;
  }
}

const told = ({ patterns }: Comparison): string =>
  patterns.length === 1 ? say`1 pattern` : say`${patterns.length} patterns`;

/** What a comparison is asked for beside its sides. */
export interface Wanted extends Choice {
  readonly dialect: Dialect;
}

/** Compares what has to be compared; a pattern that is the same in text and use is left out. */
export function comparedSides(sides: Sides, wanted: Wanted, kept?: TwoSided): Comparison {
  const { before, after } = sides;
  const pairs = sides.files === undefined ? pairsOf(sides) : [sides.files];
  const bench = kept ?? new TwoSided();
  const patterns = pairs.map((file) => {
    const compared = one(bench, before, after, file, wanted);
    // of many patterns each is held only while it is compared, unless the next comparison begins with it
    if (kept === undefined)
      for (const path of new Set([file.was, file.now])) if (path !== undefined) bench.forget(path);
    return compared;
  });
  return { before: before.name, after: after.name, patterns };
}

function one(bench: TwoSided, before: Tree, after: Tree, file: FilePair, wanted: Wanted): Compared {
  readable(before, after, file);
  const taken = (tree: Tree, path: string): Taken => takenIn(wanted.dialect, bench.taken(tree, path, wanted));
  const was = file.was === undefined ? undefined : taken(before, file.was);
  const now = file.now === undefined ? undefined : taken(after, file.now);
  const review = was && now ? compare(was, now) : undefined;
  return { file, ...(was && { was }), ...(now && { now }), ...(review && { review }) };
}

/** A single file that was named has to be on both sides, if under another name. */
function pairsOf({ before, after, path }: Sides): readonly FilePair[] {
  const [old, fresh] = [before.list(), after.list()];
  if (path === '' || !(old.includes(path) || fresh.includes(path))) {
    const below = [...old, ...fresh].some((one) => path === '' || one.startsWith(`${path}/`));
    if (!below && path !== '')
      throw new Refusal(say`${path} is neither in ${before.name} nor in ${after.name}.`);
    return changedFiles(before, after, path);
  }
  const pair = pairFiles(before, after, old, fresh).find(({ was, now }) => was === path || now === path)!;
  if (pair.was !== undefined && pair.now !== undefined) return [pair];
  const [has, lacks] = pair.was === undefined ? [after.name, before.name] : [before.name, after.name];
  throw new Refusal(
    say`${path} is in ${has!}, but not in ${lacks!}, nor anything like it under another name: there is nothing to compare it with.`,
  );
}

export const differs = ({ patterns }: Comparison): boolean =>
  patterns.some(({ review }) => review === undefined || !isSame(review));

/** Errors that were not there before, in any size; an error in a pattern that is new counts as well. */
export const hasNewErrors = ({ patterns }: Comparison): boolean =>
  patterns.some(({ review, now }) =>
    review === undefined
      ? (now?.findings ?? []).some(({ severity }) => severity === 'error')
      : [review, ...review.sizes].some(({ problems }) =>
          problems.some(
            ({ problem: { was, now: then } }) => then?.severity === 'error' && was?.severity !== 'error',
          ),
        ),
  );
