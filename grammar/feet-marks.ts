/** What touches a number as its unit: its letters, and the marks for feet and inches, as in `5' 3"`. */
import { isFeet } from './unit-names';

const LETTERS = /[\p{L}_][\p{L}\p{M}\p{Nd}_]*/uy;
/** `5ft3in`: the digits after feet begin the inches. */
const FEET_TOUCHED = /^(ft|foot|feet)\d/i;
const INCHES = /["″”]|'{2}|′{2}|’{2}/y;
/** A quote that opens a text has its first letter behind it. */
const FEET = /['′’](?![\p{L}_])/uy;

/** The letters at `at`, as far as they are one unit. */
export function unitLetters(text: string, at: number, to: number): string | undefined {
  const letters = matched(LETTERS, text, at, to);
  return letters === undefined ? undefined : (FEET_TOUCHED.exec(letters)?.[1] ?? letters);
}

/** How many characters at `at` are a mark for inches. */
export const inchMark = (text: string, at: number, to: number): number =>
  matched(INCHES, text, at, to)?.length ?? 0;

export const feetMark = (text: string, at: number, to: number): string | undefined =>
  matched(FEET, text, at, to);

/** Whether a number ends in feet, written out or as a mark. */
export const endsInFeet = (written: string): boolean => isFeet(written.replace(/^[\d.,/ \p{No}]+/u, ''));

function matched(pattern: RegExp, text: string, at: number, to: number): string | undefined {
  if (at >= to) return undefined;
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0];
}
