/** The table of checks that the README shows between two marks, made from the catalogue. */
import { catalogue } from '../../server/checks/index';

const MARKED = /(<!-- checks -->\n)[\s\S]*?(<!-- \/checks -->)/;

/** One row a code, in the order of the work, each leading to its page. */
export function checksTable(): string {
  const rows = catalogue.map(
    ({ code, severity, title }) =>
      `| [\`${code}\`](server/checks/${code}.md) | ${severity} | ${title.replaceAll('|', '\\|')} |`,
  );
  return ['', '| code | | what is found |', '| --- | --- | --- |', ...rows, '', ''].join('\n');
}

/** The text with the table between its marks; unchanged where it has no marks. */
export const withTable = (text: string, table: string): string =>
  text.replace(MARKED, (_, open: string, close: string) => `${open}${table}${close}`);

/** What stands between the marks; undefined where there are none. */
export const tableIn = (text: string): string | undefined => {
  const found = MARKED.exec(text)?.[0];
  return found?.slice('<!-- checks -->\n'.length, -'<!-- /checks -->'.length);
};
