/** A comparison as Markdown for a review on a forge: the verdict in bold, tables of causes and pieces, the rest folded. */
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
  type Review,
  followedWords,
  problemWords,
  undraftedWords,
} from '../../review';
import { listOfPieces, noneDiffers, titleWords } from './phrases';
import { Places } from '../../lsp/versions/places';
import type { Compared, Comparison } from './run';

/** By this line a recipe finds the comment that it wrote before, and writes over it. */
export const MARK = '<!-- draftwright compare -->';

export function compareMarkdown(comparison: Comparison): string {
  const { before, after, patterns } = comparison;
  const parts = patterns.map((one) => onePattern(one, comparison));
  if (parts.length === 0) parts.push(noneDiffers(plain(before), plain(after)));
  return `${MARK}\n${parts.join('\n\n')}\n`;
}

function onePattern(compared: Compared, comparison: Comparison): string {
  const { review } = compared;
  const head = `### ${plain(titleWords(compared, comparison))}`;
  if (review === undefined) return `${head}\n\n**${plain(listOfPieces(compared))}**`;
  const places = new Places(compared);
  const causes = [
    ...review.causes.map((cause) => {
      const at = places.words(cause.place);
      return `${plain(causeWords(cause))}${at === '' ? '' : ` (\`${at}\`)`}`;
    }),
    ...followedWords(review).map(plain),
  ];
  const seams = review.seams.map((one) => plain(seamWords(one, review.unit)));
  const problems = review.problems.map((one) => plain(problemWords(one, places.words)));
  return [
    `${head}\n\n**${plain(verdict(review))}**`,
    ...list(say`Decided`, causes),
    ...pieces(review),
    ...list(say`Seams`, seams),
    ...list(say`Problems`, problems),
    ...list(
      say`Sizes`,
      review.sizes.map((one) => plain(sizeWords(one, review.unit))),
    ),
    ...list(say`Not drafted`, undraftedWords(review, comparison).map(plain)),
    ...(review.pieces.length > 0
      ? [`<sub>${say`What is nearer than ${TOLERANCE}mm is the same.`}</sub>`]
      : []),
  ].join('\n\n');
}

const list = (title: string, rows: readonly string[]): string[] =>
  rows.length === 0 ? [] : [`**${title}**\n\n${rows.map((row) => `- ${row}`).join('\n')}`];

/** One row a piece; what there is to say of it is folded below. */
function pieces({ pieces: all, unit }: Review): string[] {
  if (all.length === 0) return [];
  const rows = all.map((one) => {
    const [first] = rowsOf(one, unit);
    return `| ${one.number} | ${plain(nameOf(one.name))} | ${plain(changeWords(one))} | ${plain(one.deviation && first ? first.text : '')} |`;
  });
  const table = [`| | ${say`piece`} | ${say`change`} | |`, '| --: | --- | --- | --- |', ...rows].join('\n');
  const details = all.flatMap((one) => {
    const lines = rowsOf(one, unit).slice(one.deviation ? 1 : 0);
    return lines.length === 0
      ? []
      : [
          `**${one.number} ${plain(nameOf(one.name))}**\n\n${lines.map(({ mark, text }) => `- ${mark} ${plain(text)}`).join('\n')}`,
        ];
  });
  if (details.length === 0) return [table];
  return [
    table,
    `<details><summary>${say`Edges, points and marks`}</summary>\n\n${details.join('\n\n')}\n\n</details>`,
  ];
}

/** Names of an author as plain words: no sign of theirs starts a link, a tag or a table's cell. */
const plain = (text: string): string =>
  text
    .replace(/[\\`*_{}[\]<>#|~]/g, (sign) => `\\${sign}`)
    .replace(/@/g, '&#64;')
    .replace(/\s+/g, ' ');
