/** `draftwright check`: what a cutter would catch, in one or many patterns. */
import type { Dialect } from '../../grammar/dialect';
import {
  check,
  findingsInDialect,
  sweep,
  variantsOf,
  withSeverities,
  type Severities,
  type Variant,
} from '../checks';
import type { PlacedFinding } from '../drafting/model';
import { Bench, type Choice, type Opened } from './open';
import { CLEAN, FAULTY, Unable, UNABLE, type Exit, type Io } from './io';
import { dialectIn } from './language';
import { checkText } from './print/check-text';
import { checkJson, jsonText } from './print/json';
import { countOf, gather, type Report } from './print/report';

export interface CheckOptions extends Choice {
  readonly format: 'text' | 'json';
  readonly severity: Severities;
  /** The dialect of the trade. */
  readonly words: string;
}

/** Checks every file that can be read; one that can't ends the command with 2 after the others are reported. */
export function runCheck(paths: readonly string[], options: CheckOptions, io: Io): Exit {
  const bench = new Bench(io);
  const { opened, refusals } = openAll(bench, paths, options);
  refusals.forEach((reason) => io.err(`${reason}\n`));
  if (opened.length === 0) return UNABLE;
  const dialect = dialectIn(options.words, io);
  const report = reportOn(bench, opened, (file) => {
    const found = withSeverities(everywhere(bench, file, options), options.severity);
    return findingsInDialect(dialect, found, () => bench.textsOf(file.pattern));
  });
  io.out(options.format === 'json' ? jsonText(checkJson(report)) : checkText(report, io));
  if (refusals.length > 0) return UNABLE;
  return countOf(report, 'error') > 0 ? FAULTY : CLEAN;
}

/** Opens each file once; the reasons of those that can't be opened come beside. */
function openAll(bench: Bench, paths: readonly string[], choice: Choice) {
  const opened: Opened[] = [];
  const refusals: string[] = [];
  for (const path of new Set(paths)) {
    try {
      opened.push(bench.open(path, choice));
    } catch (reason) {
      if (!(reason instanceof Unable)) throw reason;
      refusals.push(reason.message);
    }
  }
  return { opened, refusals };
}

/** The findings of opened patterns with their places in files. */
export function reportOn(
  bench: Bench,
  opened: readonly Opened[],
  findings: (file: Opened) => readonly PlacedFinding[] = ({ pattern }) => check(pattern),
): Report {
  return gather(
    opened.map(({ path }) => path),
    opened.flatMap(findings),
    { shown: (uri) => bench.shownPath(uri, opened), text: (uri) => bench.files.read(uri) },
  );
}

/** What is found of one pattern as it is drafted, in a dialect of the trade. */
export const reportIn = (dialect: Dialect, bench: Bench, opened: Opened): Report =>
  reportOn(bench, [opened], ({ pattern }) =>
    findingsInDialect(dialect, check(pattern), () => bench.textsOf(pattern)),
  );

/** What is found for every size and both ends of every choice; a size that was asked for is tried alone. */
function everywhere({ workshop }: Bench, { uri, pattern }: Opened, choice: Choice): readonly PlacedFinding[] {
  const asked = choice.for?.size;
  const wanted = ({ size }: Variant) => asked === undefined || size === '' || size === asked;
  const variants = variantsOf(pattern, choice).filter(wanted);
  return sweep(check(pattern), variants, (visit) => workshop.forEach(uri, variants, visit));
}
