/** Pieces packed closely: on papers and on rolls, turned where that helps, and never over each other. */
import assert from 'node:assert/strict';
import { fits, onRoll, onSheets, roomOn } from '../../server/drawing/paper/arrange';
import { mappedPiece, quarterTurned } from '../../server/drawing/paper/mapped';
import { packed, type Item, type Laid } from '../../server/drawing/paper/pack';
import { identity } from '../../server/geometry';
import { rollNamed, type Roll } from '../../server/drawing/paper/papers';
import { drawing, piece, skirt, smallPiece } from '../support/drawings';
import { random } from '../support/random';

const roll = (width: number): Roll => ({ name: `roll of ${width}mm`, width, roll: true });
const frame = (right: number, bottom: number) => ({ left: 0, top: 0, right, bottom });

function boxes(items: readonly Item[], spots: readonly (Laid | undefined)[]) {
  return items.flatMap(({ wide, high }, i) => {
    const spot = spots[i];
    if (spot === undefined) return [];
    const [w, h] = spot.turned ? [high, wide] : [wide, high];
    return [{ left: spot.x, top: spot.y, right: spot.x + w, bottom: spot.y + h }];
  });
}

describe('packing', () => {
  it('lays a hundred strips of rectangles, none nearer to another than the gap', () => {
    const next = random(1780);
    for (let round = 0; round < 100; round++) {
      const items = Array.from({ length: 12 }, () => ({ wide: 20 + next(380), high: 20 + next(380) }));
      const order = items.map((_, i) => i);
      const { spots, height } = packed(items, order, { wide: 500, gap: 10, turning: 'freely' });
      const all = boxes(items, spots);
      assert.equal(all.length, items.length);
      all.forEach((a, i) => {
        assert.ok(a.right <= 500 + 1e-6 && a.bottom <= height + 1e-6);
        for (const b of all.slice(i + 1)) {
          const apart = Math.max(b.left - a.right, a.left - b.right, b.top - a.bottom, a.top - b.bottom);
          assert.ok(apart >= 10 - 1e-6, `${apart} apart in round ${round}`);
        }
      });
    }
  });

  it('leaves out what is wider than the strip, and lays the others', () => {
    const items = [
      { wide: 600, high: 600 },
      { wide: 100, high: 100 },
    ];
    const { spots } = packed(items, [0, 1], { wide: 500, gap: 10, turning: 'freely' });
    assert.deepEqual(spots, [undefined, { x: 0, y: 0, turned: false }]);
  });
});

describe('a roll', () => {
  it('is named by its width and a unit, and a slip of the unit is said', () => {
    assert.deepEqual(rollNamed('roll 914mm'), { name: 'roll of 914mm', width: 914, roll: true });
    assert.equal((rollNamed('Roll 36in') as Roll).width, 914.4);
    assert.equal((rollNamed('roll:91.4cm') as Roll).width, 914);
    assert.match(rollNamed('roll') as string, /^A roll wants its width with a unit/);
    assert.match(rollNamed('roll 914') as string, /with a unit/);
    assert.match(rollNamed('roll 36mm') as string, /narrower than any .*Look at the unit/);
    assert.match(rollNamed('roll 914cm') as string, /wider than any/);
    assert.equal(rollNamed('A4'), undefined);
  });

  it('takes a piece that is too wide as it stands by its narrow side', () => {
    const long = drawing([piece('strip', frame(1500, 300))]);
    const [length] = onRoll(long, roll(610));
    assert.equal(length!.frame.bottom - length!.frame.top, 1500 + 2);
  });

  it('leaves out what fits no way, which is known beforehand', () => {
    const two = drawing([piece('cloak', frame(1300, 1200)), smallPiece()]);
    assert.equal(fits(two.pieces[0]!, roomOn(roll(914))), false);
    const [length] = onRoll(two, roll(914));
    assert.deepEqual(
      length!.pieces.map(({ name }) => name),
      ['pocket'],
    );
  });

  it('is cut into several lengths where one would be longer than a page of a PDF', () => {
    const many = drawing(Array.from({ length: 9 }, (_, i) => piece(`sail-${i}`, frame(850, 1200))));
    const lengths = onRoll(many, roll(914));
    assert.equal(lengths.length, 3);
    assert.equal(lengths.flatMap(({ pieces }) => pieces).length, 9);
    lengths.forEach(({ frame: { top, bottom } }) => assert.ok(bottom - top < 5080 - 200));
  });
});

describe('sheets of one size', () => {
  it('are as few as any rule of laying finds for all of them, and lack no piece', () => {
    // a sheet takes one square and one strip: two strips together would leave each square a sheet of its own
    const four = [piece('a', frame(100, 100)), piece('b', frame(100, 100)), piece('c', frame(100, 40))];
    const all = drawing([...four, piece('d', frame(100, 40))]);
    const sheets = onSheets(all, { wide: 100, high: 145 }, undefined, 5);
    assert.deepEqual(
      sheets.map(({ pieces }) => pieces.length),
      [2, 2],
    );
    const large = drawing([piece('sail', frame(200, 200)), ...four]);
    const names = onSheets(large, { wide: 100, high: 145 }, undefined, 5).flatMap(({ pieces }) => pieces);
    assert.deepEqual(names.map(({ name }) => name).sort(), ['a', 'b', 'c']);
  });
});

describe('a piece turned a quarter', () => {
  it('keeps every length, its frame and its words, and four quarters bring it back', () => {
    for (const one of skirt().pieces) {
      const turned = quarterTurned(one);
      const { left, top, right, bottom } = turned.frame;
      assert.ok(Math.abs(right - left - (one.frame.bottom - one.frame.top)) < 1e-9);
      assert.ok(Math.abs(bottom - top - (one.frame.right - one.frame.left)) < 1e-9);
      assert.deepEqual(
        turned.texts.map(({ text, size }) => [text, size]),
        one.texts.map(({ text, size }) => [text, size]),
      );
      const back = quarterTurned(quarterTurned(quarterTurned(turned)));
      const rounded = mappedPiece(one, identity);
      assert.deepEqual(back.lines, rounded.lines);
      assert.deepEqual(back.frame, rounded.frame);
    }
  });
});
