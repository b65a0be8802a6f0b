/** Markdown that shows an author's words as they are written. */

/** Signs that Markdown or HTML would take for their own. */
const SIGNS = /[\\`*_{}[\]<>()#+\-.!|~&]/g;

/** Plain words, so that nothing in them is read as layout, link or markup. */
export const plain = (words: string): string => words.replace(SIGNS, '\\$&');

/** A name or value in the typeface of the source. */
export function code(words: string): string {
  const fence = '`'.repeat(1 + Math.max(0, ...[...words.matchAll(/`+/g)].map(([run]) => run.length)));
  return fence.length > 1 ? `${fence} ${words} ${fence}` : `\`${words}\``;
}

/** What such Markdown says, for a client that shows words as they come. */
export const withoutMarks = (markdown: string): string =>
  markdown
    .replace(/ +\n/g, '\n')
    .replace(/\\([\\`*_{}[\]<>()#+\-.!|~&])|\*\*|`+ ?/g, (_, sign?: string) => sign ?? '');
