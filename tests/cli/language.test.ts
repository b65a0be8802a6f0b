/** The option `--language`: what the command line says in German, and what stays as it is. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { apron, apronWith } from '../support/apron';
import { inFolder } from '../support/command';

const broken = apronWith('right width', 'right wdith');

describe('the option --language', () => {
  it('has problems told in German, and the codes and keys for programs as they are', () =>
    inFolder({ 'apron.draft': broken }, async (folder) => {
      const { exit, out } = await folder.run('check', 'apron.draft', '--language', 'de');
      assert.equal(exit, 1);
      assert.match(out, /unknown-name\n {2}[^\n]*War width gemeint\?/);
      const json = await folder.run('check', '--language=de', '--format', 'json', 'apron.draft');
      const [problem] = JSON.parse(json.out).problems;
      assert.deepEqual([problem.code, problem.severity], ['unknown-name', 'error']);
      assert.match(problem.message, /gemeint/);
    }));

  it('has the page of a problem explained in German, its words of the language as they are', () =>
    inFolder({}, async (folder) => {
      const { exit, out } = await folder.run('explain', 'no-grain', '--language', 'de');
      assert.equal(exit, 0);
      assert.match(out, /^`no-grain`: ein Fehler$/m);
      assert.match(out, /^## Warum es zählt$/m);
      const { out: english } = await folder.run('explain', 'no-grain');
      assert.match(english, /^## Why it matters$/m);
    }));

  it('has what is to be put in named in German, in the help of every command and where it is missing', () =>
    inFolder({}, async (folder) => {
      const { out: all } = await folder.run('--help');
      const commands = all.slice(all.indexOf('Commands:')).match(/(?<=^ {2})[a-z-]+/gm)!;
      assert.ok(commands.length > 8, commands.join());
      for (const command of commands.filter((one) => one !== 'help' && one !== 'lsp')) {
        const { out: english } = await folder.run(command, '--help');
        const { out: german } = await folder.run('--language', 'de', command, '--help');
        const places = [...english.matchAll(/<[a-z=.]+>/g)].map(([place]) => place);
        assert.deepEqual(
          places.filter((place) => german.includes(place)),
          [],
          command,
        );
      }
      const { err } = await folder.run('draw', '--language', 'de');
      assert.match(err, /^Fehler: Die Angabe 'Datei' fehlt/);
    }));

  it('may stand before the command, and the last one counts', () =>
    inFolder({ 'apron.draft': broken }, async (folder) => {
      const { out } = await folder.run('--language', 'de', 'check', 'apron.draft');
      assert.match(out, /gemeint\?/);
      const last = await folder.run('check', '--language', 'de', 'apron.draft', '--language', 'en');
      assert.match(last.out, /Did you mean width\?/);
    }));

  it('is asked for each time: the next command line speaks English, whatever the environment says', () =>
    inFolder({ 'apron.draft': broken }, async (folder) => {
      const before = process.env.LANG;
      process.env.LANG = 'de_DE.UTF-8';
      try {
        const [german, english] = await Promise.all([
          folder.run('check', 'apron.draft', '--language', 'de'),
          folder.run('check', 'apron.draft'),
        ]);
        assert.match(german.out, /gemeint\?/);
        assert.match(english.out, /Did you mean width\?/);
      } finally {
        if (before === undefined) delete process.env.LANG;
        else process.env.LANG = before;
      }
    }));

  it('has what is drawn, printed and written in German as well, and the keys for programs in English', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      await folder.run('draw', 'apron.draft', '--language', 'de');
      assert.match(readFileSync(join(folder.path, 'apron.svg'), 'utf8'), />zuschneiden: 1×</);
      const { out } = await folder.run('sheet', 'apron.draft', '--kind', 'cutting', '--language', 'de');
      assert.match(out, /^Zuschneideliste zu /);
      const csv = await folder.run(
        ...['sheet', 'apron.draft', '--kind', 'cutting', '--format', 'csv', '--language', 'de'],
      );
      assert.match(csv.out, /^sheet,part,piece,cut,how,.*\r\nZuschneideliste zu /);
      const english = await folder.run('sheet', 'apron.draft', '--kind', 'cutting');
      assert.match(english.out, /^Cutting list of /);
    }));

  it('has help and refusals in German', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const help = await folder.run('check', '--help', '--language', 'de');
      assert.deepEqual([help.exit, help.err], [0, '']);
      assert.match(help.out, /^Aufruf: draftwright check \[Optionen\] <Datei\.\.\.>\n\nmelden, was/);
      const refused = await folder.run('chek', 'apron.draft', '--language', 'de');
      assert.equal(refused.exit, 2);
      assert.equal(
        refused.err,
        "Fehler: unbekannter Befehl 'chek'\n(War check gemeint?)\nWeiter hilft draftwright --help.\n",
      );
    }));

  it('measures in German as in English, to the digit', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const english = await folder.run('measure', 'apron.draft', '--format', 'json');
      const german = await folder.run('measure', 'apron.draft', '--format', 'json', '--language', 'de');
      assert.equal(german.out, english.out);
      const { out } = await folder.run('measure', 'apron.draft', '--language', 'de');
      assert.match(out, /Längen in cm\.\n/);
    }));

  it('keeps every key, code and figure of a comparison for programs', () =>
    inFolder(
      { 'a.draft': apron, 'b.draft': apron.replace('turned twice 1cm', 'turned twice 2cm') },
      async (folder) => {
        const asked = ['compare', 'a.draft', 'b.draft', '--format', 'json'];
        const english = JSON.parse((await folder.run(...asked)).out);
        const german = JSON.parse((await folder.run(...asked, '--language', 'de')).out);
        assert.match(german.patterns[0].verdict, /^1 von 2 Teilen geändert/);
        assert.notEqual(
          german.patterns[0].pieces[0].details[0].thing,
          english.patterns[0].pieces[0].details[0].thing,
        );
        const told = new Set(['message', 'held', 'why', 'thing']);
        const figures = (report: unknown): string =>
          JSON.stringify(report, (key, value: unknown) =>
            told.has(key) || (key === 'verdict' && /[ .]$|geändert|changed/.test(String(value))) ? '' : value,
          );
        assert.equal(figures(german), figures(english));
      },
    ));

  it('refuses every other language in a sentence', () =>
    inFolder({ 'apron.draft': apron }, async (folder) => {
      const { exit, err } = await folder.run('check', 'apron.draft', '--language', 'cy');
      assert.equal(exit, 2);
      assert.match(err, /Allowed choices are en, de\./);
    }));
});
