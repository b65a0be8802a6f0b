/** The two dialects of the trade in English: what is said is written in the British one, and shown in either. */

export type Dialect = 'British' | 'American';

export const readDialect = (set: unknown): Dialect =>
  /^american$/i.test(String(set)) ? 'American' : 'British';

/**
 * British and American (from memory). Words of the language, as `zip` and `scye-depth`, stay as they are written in
 * a pattern, so that nobody looks for a word that can't be typed.
 */
const AMERICAN: readonly (readonly [string, string])[] = [
  ['sleeve heads', 'sleeve caps'],
  ['sleeve head', 'sleeve cap'],
  ['toiles', 'muslins'],
  ['toile', 'muslin'],
  ['turnings', 'seam allowances'],
  ['trousers', 'pants'],
  ['waistcoat', 'vest'],
  ['braces', 'suspenders'],
  ['tacking', 'basting'],
  ['fork', 'crotch'],
];

const capitalised = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1);

/** As a word by itself: not as a part of a name, of a path of names, or of something quoted. */
const alone = (word: string): RegExp => new RegExp(`(?<![\\w.\`“"-])${word}(?![\\w\`”"-]|\\.\\w)`, 'gi');

/**
 * Words as they are shown in a dialect.
 * @param own the author's texts: a word that one of them uses may be a name, and is left as the author has it
 */
export function inDialect(dialect: Dialect, words: string, own: () => readonly string[]): string {
  if (dialect === 'British') return words;
  const meant = AMERICAN.filter(([british]) => alone(british).test(words));
  if (meant.length === 0) return words;
  const texts = own();
  const free = meant.filter(
    ([british]) => !texts.some((text) => new RegExp(`\\b${british}\\b`, 'i').test(text)),
  );
  return free.reduce(
    (said, [british, american]) =>
      said.replace(alone(british), (found) =>
        found.charAt(0) === found.charAt(0).toUpperCase() ? capitalised(american) : american,
      ),
    words,
  );
}

/** Parts of a page that are no sentences of ours: patterns, and what is printed of them. */
const FENCED = /(^```[\s\S]*?^```$)/m;

/** An English page of the catalogue in a dialect; its examples are patterns, which stay as they are written. */
export const pageInDialect = (dialect: Dialect, page: string): string =>
  page
    .split(FENCED)
    .map((part, i) => (i % 2 === 1 ? part : inDialect(dialect, part, () => [])))
    .join('');
