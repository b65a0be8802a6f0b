/** Pieces laid on papers: none on another, no paper without anything on it, and what bears a piece holds together. */
import assert from 'node:assert/strict';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Workshop } from '../../server/drafting/workshop';
import type { Drawing, DrawnLine, DrawnText, Spot } from '../../server/drawing/model';
import { GAP_MM } from '../../server/drawing/paper/arrange';
import { connected } from '../../server/drawing/paper/connected';
import { namesOf } from '../../server/drawing/paper/crosses';
import { metrics } from '../../server/drawing/paper/font';
import { paperNamed } from '../../server/drawing/paper/papers';
import { toPdf } from '../../server/drawing/paper/pdf';
import { printed } from '../../server/drawing/paper/printed';
import { mapContent } from '../../server/drawing/paper/map';
import { MARGIN_MM, OVERLAP_MM, tilingOf, type Tiling } from '../../server/drawing/paper/tiles';
import { diskDoor } from '../support/door';
import { drawing, piece, smallPiece } from '../support/drawings';
import { readPdf } from '../support/pdf';
import { root } from '../support/sources';

const folder = join(root, 'samples');
const wardrobe = readdirSync(folder).filter((name) => name.endsWith('.draft'));
const PAPERS = ['A4', 'Letter'].map((name) => paperNamed(name)!);

const laidOnce = new Map<string, ReturnType<typeof laidOn>>();

/** A garment on one paper, laid once for all that is asked of it. */
function onPaper(name: string, paper = PAPERS[0]!): ReturnType<typeof laidOn> {
  const key = `${name} ${paper.name}`;
  const laid = laidOnce.get(key) ?? laidOn(name, paper);
  laidOnce.set(key, laid);
  return laid;
}

async function laidOn(name: string, paper: (typeof PAPERS)[number]) {
  const pattern = new Workshop(diskDoor(folder)).pattern(pathToFileURL(join(folder, name)).href);
  const { drawing, turn, off } = printed(pattern);
  const { value, tiling, drawing: laid } = await toPdf(drawing, { paper, turn, off });
  return { value, tiling: tiling!, laid };
}

/** Places along a line, no farther apart than two millimetres or so. */
function spotsOf({ start, stretches, closed }: DrawnLine): Spot[] {
  const spots: Spot[] = [start];
  const all = closed ? [...stretches, [start.x, start.y] as const] : stretches;
  for (const stretch of all) {
    const from = spots[spots.length - 1]!;
    const corners = [from.x, from.y, ...stretch];
    const long = corners.slice(2).reduce((sum, value, i) => sum + Math.abs(value - corners[i]!), 0);
    const parts = Math.max(1, Math.ceil(long / 2));
    for (let i = 1; i <= parts; i++) {
      const [t, u] = [i / parts, 1 - i / parts];
      const mix = (k: number): number =>
        stretch.length === 2
          ? u * corners[k]! + t * corners[k + 2]!
          : u ** 3 * corners[k]! +
            3 * u * u * t * corners[k + 2]! +
            3 * u * t * t * corners[k + 4]! +
            t ** 3 * corners[k + 6]!;
      spots.push({ x: mix(0), y: mix(1) });
    }
  }
  return spots;
}

/** Where the lines of each piece lie on the papers. */
const laidSpots = ({ pieces, placements }: Drawing, roles: (line: DrawnLine) => boolean) =>
  placements.map(({ piece, by }) => {
    const { lines } = pieces.find(({ name }) => name === piece)!;
    const spots = lines.filter(roles).flatMap(spotsOf);
    return { piece, spots: spots.map(({ x, y }) => ({ x: x + by.x, y: y + by.y })) };
  });

/** Places all over what the letters of a text cover, no farther apart than a millimetre. */
function lettersOf({ text, size, turn, at }: DrawnText, by: Spot): Spot[] {
  const wide = (metrics().widthOf(text) * size) / 0.714;
  const [across, down] = [Math.ceil(wide), Math.ceil(size * 1.25)];
  const angle = (turn * Math.PI) / 180;
  return Array.from({ length: (across + 1) * (down + 1) }, (_, i) => {
    const x = wide * ((i % (across + 1)) / across - 0.5);
    const y = size * (1.25 * (Math.floor(i / (across + 1)) / down) - 1);
    return {
      x: by.x + at.x + x * Math.cos(angle) - y * Math.sin(angle),
      y: by.y + at.y + x * Math.sin(angle) + y * Math.cos(angle),
    };
  });
}

const amid = ({ tiles, rows, columns }: Tiling): number => rows * columns - tiles.length;

describe('pieces on papers', function () {
  this.timeout(240_000);

  it('keep their distance, however they were moved together, in the whole wardrobe', async () => {
    for (const name of wardrobe) {
      const { laid } = await onPaper(name);
      const all = laidSpots(laid, ({ role }) => role === 'cutting');
      all.forEach(({ piece, spots }, i) =>
        all.slice(i + 1).forEach((other) => {
          const near = new Map(
            other.spots.map((spot) => [`${Math.round(spot.x / 10)} ${Math.round(spot.y / 10)}`, spot]),
          );
          for (const { x, y } of spots)
            for (const dx of [-1, 0, 1])
              for (const dy of [-1, 0, 1]) {
                const spot = near.get(`${Math.round(x / 10) + dx} ${Math.round(y / 10) + dy}`);
                if (spot === undefined) continue;
                const far = Math.hypot(spot.x - x, spot.y - y);
                assert.ok(far > GAP_MM - 0.1, `${name}: ${piece} and ${other.piece} are ${far} mm apart`);
              }
        }),
      );
    }
  });

  it('leave no paper empty: a line, a word or a dot is on each, and what is on none is nothing', async () => {
    for (const name of [
      'hooded-cloak.draft',
      'half-circle-cloak.draft',
      'circle-skirt.draft',
      'waistcoat.draft',
    ])
      for (const paper of PAPERS) {
        const { laid, tiling } = await onPaper(name, paper);
        const spots = laidSpots(laid, ({ role }) => role !== 'construction').flatMap((one) => one.spots);
        const words = laid.placements.flatMap(({ piece, by }) =>
          laid.pieces
            .find((one) => one.name === piece)!
            .texts.map(({ at }) => ({ x: at.x + by.x, y: at.y + by.y })),
        );
        for (const { name: sheet, frame } of tiling.tiles) {
          const on = ({ x, y }: Spot) =>
            x > frame.left && x < frame.right && y > frame.top && y < frame.bottom;
          assert.ok(spots.some(on) || words.some(on), `${name}: ${sheet} of ${paper.name} is empty`);
        }
        const lost = spots.filter(
          ({ x, y }) =>
            !tiling.tiles.some(
              ({ frame }) => x >= frame.left && x <= frame.right && y >= frame.top && y <= frame.bottom,
            ),
        );
        assert.deepEqual(lost.slice(0, 3), [], `${name} on ${paper.name}`);
      }
  });

  it('of a large piece the empty middle is left out, which the first sheet says', async () => {
    const { value, tiling } = await onPaper('half-circle-cloak.draft');
    assert.ok(amid(tiling) > 4, `${amid(tiling)} left out`);
    const [first] = await readPdf(value);
    assert.match(first!.words.join(' '), /Sheets in a dashed frame on the map are empty and not printed/);
    const [small] = await readPdf((await onPaper('chalk-bag.draft')).value);
    assert.doesNotMatch(small!.words.join(' '), /dashed frame/);
  });
});

describe('the map of the sheets', function () {
  this.timeout(240_000);

  it('names every piece and every sheet, and explains a name that is missing, in the whole wardrobe', async () => {
    let explained = 0;
    for (const name of wardrobe)
      for (const paper of PAPERS) {
        const { value, laid, tiling } = await onPaper(name, paper);
        const [first] = await readPdf(value);
        for (const one of [...laid.pieces, ...tiling.tiles])
          assert.ok(first!.words.includes(one.name), `${one.name} of ${name} on ${paper.name}`);
        const rows = [...new Set(tiling.tiles.map(({ row }) => row))];
        if (rows.every((row, i) => row === i)) continue;
        explained++;
        assert.match(
          first!.words.join(' '),
          /Sheets that the map leaves out, such as [A-Z]\d, would be empty/,
        );
      }
    assert.ok(explained > 0, 'a row is left out somewhere');
  });

  it('shows the whole of a sheet that no other one laps over', () => {
    const paper = PAPERS[0]!;
    const frame = { left: 0, top: 0, right: 370, bottom: 540 };
    // A1 and A2 side by side, B1 below the first
    const tiling = tilingOf(frame, paper, new Set([0, 1, 2]));
    const empty = { title: '', body: '', unit: 'cm' as const, pieces: [], placements: [], frame };
    const font = { glyphs: () => '<>', widthOf: (text: string) => text.length * 0.6 };
    const content = mapContent(empty, tiling, { x: 0, y: 0, wide: 37, high: 200 }, font);
    const boxes = [...content.matchAll(/^([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) re S$/gm)];
    const sizes = boxes.map(([, , , wide, high]) => [Number(wide), Number(high)]);
    // 190 by 277 mm between the margins, 10 mm of which the next one covers; a tenth of full size
    assert.deepEqual(sizes, [
      [18, 26.7],
      [19, 27.7],
      [19, 27.7],
    ]);
  });
});

describe('a piece without any line', () => {
  it('has no name on the map, which is made without it', () => {
    const frame = { left: 0, top: 0, right: 180, bottom: 200 };
    const drawn = drawing([piece('sketch', frame), smallPiece('pocket')]);
    const tiling = tilingOf(drawn.frame, PAPERS[0]!, new Set([0, 1]));
    const font = { glyphs: (text: string) => `<${text}>`, widthOf: (text: string) => text.length * 0.6 };
    const content = mapContent(drawn, tiling, { x: 0, y: 0, wide: 100, high: 200 }, font);
    assert.match(content, /<pocket>/);
    assert.doesNotMatch(content, /<sketch>/);
  });
});

describe('the name of a piece', function () {
  this.timeout(240_000);

  it('is cut by no join: it stands whole on one sheet, in the whole wardrobe', async () => {
    for (const name of wardrobe)
      for (const paper of PAPERS) {
        const { laid, tiling } = await onPaper(name, paper);
        for (const { piece, by } of laid.placements) {
          const { texts } = laid.pieces.find((one) => one.name === piece)!;
          const title = texts.find(({ role }) => role === 'title');
          const spots = lettersOf(title!, by);
          const isWhole = tiling.tiles.some(({ frame: { left, top, right, bottom } }) =>
            spots.every(({ x, y }) => x > left && x < right && y > top && y < bottom),
          );
          assert.ok(isWhole, `${piece} of ${name} on ${paper.name}`);
        }
      }
  });
});

describe('the rest of a label', function () {
  this.timeout(240_000);

  it('that stands far from the name of its piece begins with it once more', async () => {
    for (const paper of PAPERS)
      for (const name of ['princess-bodice.draft', 'crew-shirt.draft', 'chalk-bag.draft']) {
        const { laid } = await onPaper(name, paper);
        for (const { name: piece, texts } of laid.pieces) {
          const title = texts.find(({ role }) => role === 'title')!;
          const first = texts.find(({ role }) => role === 'detail')!;
          const far = Math.hypot(first.at.x - title.at.x, first.at.y - title.at.y);
          assert.ok(far < 60 || first.text.startsWith(piece), `${piece} on ${paper.name}: ${far} mm`);
        }
      }
  });
});

describe('the names beside a cross', function () {
  this.timeout(240_000);

  /** A point of a PDF, mm. */
  const MM = 25.4 / 72;

  it('are struck by no line of a piece and stand on no words, in the whole wardrobe', async () => {
    for (const name of wardrobe)
      for (const paper of PAPERS) {
        const { laid, tiling } = await onPaper(name, paper);
        const lines = laidSpots(laid, ({ role }) => role !== 'construction').flatMap(({ spots }) => spots);
        const words = laid.placements.flatMap(({ piece, by }) => {
          const { texts } = laid.pieces.find((one) => one.name === piece)!;
          return texts.flatMap((text) => lettersOf(text, by));
        });
        const rows = new Map<number, Spot[]>();
        for (const spot of [...lines, ...words]) {
          const row = Math.floor(spot.y / 10);
          rows.set(row, [...(rows.get(row) ?? []), spot]);
        }
        for (const mark of tiling.marks)
          for (const { text, x, y, wide } of namesOf(mark, metrics())) {
            const { frame } = tiling.tiles.find((tile) => tile.name === mark.between[0])!;
            const inCorner = !mark.beside && x + wide > frame.right - OVERLAP_MM;
            assert.ok(!inCorner, `${name} on ${paper.name}: ${text} stands on the next strip`);
            const near = [-1, 0, 1].flatMap((row) => rows.get(Math.floor(y / 10) + row) ?? []);
            const hit = near.find((one) => one.x > x && one.x < x + wide && one.y > y - 2.5 && one.y < y);
            assert.equal(hit, undefined, `${name} on ${paper.name}: ${text} of ${mark.between.join(' ')}`);
          }
      }
  });

  it('lie within the strip that both papers bear, and are printed where they are said to be', async () => {
    const { value, tiling } = await onPaper('two-piece-sleeve.draft');
    const pages = (await readPdf(value)).slice(1);
    for (const mark of tiling.marks)
      for (const { text, x, y, wide } of namesOf(mark, metrics()))
        for (const sheet of mark.between) {
          const { frame } = tiling.tiles.find((tile) => tile.name === sheet)!;
          assert.ok(x > frame.left && x + wide < frame.right, `${text} on ${sheet}`);
          assert.ok(y - 2.5 > frame.top && y < frame.bottom, `${text} on ${sheet}`);
          const { placed } = pages[tiling.tiles.findIndex((tile) => tile.name === sheet)]!;
          const [left, base] = [x - frame.left + MARGIN_MM, y - frame.top + MARGIN_MM];
          const there = placed.some(
            ({ text: one, at }) =>
              one === text && Math.abs(at[0] * MM - left) < 0.1 && Math.abs(at[1] * MM - base) < 0.1,
          );
          assert.ok(there, `${text} is printed on ${sheet}`);
        }
    assert.ok(new Set(tiling.marks.map(({ before, aside }) => `${before} ${aside}`)).size > 2);
  });
});

describe('papers that bear a piece', () => {
  it('hold together side to side: a jump over a corner or a gap is filled by the fewest', () => {
    const grid = { rows: 3, columns: 3 };
    const told = (needed: number[], pieces: number[][] = [needed]) =>
      [...connected(grid, new Set(needed), () => pieces.map((one) => new Set(one)))].sort((a, b) => a - b);
    assert.deepEqual(told([0, 1, 2]), [0, 1, 2]);
    assert.deepEqual(told([0, 2]), [0, 1, 2]);
    assert.equal(told([0, 4]).length, 3);
    // two pieces need not hold together
    assert.deepEqual(told([0, 8], [[0], [8]]), [0, 8]);
    assert.deepEqual(told([]), []);
  });
});
