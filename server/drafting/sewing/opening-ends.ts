/** Where openings end on the edges of their seam, and how they are called. */
import { say } from '../../../grammar/say';
import type { Seam } from '../model';
import type { SeamOpening, SeamRun } from '../sewing-model';
import { across, placeOnSide, sideLength } from './course';

export const openingName = (kind: SeamOpening['how']): string =>
  ({
    zip: say`the zip`,
    buttoned: say`the buttoned opening`,
    laced: say`the laced opening`,
    hooked: say`the hooked opening`,
    'left-open': say`the opening`,
  })[kind];

/** Ends of a seam and of its openings count as one within this, mm. */
const AT_END = 0.05;

/** Ends of an opening that lie within its seam, along the left side. */
export function endsWithin({ course }: Seam, { from, to }: SeamOpening): readonly number[] {
  if (course === undefined) return [];
  const total = sideLength(course.left);
  return [from, to].filter((s) => s > AT_END && s < total - AT_END);
}

/** A place of a seam on both of its edges. */
export function acrossOpening(
  { course, itsPair }: Seam,
  at: number,
): readonly { readonly run: SeamRun; readonly distance: number }[] {
  if (course === undefined) return [];
  const places = [placeOnSide(course.left, at)];
  if (!itsPair) places.push(placeOnSide(course.right, across(course, 'left', at)));
  return places.flatMap((place) => place ?? []);
}
