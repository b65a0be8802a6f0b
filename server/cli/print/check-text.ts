/** A report for a person at a terminal: place, message, the line with carets, related places, and one next step. */
import { inWords, say } from '../../../grammar/say';
import type { Severity } from '../../drafting/finding';
import { errorsIn, notesIn, warningsIn } from './counts';
import { harmless, inkFor, wrapped, type Ink } from './ink';
import { countOf, type Place, type Problem, type Report } from './report';

export interface Look {
  readonly width: number;
  readonly colour: boolean;
}

/** The whole report, ending with a line that sums it up. */
export function checkText(report: Report, { width, colour }: Look): string {
  const ink = inkFor(colour);
  const problems = report.problems.map((found) => `${oneProblem(found, width, ink)}\n\n`);
  return `${problems.join('')}${summary(report, ink)}\n`;
}

function oneProblem(problem: Problem, width: number, ink: Ink): string {
  const { severity, code, message, related, steps } = problem;
  return [
    `${ink.bold(placeText(problem))} ${ink[severity](inWords(severity))} ${code}`,
    wrapped(harmless(message), width, '  '),
    ...snippet(problem, ink),
    ...related.map((other) =>
      wrapped(`${placeText(other)}: ${harmless(other.message)}`, width, `  ${say`see`} `, '      '),
    ),
    ...steps.slice(0, 1).map((step) => wrapped(harmless(step), width, `  ${say`next step`}: `, '    ')),
  ].join('\n');
}

/** Lines and characters are counted from one, as editors show them. */
const placeText = ({ file, range: { start } }: Place): string =>
  `${file}:${start.line + 1}:${start.character + 1}`;

/** The line, and carets under what is meant; tabs are kept, so that the carets stand where the words do. */
function snippet({ line, range: { start, end } }: Problem, ink: Ink): string[] {
  const number = String(start.line + 1);
  const gutter = ' '.repeat(number.length);
  const last = end.line === start.line ? end.character : line.length;
  const lead = line.slice(0, start.character).replace(/[^\t]/gu, ' ');
  const carets = '^'.repeat(Math.max(1, [...line.slice(start.character, last).trimEnd()].length));
  return [`  ${number} | ${harmless(line)}`.trimEnd(), `  ${gutter} | ${lead}${ink.bold(carets)}`];
}

const COUNTED: Readonly<Record<Severity, (n: number) => string>> = {
  error: errorsIn,
  warning: warningsIn,
  note: notesIn,
};

function summary(report: Report, ink: Ink): string {
  const parts = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const count = countOf(report, severity);
    return count === 0 ? [] : [ink[severity](COUNTED[severity](count))];
  });
  const [found, files] = [parts.join(', '), report.files.length];
  if (found === '') return files === 1 ? say`No problems in 1 file.` : say`No problems in ${files} files.`;
  return files === 1 ? say`${found} in 1 file.` : say`${found} in ${files} files.`;
}
