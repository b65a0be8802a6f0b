/** The page of a code: what it finds, why it matters, an example, how to fix it, its limits. */
import { isEnglish } from '../../grammar/say';
import { catalogue } from './catalogue';

/** File name of a code's page, beside the checks in the project and in `checks/` beside the bundles; of a German one in `de/`. */
export const pageFile = (code: string): string => `${code}.md`;

/**
 * The page of a code, as Markdown, in the language that is spoken.
 *
 * @param read reads a page by its file name; the checks themselves touch no disk
 * @returns undefined for a code that is not in the catalogue, or whose page can't be read
 */
export function explain(code: string, read: (file: string) => string | undefined): string | undefined {
  if (!catalogue.some((entry) => entry.code === code)) return undefined;
  const german = isEnglish() ? undefined : read(`de/${pageFile(code)}`);
  return german ?? read(pageFile(code));
}
