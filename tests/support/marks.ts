/**
 * A place in a test's text, marked by a comment under its line, so that the text stays a valid pattern:
 *
 *     let half = waist / 2
 *     #          ^ here
 */

const MARK = /^#( *)\^ here$/;

export interface Marked {
  /** The text without the mark. */
  readonly text: string;
  /** The offset that the caret stands under. */
  readonly offset: number;
}

export function marked(text: string): Marked {
  const lines = text.split('\n');
  const index = lines.findIndex((line) => MARK.test(line));
  if (index < 1) throw new Error('the text has no mark "# ^ here" under one of its lines');
  const column = lines[index]!.indexOf('^');
  const before = lines.slice(0, index - 1);
  const offset = before.reduce((sum, line) => sum + line.length + 1, 0) + column;
  return { text: [...lines.slice(0, index), ...lines.slice(index + 1)].join('\n'), offset };
}
