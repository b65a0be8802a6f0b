/** The places of a name that may change together while one of them is typed in: where none stands in another file. */
import type { Meaning } from './meaning';
import type { Names } from './names';
import { occurrenceAt, topAt } from './occurrences';
import { references, speakingOf, type Reference } from './references';
import { isFixed, unread } from './rename';

export interface Linked {
  readonly places: readonly Reference[];
  /** What a name may look like while it is typed, as a regular expression with the flag `u` and without. */
  readonly pattern: string;
}

/**
 * A sign of a name: a letter or a digit, or anything beyond ASCII that is no sign of arithmetic, quotation or space. Clients
 * read it without the flag that would know letters, and some with a library that is not JavaScript's.
 */
const LETTER = '(?:[A-Za-z]|[^\\x00-\\xbf\\xd7\\xf7\\u2000-\\u2bff\\ufeff])';
const SIGN = `(?:[0-9]|${LETTER})`;

/** A hyphen at the end is let through: `hip-` stands there on the way to `hip-line`, and the link would be lost. */
export const TYPED_NAME = `${LETTER}${SIGN}*(?:-${LETTER}${SIGN}*)*-?`;

const asTyped = new RegExp(`^${TYPED_NAME}$`);

/**
 * The places that change with the name at an offset; undefined where one stands alone, or where typing would reach further
 * than the eye: another file, a line that can't be read, a second thing of that name.
 *
 * @param tied the files that `use` lines tie together with this one
 */
export function linked(
  names: Names,
  text: string,
  offset: number,
  tied: readonly Names[],
): Linked | undefined {
  const meaning = occurrenceAt(names, offset)?.meaning;
  if (meaning === undefined || isFixed(meaning)) return undefined;
  if (meaning.uri !== '' && meaning.uri !== names.uri) return undefined;
  const speaking = speakingOf(meaning, tied);
  const places = references(meaning, speaking);
  if (places.length < 2 || places.some(({ uri }) => uri !== names.uri)) return undefined;
  const written = places.map(({ from, to }) => text.slice(from, to));
  if (!asTyped.test(written[0]!) || written.some((one) => one !== written[0])) return undefined;
  if (isGivenTwice(names, meaning, places) || unread(meaning, speaking) !== undefined) return undefined;
  return { places, pattern: TYPED_NAME };
}

/** Who types in one of two things of one name means to tell them apart. A measurement stands in every body, once in each. */
function isGivenTwice({ root }: Names, { kind }: Meaning, places: readonly Reference[]): boolean {
  const given = places.filter(({ defines }) => defines);
  if (kind !== 'measurement') return given.length > 1;
  return new Set(given.map(({ from }) => topAt(root.topLevels, from))).size < given.length;
}
