/** The command line in another language: every word that it prints is asked for, and none is left in English. */
import assert from 'node:assert/strict';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { speak } from '../../grammar/say';
import { run } from '../../server/cli/commands';
import { bareWords, wordsIn } from '../support/bare';
import { drafts, sampleText, samples } from '../support/faults';
import { hushed } from '../support/in-language';

const faults = drafts('faults');
const words = hushed();
const wardrobe = drafts('.');

/** What a command line says in a language that hushes all it is asked for, both streams together. */
async function said(args: readonly string[], cwd = samples): Promise<string> {
  let text = '';
  const put = (words: string): void => void (text += words);
  speak(words);
  try {
    await run(args, { cwd, out: put, err: put, width: 10_000, colour: false });
  } finally {
    speak(undefined);
  }
  return text;
}

/** What stays in every language: names of the command line itself, of the company, of units and papers. */
const kept = wordsIn(
  'draftwright check compare measure git log oneline all init HEAD main UTF for set sizes pieces as draft ' +
    'ferrywoman bailiff widow pilot lantern-child understudy chorus deckhand XL XXL samples company bodies',
);

/** A file and those that it uses beside it. */
const beside = (path: string): readonly string[] => {
  const used = [...sampleText(path).matchAll(/^use "([^"/]+)"/gm)].map(([, name]) =>
    join(dirname(path), name!),
  );
  return [path, ...used.filter((one) => existsSync(join(samples, one)))];
};

/** Lines with words that neither these patterns brought, comments aside, nor the language; quoted lines of a file are its own. */
function left(text: string, paths: readonly string[], more = ''): readonly string[] {
  const own = paths
    .flatMap(beside)
    .flatMap((path) => wordsIn(`${path} ${sampleText(path).replace(/#.*$/gm, '')}`));
  const known = new Set([...kept, ...own, ...wordsIn(more)]);
  const theirs = /^ +\d* \| |\(samples\/bodies\/company\.draft:\d+\)$/;
  return text
    .split('\n')
    .map((line) => line.replace(/^[\s-]*\d+[a-z]+(?: |$)/, ''))
    .filter((line) => !theirs.test(line) && bareWords(line, known).length > 0);
}

/** A page or a drawing as a person reads it, without its tags. */
const read = (page: string): string =>
  page
    .replace(/<(script|style)>[\s\S]*?<\/\1>/g, '')
    .replace(/ (?:aria-label|title)="([^"]*)"/g, '>$1<')
    .replace(/<[^>]*>/g, '\n')
    .replace(/&quot;/g, '"');

describe('the command line asks for each of its words in the person’s language', () => {
  it('where it checks the planted faults', async () => {
    for (const path of faults) assert.deepEqual(left(await said(['check', path]), [path]), [], path);
  }).timeout(120_000);

  it('where it measures', async () => {
    for (const path of [...wardrobe, ...faults.filter((_, i) => i % 5 === 0)])
      assert.deepEqual(left(await said(['measure', path]), [path]), [], path);
  }).timeout(120_000);

  it('where it compares each planted fault with the next, and samples with their kin', async () => {
    for (const [i, path] of faults.entries()) {
      const other = faults[i + 1] ?? faults[0]!;
      assert.deepEqual(left(await said(['compare', path, other]), [path, other]), [], path);
    }
    const kin = ['harbour-skirt.draft', 'straight-skirt-block.draft'];
    for (const format of ['markdown', 'html', 'svg'])
      assert.deepEqual(left(read(await said(['compare', ...kin, '--format', format])), kin), [], format);
  }).timeout(240_000);

  it('where it helps', async () => {
    const commands = 'check draw print measure sheet format compare git-setup git-text explain lsp'.split(
      ' ',
    );
    for (const command of ['', ...commands]) {
      const help = await said([...(command === '' ? [] : [command]), '--help']);
      const shown = help.replace(/<[^>]*>|"[^"]*"|--?[a-z-]+/g, '');
      assert.deepEqual(left(shown, [], `${commands.join(' ')} help file code what`), [], command);
    }
  });
});

/** Command lines that come to nothing. */
const REFUSED: readonly (readonly string[])[] = [
  ['chek', 'harbour-skirt.draft'],
  ['check'],
  ['check', 'missing.draft'],
  ['check', 'faults'],
  ['check', 'harbour-skirt.draft', '--format', 'yaml'],
  ['check', 'harbour-skirt.draft', '--severity', 'hidden-name'],
  ['check', 'harbour-skirt.draft', '--set', 'hip-ease'],
  ['check', 'harbour-skirt.draft', '--set', 'hip-ease=5cm', '--set', 'hip-ease=4cm'],
  ['check', 'harbour-skirt.draft', '--set', 'hip-ease=30cm'],
  ['check', 'harbour-skirt.draft', '--for', 'stranger'],
  ['check', 'harbour-skirt.draft', '--fort', 'stranger'],
  ['measure', 'faults/unknown-name.draft', 'another'],
  ['draw', 'harbour-skirt.draft', '--pieces', 'sleeve'],
  ['draw', 'harbour-skirt.draft', '--sizes', 'M'],
  ['draw', 'harbour-skirt.draft', '--out', 'harbour-skirt.draft'],
  ['print', 'harbour-skirt.draft', '--paper', 'B9'],
  ['print', 'harbour-skirt.draft', '--paper', 'roll 200mm'],
  ['print', 'harbour-skirt.draft', '--paper', 'roll'],
  ['print', 'harbour-skirt.draft', '--sheets', 'Z9'],
  ['print', 'harbour-skirt.draft', '--paper', 'whole', '--sheets', 'A1'],
  ['print', 'harbour-skirt.draft', '--scale', '3'],
  ['sheet', 'harbour-skirt.draft', '--format', 'pdf', '--paper', 'B9'],
  ['explain', 'mismatched'],
  ['compare', 'harbour-skirt.draft', 'nothing.draft'],
  ['compare', 'harbour-skirt.draft', 'faults'],
  ['compare', 'a', 'b', '--as', 'c', 'd'],
  ['compare', 'harbour-skirt.draft', 'neckerchief.draft', '--each'],
  ['compare', 'harbour-skirt.draft', 'neckerchief.draft', '--each', '--format', 'json'],
];

describe('a refusal of the command line', () => {
  for (const args of REFUSED)
    it(`asks for its words in the person’s language: draftwright ${args.join(' ')}`, async () => {
      const text = await said(args);
      assert.notEqual(text, '');
      const told = `${args.join(' ')} help whole roll Letter Legal format text json ratio svg ENOTDIR code severity`;
      assert.deepEqual(left(text, ['harbour-skirt.draft'], told), []);
    });

  it('asks for them where there is no git', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'draftwright-'));
    try {
      for (const args of [['git-setup'], ['compare', 'main..HEAD']])
        assert.deepEqual(left(await said(args, folder), []), [], args.join(' '));
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
