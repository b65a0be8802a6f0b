/** Closes the catalogue: every code has its page and its own file, titles agree, and the README lists them all. */
import assert from 'node:assert/strict';
import { catalogue, explain, pageFile, ranges } from '../server/checks/index';
import { files, read } from './support/sources';
import { madeHere, pagedCodes, pageText, readPage } from './support/pages';
import { settingInManifest, severitySetting } from './support/severity-setting';
import { checksTable, tableIn } from './support/table';

const codes = catalogue.map(({ code }) => code);

/** Remedies: a code names the fault, so that "allow CODE" says what is let pass. */
const REMEDY =
  /^(add|avoid|check|close|do|ensure|fix|forbid|keep|make|must|prefer|require|should|use|want|write)(-|$)/;

describe('the catalogue of checks', () => {
  it('every code has a page, and every page a code', () => {
    assert.deepEqual(pagedCodes(), [...codes].sort());
  });

  it('every code is given once', () => {
    assert.deepEqual(
      codes.filter((code, at) => codes.indexOf(code) !== at),
      [],
    );
  });

  it('every page is headed by the title of its entry', () => {
    for (const { code, title } of catalogue) assert.equal(readPage(pageText(code)).title, title, code);
  });

  it('every page names its code and how grave the fault is below the heading', () => {
    const grave = { error: 'an error', warning: 'a warning', note: 'a note' };
    for (const { code, severity } of catalogue) {
      assert.equal(pageText(code).split('\n')[2], `\`${code}\`: ${grave[severity]}`, code);
    }
  });

  it('every code reads well after “allow”: words joined by hyphens that name a fault, not its remedy', () => {
    for (const code of codes) {
      assert.match(code, /^[a-z]+(-[a-z]+)*$/);
      assert.doesNotMatch(code, REMEDY);
    }
  });

  it('every title begins with a capital and is one line without a full stop', () => {
    for (const { code, title } of catalogue) assert.match(title, /^[A-Z][^\n]*[^.\s]$/, code);
  });

  it('every check that judges the drafted pattern has a file named by its code', () => {
    const there = new Set(files());
    const judged = catalogue.filter(({ by }) => by === 'judgement').map(({ code }) => code);
    assert.deepEqual(
      judged.filter((code) => !there.has(`server/checks/${code}.ts`)),
      [],
    );
    for (const code of judged) assert.match(read(`server/checks/${code}.ts`), new RegExp(`code: '${code}'`));
  });

  it('every range has a name of its own, an end for each side and a standing', () => {
    const names = ranges.map(({ name }) => name);
    assert.deepEqual(
      names.filter((name, at) => names.indexOf(name) !== at),
      [],
    );
    for (const { name, low, high, standing } of ranges) {
      assert.match(name, /^[a-z]+(-[a-z]+)*$/);
      assert.ok(low <= high && standing !== '', name);
    }
  });

  it('links from page to page lead to pages that are there', () => {
    for (const code of codes) {
      for (const [, to] of pageText(code).matchAll(/\]\(([^)]+)\)/g)) {
        assert.ok(pagedCodes().includes(to!.replace(/\.md$/, '')), `${code} leads to ${to}`);
      }
    }
  });

  it('the lines of every page fit a column of 110 characters, tables and examples apart', () => {
    for (const code of codes) {
      const prose = pageText(code).replace(/^```[\s\S]*?^```$/gm, '');
      assert.deepEqual(
        prose.split('\n').filter((line) => line.length > 110 && !line.startsWith('|')),
        [],
        code,
      );
    }
  });

  it('a page is found by its code through whichever door reads files', () => {
    assert.equal(
      explain('mismatched-seam', (file) => `read ${file}`),
      `read ${pageFile('mismatched-seam')}`,
    );
    assert.equal(
      explain('no-code-of-ours', () => 'a page'),
      undefined,
    );
  });

  it('faults that the pages can’t hold are codes of the catalogue', () => {
    for (const code of madeHere) assert.ok(codes.includes(code), code);
  });

  it('the setting for severities offers every code that can be set, and no other', () => {
    assert.deepEqual(settingInManifest(), severitySetting(), 'npx tsx tests/support/write-pages.ts');
  });

  it('the table of the README is that of the catalogue', () => {
    assert.equal(tableIn(read('README.md')), checksTable());
  });
});
