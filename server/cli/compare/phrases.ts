/** Sentences of a comparison that every print on paper or screen shares. */
import { nameOf, type Both, type ProblemChange, type Review } from '../../review';
import { counted } from '../print/ink';
import type { Places } from './places';
import type { Compared, Comparison } from './run';

/** `skirt.draft: main → HEAD`, with the old name where it had one. */
export function titleWords({ file: { was, now } }: Compared, { before, after }: Comparison): string {
  const name = was !== undefined && now !== undefined && was !== now ? `${now} (was ${was})` : (now ?? was)!;
  return before === was && after === now ? `${before} → ${after}` : `${name}: ${before} → ${after}`;
}

/** Of a pattern that is on one side alone: what it holds. */
export function listOfPieces({ was, now }: Compared): string {
  const one = (now ?? was)!;
  const names = one.pieces.map(({ name }) => name).join(', ');
  const holds = one.pieces.length === 0 ? 'no pieces' : `${counted(one.pieces.length, 'piece')}: ${names}`;
  const errors = one.findings.filter(({ severity }) => severity === 'error').length;
  const faulty = now !== undefined && errors > 0 ? `; ${counted(errors, 'error')}` : '';
  return `${now === undefined ? 'Pattern removed' : 'Pattern added'}, ${holds}${faulty}.`;
}

/** Values that follow are named up to so many: the others are in the JSON. */
const MOST_FOLLOWED = 4;

export function followedWords({ followed }: Review): string[] {
  if (followed.length === 0) return [];
  const shown = followed.slice(0, MOST_FOLLOWED).map(({ name, text }) => `${name} ${text.was} → ${text.now}`);
  const rest = followed.length - shown.length;
  return [`so follows: ${shown.join(', ')}${rest > 0 ? `, and ${counted(rest, 'more value')}` : ''}`];
}

export function problemWords({ problem: { was, now } }: ProblemChange, places: Places): string {
  const one = (now ?? was)!;
  const at = places.words({ ...(now ? { now: now.place } : { was: one.place }) });
  const how =
    now === undefined
      ? 'cleared'
      : was === undefined
        ? 'new'
        : was.severity === now.severity
          ? 'still'
          : `${was.severity} now`;
  return `${how} ${one.severity} ${one.code}: ${one.message}${at === '' ? '' : ` (${at})`}`;
}

export function undraftedWords(
  { undrafted, unmatchedSizes }: Review,
  { before, after }: Comparison,
): string[] {
  const rows = (side: string, list: Both<Review['undrafted']['now']>['now']) =>
    (list ?? []).map(({ name, why }) => `${name} in ${side}: ${why}`);
  const sizes = (side: string, list: readonly string[] | undefined) =>
    (list ?? []).map((size) => `size ${size} is in ${side} alone`);
  return [
    ...rows(before, undrafted.was),
    ...rows(after, undrafted.now),
    ...sizes(before, unmatchedSizes.was),
    ...sizes(after, unmatchedSizes.now),
  ];
}

export { nameOf };
