/** Compares two drafted patterns: what was decided otherwise, and what that did to pieces, seams and problems. */
import { both, decided } from './causes';
import type { Review, SizeChange } from './model';
import type { Renamed } from './pairs';
import { pieceChanges } from './pieces';
import { problemChanges } from './problems';
import { seamChanges } from './seams';
import type { Taken, TakenSize } from './take';

/** Swapping the two gives the same with `was` and `now` exchanged. */
export function compare(before: Taken, after: Taken): Review {
  const { causes, followed, renamed, textChanged } = decided(before, after);
  const undrafted = both(some(before.undrafted), some(after.undrafted));
  const lacking = (side: Taken): ReadonlySet<string> => new Set(side.undrafted.map(({ name }) => name));
  const missing = new Set([...lacking(before), ...lacking(after)]);
  // a piece that could not be drafted on one side was neither added nor taken away
  const pieces = pieceChanges(before, after, renamed).filter(({ piece: { was, now } }) => {
    const one = was === undefined ? now : now === undefined ? was : undefined;
    return one === undefined || !(missing.has(one.name) || missing.has(one.base));
  });
  return {
    title: both(before.title, after.title),
    unit: after.unit,
    file: both(before.files[0]?.shown, after.files[0]?.shown),
    body: both(before.body, after.body),
    ...{ causes, textChanged, followed },
    pieceCount: { was: before.pieces.length, now: after.pieces.length },
    pieces: pieces.map((one, i) => ({ ...one, number: i + 1 })),
    seams: seamChanges(before, after, renamed),
    problems: problemChanges(before.findings, after.findings, renamed),
    undrafted,
    sizes: sizeChanges(before, after, renamed),
    unmatchedSizes: both(...unmatched(before, after)),
  };
}

const some = <T>(list: readonly T[]): readonly T[] | undefined => (list.length === 0 ? undefined : list);

/** Whether nothing differs that is drafted, judged or decided: comments, layout and order may. */
export const isSame = (review: Review): boolean =>
  review.causes.length === 0 &&
  review.pieces.length === 0 &&
  review.seams.length === 0 &&
  review.problems.length === 0 &&
  review.sizes.length === 0 &&
  review.followed.length === 0 &&
  review.unmatchedSizes.was === undefined &&
  review.unmatchedSizes.now === undefined;

function sizeChanges(before: Taken, after: Taken, renamed: readonly Renamed[]): SizeChange[] {
  return after.sizes.flatMap((now) => {
    const was = before.sizes.find(({ size }) => size === now.size);
    if (was === undefined) return [];
    const change = sizeChange({ ...before, ...was }, { ...after, ...now }, renamed);
    const told = change.pieces.length + change.seams.length + change.problems.length > 0;
    return told ? [{ size: now.size, ...change }] : [];
  });
}

const sizeChange = (was: Taken & TakenSize, now: Taken & TakenSize, renamed: readonly Renamed[]) => ({
  pieces: pieceChanges(was, now, renamed).map(({ name, words, deviation, edges, area }) => ({
    ...{ name, words, edges, area },
    ...(deviation && { deviation }),
  })),
  seams: seamChanges(was, now, renamed),
  problems: problemChanges(was.findings, now.findings, renamed),
});

function unmatched(before: Taken, after: Taken) {
  const names = ({ sizes }: Taken) => sizes.map(({ size }) => size);
  const lacking = (side: Taken, other: Taken) =>
    names(side).filter((size) => other.sizes.length > 0 && !names(other).includes(size));
  return [some(lacking(before, after)), some(lacking(after, before))] as const;
}
