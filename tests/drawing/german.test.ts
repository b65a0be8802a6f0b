/** What is drawn and printed in German: nothing of it is left in English, and its longer words find their room. */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { speak, type Words } from '../../grammar/say';
import { allWords, OFTEN_NAMES } from '../../grammar/words';
import { check } from '../../server/checks';
import type { Pattern } from '../../server/drafting/model';
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import { toDrawingDxf } from '../../server/drawing/dxf/drawing';
import { draftedSize, toExchangeDxf } from '../../server/drawing/dxf/exchange';
import { missingLetters } from '../../server/drawing/paper/font';
import { papers, type Paper } from '../../server/drawing/paper/papers';
import { toPdf } from '../../server/drawing/paper/pdf';
import { printed, toldBy, type PrintedOptions } from '../../server/drawing/paper/printed';
import { toSvg } from '../../server/drawing/svg';
import { SHEET_KINDS, writtenSheet } from '../../server/drawing/written';
import { toCsv } from '../../server/drawing/written/csv';
import { toMarkdown } from '../../server/drawing/written/markdown';
import { sheetsPdf } from '../../server/drawing/written/pdf';
import { toText } from '../../server/drawing/written/text';
import { inFolder } from '../support/command';
import { diskDoor } from '../support/door';
import { german, hushed, inLanguage } from '../support/in-language';
import { collisions, cutLabels } from '../support/lettering';
import { readPdf } from '../support/pdf';
import { graded } from '../support/sheets-of-sizes';
import { read, root } from '../support/sources';

const folder = join(root, 'samples');
const wardrobe = readdirSync(folder).filter((name) => name.endsWith('.draft'));
const sample = (name: string): Pattern =>
  new Workshop(diskDoor(folder)).pattern(pathToFileURL(join(folder, name)).href);

/** The same for as long as work takes that is waited for. */
async function speaking<T>(words: Words, work: () => Promise<T>): Promise<T> {
  speak(words);
  try {
    return await work();
  } finally {
    speak(undefined);
  }
}

const wordsIn = (text: string): readonly string[] => text.match(/\p{L}{2,}/gu) ?? [];

/** The words by which programs find what a DXF tells of a piece (ASTM D6673), and the release of the file. */
const DXF_KEYS =
  'STYLE NAME AUTHOR Draftwright SAMPLE SIZE UNITS METRIC ANNOTATION PIECE QUANTITY MATERIAL AC Solid line';

/** Names and quoted words of a pattern, without its remarks and the words of the language. */
function namesIn(text: string): readonly string[] {
  const bare = text.replace(/#.*/g, '');
  const names = bare.match(/\p{L}[\p{L}\d-]*/gu) ?? [];
  const quoted = bare.match(/"[^"]*"/g) ?? [];
  return [...names.filter((name) => !LANGUAGE.has(name)), ...quoted].flatMap(wordsIn);
}

const LANGUAGE: ReadonlySet<string> = new Set(
  allWords().filter((word) => !(OFTEN_NAMES as readonly string[]).includes(word)),
);

/** What the authors wrote, and what stands in every language alike: papers and units. */
const own = new Set([
  ...[...wardrobe, 'bodies/company.draft'].flatMap((name) => namesIn(read(`samples/${name}`))),
  ...[...papers.map(({ name }) => name), 'mm cm in draftwright check', DXF_KEYS].flatMap(wordsIn),
]);

const left = (texts: readonly string[]): readonly string[] =>
  texts.filter((text) => wordsIn(text).some((word) => !own.has(word)));

/** Texts of both kinds of DXF, line types and blocks included. */
function dxfWords(pattern: Pattern): readonly string[] {
  const drawing = draw(pattern);
  const { title } = pattern;
  const sizes = [draftedSize(pattern, drawing)];
  return [toDrawingDxf(drawing), toExchangeDxf({ title, sampleSize: '', sizes, annotations: [] })].flatMap(
    dxfTexts,
  );
}

/** Every text of a file, and the description of a line type. */
function dxfTexts(dxf: string): string[] {
  const lines = dxf.split('\r\n');
  return lines.flatMap((code, i) => (i % 2 === 0 && /^ *[13]$/.test(code) ? [lines[i + 1]!] : []));
}

/** A pattern whose author writes letters that seven bits cannot hold, wherever a name or a text may stand. */
const OWN_WORDS = `pattern "Röckchen"

draft d {
  point a = origin
  point b = a right 30cm
  point c = b down 40cm
  point e = a down 40cm
}

piece ärmel of d {
  cut pair in grün, pair in köper
  outline from a {
    oben straight to b
    vorder-länge straight to c
    unten straight to e
    hinten straight to a
  }
  label "Größe prüfen (1/2)? [a-z]*"
  allow 1cm
}
`;

const LOST = `${OWN_WORDS}
piece kürze of d {
  outline from kürze {
    oben straight to b
  }
}
`;

const errorsOf = (pattern: Pattern) => (name: string) =>
  check(pattern).filter(({ severity, piece }) => severity === 'error' && piece === name).length;

/** The words of one large sheet; of sheets that are taped together those besides. */
async function pdfWords(
  pattern: Pattern,
  options: PrintedOptions,
  sheets: readonly Paper[] = [],
): Promise<readonly string[]> {
  const { drawing, turn, off } = printed(pattern, options);
  const told = { ...toldBy(pattern), ...options, turn, off };
  const wordsOn = async (paper?: Paper): Promise<readonly string[]> => {
    const { value } = await toPdf(drawing, { ...told, ...(paper && { paper }) });
    return (await readPdf(value)).flatMap(({ words }) => words);
  };
  const whole = await wordsOn();
  const cut = (await Promise.all(sheets.map(wordsOn))).flat();
  // the reader leaves out what of a word lies beyond the edge of a sheet
  return [...whole, ...cut.filter((text) => !whole.some((one) => one.includes(text)))];
}

/** Looked at on every paper. */
const TAPED: ReadonlySet<string> = new Set(['harbour-skirt.draft', 'neckerchief.draft']);

/** Looked at made smaller as well. */
const SMALL: ReadonlySet<string> = new Set([...TAPED, 'crew-shirt.draft', 'laced-bodice.draft']);
const scalesOf = (name: string): readonly number[] => (SMALL.has(name) ? [1, 5] : [1]);

describe('the wardrobe in another language', function () {
  this.timeout(120_000);

  it('is printed without a word that nobody asked for', async () => {
    const words = hushed();
    for (const name of wardrobe)
      for (const scale of scalesOf(name)) {
        const options = { scale, date: '2026-11-28', revision: '3', errorsOf: () => 2 };
        const sheets = TAPED.has(name) ? papers : [];
        const found = await speaking(words, () => pdfWords(sample(name), options, sheets));
        assert.ok(found.length > 10, name);
        assert.deepEqual(left(found), [], `${name} at 1:${scale}`);
      }
  });

  it('is told to programs that cut, but for their own keys, without a word that nobody asked for', () => {
    const words = hushed();
    for (const name of wardrobe) {
      const texts = inLanguage(words, () => dxfWords(sample(name)));
      assert.ok(texts.length > 10, name);
      assert.deepEqual(left(texts), [], name);
    }
  });

  it('lies in sizes on one another without a word that nobody asked for', () =>
    inFolder({ 'bucket.draft': graded }, async (folder) => {
      const found = await speaking(hushed(), async () => {
        await folder.run('print', 'bucket.draft', '--sizes', 'all', '--paper', 'whole', '--out', '.');
        return readPdf(readFileSync(join(folder.path, 'bucket.pdf')));
      });
      const said = found.flatMap(({ words, layers }) => [...words, ...layers.keys()]);
      assert.ok(said.length > 10);
      const own = new Set(wordsIn(graded));
      assert.deepEqual(
        left(said).filter((text) => wordsIn(text).some((word) => !own.has(word))),
        [],
      );
    }));

  it('is drawn as SVG without a word that nobody asked for, tips and legend included', () => {
    const words = hushed();
    for (const name of wardrobe) {
      const svg = inLanguage(words, () => toSvg(draw(sample(name)), { construction: true }));
      const shown = [...svg.matchAll(/>([^<>]+)<\/(?:text|title|desc)>/g)].map(([, text]) => text!);
      assert.ok(shown.length > 20, name);
      assert.deepEqual(left(shown), [], name);
    }
  });
});

describe('the written sheets in another language', function () {
  this.timeout(120_000);

  it('say nothing that nobody asked for, as text, as Markdown and in a PDF', async () => {
    const words = hushed();
    for (const name of wardrobe) {
      const found = await speaking(words, async () => {
        const pattern = sample(name);
        const sheets = SHEET_KINDS.map((kind) => writtenSheet(kind, pattern, { date: '2026-11-28' }));
        const pages = await readPdf((await sheetsPdf(sheets, papers[0]!)).value);
        const text = sheets.flatMap((sheet) => [toText(sheet, 100), toMarkdown(sheet)]);
        return [...text.join('\n').split('\n'), ...pages.flatMap((page) => page.words)];
      });
      assert.ok(found.length > 40, name);
      assert.deepEqual(left(found), [], name);
    }
  });

  it('keep their heads for programs, whatever is spoken', () => {
    const headsOf = () =>
      wardrobe.flatMap((name) => {
        const pattern = sample(name);
        const sheets = SHEET_KINDS.map((kind) => writtenSheet(kind, pattern));
        return [...toCsv(sheets).matchAll(/^sheet,.*$/gm)].map(([heads]) => heads);
      });
    assert.deepEqual(inLanguage(german, headsOf), headsOf());
  });

  it('are German where German is spoken', () => {
    const text = inLanguage(german, () => {
      const pattern = sample('harbour-skirt.draft');
      return SHEET_KINDS.map((kind) => toText(writtenSheet(kind, pattern), 200)).join('\n');
    });
    for (const words of [
      'Maßblatt zu Harbour skirt, für ferrywoman',
      'Zuschneideliste zu Harbour skirt, für ferrywoman',
      'Teil       Anzahl  wie',
      'Weiten\n',
      'Der Fadenlauf hängt in der vorderen und der hinteren Mitte im Lot.',
      '20cm offen lassen für den Reißverschluss und ihn einsetzen',
      'Säume zuletzt, wenn die Länge anprobiert ist',
    ])
      assert.ok(text.includes(words), words);
  });
});

describe('the wardrobe in German', function () {
  this.timeout(120_000);

  it('has its words on no line and on no other words, upright and turned, some of it small', () => {
    for (const name of wardrobe)
      for (const scale of scalesOf(name)) {
        const all = inLanguage(german, () => {
          const { drawing, turn } = printed(sample(name), { scale, date: '2026-11-28', revision: '3' });
          return drawing.pieces.flatMap((piece) => [...collisions(piece), ...collisions(turn(piece))]);
        });
        assert.deepEqual(all, [], `${name} at 1:${scale}`);
      }
  });

  it('can be read on the table as in English: capitals of 2.5 mm at least', () => {
    for (const name of wardrobe) {
      const pieces = inLanguage(german, () => printed(sample(name)).drawing.pieces);
      const small = pieces.flatMap(({ texts }) => texts.filter(({ size }) => size < 2.5));
      assert.deepEqual(small, [], name);
    }
  });

  it('has every letter in the font', () => {
    const letters = Object.values(german).flatMap((text) => text.match(/[\p{L}„“×]/gu) ?? []);
    assert.deepEqual(missingLetters(letters), []);
  });

  it('says on a printed skirt what its cutter must know', async () => {
    const words = await speaking(german, async () => {
      const pattern = sample('harbour-skirt.draft');
      return pdfWords(pattern, { errorsOf: errorsOf(pattern) }, [papers[0]!]);
    });
    for (const text of [
      'Harbour skirt, für ferrywoman',
      'für ferrywoman',
      'zuschneiden: 2× gegengleich',
      'zuschneiden: 1× im Bruch',
      'Fadenlauf',
      'Zugabe 1.5cm',
      'vor dem Zuschneiden nachmessen',
      'Mit 100 % drucken, nie an die Seite anpassen. Vor dem Zuschneiden das Quadrat nachmessen.',
    ])
      assert.ok(words.includes(text), `${text} in ${[...new Set(words)].join(' | ')}`);
  });

  it('names the sizes of a nest, on its pieces and as the layers of its print', () =>
    inFolder({ 'bucket.draft': graded }, async (folder) => {
      const command = ['print', 'bucket.draft', '--sizes', 'all', '--paper', 'whole', '--out', '.'];
      await folder.run(...command, '--language', 'de');
      const [page] = await readPdf(readFileSync(join(folder.path, 'bucket.pdf')));
      assert.deepEqual([...page!.layers.keys()].sort(), ['Größe L', 'Größe M', 'Größe S']);
      for (const text of ['für hands, Größen S, M, L', 'an der Linie der Größe zuschneiden'])
        assert.ok(page!.words.includes(text), `${text} in ${page!.words.join(' | ')}`);
    }));

  it('is spelt in seven bits for programs that cut', () => {
    const texts = inLanguage(german, () => dxfWords(sample('harbour-skirt.draft')));
    assert.deepEqual(
      texts.filter((text) => !/^[ -~]*$/.test(text)),
      [],
    );
    for (const words of ['ANNOTATION: zuschneiden: 2x gegengleich', 'fuer ferrywoman'])
      assert.ok(texts.includes(words), `${words} in ${texts.join(' | ')}`);
  });

  it('spells our sentences in seven bits, and what its author named as in English', () =>
    inFolder({ 'aermel.draft': OWN_WORDS }, async (folder) => {
      for (const [format, file] of [
        ['dxf', 'aermel.dxf'],
        ['dxf-drawing', 'aermel-drawing.dxf'],
      ] as const) {
        const texts: string[][] = [];
        for (const language of ['en', 'de']) {
          await folder.run('draw', 'aermel.draft', '--format', format, '--out', '.', '--language', language);
          texts.push(dxfTexts(readFileSync(join(folder.path, file), 'latin1')));
        }
        const [english, inGerman] = texts as [string[], string[]];
        for (const own of ['armel', 'Rockchen', 'Grosse prufen', 'vorder-lange', 'grun', 'koper']) {
          assert.ok(
            english.some((text) => text.includes(own)),
            `${own} in ${english.join(' | ')}`,
          );
          assert.ok(
            inGerman.some((text) => text.includes(own)),
            `${own} in ${inGerman.join(' | ')}`,
          );
        }
        const all = inGerman.join(' | ');
        assert.doesNotMatch(all, /aermel|Roeckchen|Groesse pruefen|laenge|gruen|koeper/);
      }
    }));

  it('spells names as in English where it says which piece is lost', () =>
    inFolder({ 'aermel.draft': LOST }, async (folder) => {
      await folder.run('draw', 'aermel.draft', '--format', 'dxf', '--out', '.', '--language', 'de');
      const texts = dxfTexts(readFileSync(join(folder.path, 'aermel.dxf'), 'latin1'));
      const said = texts.find((text) => text.startsWith('ANNOTATION: kurze'))!;
      assert.match(said, /kurze .*: kurze .* laesst/);
      assert.doesNotMatch(said, /kuerze/);
    }));

  it('has the label of a piece whole on one sheet', async () => {
    for (const name of ['harbour-skirt.draft', 'sleeve.draft', 'trousers.draft']) {
      const { laid, tiling } = await speaking(german, async () => {
        const { drawing, turn, off } = printed(sample(name));
        const { drawing: laid, tiling } = await toPdf(drawing, { paper: papers[0]!, turn, off });
        return { laid, tiling: tiling! };
      });
      assert.deepEqual(cutLabels(laid, tiling), [], name);
    }
  });
});
