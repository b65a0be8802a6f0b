/** Words made harmless, counted and folded: what every printer of plain lines needs. */

/**
 * Text of a file made harmless for a terminal: signs that would move the cursor, change colours or turn the reading
 * direction (ECMA-48 controls, Unicode bidirectional controls) are shown as one replacement sign each; tabs stay.
 */
export const harmless = (text: string): string =>
  text.replace(/[\u0000-\u0008\u000a-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/g, '\ufffd');

/** Marks that stand on the sign before them, and joiners, take no column of their own. */
const NO_WIDTH = /\p{Mn}|\p{Me}|\p{Cf}/u;
/** Signs that a terminal draws two columns wide: pictures, and the scripts of East Asia (Unicode annex 11). */
const DOUBLE =
  /\p{Extended_Pictographic}|\p{Script=Han}|\p{Script=Hiragana}|\p{Script=Katakana}|\p{Script=Hangul}/u;

/** Columns that a text takes on a terminal. */
export function columnsOf(text: string): number {
  if (/^[\x20-\x7e]*$/.test(text)) return text.length;
  let columns = 0;
  for (const sign of text) columns += NO_WIDTH.test(sign) ? 0 : DOUBLE.test(sign) && sign > '\u00ff' ? 2 : 1;
  return columns;
}

/**
 * Words folded into lines of a width that `wide` measures; a word too long for a line is broken at its joints, else where
 * it must be. Always at least one line.
 */
export function folded(text: string, width: number, wide: (text: string) => number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (wide(longer) <= width) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    const parts = broken(word, width, wide);
    lines.push(...parts.slice(0, -1));
    line = parts.at(-1)!;
  }
  return [...lines, line];
}

/** Where a name may go on in the next line: behind the piece that an edge is of, then behind a hyphen. */
const JOINTS = [/(?<=[./])/, /(?<=[-./])/];

/** Parts joined again as far as they fit; what is too long by itself is broken at the next finer joints, at last anywhere. */
function broken(word: string, width: number, wide: (text: string) => number, level = 0): string[] {
  if (wide(word) <= width) return [word];
  const joint = JOINTS[level];
  const parts = joint === undefined ? [...word] : word.split(joint);
  const lines: string[] = [];
  let line = '';
  for (const part of parts) {
    if (line !== '' && wide(line + part) > width) {
      lines.push(line);
      line = '';
    }
    line += part;
    if (joint === undefined || wide(line) <= width) continue;
    const finer = broken(line, width, wide, level + 1);
    lines.push(...finer.slice(0, -1));
    line = finer.at(-1)!;
  }
  return [...lines, line];
}

/**
 * The least that columns may be folded to: their longest words, and where that is too much for the room the longest parts
 * between joints, coarse ones before fine ones.
 */
export function leastWidths(
  columns: readonly (readonly string[])[],
  wide: (text: string) => number,
  floor: (column: number) => number,
  room: number,
): number[] {
  const least = (joint: RegExp): number[] =>
    columns.map((texts, i) => {
      const longest = Math.max(0, ...texts.flatMap((text) => text.split(joint).map(wide)));
      return Math.max(longest, floor(i));
    });
  const all = [/\s+/, ...JOINTS.map(({ source }) => new RegExp(`\\s+|${source}`))].map(least);
  return all.find((one) => one.reduce((a, b) => a + b, 0) <= room) ?? all.at(-1)!;
}

/**
 * Widths of the columns of a table within a room: as wide as they would like where that fits; otherwise all give way
 * alike, down to their longest word; where even that is too much the widest are cut to one width, and words are broken.
 */
export function columnWidths(liked: readonly number[], least: readonly number[], room: number): number[] {
  const sum = (all: readonly number[]): number => all.reduce((a, b) => a + b, 0);
  if (sum(liked) <= room) return [...liked];
  if (sum(least) > room) return capped(least, room);
  const give = liked.map((one, i) => one - Math.min(one, least[i]!));
  const share = (sum(liked) - room) / sum(give);
  return liked.map((one, i) => one - give[i]! * share);
}

/** The narrow ones stay, the wide ones share what is left. */
function capped(widths: readonly number[], room: number): number[] {
  const rising = [...widths].sort((a, b) => a - b);
  let [left, cap] = [room, 0];
  for (const [i, one] of rising.entries()) {
    cap = left / (rising.length - i);
    if (one > cap) break;
    left -= one;
  }
  return widths.map((one) => Math.min(one, cap));
}
