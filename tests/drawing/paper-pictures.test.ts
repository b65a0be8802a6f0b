/**
 * Printed sheets beside each other, as two programs see them that know nothing of ours: PDFium as pictures, pdf.js as paths.
 * What is taped together must be the drawing.
 */
import assert from 'node:assert/strict';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Workshop } from '../../server/drafting/workshop';
import type { Drawing } from '../../server/drawing/model';
import { nested, sizedFacts, type SizedFacts } from '../../server/drawing/paper/nested';
import { paperNamed } from '../../server/drawing/paper/papers';
import { toPdf } from '../../server/drawing/paper/pdf';
import { printed, type Printed, type PrintedOptions } from '../../server/drawing/paper/printed';
import { MARGIN_MM, type MatchMark, type Tile, type Tiling } from '../../server/drawing/paper/tiles';
import { diskDoor } from '../support/door';
import { lengthOf, readPdf, type ReadPage, type Spot } from '../support/pdf';
import { rasterPages, type RasterPage } from '../support/raster';
import { root } from '../support/sources';

const folder = join(root, 'samples');
const at = (name: string) => pathToFileURL(join(folder, name)).href;
const pattern = (name: string) => new Workshop(diskDoor(folder)).pattern(at(name));
const A4 = paperNamed('A4')!;
const POINTS = 72 / 25.4;

/** The middle of the dark pixels of a row (or a column) within a stretch, weighed by how dark they are. */
function middleOf(dark: (i: number) => number, from: number, to: number): number {
  let [sum, moment] = [0, 0];
  for (let i = Math.floor(from); i <= Math.ceil(to); i++) {
    sum += dark(i);
    moment += dark(i) * (i + 0.5);
  }
  assert.ok(sum > 0, `something dark between ${from} and ${to}`);
  return moment / sum;
}

describe('sheets as pictures', function () {
  this.timeout(120_000);

  it('have a test square of 100.00 mm on A4 and on Letter, to a quarter of a pixel at 300 dots to the inch', async () => {
    const dots = 300;
    const drawing = printed(pattern('chalk-bag.draft')).drawing;
    for (const paper of [A4, paperNamed('Letter')!]) {
      const { value } = await toPdf(drawing, { paper });
      const [read] = await readPdf(value);
      const [picture] = await rasterPages(value, dots);
      const sides = read!.lines.filter((line) => Math.abs(lengthOf(line) / POINTS - 100) < 0.005);
      const [xs, ys] = [0, 1].map((k) => sides.flat().map((spot) => spot[k]!)) as [number[], number[]];
      // a picture has whole pixels, and the page is fitted into them
      const [px, py] = [picture!.width / read!.width, picture!.height / read!.height];
      const [x, top] = [Math.min(...xs) * px, picture!.height - Math.min(...ys) * py];
      const [mm, mmDown] = [px * POINTS, py * POINTS];
      // a quarter down, where no words stand
      const row = top - 75 * mmDown;
      const across = (i: number) => picture!.darkness(i, Math.round(row));
      const down = (i: number) => picture!.darkness(Math.round(x + 12 * mm), i);
      const wide = middleOf(across, x + 98 * mm, x + 102 * mm) - middleOf(across, x - 2 * mm, x + 2 * mm);
      const high =
        middleOf(down, top - 2 * mmDown, top + 2 * mmDown) -
        middleOf(down, top - 102 * mmDown, top - 98 * mmDown);
      assert.ok(Math.abs(wide - 100 * mm) < 0.25, `${wide / mm} mm wide on ${paper.name}`);
      assert.ok(Math.abs(high - 100 * mmDown) < 0.25, `${high / mmDown} mm high on ${paper.name}`);
    }
  });

  it('bear every cross where the neighbour bears it, to a tenth of a millimetre', async () => {
    const dots = 200;
    const { value, tiling } = await toPdf(printed(pattern('harbour-skirt.draft')).drawing, { paper: A4 });
    const pictures = (await rasterPages(value, dots)).slice(1);
    const { width, height } = tiling!.paper;
    let found = 0;
    for (const mark of tiling!.marks) {
      for (const name of mark.between) {
        const index = tiling!.tiles.findIndex((tile) => tile.name === name);
        const picture = pictures[index]!;
        const off = crossOff(
          mark,
          tiling!.tiles[index]!,
          picture,
          picture.width / width,
          picture.height / height,
        );
        assert.ok(off < 0.1, `${mark.between.join(' ')} on ${name}: ${off} mm off`);
        found++;
      }
    }
    assert.equal(found, 2 * tiling!.marks.length);
    assert.ok(found > 20);
  });

  it('make up the drawing when they are laid over each other', async () => {
    const dots = 60;
    const mm = dots / 25.4;
    const drawing = printed(pattern('neckerchief.draft')).drawing;
    const { value, tiling, drawing: laid } = await toPdf(drawing, { paper: A4, asLaid: true });
    const sheets = (await rasterPages(value, dots)).slice(1);
    const [whole] = await rasterPages((await toPdf(drawing)).value, dots);
    const { left, top, right, bottom } = drawing.frame;
    let [dark, lost] = [0, 0];
    for (let y = top + 1; y < bottom - 1; y += 1 / mm) {
      for (let x = left + 1; x < right - 1; x += 1 / mm) {
        const here = (x - left + MARGIN_MM) * mm;
        const there = (y - top + MARGIN_MM) * mm;
        if (whole!.darkness(Math.floor(here), Math.floor(there)) < 100) continue;
        dark++;
        if (!isDarkOn(sheets, tiling!, { x, y }, mm)) lost++;
      }
    }
    assert.equal(laid.frame.left, left - 1);
    assert.ok(dark > 500, `${dark} dark pixels`);
    assert.equal(lost, 0, `${lost} of ${dark} dark pixels are on no sheet`);
  });
});

/** How far from its place a cross is seen, mm: each arm by the middle of its dark pixels, where the other arm is not. */
function crossOff(
  { at: { x, y } }: MatchMark,
  { frame }: Tile,
  picture: RasterPage,
  mm: number,
  mmDown: number,
): number {
  const [px, py] = [(x - frame.left + MARGIN_MM) * mm, (y - frame.top + MARGIN_MM) * mmDown];
  const arms = [-3, -2.4, -1.8, 1.8, 2.4, 3];
  const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1]!;
  // a piece's line may cross one place of an arm, not most of them
  const rows = arms.map((arm) => (i: number) => picture.darkness(Math.floor(px + arm * mm), i));
  const columns = arms.map((arm) => (i: number) => picture.darkness(i, Math.floor(py + arm * mmDown)));
  const down = median(rows.map((dark) => middleOf(dark, py - 0.5 * mmDown, py + 0.5 * mmDown)));
  const across = median(columns.map((dark) => middleOf(dark, px - 0.5 * mm, px + 0.5 * mm)));
  return Math.max(Math.abs(across - px) / mm, Math.abs(down - py) / mmDown);
}

function isDarkOn(
  sheets: readonly RasterPage[],
  { tiles }: Tiling,
  spot: { x: number; y: number },
  mm: number,
): boolean {
  return tiles.some(({ frame }, i) => {
    const [x, y] = [(spot.x - frame.left + MARGIN_MM) * mm, (spot.y - frame.top + MARGIN_MM) * mm];
    // two pixels at most: both pictures round to their own grid
    for (let dx = -2; dx <= 2; dx++)
      for (let dy = -2; dy <= 2; dy++)
        if (sheets[i]!.darkness(Math.floor(x) + dx, Math.floor(y) + dy) > 40) return true;
    return false;
  });
}

/** A page's paths in millimetres of the drawing, as strings of their rounded places. */
function placesOf(page: ReadPage, toDrawing: (spot: Spot) => Spot): readonly (readonly number[])[] {
  return [...page.lines, ...page.curves].map((spots) => spots.flatMap((spot) => toDrawing(spot)));
}

describe('sheets as paths', function () {
  this.timeout(120_000);
  const names = ['harbour-skirt.draft', 'half-circle-cloak.draft', 'laced-bodice.draft'];

  it('show the drawing at one place, to 0.05 mm: every line and curve of it, on every sheet', async () => {
    for (const name of names) {
      const drawing = printed(pattern(name)).drawing;
      const { value, tiling } = await toPdf(drawing, { paper: A4, asLaid: true });
      const [whole] = await readPdf((await toPdf(drawing)).value);
      const wanted = placesOf(whole!, ([x, y]) => fromPage(drawing.frame, whole!, [x, y]));
      const sheets = (await readPdf(value)).slice(1);
      sheets.forEach((sheet, i) => {
        const { frame } = tiling!.tiles[i]!;
        const found = new Map<number, number[][]>();
        for (const path of placesOf(sheet, (spot) => fromPage(frame, sheet, spot)))
          found.set(keyOf(path), [...(found.get(keyOf(path)) ?? []), [...path]]);
        const missing = wanted.filter((path) => isInside(path, drawing) && !has(found, path));
        assert.equal(missing.length, 0, `${name}, sheet ${i}: ${missing[0]}`);
      });
    }
  });

  it('are clipped so that together they cover every line of the drawing', async () => {
    for (const name of names) {
      const { drawing, turn } = printed(pattern(name));
      const { value, tiling, drawing: laid } = await toPdf(drawing, { paper: A4, turn });
      const pages = (await readPdf(value)).slice(1);
      const clips = pages.map((page, i) => {
        const { frame } = tiling!.tiles[i]!;
        const [a, b] = page.clips[0]!.map((spot) => fromPage(frame, page, spot)) as [Spot, Spot];
        return {
          left: Math.min(a[0], b[0]),
          right: Math.max(a[0], b[0]),
          top: Math.min(a[1], b[1]),
          bottom: Math.max(a[1], b[1]),
        };
      });
      const shown = ([x, y]: Spot) =>
        clips.some((c) => x > c.left - 0.01 && x < c.right + 0.01 && y > c.top - 0.01 && y < c.bottom + 0.01);
      const [whole] = await readPdf((await toPdf(laid)).value);
      const spots = [...whole!.lines, ...whole!.curves].flatMap((path) => alongPath(path));
      const own = spots
        .map((spot) => fromPage(laid.frame, whole!, spot))
        .filter((spot) => isInside(spot, laid));
      assert.ok(own.length > 1000);
      assert.deepEqual(own.filter((spot) => !shown(spot)).slice(0, 3), [], name);
    }
  });
});

const fromPage = (frame: { left: number; top: number }, page: ReadPage, [x, y]: Spot): Spot => [
  x / POINTS - MARGIN_MM + frame.left,
  (page.height - y) / POINTS - MARGIN_MM + frame.top,
];

/** The heading below the drawing is none of it. */
const isInside = (path: readonly number[], { frame }: Drawing): boolean =>
  path.every((value, i) => (i % 2 === 0 ? value < frame.right + 1 : value < frame.bottom + 1));

/** Paths by the whole millimetre that they begin at, so that few are compared. */
const keyOf = ([x]: readonly number[], aside = 0): number => Math.round(x!) + aside;
const has = (found: ReadonlyMap<number, number[][]>, path: readonly number[]): boolean =>
  [-1, 0, 1].some((aside) =>
    (found.get(keyOf(path, aside)) ?? []).some(
      (other) => other.length === path.length && other.every((value, i) => Math.abs(value - path[i]!) < 0.05),
    ),
  );

/** Places every two points or so along a line or a curve. */
function alongPath(path: readonly Spot[]): Spot[] {
  const long = path
    .slice(1)
    .reduce((sum, [x, y], i) => sum + Math.hypot(x - path[i]![0], y - path[i]![1]), 0);
  const count = Math.max(1, Math.ceil(long / 2));
  return Array.from({ length: count + 1 }, (_, i) => {
    let spots = path;
    while (spots.length > 1)
      spots = spots.slice(1).map(([x, y], k): Spot => {
        const [px, py] = spots[k]!;
        return [px + ((x - px) * i) / count, py + ((y - py) * i) / count];
      });
    return spots[0]!;
  });
}

function inSizes(sizes: readonly string[], options: PrintedOptions = {}): Printed {
  const workshop = new Workshop(diskDoor(folder));
  const sized: SizedFacts[] = [];
  const choices = sizes.map((size) => ({
    for: { name: 'deckhand', size },
    set: new Map<string, string>(),
    size,
  }));
  workshop.pattern(at('crew-shirt.draft'));
  workshop.forEach(at('crew-shirt.draft'), choices, (drafted, { size }) => {
    sized.push(sizedFacts(drafted, size, sizes, options));
  });
  return nested(sized, options);
}

describe('sizes on one another', function () {
  this.timeout(60_000);

  it('are layers that a reader can show and hide, each with all that is its own', async () => {
    const sizes = ['S', 'M', 'XXL'];
    const { drawing, turn } = inSizes(sizes);
    const { value } = await toPdf(drawing, { turn });
    const [page] = await readPdf(value);
    const owned = (size: string) =>
      drawing.pieces
        .flatMap(({ lines, texts, dots }) => [
          ...lines,
          ...texts,
          ...dots.filter(({ role }) => role !== 'point'),
        ])
        .filter(({ ofSize }) => ofSize === size).length;
    assert.deepEqual(
      [...page!.layers].sort(),
      sizes.map((size) => [`size ${size}`, owned(size)] as const).sort(),
    );
    assert.ok(owned('XXL') > 20);
    const words = page!.words.join(' | ');
    assert.match(words, /for deckhand, sizes S, M, XXL/);
    assert.match(words, /Each size is cut along its own line/);
    // the lengths of an edge in the order of the sizes
    assert.match(words, /side 53\.6cm \/ 52\.8cm \/ [\d.]+cm, sewn to back side, allow 1cm/);
  });

  it('are named beside their lines also on a small sheet', async () => {
    const { drawing, turn } = inSizes(['S', 'L'], { scale: 5 });
    const { value } = await toPdf(drawing, { paper: A4, turn, scale: 5 });
    const words = (await readPdf(value)).flatMap((page) => page.words);
    for (const size of ['S', 'L']) {
      const named = words.filter((word) => word === size).length;
      assert.ok(named >= drawing.pieces.length, `${named} times ${size} on ${drawing.pieces.length} pieces`);
    }
  });

  it('is no layer where there is one size', async () => {
    const [page] = await readPdf((await toPdf(printed(pattern('chalk-bag.draft')).drawing)).value);
    assert.equal(page!.layers.size, 0);
  });
});
