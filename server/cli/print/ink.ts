/** Words on a terminal: weight and colour where there are any, and lines wrapped to a width. */

export interface Ink {
  readonly bold: (words: string) => string;
  readonly faint: (words: string) => string;
  readonly error: (words: string) => string;
  readonly warning: (words: string) => string;
  readonly note: (words: string) => string;
}

const sgr = (codes: string) => (words: string) => `\u001b[${codes}m${words}\u001b[0m`;
const same = (words: string) => words;

/** ECMA-48 select graphic rendition: bold, faint, and the terminal's own red, yellow and blue. */
const coloured: Ink = {
  bold: sgr('1'),
  faint: sgr('2'),
  error: sgr('1;31'),
  warning: sgr('1;33'),
  note: sgr('1;34'),
};
const uncoloured: Ink = { bold: same, faint: same, error: same, warning: same, note: same };

export const inkFor = (colour: boolean): Ink => (colour ? coloured : uncoloured);

/** Breaks words into lines of at most `width` characters, each led by `indent`; a longer word has a line of its own. */
export function wrapped(words: string, width: number, indent = '', next = indent): string {
  const lines: string[] = [];
  let line = '';
  for (const word of words.split(/\s+/).filter(Boolean)) {
    const lead = lines.length === 0 ? indent : next;
    if (line !== '' && lead.length + line.length + 1 + word.length > width) {
      lines.push(lead + line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  lines.push((lines.length === 0 ? indent : next) + line);
  return lines.join('\n');
}

/** Rows under each other: the first column to the left, the others to the right, two spaces between. */
export function table(rows: readonly (readonly string[])[], indent = ''): string[] {
  const widths: number[] = [];
  rows.forEach((row) => row.forEach((cell, i) => (widths[i] = Math.max(widths[i] ?? 0, cell.length))));
  const padded = (cell: string, i: number) => (i === 0 ? cell.padEnd(widths[i]!) : cell.padStart(widths[i]!));
  return rows.map((row) => (indent + row.map(padded).join('  ')).trimEnd());
}

export { harmless } from '../../drawing/written/plain';
