/** The nearest of the known names to a mistyped one. */

/**
 * Edits between two names (Damerau's distance, adjacent letters may change places), given up beyond `limit`.
 * Source: F. J. Damerau, *Communications of the ACM* 7 (1964) 171-176.
 */
function edits(a: string, b: string, limit: number): number {
  if (Math.abs(a.length - b.length) > limit) return limit + 1;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, before[j - 2]! + 1);
      row.push(best);
    }
    if (Math.min(...row) > limit && Math.min(...last) > limit) return limit + 1;
    before = last;
    last = row;
  }
  return last[b.length]!;
}

/** The same words in another order: `hip-waist` for `waist-hip`. */
const shuffled = (name: string): string => name.split('-').sort().join('-');

const holdsAll = (name: string, words: readonly string[]): boolean => {
  const own = name.split('-');
  return words.every((word) => own.includes(word));
};

/**
 * The known name that was most likely meant, or undefined when none is near. A third of the letters may be wrong, but
 * none where both names have only one or two; the words of a hyphened name may stand in another order or one of them be
 * missing (`hip-waist` for `waist-to-hip`).
 */
export function nearest(wanted: string, known: Iterable<string>): string | undefined {
  const limit = Math.max(1, Math.floor(wanted.length / 3));
  const words = wanted.split('-');
  const folded = wanted.toLowerCase();
  const inOrder = shuffled(wanted);
  let best: string | undefined;
  let bestScore = limit + 1;
  for (const name of known) {
    if (name === wanted) continue;
    let score = edits(folded, name.toLowerCase(), limit);
    if (words.length > 1) {
      if (name.length === wanted.length && shuffled(name) === inOrder) score = Math.min(score, 0.5);
      else if (name.length >= wanted.length && holdsAll(name, words)) score = Math.min(score, 0.75);
    }
    if (score > 0 && wanted.length < 3 && name.length < 3) continue;
    if (score < bestScore || (score === bestScore && best !== undefined && name < best)) {
      best = name;
      bestScore = score;
    }
  }
  return best;
}

/** One of the words of a name: `back-armhole` is an armhole. */
export const called = (name: string, ...words: readonly string[]): boolean =>
  words.includes(name) || (name.includes('-') && name.split('-').some((part) => words.includes(part)));
