/** A written sheet as Markdown, with tables as GitHub Flavored Markdown has them. */
import { harmless } from './plain';
import { inWordsThroughout, type Table, type WrittenSheet } from './sheet';

const BLANK = '\\_\\_\\_\\_\\_\\_\\_\\_';

/** Text of a pattern as text: no sign of it is read as markup (CommonMark 2.4: any punctuation may be escaped). */
export const escaped = (text: string): string =>
  harmless(text)
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_{}[\]<>()#!|~&$^]/g, '\\$&')
    .replace(/^[-+=]/, '\\$&')
    // a list begins with a number, a dot and a blank; no backslash before a digit is taken off again
    .replace(/^(\d+)\.(?=\s|$)/, '$1\\.')
    .replace(/(https?):\/\//gi, '$1:\\/\\/')
    .trim();

export function toMarkdown(made: WrittenSheet): string {
  const sheet = inWordsThroughout(made);
  const blocks = [
    `# ${escaped(sheet.heading)}`,
    ...sheet.words.map(escaped),
    ...sheet.tables.flatMap(tableBlocks),
    ...sheet.after.map(escaped),
  ];
  return blocks.filter((block) => block !== '').join('\n\n') + '\n';
}

function tableBlocks({ heading, columns, rows, beneath = [] }: Table): string[] {
  const heads = [...columns.map(({ head }) => head), ...beneath];
  const marks = [
    ...columns.map(({ figures }) => (figures === true ? '---:' : '---')),
    ...beneath.map(() => '---'),
  ];
  const lines = rows.map((row) => [
    ...columns.map((_, i) => cell(row.cells[i] ?? '', row.cells[i] === null)),
    ...beneath.map((_, i) => escaped(row.beneath?.[i] ?? '')),
  ]);
  const table = [heads.map(escaped), marks, ...lines].map((row) => `| ${row.join(' | ')} |`).join('\n');
  return heading === undefined ? [table] : [`## ${escaped(heading)}`, table];
}

const cell = (text: string, blank: boolean): string => (blank ? BLANK : escaped(text));
