/** The printers of written sheets, each read back by a reader that is not ours, also with names that look like markup. */
import assert from 'node:assert/strict';
import { writtenSheet, SHEET_KINDS, type WrittenSheet } from '../../server/drawing/written';
import { paperNamed } from '../../server/drawing/paper/papers';
import { toCsv } from '../../server/drawing/written/csv';
import { escaped, toMarkdown } from '../../server/drawing/written/markdown';
import { sheetsPdf } from '../../server/drawing/written/pdf';
import { toText } from '../../server/drawing/written/text';
import { drafted } from '../support/drafted';
import { readCsv } from '../support/csv';
import { readPdf } from '../support/pdf';
import { patternIn, patternsIn, sheetOfSample, sheetOfText } from '../support/written';

const A4 = paperNamed('A4')!;

/** Signs that mean something to one printer or another, in every place where an author may write them. */
const ODD = `<b>&amp;</b> 50%, "wide" | \`x\` *y* [z](http://example.org) שלום 🧵`;
const odd = `pattern "${ODD.replace(/"/g, '”')}\u202e"
draft d {
  point a = origin
  point b = a right 30cm
  point c = b down 20cm
}
piece Größe-שלום of d {
  cut 1 in felt-תפר
  outline from a {
    top straight to b
    side straight to c
    bias straight to a
  }
  grain along side
  allow 1cm
  label "=HYPERLINK(0), \\ | # 1. <img src=x> ${'very-long-'.repeat(30)}"
}
piece twice of d {
  cut 1
}
piece twice of d {
  cut 2
}
seam hem Größe-שלום.top = Größe-שלום.bias
`;

const oddSheets = (): WrittenSheet[] => SHEET_KINDS.map((kind) => writtenSheet(kind, drafted(odd)));
const skirtSheets = (): WrittenSheet[] => SHEET_KINDS.map((kind) => sheetOfSample(kind, 'harbour-skirt'));

/** The tables of a Markdown text: rows of cells, by the rules of GitHub Flavored Markdown, escapes taken off. */
function markdownTables(text: string): string[][][] {
  const blocks = text.split('\n\n').filter((block) => block.startsWith('|'));
  return blocks.map((block) =>
    block
      .trim()
      .split('\n')
      .map((line) => {
        assert.match(line, /^\| .* \|$|^\|( \|)+$|^\|.*\|$/);
        const cells = line.slice(1, -1).split(/(?<!\\)\|/);
        return cells.map((cell) => cell.trim().replace(/\\([!-/:-@[-`{-~])/g, '$1'));
      }),
  );
}

describe('a written sheet as text', () => {
  it('keeps to its width, whatever the words are', () => {
    for (const width of [40, 72, 100])
      for (const sheet of [...oddSheets(), ...skirtSheets()])
        for (const line of toText(sheet, width).split('\n'))
          assert.ok([...line].length <= width, `${sheet.kind}, ${width}: ${line}`);
  });

  it('breaks names at their joints and not within a word, in the columns of a narrow page', () => {
    for (const kind of ['cutting', 'finished', 'sewing'] as const) {
      const sheet = sheetOfSample(kind, 'princess-bodice');
      const spoken = new Set(
        sheet.tables
          .flatMap(({ columns, rows }) => [
            ...columns.map(({ head }) => head),
            ...rows.flatMap(({ cells }) => cells.map((cell) => cell ?? '')),
          ])
          .concat(
            sheet.heading,
            sheet.words,
            sheet.after,
            sheet.tables.map(({ heading }) => heading ?? ''),
          )
          .flatMap((text) => text.match(/[\p{L}\d]+/gu) ?? []),
      );
      const said = toText(sheet, 80).match(/[\p{L}\d]+/gu) ?? [];
      assert.deepEqual(
        said.filter((word) => !spoken.has(word)),
        [],
        kind,
      );
    }
  });

  it('lets no sign through that would turn a terminal about', () => {
    for (const sheet of oddSheets()) assert.doesNotMatch(toText(sheet, 80), /[\u0000-\u0008\u202a-\u202e]/);
  });
});

describe('a written sheet as Markdown', () => {
  it('has rows of one length in every table, with the cells of the sheet', () => {
    for (const sheet of [...oddSheets(), ...skirtSheets()]) {
      const tables = markdownTables(toMarkdown(sheet));
      assert.equal(tables.length, sheet.tables.length);
      tables.forEach((rows, t) => {
        const { columns, beneath = [], rows: own } = sheet.tables[t]!;
        assert.deepEqual(new Set(rows.map((row) => row.length)), new Set([columns.length + beneath.length]));
        assert.equal(rows.length, own.length + 2);
        assert.ok(rows[1]!.every((mark) => /^-{3}:?$/.test(mark)));
      });
    }
  });

  it('shows figures as they are, and makes no list of a line that begins with one', () => {
    for (const sheet of skirtSheets()) assert.doesNotMatch(toMarkdown(sheet), /\\\d/);
    const [rows] = markdownTables(toMarkdown(sheetOfSample('finished', 'circle-skirt')));
    assert.ok(rows!.some((row) => row.includes('75.50')));
    assert.equal(escaped('2. skirt'), '2\\. skirt');
  });

  it('reads nothing of a name as markup', () => {
    const text = toMarkdown(writtenSheet('cutting', drafted(odd)));
    assert.doesNotMatch(text, /(?<!\\)</);
    assert.doesNotMatch(text, /(?<!\\)\[z/);
    assert.match(text, /\\<img src=x\\>/);
  });
});

describe('written sheets as CSV', () => {
  it('are read back cell by cell, every record of one length', () => {
    for (const sheets of [oddSheets(), skirtSheets()]) {
      const records = readCsv(toCsv(sheets));
      assert.equal(new Set(records.map(({ length }) => length)).size, 1);
      const rows = sheets.flatMap(({ tables }) => tables.flatMap((table) => table.rows));
      const heads = sheets.flatMap(({ tables }) => tables).length;
      assert.equal(records.length, rows.length + heads);
      const body = records.filter(([first]) => first !== 'sheet');
      body.forEach((record, i) => {
        const cells = rows[i]!.cells.map((cell) => cell ?? '');
        assert.deepEqual(
          record.slice(2, 2 + cells.length).map((cell) => cell.replace(/^'/, '')),
          cells.map((cell) => cell.replace(/^'/, '')),
        );
      });
    }
  });

  it('give a table program nothing to compute, and leave figures figures', () => {
    const records = readCsv(toCsv(oddSheets())).flat();
    assert.deepEqual(
      records.filter((cell) => /^[=@]/.test(cell)),
      [],
    );
    assert.ok(records.some((cell) => cell.startsWith("'=HYPERLINK(0)")));
    assert.ok(readCsv(toCsv(skirtSheets())).flat().includes('+4.00'));
  });
});

describe('written sheets as PDF', () => {
  it('say above the boxes to sketch in what they are for, and sign off below them', async () => {
    const { value } = await sheetsPdf([sheetOfSample('fit', 'princess-bodice')], A4);
    const [, second] = await readPdf(value);
    assert.match(second!.words.join('|'), /^ferrywoman: fit sheet .*Sketch what you see.*front.*Signed off/);
  });

  it('have every word of the sheet as text, on pages of the asked size that are counted', async () => {
    const sheets = skirtSheets();
    const { value, pages } = await sheetsPdf(sheets, A4);
    const read = await readPdf(value);
    assert.equal(read.length, pages);
    const points = 72 / 25.4;
    read.forEach((page, i) => {
      assert.ok(Math.abs(page.width - 210 * points) < 0.01 && Math.abs(page.height - 297 * points) < 0.01);
      assert.ok(page.words.includes(`page ${i + 1} of ${pages}`));
    });
    const printed = read
      .flatMap(({ words }) => words)
      .join(' ')
      .replace(/\s+/g, '');
    for (const { tables } of sheets)
      for (const cell of tables.flatMap(({ rows }) => rows.flatMap(({ cells }) => cells)))
        assert.ok(printed.includes((cell ?? '').split(' ')[0]!), `${cell} is printed`);
  });

  it('say again what they belong to on every further page, and keep within its margins', async () => {
    const pieces = Array.from({ length: 60 }, (_, i) =>
      odd.match(/piece Größe[\s\S]*?\n}\n/)![0].replace(/Größe-שלום/g, `p-${i}`),
    );
    const long = sheetOfText('cutting', odd.replace(/piece[\s\S]*$/, pieces.join('')));
    const { value } = await sheetsPdf([long], A4);
    const read = await readPdf(value);
    assert.ok(read.length > 2, `${read.length} pages`);
    for (const { words } of read.slice(1, -1)) {
      assert.ok(
        words.some((word) => word.endsWith(', continued')),
        words.slice(0, 5).join(' | '),
      );
      assert.ok(words.includes('right side up') || words.join(' ').includes('right side up'));
    }
    const ends = read.flatMap(({ lines }) => lines.flat());
    const beyond = ends.filter(([x, y]) => x < 50 || x > 545 || y < 40 || y > 800);
    assert.deepEqual(beyond, []);
  });

  it('are the same bytes every time, and none where a name has signs that the font lacks breaks', async () => {
    const [one, other] = [await sheetsPdf(oddSheets(), A4), await sheetsPdf(oddSheets(), A4)];
    assert.deepEqual(one.value, other.value);
    assert.ok((await readPdf(one.value)).length > 0);
  });
});

describe('every sheet', () => {
  it('is written of two sound pieces with one name, once for the one that counts', () => {
    const piece = odd.match(/piece Größe[^]*?\n}\n/)![0];
    const twice = drafted(odd.replace(/piece[^]*$/, piece + piece.replace('allow 1cm', 'allow 2cm')));
    assert.ok(twice.findings.some(({ finding }) => finding.code === 'defined-twice'));
    for (const kind of SHEET_KINDS) {
      const sheet = writtenSheet(kind, twice);
      assert.ok(toText(sheet, 80).length > 0);
      if (kind === 'cutting') assert.equal(sheet.tables[0]?.rows.length, 2);
    }
  });

  it('is written of every sample and every planted fault', () => {
    for (const folder of ['samples', 'samples/faults'])
      for (const file of patternsIn(folder)) {
        const pattern = patternIn(folder, file);
        const sheets = SHEET_KINDS.map((kind) => writtenSheet(kind, pattern));
        readCsv(toCsv(sheets));
        for (const sheet of sheets) {
          assert.doesNotMatch(
            toText(sheet, 80) + toMarkdown(sheet),
            /undefined|NaN|\[object/,
            `${file}: ${sheet.kind}`,
          );
          for (const { columns, rows } of sheet.tables)
            for (const { cells } of rows)
              assert.equal(cells.length, columns.length, `${file}: ${sheet.kind}`);
        }
      }
  });
});
