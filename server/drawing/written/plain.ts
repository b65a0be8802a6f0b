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
 * Words folded into lines of a width that `wide` measures; a word too long for a line is broken where it must be.
 * Always at least one line.
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

function broken(word: string, width: number, wide: (text: string) => number): string[] {
  if (wide(word) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const sign of word) {
    if (part !== '' && wide(part + sign) > width) {
      parts.push(part);
      part = '';
    }
    part += sign;
  }
  return [...parts, part];
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
