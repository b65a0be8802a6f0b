/**
 * The pages of the catalogue in German, in `server/checks/de/`. Their prose is their own; their examples are those of the
 * English pages, block by block, with what is found told in German, and so are their ranges.
 */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { MarkWords } from './annotations';
import { german, inLanguage } from './in-language';
import { blocksOf, folder, marked, pageText, readPage } from './pages';
import { withRanges, type RangeWords } from './ranges';

const germanFolder = join(folder, 'de');

/** Each heading of an English page, in its order, and what it is called in German. */
export const GERMAN_SECTIONS: Readonly<Record<string, string>> = {
  'What it finds': 'Was gefunden wird',
  'Why it matters': 'Warum es zählt',
  Example: 'Beispiel',
  'How to fix': 'Abhilfe',
  Limits: 'Grenzen',
  Ranges: 'Bereiche',
};

const MARKS: MarkWords = {
  severities: { error: 'Fehler', warning: 'Warnung', note: 'Hinweis' },
  fix: 'Abhilfe',
  see: 'siehe',
};

const RANGES: RangeWords = {
  heading: '## Bereiche',
  lead: 'Ein Schnittmuster setzt einen eigenen Bereich an die Stelle eines üblichen mit einer Zeile wie\n`usual NAME in LOW .. HIGH`.',
  columns: '| Bereich | üblich | woher |',
  usual: /^üblich (ist|sind) /,
};

/** Codes that have a German page. */
export const germanCodes = (): readonly string[] =>
  (existsSync(germanFolder) ? readdirSync(germanFolder) : [])
    .filter((name) => name.endsWith('.md'))
    .map((name) => name.slice(0, -3))
    .sort();

export const germanPath = (code: string): string => join(germanFolder, `${code}.md`);

export const germanText = (code: string): string => readFileSync(germanPath(code), 'utf8');

/** The German page of a code with its blocks, which may be empty, filled from the English page, its lines even, its ranges. */
export const germanFilled = (code: string, page: string): string =>
  inLanguage(german, () => withRanges(code, even(withBlocks(pageText(code), page)), RANGES));

const WIDTH = 110;

/** Parts of a page whose lines stay as they are: what is fenced, headings, tables and lists. */
const KEPT = /(^```[\s\S]*?^```$|^(?:[#|]|- | {2}).*$)/m;

/** The page with its paragraphs broken anew, each line as long as fits. */
const even = (page: string): string =>
  page
    .split(KEPT)
    .map((part, i) => (i % 2 === 1 ? part : part.replace(/[^\n]+(?:\n[^\n]+)*/g, filled)))
    .join('');

function filled(paragraph: string): string {
  const lines = [''];
  for (const word of paragraph.trim().split(/\s+/)) {
    const last = lines.at(-1)!;
    if (last === '') lines[lines.length - 1] = word;
    else if (last.length + 1 + word.length <= WIDTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines.join('\n');
}

/** Blocks that one page has more than the other are left as they are: the test tells of them. */
function withBlocks(english: string, page: string): string {
  const from = germanBlocks(english);
  return blocksOf(page).reduceRight((was, block, i) => {
    const own = from[i];
    if (own === undefined) return was;
    const opening = was.lastIndexOf('```draft', block.from);
    return `${was.slice(0, opening)}\`\`\`${own.info}\n${own.text}${was.slice(block.to)}`;
  }, page);
}

/** The blocks of an English page as its German one has them. */
function germanBlocks(english: string): readonly { readonly info: string; readonly text: string }[] {
  const examples = [...readPage(english).examples];
  return blocksOf(english).map(({ file, from, to }) =>
    file === ''
      ? { info: 'draft', text: marked(examples.shift()!, MARKS) }
      : { info: `draft ${file}`, text: english.slice(from, to) },
  );
}
