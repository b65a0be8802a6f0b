/** Papers to be taped together: how a drawing is cut into them, and the PDF read back by another program. */
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { Workshop } from '../../server/drafting/workshop';
import { draw } from '../../server/drawing/draw';
import type { Drawing, Frame } from '../../server/drawing/model';
import { arranged } from '../../server/drawing/paper/arrange';
import { inkOf } from '../../server/drawing/paper/ink';
import { paperNamed, papers, turned } from '../../server/drawing/paper/papers';
import { toPdf } from '../../server/drawing/paper/pdf';
import { MARGIN_MM, OVERLAP_MM, tiled, tilingFor } from '../../server/drawing/paper/tiles';
import { diskDoor } from '../support/door';
import { skirt } from '../support/drawings';
import { lengthOf, readPdf, type Line } from '../support/pdf';
import { root } from '../support/sources';
import { pathToFileURL } from 'node:url';

const A4 = paperNamed('a4')!;
const POINTS = 72 / 25.4;
const frame = (wide: number, high: number): Frame => ({ left: 0, top: 0, right: wide, bottom: high });
const everywhere = (of: Frame): readonly Frame[] => [of];

function sample(name: string): Drawing {
  const folder = join(root, 'samples');
  const uri = pathToFileURL(join(folder, name)).href;
  return draw(new Workshop(diskDoor(folder)).pattern(uri));
}

describe('papers', () => {
  it('have the sizes of ISO 216 and of ANSI Y14.1', () => {
    // ISO 216: A4 210 by 297 mm, A3 297 by 420 mm; ANSI/ASME Y14.1: size A 8.5 by 11 in
    assert.deepEqual(
      papers.map(({ name, width, height }) => [name, Number(width.toFixed(1)), Number(height.toFixed(1))]),
      [
        ['A4', 210, 297],
        ['A3', 297, 420],
        ['Letter', 215.9, 279.4],
        ['Legal', 215.9, 355.6],
      ],
    );
  });

  it('one takes what fits between its margins, and a millimetre more wants another', () => {
    const [wide, high] = [A4.width - 2 * MARGIN_MM, A4.height - 2 * MARGIN_MM];
    const count = (of: Frame) => tiled(of, everywhere(of), A4).tiles.length;
    assert.deepEqual(
      [count(frame(wide, high)), count(frame(wide + 1, high)), count(frame(wide + 1, high + 1))],
      [1, 2, 4],
    );
  });

  it('cover the whole drawing, each lapping over its neighbours by the overlap', () => {
    const of = frame(900, 1300);
    const { tiles, columns, rows } = tiled(of, everywhere(of), A4);
    assert.equal(tiles.length, rows * columns);
    assert.ok(tiles[tiles.length - 1]!.frame.right >= 900 && tiles[tiles.length - 1]!.frame.bottom >= 1300);
    assert.equal(tiles[0]!.frame.right - tiles[1]!.frame.left, OVERLAP_MM);
    assert.equal(tiles[0]!.frame.bottom - tiles[columns]!.frame.top, OVERLAP_MM);
  });

  it('that would come out empty are left out, and keep their name', () => {
    const ink = [frame(20, 20), { left: 700, top: 0, right: 720, bottom: 20 }];
    const { tiles } = tiled(frame(720, 20), ink, A4);
    assert.deepEqual(
      tiles.map(({ name }) => name),
      ['A1', 'A4'],
    );
  });

  it('every match mark lies on both of its papers', () => {
    const of = frame(900, 1300);
    const { tiles, marks } = tiled(of, everywhere(of), A4);
    assert.ok(marks.length > 0);
    for (const { at, between } of marks) {
      for (const name of between) {
        const { left, top, right, bottom } = tiles.find((tile) => tile.name === name)!.frame;
        assert.ok(
          at.x > left && at.x < right && at.y > top && at.y < bottom,
          `${between.join(' ')} on ${name}`,
        );
      }
    }
  });

  it('lie upright or across, whichever needs fewer', () => {
    for (const name of ['neckerchief.draft', 'harbour-skirt.draft', 'chalk-bag.draft']) {
      const drawing = sample(name);
      const counts = [A4, turned(A4)].map((one) => tiled(drawing.frame, inkOf(drawing), one).tiles.length);
      assert.equal(tilingFor(drawing, A4).tiles.length, Math.min(...counts), name);
    }
  });

  it('a long slanting line inks the papers it crosses and no others', () => {
    const line = {
      ...skirt().pieces[0]!.lines[0]!,
      start: { x: 0, y: 0 },
      stretches: [[1000, 1000] as const],
      closed: false,
    };
    const piece = { ...skirt().pieces[0]!, lines: [line], texts: [], dots: [] };
    const slant = {
      ...skirt(),
      pieces: [piece],
      placements: [{ piece: piece.name, by: { x: 0, y: 0 } }],
      frame: frame(1000, 1000),
    };
    const { tiles, rows, columns } = tilingFor(slant, A4);
    assert.ok(tiles.length < (rows * columns) / 2, `${tiles.length} of ${rows * columns}`);
    assert.ok(tiles.some(({ name }) => name === 'A1'));
  });

  it('pieces laid anew never need more papers than as they were laid', () => {
    for (const name of ['harbour-skirt.draft', 'shift.draft', 'princess-bodice.draft']) {
      const drawing = sample(name);
      assert.ok(arranged(drawing, A4).tiling.tiles.length <= tilingFor(drawing, A4).tiles.length, name);
    }
  });
});

describe('a printed pattern, read back', function () {
  this.timeout(60_000);
  const close = (a: number, b: number, within: number) => Math.abs(a - b) <= within;

  it('has pages of the paper’s size to a hundredth of a point', async () => {
    const { value, tiling } = await toPdf(sample('harbour-skirt.draft'), { paper: A4 });
    const { width, height } = tiling!.paper;
    for (const page of await readPdf(value))
      assert.ok(close(page.width, width * POINTS, 0.01) && close(page.height, height * POINTS, 0.01));
  });

  it('has a test square of 100.00 mm on its first sheet, with how to print', async () => {
    const { value } = await toPdf(sample('chalk-bag.draft'), { paper: A4 });
    const first = (await readPdf(value))[0]!;
    const sides = first.lines.filter((line) => close(lengthOf(line) / POINTS, 100, 0.005));
    assert.equal(sides.length, 4);
    assert.ok(first.words.some((words) => /Print at 100/.test(words)));
    assert.ok(first.words.includes('measure before you cut'));
  });

  it('shows on the map every piece within the sheets that it lies on, and says what it is', async () => {
    const drawing = sample('harbour-skirt.draft');
    const { value, tiling } = await toPdf(drawing, { paper: A4 });
    const first = (await readPdf(value))[0]!;
    for (const { name } of [...drawing.pieces, ...tiling!.tiles])
      assert.ok(first.words.includes(name), `${name} on the map`);
    assert.ok(first.curves.length > 5, 'the pieces are drawn');
    const [right, foot] = [first.width - 10 * POINTS, 10 * POINTS];
    for (const [x, y] of [...first.curves, ...first.lines].flat())
      assert.ok(x > 0 && x < right && y > foot && y < first.height, `${x} ${y} is on the sheet`);
  });

  it('names every sheet, and says every word of the drawing', async () => {
    const drawing = sample('harbour-skirt.draft');
    const { value, tiling } = await toPdf(drawing, { paper: A4 });
    const pages = (await readPdf(value)).slice(1);
    assert.equal(pages.length, tiling!.tiles.length);
    pages.forEach(({ words }, i) => assert.ok(words.includes(tiling!.tiles[i]!.name)));
    const said = new Set(pages.flatMap(({ words }) => words));
    const wanted = drawing.pieces.flatMap(({ texts }) => texts.map(({ text }) => text));
    assert.deepEqual(
      wanted.filter((text) => !said.has(text)),
      [],
    );
  });

  it('draws each line at its true place: the union of the sheets is the drawing', async () => {
    const drawing = sample('neckerchief.draft');
    const { value, tiling } = await toPdf(drawing, { paper: A4, asLaid: true });
    const pages = (await readPdf(value)).slice(1);
    const straight = drawing.pieces.flatMap((piece) => {
      const { by } = drawing.placements.find((one) => one.piece === piece.name)!;
      return piece.lines
        .filter(
          ({ role, stretches }) => role === 'sewing' && stretches.length === 1 && stretches[0]!.length === 2,
        )
        .map(({ start, stretches }) => [
          start.x + by.x,
          start.y + by.y,
          stretches[0]![0] + by.x,
          stretches[0]![1] + by.y,
        ]);
    });
    assert.ok(straight.length > 0);
    for (const [x1, y1, x2, y2] of straight as [number, number, number, number][]) {
      pages.forEach(({ lines, height }, i) => {
        const { left, top } = tiling!.tiles[i]!.frame;
        const spot = (x: number, y: number) =>
          [(x - left + MARGIN_MM) * POINTS, height - (y - top + MARGIN_MM) * POINTS] as const;
        const want: Line = [spot(x1, y1), spot(x2, y2)];
        const found = lines.some(([a, b]) =>
          [a, b].every(
            ([x, y], k) => close(x, want[k]![0], 0.05 * POINTS) && close(y, want[k]![1], 0.05 * POINTS),
          ),
        );
        assert.ok(found, `a line from ${x1} ${y1} on sheet ${tiling!.tiles[i]!.name}`);
      });
    }
  });

  it('comes out byte for byte the same a second time', async () => {
    const drawing = sample('chalk-bag.draft');
    const [one, other] = [await toPdf(drawing, { paper: A4 }), await toPdf(drawing, { paper: A4 })];
    assert.deepEqual(one.value, other.value);
  });

  it('on one sheet is as large as the drawing and its margins', async () => {
    const drawing = sample('chalk-bag.draft');
    const pages = await readPdf((await toPdf(drawing)).value);
    const { left, right } = drawing.frame;
    assert.equal(pages.length, 1);
    assert.ok(close(pages[0]!.width, (right - left + 2 * MARGIN_MM) * POINTS, 0.01));
    assert.equal(pages[0]!.lines.filter((line) => close(lengthOf(line) / POINTS, 100, 0.005)).length, 4);
  });

  it('takes titles with signs that mean something to a PDF, and letters the font does not have', async () => {
    const drawing = { ...sample('chalk-bag.draft'), title: 'Bag (50 %) <\\n> “Ärmel” 🧵 שק' };
    const [first] = await readPdf((await toPdf(drawing, { paper: A4 })).value);
    assert.ok(first!.words.some((words) => words.includes('(50 %)')));
  });
});
