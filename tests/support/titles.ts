/** Titles of the catalogue where the editor shows them, in either language: written from the headings of the pages. */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { severityOf } from '../../server/checks/index';
import { germanText } from './german-pages';
import { pageText, readPage } from './pages';
import { settableCodes, severityKey } from './severity-setting';
import { read, root } from './sources';

type Words = Readonly<Record<string, string>>;

const manifest = (text: (code: string) => string, usually: string): Words =>
  Object.fromEntries(
    settableCodes().map((code) => [
      severityKey(code),
      `${readPage(text(code)).title} (${usually}: ${severityOf(code)})`,
    ]),
  );

/** The tables of words that hold titles, and what they have to say by them. */
export const titled = (): Readonly<Record<string, Words>> => ({
  'client/l10n/package.nls.json': manifest(pageText, 'usually'),
  'client/l10n/package.nls.de.json': manifest(germanText, 'üblich'),
  'client/l10n/bundle.l10n.de.json': Object.fromEntries(
    settableCodes().map((code) => [readPage(pageText(code)).title, readPage(germanText(code)).title]),
  ),
});

/** A table with its titles as the pages have them, and without those of codes that are gone; untouched where it has them. */
export function withTitles(path: string, words: Words): Words {
  const titles = titled()[path]!;
  const left = Object.entries(words).filter(([key]) => !key.startsWith('severity.') || key in titles);
  const all = Object.entries({ ...Object.fromEntries(left), ...titles });
  if (all.length === left.length && all.every(([key, text]) => words[key] === text))
    return Object.fromEntries(left);
  return Object.fromEntries(path.includes('bundle') ? all.sort(([a], [b]) => (a < b ? -1 : 1)) : all);
}

export async function writeTitles(): Promise<void> {
  for (const path of Object.keys(titled())) {
    const words = withTitles(path, JSON.parse(read(path)) as Words);
    writeFileSync(join(root, path), await format(JSON.stringify(words), { parser: 'json' }));
  }
}
