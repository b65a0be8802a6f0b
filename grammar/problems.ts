/** The grammar's own part of the catalogue: every code that a statement's text can earn. */

export type Severity = 'error' | 'warning' | 'notice';

export interface SyntaxCode {
  /** One sentence that names the fault. */
  readonly title: string;
  readonly severity: Severity;
}

const error = (title: string): SyntaxCode => ({ title, severity: 'error' });

export const SYNTAX_PROBLEMS = {
  'not-understood': error('A line that the language has no reading for.'),
  unfinished: error('A line that stops before it has said everything.'),
  'unknown-statement': error('A line that begins with a word no statement of its block begins with.'),
  'out-of-place': error('A statement that belongs in another kind of block.'),
  'words-touch': error('Two values side by side with nothing between them.'),
  'misspelt-word': error('A word of the language with a letter astray.'),
  'missing-word': error('A word or a sign of the statement that was left out.'),
  'doubled-word': error('A word or a sign that stands twice.'),
  'missing-bracket': error('An opening bracket without its closing one.'),
  'stray-bracket': error('A closing bracket without its opening one.'),
  'bracket-needed': error('Steps from a point where only a name or a bracket may stand.'),
  'missing-brace': error('A block without its opening or its closing brace.'),
  'stray-brace': error('A brace that opens or closes nothing.'),
  'missing-quote': error('A text whose closing quote is missing.'),
  'space-before-unit': error('A unit that does not touch its number.'),
  'unknown-unit': error('A number followed by letters that are no unit.'),
  'comma-in-number': error('A decimal comma where a point is due.'),
  'number-without-zero': error('A decimal number that begins with its point.'),
  'fraction-after-sign': error('A fraction straight after * or /, which could be read two ways.'),
  'unusual-sign': error('A sign that looks like one of ours but is another character.'),
  'unknown-sign': error('A character that the language has no use for.'),
  semicolon: error('A semicolon where the line’s end is enough.'),
  'shared-line': error('A statement that begins in the middle of another’s line.'),
  'conflict-mark': error('Two versions of a file that were never put together.'),
  'wrong-word': error('A word or a sign where another is due.'),
  'capital-word': error('A word of the language written with a capital letter.'),
  'name-with-space': error('A name of several words without hyphens between them.'),
  'name-with-underscore': error('A name with an underscore where a hyphen is due.'),
  'name-with-minus': error('A name with a hyphen before a digit, which would be a subtraction.'),
  'reserved-name': error('A word that the language keeps for itself, used as a name.'),
  'date-order': error('A date that is not written year, month, day.'),
  'no-such-date': error('A date that the calendar does not have.'),
  'range-sign': error('A range whose two ends are not joined by two dots.'),
  'too-deep': error('Brackets or blocks nested deeper than the language reads.'),
  'too-long': error('A statement or a file longer than the language reads.'),
} as const satisfies Record<string, SyntaxCode>;

export type SyntaxProblemCode = keyof typeof SYNTAX_PROBLEMS;
