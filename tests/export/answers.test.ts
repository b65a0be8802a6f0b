/** From what a person answered in the form of an export to a command line, and what is remembered of it. */
import assert from 'node:assert/strict';
import { join } from 'node:path';
import {
  argsFor,
  firstAnswers,
  inLanguageOf,
  NOTHING_REMEMBERED,
  optionsFor,
  remember,
  shownAnswer,
  writtenFiles,
} from '../../client/export/answers';
import type { ExportOption, ExportTarget } from '../../server/drawing/exporting';

const option = (flag: string, more: Partial<ExportOption> = {}): ExportOption => ({
  ...{
    flag,
    title: flag,
    words: '',
    answering: 'words',
    values: [],
    open: true,
    everything: '',
    fallback: '',
  },
  ...more,
});

const print: ExportTarget = {
  ...{ id: 'print', title: 'PDF', words: '', args: ['print'], place: { flag: '--out', is: 'folder' } },
  options: [
    option('--paper', { answering: 'one', values: ['A4', 'A3'], fallback: 'A4' }),
    option('--pieces', { answering: 'some', values: ['back', 'front'] }),
    option('--as-laid', { answering: 'switch' }),
    option('--for', { answering: 'one', values: ['ferrywoman', 'standard M'] }),
    option('--set'),
  ],
};

const sheet: ExportTarget = {
  ...{ id: 'sheet cutting', title: 'Cutting list', words: '', args: ['sheet', '--kind=cutting'] },
  place: { flag: '--output', is: 'file' },
  options: [option('--format', { answering: 'one', values: ['text', 'pdf'], open: false, fallback: 'pdf' })],
};

const spoken: ExportTarget = {
  ...print,
  options: [
    option('--language', {
      ...{ answering: 'one', values: ['en', 'de'], open: false, fallback: 'en' },
      names: { en: 'English', de: 'Deutsch' },
    }),
    option('--words', {
      answering: 'one',
      values: ['british', 'american'],
      open: false,
      fallback: 'british',
    }),
  ],
};

const NOTHING = { set: {} };
const file = join('/w', 'skirt.draft');

describe('the answers of an export', () => {
  it('become a command line in which no value can be taken for an option', () => {
    const answers = {
      '--paper': '-x',
      '--pieces': 'back, front',
      '--as-laid': 'yes',
      '--set': 'a=1cm; b=--c',
    };
    assert.deepEqual(argsFor(print, file, answers, '/w'), [
      ...[
        'print',
        file,
        '--out=/w',
        '--paper=-x',
        '--pieces=back, front',
        '--as-laid',
        '--set=a=1cm',
        '--set=b=--c',
      ],
    ]);
  });

  it('leave out what nothing was said of, and name a sheet after its pattern, its kind and its format', () => {
    assert.deepEqual(argsFor(print, file, {}, '/w'), ['print', file, '--out=/w', '--paper=A4']);
    const [, , , output] = argsFor(sheet, file, { '--format': 'text' }, '/w');
    assert.equal(output, `--output=${join('/w', 'skirt-cutting.txt')}`);
  });

  it('are remembered for each kind, without what was only tried', () => {
    const trial = { for: { name: 'standard', size: 'M' }, set: { 'hip-ease': '5cm' } };
    const first = firstAnswers(print, NOTHING_REMEMBERED, trial);
    assert.deepEqual(first, { '--for': 'standard M', '--set': 'hip-ease=5cm' });
    const kept = remember(NOTHING_REMEMBERED, print, { ...first, '--paper': 'A3' }, '/out');
    assert.deepEqual(kept, { last: 'print', folder: '/out', answers: { print: { '--paper': 'A3' } } });
    assert.deepEqual(firstAnswers(print, kept, NOTHING), { '--paper': 'A3' });
    assert.deepEqual(firstAnswers(sheet, kept, NOTHING), {});
  });

  it('of another pattern are forgotten where they no longer fit', () => {
    const kept = { answers: { print: { '--pieces': 'sleeve', '--gone': 'x', '--paper': 'roll 1m' } } };
    assert.deepEqual(firstAnswers(print, kept, NOTHING), { '--paper': 'roll 1m' });
    assert.deepEqual(
      firstAnswers(sheet, { answers: { 'sheet cutting': { '--format': 'docx' } } }, NOTHING),
      {},
    );
  });

  it('are shown as words, also where nothing was answered', () => {
    const shown = print.options.map((one) => shownAnswer(one, { '--as-laid': 'yes' }));
    assert.deepEqual(shown, ['A4', 'all', 'yes', 'as the pattern says', '']);
  });

  it('begin in the language of the editor, and remember only what was chosen otherwise', () => {
    assert.deepEqual(
      ['de', 'de-AT', 'en-GB', 'fr', 'den'].map((one) => inLanguageOf(one)['--language']),
      [...['de', 'de', 'en', 'en', 'en']],
    );
    const usual = inLanguageOf('de');
    const kept = remember(NOTHING_REMEMBERED, spoken, usual, '/out', usual);
    assert.deepEqual(kept.answers, { print: {} });
    const other = remember(NOTHING_REMEMBERED, spoken, { '--language': 'en' }, '/out', usual);
    assert.deepEqual({ ...usual, ...firstAnswers(spoken, other, NOTHING) }, { '--language': 'en' });
  });

  it('show a language by its own name, and ask for a dialect in English alone', () => {
    const [language] = spoken.options;
    assert.equal(shownAnswer(language!, { '--language': 'de' }), 'Deutsch');
    assert.equal(shownAnswer(language!, {}), 'English');
    const asked = (answers: Record<string, string>) => optionsFor(spoken, answers).map(({ flag }) => flag);
    assert.deepEqual(asked({ '--language': 'de' }), ['--language']);
    assert.deepEqual(asked({}), ['--language', '--words']);
    assert.deepEqual(argsFor(spoken, file, { '--language': 'de', '--words': 'american' }, '/w'), [
      ...['print', file, '--out=/w', '--language=de'],
    ]);
  });

  it('lead to the files that a command says it wrote', () => {
    const out = '/w/a b.pdf: 3 pieces on 4 sheets\nPrint at 100 %: measure.\nC:/x/y-cutting.csv: 1 sheet\n';
    assert.deepEqual(writtenFiles(out), ['/w/a b.pdf', 'C:/x/y-cutting.csv']);
  });
});
