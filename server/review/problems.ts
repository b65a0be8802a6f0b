/** Problems that came with a change and problems that it mended, code by code and thing by thing. */
import type { PlacedFinding } from '../drafting/model';
import { both } from './causes';
import type { ProblemChange } from './model';
import type { Renamed } from './pairs';

/**
 * New, cleared and altered problems, the gravest first. The same code at the same thing is the same problem: where only
 * its numbers are others, both are told.
 */
export function problemChanges(
  before: readonly PlacedFinding[],
  after: readonly PlacedFinding[],
  renamed: readonly Renamed[],
): ProblemChange[] {
  const old = [...before];
  const take = (fits: (one: PlacedFinding) => boolean): PlacedFinding | undefined => {
    const at = old.findIndex(fits);
    return at < 0 ? undefined : old.splice(at, 1)[0];
  };
  const sourceNow = (source: string): string =>
    source
      .split(/([/:#.=])/)
      .map((word) => renamed.find(({ was }) => was === word)?.now ?? word)
      .join('');
  const sameThing = (one: PlacedFinding, now: PlacedFinding): boolean =>
    one.code === now.code && (one.source === now.source || sourceNow(one.source) === now.source);
  const open = after.filter(
    (now) =>
      take((one) => sameThing(one, now) && one.message === now.message && one.severity === now.severity) ===
      undefined,
  );
  const changes = open.map((now): ProblemChange => {
    const was = take((one) => sameThing(one, now));
    return { problem: both(was, now) };
  });
  return [...changes, ...old.map((was) => ({ problem: { was } }))].filter(isTold).sort(byGravity);
}

const GRAVITY = { error: 0, warning: 1, note: 2 };

const byGravity = (a: ProblemChange, b: ProblemChange): number => rank(a) - rank(b);

const rank = ({ problem: { was, now } }: ProblemChange): number =>
  GRAVITY[(now ?? was)!.severity] + (was === undefined ? 0 : now === undefined ? 6 : 3);

/** A problem of which the words alone are others, as after a new name, is the same problem. */
function isTold({ problem: { was, now } }: ProblemChange): boolean {
  if (was === undefined || now === undefined || was.severity !== now.severity) return true;
  const numbers = ({ message }: PlacedFinding): string => (message.match(/\d+(\.\d+)?/g) ?? []).join(' ');
  return numbers(was) !== numbers(now);
}
