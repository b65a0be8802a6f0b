/** Sentences of a comparison that a terminal, a page and a panel share. */
import { inWords, say } from '../../grammar/say';
import type { Severity } from '../drafting/finding';
import type { FileRange } from '../drafting/model';
import type { Both, ProblemChange, Review } from './model';

/** Values that follow are named up to so many: the others are in the JSON. */
const MOST_FOLLOWED = 4;

export function followedWords({ followed }: Review): string[] {
  if (followed.length === 0) return [];
  const shown = followed.slice(0, MOST_FOLLOWED).map(({ name, text }) => `${name} ${text.was} → ${text.now}`);
  const rest = followed.length - shown.length;
  const more = rest === 0 ? '' : rest === 1 ? say`, and 1 more value` : say`, and ${rest} more values`;
  return [say`so follows: ${shown.join(', ') + more}`];
}

/** @param where how a place is named, `skirt.draft:12`; '' for none */
export function problemWords(
  { problem: { was, now } }: ProblemChange,
  where: (place: Both<FileRange>) => string,
): string {
  const one = (now ?? was)!;
  const at = where(now === undefined ? { was: one.place } : { now: one.place });
  return `${howOf(was, now)} ${one.code}: ${one.message}${at === '' ? '' : ` (${at})`}`;
}

function howOf(was: ProblemChange['problem']['was'], now: ProblemChange['problem']['now']): string {
  if (now === undefined) return clearedWords(was!.severity);
  if (was === undefined) return newWords(now.severity);
  return was.severity === now.severity
    ? stillWords(now.severity)
    : say`${inWords(was.severity)} now ${inWords(now.severity)}`;
}

const newWords = (severity: Severity): string =>
  ({ error: () => say`new error`, warning: () => say`new warning`, note: () => say`new note` })[severity]();

const clearedWords = (severity: Severity): string =>
  ({
    error: () => say`cleared error`,
    warning: () => say`cleared warning`,
    note: () => say`cleared note`,
  })[severity]();

const stillWords = (severity: Severity): string =>
  ({ error: () => say`still error`, warning: () => say`still warning`, note: () => say`still note` })[
    severity
  ]();

/** What either side, by its name, could not draft, and the sizes that it has alone. */
export function undraftedWords(
  { undrafted, unmatchedSizes }: Review,
  { before, after }: { readonly before: string; readonly after: string },
): string[] {
  const rows = (side: string, list: Review['undrafted']['now']) =>
    (list ?? []).map(({ name, why }) => say`${name} in ${side}: ${why}`);
  const sizes = (side: string, list: readonly string[] | undefined) =>
    (list ?? []).map((size) => say`size ${size} is in ${side} alone`);
  return [
    ...rows(before, undrafted.was),
    ...rows(after, undrafted.now),
    ...sizes(before, unmatchedSizes.was),
    ...sizes(after, unmatchedSizes.now),
  ];
}
