/**
 * Findings as comments of the file they are found in: carets under the exact range, then severity, code and message.
 *
 *     let quarter = hip-waist / 4
 *     #             ^^^^^^^^^ error[unknown-name]: the message, which may go on
 *     #             | in a second line
 *     #             fix: the title of a repair
 *     #             see `quarter`: what is said of another place
 *
 * `#<` stands for the first two columns where a range begins at the margin; a range over several lines ends in `…`.
 */
import type { Severity } from '../../server/drafting/finding';
import type { FileRange, PlacedFinding } from '../../server/drafting/model';

/** The words between what is found. The marks of a pattern are English; a page may show them in another language. */
export interface MarkWords {
  readonly severities: Readonly<Record<Severity, string>>;
  readonly fix: string;
  readonly see: string;
}

const ENGLISH: MarkWords = {
  severities: { error: 'error', warning: 'warning', note: 'note' },
  fix: 'fix',
  see: 'see',
};

const annotation = /^#(?:<|\s*\^|\s+(?:\||fix: |see `))/;
const columns = 110;

/** The text without its annotations. */
export const withoutAnnotations = (text: string): string =>
  text
    .split('\n')
    .filter((line) => !annotation.test(line))
    .join('\n');

/** The text with these findings, and no others, written under the lines they concern. */
export function annotated(
  text: string,
  findings: readonly PlacedFinding[],
  textOf: (uri: string) => string,
  words = ENGLISH,
): string {
  const lines = text.split('\n');
  let start = 0;
  return lines
    .flatMap((line) => {
      const from = start;
      start += line.length + 1;
      if (annotation.test(line)) return [];
      const here = findings.filter(({ place }) => place.from >= from && place.from <= from + line.length);
      return [line, ...here.flatMap((finding) => written(finding, from, line, textOf, words))];
    })
    .join('\n');
}

function written(
  finding: PlacedFinding,
  start: number,
  line: string,
  textOf: (uri: string) => string,
  { severities, fix, see }: MarkWords,
): string[] {
  const from = finding.place.from - start;
  const to = finding.place.to - start;
  const carets = marks(from, to, line.length);
  const indent = `#${' '.repeat(Math.max(1, from - 1))}`;
  const head = `${carets} ${severities[finding.severity]}[${finding.code}]`;
  const said = wrapped(`${head}: ${finding.message}`, `${indent}| `);
  const seen = finding.related.map(
    ({ place, message }) => `${indent}${see} \`${quoted(place, textOf)}\`: ${message}`,
  );
  return [...said, ...seen, ...finding.fixes.map(({ title }) => `${indent}${fix}: ${title}`)];
}

function marks(from: number, to: number, length: number): string {
  const over = to > length;
  const end = Math.max(over ? length : to, from + 1);
  if (from === 0) return `#<${'^'.repeat(Math.max(0, end - 2))}${over ? '…' : ''}`;
  return `#${' '.repeat(from - 1)}${'^'.repeat(end - from)}${over ? '…' : ''}`;
}

const quoted = ({ uri, from, to }: FileRange, textOf: (uri: string) => string): string =>
  textOf(uri).slice(from, to).split('\n')[0] ?? '';

/** Breaks a long line between words; what follows the first line opens with `lead`. */
function wrapped(text: string, lead: string): string[] {
  if (text.length <= columns) return [text];
  const space = text.lastIndexOf(' ', columns);
  if (space <= lead.length) return [text];
  return [text.slice(0, space), ...wrapped(lead + text.slice(space + 1), lead)];
}
