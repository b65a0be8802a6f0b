/** The pages of the catalogue in German say what the English ones do: the same parts, examples, links and words to type. */
import assert from 'node:assert/strict';
import { catalogue } from '../server/checks/index';
import { GERMAN_SECTIONS, germanCodes, germanFilled, germanText } from './support/german-pages';
import { titled, withTitles } from './support/titles';
import { read } from './support/sources';
import { blocksOf, pageText, pagedCodes, readPage } from './support/pages';

const GRAVE = { error: 'ein Fehler', warning: 'eine Warnung', note: 'ein Hinweis' };

/** A page without its examples. */
const prose = (page: string): string => page.replace(/^```[\s\S]*?^```$/gm, '');

/**
 * Words to type, which every language shares, each once. What an English sentence says with a word of the language, such as a
 * piece called front, a German one sets in marks.
 */
const typed = (page: string): readonly string[] =>
  [...new Set([...prose(page).matchAll(/`([^`]+)`/g)].map(([, word]) => word!.replace(/\s+/g, ' ')))].sort();

const links = (page: string): readonly string[] =>
  [...prose(page).matchAll(/\]\(([^)]+)\)/g)].map(([, to]) => to!).sort();

const linesOf = (page: string): number => [...page.matchAll(/^```\w+/gm)].length;

describe('the German pages of the catalogue', () => {
  it('are as many as the English ones, one a code', () => {
    assert.deepEqual(germanCodes(), pagedCodes());
  });

  it('head what is offered by their titles elsewhere: completions, and the setting for severities', () => {
    for (const path of Object.keys(titled())) {
      const words: Record<string, string> = JSON.parse(read(path));
      assert.deepEqual(withTitles(path, words), words, 'npx tsx tests/support/write-pages.ts');
    }
  });

  for (const code of germanCodes()) {
    const [english, german] = [pageText(code), germanText(code)];

    it(`the German page of ${code} has the parts of the English one, in order and by their German names`, () => {
      const { title, sections } = readPage(german);
      assert.deepEqual(
        sections,
        readPage(english).sections.map((one) => GERMAN_SECTIONS[one]),
      );
      assert.match(title, /^[A-ZÄÖÜ][^\n]*[^.\s]$/);
      assert.notEqual(title, readPage(english).title);
      const { severity } = catalogue.find((one) => one.code === code)!;
      assert.equal(german.split('\n')[2], `\`${code}\`: ${GRAVE[severity]}`);
    });

    it(`the German page of ${code} has its examples and ranges as the English one, told in German`, () => {
      assert.equal(blocksOf(german).length, blocksOf(english).length);
      assert.equal(linesOf(german), linesOf(english));
      assert.equal(german, germanFilled(code, german), 'npx tsx tests/support/write-pages.ts');
    });

    it(`the German page of ${code} names what is typed as the English one, and leads to the same pages`, () => {
      const [told, asked, said] = [typed(german), typed(english), english.replace(/\s+/g, ' ')];
      assert.deepEqual(
        asked.filter((word) => !told.includes(word)),
        [],
      );
      assert.deepEqual(
        told.filter((word) => !said.includes(word)),
        [],
      );
      assert.deepEqual(links(german), links(english));
      for (const to of links(german)) assert.ok(pagedCodes().includes(to.replace(/\.md$/, '')), to);
    });

    it(`the German page of ${code} has no sentence of the English one left, and lines that fit`, () => {
      const lines = prose(german).split('\n');
      const left = prose(english)
        .split('\n')
        .filter((line) => /^[A-Za-z#].* /.test(line) && lines.includes(line));
      assert.deepEqual(left, []);
      assert.deepEqual(
        lines.filter((line) => line.length > 110 && !line.startsWith('|')),
        [],
      );
    });
  }
});
