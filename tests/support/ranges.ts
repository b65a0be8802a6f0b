/** The ranges that a check judges by, as its page lists them. */
import { inWords } from '../../grammar/say';
import { catalogue, rangeInWords, type Usual } from '../../server/checks/index';

/** The words of that part of a page. */
export interface RangeWords {
  readonly heading: string;
  readonly lead: string;
  readonly columns: string;
  /** What a range in words begins with, which a column headed by it need not repeat. */
  readonly usual: RegExp;
}

const ENGLISH: RangeWords = {
  heading: '## Ranges',
  lead: 'A pattern puts a range of its own in place of a usual one with a line such as `usual NAME in LOW .. HIGH`.',
  columns: '| range | usual | standing |',
  usual: /^usual (is|are) /,
};

/** The page with the ranges of its check at its end; without any for a check that has none. */
export function withRanges(code: string, page: string, words = ENGLISH): string {
  const at = page.indexOf(`\n${words.heading}\n`);
  const rest = at < 0 ? page : page.slice(0, at);
  const ranges = rangesOf(code, words);
  return ranges === '' ? rest : `${rest.trimEnd()}\n\n${ranges}`;
}

/** The part of a page that lists the ranges; '' for a check that has none. */
export function rangesOf(code: string, { heading, lead, columns, usual } = ENGLISH): string {
  const entry = catalogue.find((one) => one.code === code);
  const judgedBy = entry?.by === 'judgement' ? (entry.usual ?? []) : [];
  if (judgedBy.length === 0) return '';
  const row = (one: Usual): string => {
    const range = rangeInWords({ ...one, stated: false }, 'cm').replace(usual, '');
    return `| \`${one.name}\` | ${range} | ${inWords(one.standing)} |`;
  };
  return [heading, '', lead, '', columns, '| --- | --- | --- |', ...judgedBy.map(row), ''].join('\n');
}
