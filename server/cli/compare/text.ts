/** A comparison for a person at a terminal: the verdict, then causes, pieces, seams, problems, sizes. */
import { say } from '../../../grammar/say';
import {
  causeWords,
  changeWords,
  nameOf,
  rowsOf,
  seamWords,
  sizeWords,
  TOLERANCE,
  verdict,
  piecesIn,
  type Review,
  followedWords,
  problemWords,
  undraftedWords,
} from '../../review';
import { printLength } from '../../drafting/values/quantity';
import type { Io } from '../io';
import { harmless, inkFor, wrapped, type Ink } from '../print/ink';
import { listOfPieces, noneDiffers, titleWords } from './phrases';
import { Places } from '../../lsp/versions/places';
import type { Compared, Comparison } from './run';

export function compareText(comparison: Comparison, { width, colour }: Pick<Io, 'width' | 'colour'>): string {
  const ink = inkFor(colour);
  const { before, after, patterns } = comparison;
  if (patterns.length === 0) return `${noneDiffers(before, after)}\n`;
  const parts = patterns.map((one) => onePattern(one, comparison, width, ink));
  return `${parts.join('\n\n')}\n`;
}

function onePattern(compared: Compared, comparison: Comparison, width: number, ink: Ink): string {
  const { review } = compared;
  const head = ink.bold(harmless(titleWords(compared, comparison)));
  if (review === undefined) return `${head}\n${wrapped(harmless(listOfPieces(compared)), width)}`;
  const sections = [
    wrapped(harmless(verdict(review)), width),
    ...section(say`decided`, causes(review, compared), width, ink),
    ...section(say`pieces`, pieces(review), width, ink),
    ...section(
      say`seams`,
      review.seams.map((one) => seamWords(one, review.unit)),
      width,
      ink,
    ),
    ...section(
      say`problems`,
      review.problems.map((one) => problemWords(one, new Places(compared).words)),
      width,
      ink,
    ),
    ...section(
      say`sizes`,
      review.sizes.map((one) => sizeWords(one, review.unit)),
      width,
      ink,
    ),
    ...section(say`not drafted`, undraftedWords(review, comparison), width, ink),
    ...(review.pieces.length + review.seams.length > 0 ? [ink.faint(wrapped(footnote(review), width))] : []),
  ];
  return [head, ...sections].join('\n');
}

function section(title: string, rows: readonly string[], width: number, ink: Ink): string[] {
  if (rows.length === 0) return [];
  const lines = rows.flatMap((row) =>
    row.split('\n').map((line) => {
      const lead = /^ */.exec(line)![0].length;
      const indent = ' '.repeat(2 + lead);
      return wrapped(harmless(line.trim()), width, indent, `${indent}  `);
    }),
  );
  return [ink.bold(title), ...lines];
}

function causes(review: Review, compared: Compared): string[] {
  const places = new Places(compared);
  const rows = review.causes.map((cause) => {
    const at = places.words(cause.place);
    return `${causeWords(cause)}${at === '' ? '' : ` (${at})`}`;
  });
  return [...rows, ...followedWords(review)];
}

const pieces = ({ pieces: all, unit }: Review): string[] =>
  all.map((one) => {
    const lines = rowsOf(one, unit).map(({ mark, text }) => `\n    ${mark} ${text}`);
    return `${one.number} ${nameOf(one.name)}: ${changeWords(one)}${lines.join('')}`;
  });

function footnote({ body, unit, pieceCount }: Review): string {
  const same = printLength(TOLERANCE, unit === 'in' ? 'mm' : unit);
  const pieces = piecesIn(pieceCount.now ?? 0);
  return body.now === '' || body.now === undefined
    ? say`Compared, ${pieces}; what is nearer than ${same} is the same.`
    : say`Compared for ${body.now}, ${pieces}; what is nearer than ${same} is the same.`;
}
