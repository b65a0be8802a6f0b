/** The ranges that a check judges by, as its page lists them. */
import { catalogue, rangeRow } from '../../server/checks/index';

const HEADING = '## Ranges';

const LEAD = `A pattern puts a range of its own in place of a usual one with a line such as \`usual NAME in LOW .. HIGH\`.`;

/** The page with the ranges of its check at its end; without any for a check that has none. */
export function withRanges(code: string, page: string): string {
  const at = page.indexOf(`\n${HEADING}\n`);
  const rest = at < 0 ? page : page.slice(0, at);
  const ranges = rangesOf(code);
  return ranges === '' ? rest : `${rest.trimEnd()}\n\n${ranges}`;
}

/** The part of a page that lists the ranges; '' for a check that has none. */
export function rangesOf(code: string): string {
  const entry = catalogue.find((one) => one.code === code);
  const usual = entry?.by === 'judgement' ? (entry.usual ?? []) : [];
  if (usual.length === 0) return '';
  const rows = usual.map((one) => `| \`${one.name}\` | ${rangeRow(one)} | ${one.standing} |`);
  return [HEADING, '', LEAD, '', '| range | usual | standing |', '| --- | --- | --- |', ...rows, ''].join(
    '\n',
  );
}
