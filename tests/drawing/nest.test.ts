/** Several sizes of a pattern on one another: what keeps still, what is shared, and how sizes are told apart. */
import assert from 'node:assert/strict';
import type { Drawing, DrawnLine, PieceDrawing } from '../../server/drawing/model';
import { lineTypeOf } from '../../server/drawing/lines';
import { nest } from '../../server/drawing/nest';
import { pathOf } from '../../server/drawing/path';
import { toSvg } from '../../server/drawing/svg';
import { drawing, line, piece, smallPiece, spot } from '../support/drawings';
import { graded, sizedDrawings } from '../support/sheets-of-sizes';

const SIZES = ['S', 'M', 'L'];
const nested = (): Drawing => nest(sizedDrawings(graded, SIZES));

function pieceIn(drawing: Drawing, name: string): PieceDrawing {
  const found = drawing.pieces.find((one) => one.name === name);
  assert.ok(found, `${name} is drawn`);
  return found;
}

const linesOf = ({ lines }: PieceDrawing, role: DrawnLine['role'], size?: string): readonly DrawnLine[] =>
  lines.filter((one) => one.role === role && one.ofSize === size);

/** A piece of one straight grain line and one outline, turned and moved on its paper. */
function turned(size: string, degrees: number, x: number, y: number, wide: number): Drawing {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const at = (u: number, v: number): readonly [number, number] => [x + c * u - s * v, y + s * u + c * v];
  const lines = [
    line('cutting', 'gore', spot(...at(0, 0)), [at(wide, 0), at(wide, 300), at(0, 300)], { closed: true }),
    line('grain', 'gore/grain', spot(...at(20, 50)), [at(20, 250)]),
  ];
  const corners = ['top', 'side'].map((name, i) => ({
    role: 'corner' as const,
    source: `gore/${name}`,
    name,
    at: spot(...at(i * wide, 0)),
  }));
  const frame = { left: 0, top: 0, right: 1, bottom: 1 };
  return drawing([piece('gore', frame, { lines, dots: corners })], { body: `hands ${size}` });
}

describe('sizes drawn on one another', () => {
  it('each keep their own outline, as wide as that size is alone', () => {
    const front = pieceIn(nested(), 'front');
    const widths = SIZES.map((size) => {
      const [cut, ...more] = linesOf(front, 'cutting', size);
      assert.equal(more.length, 0);
      const { minX, maxX } = pathOf(cut!).box;
      return maxX - minX;
    });
    // bust less 80 cm, and 1 cm allowance at the side; none at the fold
    assert.deepEqual(
      widths.map((mm) => Math.round(mm * 100) / 100),
      [90, 130, 170],
    );
  });

  it('keep still on the fold, whatever else moves', () => {
    const front = pieceIn(nested(), 'front');
    const folds = SIZES.map((size) => linesOf(front, 'fold', size)[0]!);
    assert.deepEqual(new Set(folds.map(({ start }) => start.x)), new Set([0]));
    assert.equal(Math.min(...folds.map((fold) => pathOf(fold).box.minY)), -10);
  });

  it('are laid with their grain parallel, from one corner, however each lies on its paper', () => {
    const gore = pieceIn(
      nest([
        { size: 'S', drawing: turned('S', 0, 0, 0, 100) },
        { size: 'L', drawing: turned('L', 25, 700, -40, 140) },
      ]),
      'gore',
    );
    const { minX, minY, maxX, maxY } = pathOf(linesOf(gore, 'cutting', 'L')[0]!).box;
    [minX, minY, maxX, maxY].forEach((mm, i) =>
      assert.ok(Math.abs(mm - [0, 0, 140, 300][i]!) < 0.01, `${[minX, minY, maxX, maxY].join(' ')}`),
    );
    const { left, top, right, bottom } = gore.frame;
    assert.ok(left <= 0 && top <= 0 && right >= 140 && bottom >= 300, 'the frame holds all of it');
    assert.ok(right < 150 && bottom < 310 && left > -10 && top > -10);
  });

  it('share what is alike in all of them, which is drawn once and belongs to none', () => {
    const patch = pieceIn(nested(), 'patch');
    assert.equal(linesOf(patch, 'cutting').length, 1);
    assert.ok(patch.lines.every(({ ofSize }) => ofSize === undefined));
    assert.ok(patch.texts.every(({ role }) => role !== 'size'));
  });

  it('have one label, which names them all, and one grain line', () => {
    const front = pieceIn(nested(), 'front');
    assert.deepEqual(
      front.texts.filter(({ role }) => role !== 'size').map(({ text }) => text),
      ['front', 'Deck bucket', 'sizes S, M, L', 'cut 1 on fold'],
    );
    assert.equal(front.lines.filter(({ role }) => role === 'grain').length, 1);
    assert.equal(nested().body, 'hands, sizes S, M, L');
  });

  it('leave their sewing lines out beside a cutting line, unless they are asked for', () => {
    const without = pieceIn(nested(), 'front');
    assert.ok(without.lines.every(({ role }) => role !== 'sewing'));
    const asked = pieceIn(nest(sizedDrawings(graded, SIZES), { sewing: true }), 'front');
    assert.ok(linesOf(asked, 'sewing', 'M').length > 0);
  });

  it('are each written nearer to their own line than to any other', () => {
    const front = pieceIn(nested(), 'front');
    const words = front.texts.filter(({ role }) => role === 'size');
    assert.deepEqual(
      words.map(({ text }) => text),
      SIZES,
    );
    for (const { text, at } of words) {
      const away = SIZES.map((size) => pathOf(linesOf(front, 'cutting', size)[0]!).locate(at).distance);
      assert.equal(SIZES[away.indexOf(Math.min(...away))], text);
      assert.ok(Math.min(...away) < 5, `${text} stands ${Math.min(...away)} mm off its line`);
    }
  });

  it('look different, sixteen of them, each by its dash or its weight', () => {
    const sizes = Array.from({ length: 16 }, (_, i) => String(30 + 2 * i));
    const looks = sizes.map((size) => lineTypeOf({ role: 'cutting', ofSize: size }, sizes));
    const shares = looks.map(({ weight, dash }) => `${weight}: ${dash.join(' ')}`);
    assert.equal(new Set(shares).size, 16);
    looks.slice(1).forEach((look, i) => assert.notDeepEqual(look.dash, looks[i]!.dash));
  });

  it('lack a piece that only some of them have', () => {
    const both = drawing([smallPiece('pocket'), smallPiece('flap')], { body: 'hands S' });
    const one = drawing([smallPiece('pocket')], { body: 'hands L' });
    const made = nest([
      { size: 'S', drawing: both },
      { size: 'L', drawing: one },
    ]);
    assert.deepEqual(
      made.pieces.map(({ name }) => name),
      ['pocket', 'flap'],
    );
    assert.equal(linesOf(pieceIn(made, 'flap'), 'cutting', 'S').length, 1, 'it belongs to S alone');
  });

  it('are no nest when there is only one, and nothing when there is none', () => {
    const [only] = sizedDrawings(graded, ['M']);
    assert.equal(nest([only!]), only!.drawing);
    assert.deepEqual(nest([]).pieces, []);
  });

  it('of a piece that changed in none of them are laid together once', () => {
    const sized = sizedDrawings(graded, SIZES);
    const [front, patch] = nest(sized).pieces;
    const other = sizedDrawings(
      graded.replace('point patch-b = patch-a right 10cm', 'point patch-b = patch-a right 11cm'),
      SIZES,
    );
    const mixed = sized.map(({ size, drawing }, i) => ({
      size,
      drawing: { ...drawing, pieces: [drawing.pieces[0]!, other[i]!.drawing.pieces[1]!] },
    }));
    const again = nest(mixed).pieces;
    assert.equal(again[0], front);
    assert.notEqual(again[1], patch);
    assert.notEqual(nest(sized, { sewing: true }).pieces[0], front);
    assert.notEqual(nest(sized.slice(0, 2)).pieces[0], front);
  });

  it('are groups of their own in an SVG, each with its title, and rows of the key', () => {
    const svg = toSvg(nested());
    for (const size of SIZES) {
      assert.match(svg, new RegExp(`<title>front, size ${size}</title>`));
      assert.match(svg, new RegExp(`>size ${size}</text>`));
    }
    assert.equal(svg.match(/class="size"/g)?.length, 6, '3 groups, 3 words');
  });

  it('give the same bytes each time', () => assert.equal(toSvg(nested()), toSvg(nested())));
});
