/** `draftwright print` from end to end: papers, rolls, single sheets, and what is said when it can't be. */
import assert from 'node:assert/strict';
import { mkdirSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { run } from '../../server/cli/commands';
import { apron, apronWith } from '../support/apron';
import { inFolder } from '../support/command';
import { readPdf } from '../support/pdf';

describe('draftwright print', () => {
  it('prints on papers and says how many', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { exit, out, err } = await folder.run('print', 'apron.draft', '--paper', 'letter');
      assert.deepEqual([exit, err], [0, '']);
      assert.match(out, /^apron\.pdf: 2 pieces on \d+ sheets of Letter\n/);
      assert.equal(readFileSync(join(folder.path, 'apron.pdf'), 'latin1').slice(0, 5), '%PDF-');
    }));

  it('prints some pieces alone, laid as if they were all', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { out } = await folder.run('print', 'apron.draft', '--pieces', 'bib', '--paper', 'whole');
      assert.match(out, /^apron\.pdf: 1 piece on one sheet\n/);
    }));

  it('names the papers when one is unknown, and the pieces when one is', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const paper = await folder.run('print', 'apron.draft', '--paper', 'A9');
      assert.deepEqual([paper.exit, paper.out], [2, '']);
      assert.match(
        paper.err,
        /^No paper is called A9\. Papers are A4, A3, Letter, Legal, "roll 914mm" for a roll of that width, or whole/,
      );
      const piece = await folder.run('print', 'apron.draft', '--pieces', 'bibb');
      assert.match(piece.err, /^No piece is called bibb\. Pieces are skirt, bib\.\n$/);
    }));

  it('does not begin on a drawing of ten thousand sheets', () =>
    inFolder(
      { 'apron.draft': apronWith('width = 60cm in 40cm .. 80cm', 'width = 6000m') },
      async (folder) => {
        const { exit, err } = await folder.run('print', 'apron.draft');
        assert.equal(exit, 2);
        assert.match(err, /would take \d+ sheets of A4; more than 500 are a slip of the unit/);
      },
    ));

  it('prints on a roll, and says how much of it is taken', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { exit, out } = await folder.run('print', 'apron.draft', '--paper', 'roll 914mm');
      assert.equal(exit, 0);
      assert.match(out, /^apron\.pdf: 2 pieces on [\d.]+cm of a roll of 914mm\n/);
      const [page] = await readPdf(readFileSync(join(folder.path, 'apron.pdf')));
      assert.ok(Math.abs(page!.width - (914 / 25.4) * 72) < 0.01);
    }));

  it('says which piece a roll is too narrow for, by how much, and what to do', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { exit, out, err } = await folder.run('print', 'apron.draft', '--paper', 'roll 420mm');
      assert.deepEqual([exit, out], [2, '']);
      // 50 cm and two hems of 2 cm are 54 cm; 420 mm less two margins of 11 mm are 39.8 cm
      assert.match(
        err,
        /^A roll of 420mm takes 39\.8cm between its margins\. skirt is 64cm by 54cm, 14\.2cm too wide/,
      );
      assert.match(err, /Take a wider roll, .*--paper A4.*--pieces/);
    }));

  it('prints single sheets again, and names the sheets there are when one is unknown', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { out } = await folder.run('print', 'apron.draft', '--sheets', 'B2, a1');
      assert.match(out, /^apron\.pdf: 2 pieces on 2 sheets of A4\n/);
      const pages = await readPdf(readFileSync(join(folder.path, 'apron.pdf')));
      assert.deepEqual(
        pages.map(({ words }) => words.flatMap((word) => /, sheet ([A-Z]\d),/.exec(word)?.[1] ?? []).join()),
        ['A1', 'B2'],
      );
      const { exit, err } = await folder.run('print', 'apron.draft', '--sheets', 'Z9');
      assert.deepEqual([exit, /^There is no sheet Z9\. Sheets are A1, /.test(err)], [2, true]);
      const whole = await folder.run('print', 'apron.draft', '--sheets', 'A1', '--paper', 'whole');
      assert.match(whole.err, /^Single sheets can be had of papers that are taped together/);
    }));

  it('says on the first sheet what is missing, and writes the day and the revision that it is told', () =>
    inFolder(
      { 'apron.draft': apronWith('foot straight to foot-left', 'foot straight to foot-lfet') },
      async (folder) => {
        const { exit } = await folder.run(
          'print',
          'apron.draft',
          '--date',
          '2026-11-28',
          '--revision',
          '3 <b>',
        );
        assert.equal(exit, 1);
        const [first] = await readPdf(readFileSync(join(folder.path, 'apron.pdf')));
        const said = first!.words.join(' ');
        assert.match(said, /2026-11-28, revision 3 <b>/);
        assert.match(said, /bib is not drawn: /);
        assert.match(said, /The pattern has 1 error: mend before you cut\./);
      },
    ));

  it('takes a day in any words, but no figures that the calendar does not have', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const said = await folder.run('sheet', 'apron.draft', '--date', 'before the preview');
      assert.match(said.out, /^Measuring sheet of Stage hand's apron, before the preview/);
      for (const command of ['print', 'sheet']) {
        const { exit, err } = await folder.run(command, 'apron.draft', '--date', '2026-13-40');
        assert.equal(exit, 2);
        assert.match(err, /The calendar has no 2026-13-40\. A date is written year, month, day/);
      }
    }));

  it('stops when it is asked to, leaves nothing half written, and what was there stays', () =>
    inFolder({ 'apron.draft': apron, 'apron.pdf': 'as it was' }, async (folder) => {
      const told: string[] = [];
      const [err, done] = [[] as string[], [] as boolean[]];
      const exit = await run(['print', 'apron.draft'], {
        cwd: folder.path,
        out: () => undefined,
        err: (text) => void err.push(text),
        width: 80,
        colour: false,
        progress: (words) => void told.push(words),
        stoppable: () => ({
          asked: () => told.some((words) => /^sheet 3 of/.test(words)),
          done: () => void done.push(true),
        }),
      });
      assert.deepEqual(
        [exit, err, done],
        [2, ['Stopped. Nothing was written, and what was there stays.\n'], [true]],
      );
      assert.deepEqual(told.slice(0, 3), [
        'drafting apron.draft',
        'lettering the pieces',
        'laying out the sheets',
      ]);
      assert.equal(told.at(-1), '');
      assert.deepEqual(readdirSync(folder.path).sort(), ['apron.draft', 'apron.pdf']);
      assert.equal(readFileSync(join(folder.path, 'apron.pdf'), 'utf8'), 'as it was');
    }));

  it('says why where it can’t write, and leaves nothing beside', () =>
    inFolder({ 'apron.draft': apron, taken: 'a file' }, async (folder) => {
      mkdirSync(join(folder.path, 'out', 'apron.pdf'), { recursive: true });
      const folderThere = await folder.run('print', 'apron.draft', '--out', 'out', '--paper', 'whole');
      assert.deepEqual([folderThere.exit, folderThere.out], [2, '']);
      assert.match(folderThere.err, /^out\/apron\.pdf can't be written: a folder of that name lies there/);
      assert.deepEqual(readdirSync(join(folder.path, 'out')), ['apron.pdf']);
      const file = await folder.run('print', 'apron.draft', '--out', 'taken', '--paper', 'whole');
      assert.match(file.err, /a file lies where a folder is needed/);
      assert.equal(readFileSync(join(folder.path, 'taken'), 'utf8'), 'a file');
    }));

  it('takes names with signs and letters of every kind, a piece without grain, and two pieces of one name', () => {
    const bib = apron.slice(apron.indexOf('piece bib of'), apron.indexOf('finish skirt-edges'));
    const text = `${apron}${bib}`
      .replace('"Stage hand\'s apron"', '"Apron <50 %> (\\\\) שק 🧵 مرحبا &amp;"')
      .replaceAll('skirt', 'côté-שק')
      .replace('  grain from waist-left to hem-left\n', '  label "סוף <b> 100 %"\n');
    return inFolder({ 'apron.draft': text }, async (folder) => {
      const { exit, out, err } = await folder.run(
        'print',
        'apron.draft',
        '--paper',
        'whole',
        '--revision',
        '<x> "y"',
      );
      assert.equal(exit, 1);
      assert.match(out, /^apron\.pdf: 2 pieces on one sheet\n/);
      assert.match(err, /\d+ letters of its words the font does not have: an empty box stands for each\.\n/);
      const [page] = await readPdf(readFileSync(join(folder.path, 'apron.pdf')));
      const said = page!.words.join(' ');
      for (const words of [
        'Apron <50 %> (',
        '&amp;',
        'côté-',
        '<b> 100 %',
        'no grain stated',
        'revision <x> "y"',
      ])
        assert.ok(said.includes(words), `${words} in ${said}`);
      assert.match(said, /The pattern has \d errors: mend before you cut\./);
    });
  });
});
