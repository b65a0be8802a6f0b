/** DXF for other pattern programs and for cutters, read back by a reader that is not ours. */
import assert from 'node:assert/strict';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { draw } from '../../server/drawing/draw';
import { asciiOf, Names } from '../../server/drawing/dxf/ascii';
import { toDrawingDxf } from '../../server/drawing/dxf/drawing';
import { draftedSize, toExchangeDxf } from '../../server/drawing/dxf/exchange';
import { CHORD_TOLERANCE_MM } from '../../server/drawing/dxf/flat';
import { real } from '../../server/drawing/dxf/tags';
import type { LineRole, PieceDrawing } from '../../server/drawing/model';
import { nest } from '../../server/drawing/nest';
import { pathOf } from '../../server/drawing/path';
import type { Pattern } from '../../server/drafting/model';
import { areaOf, Path } from '../../server/geometry';
import { patternIn } from '../support/drafts';
import { drawing, piece, smallPiece } from '../support/drawings';
import { areaOfPolyline, boxOfEntities, dxfSummary, onLayer, readDxf, textsOf } from '../support/dxf';
import { drafts, patternOf } from '../support/faults';
import { graded, sizedDrawings } from '../support/sheets-of-sizes';

function exchange(patterns: readonly Pattern[], annotations: readonly string[] = []): string {
  const [first] = patterns;
  const sizes = patterns.map((pattern) => draftedSize(pattern, draw(pattern)));
  const sampleSize = first!.body?.size ?? first!.body?.name ?? '';
  return toExchangeDxf({ title: first!.title, sampleSize, sizes, annotations });
}

const inSizes = (text: string, sizes: readonly string[]): string =>
  exchange(sizes.map((size) => patternIn(text, {}, { for: { name: 'hands', size } })));

function blockOf(text: string, name: string) {
  const { blocks } = readDxf(text);
  const found = blocks.get(name);
  assert.ok(found, `${name} is a block, of ${[...blocks.keys()].join(', ')}`);
  return found;
}

const rolesIn = ({ lines }: PieceDrawing, role: LineRole) => lines.filter((line) => line.role === role);

/** A pattern of one square piece with other words in it. */
const square = (name: string, inside = '  grain from a to d\n  cut pair in silk\n  allow 1cm\n'): string =>
  `pattern "Deck bucket"
draft sheet {
  point a = origin
  point b = a right 10cm
  point c = b down 10cm
  point d = a down 10cm
}
piece ${name} of sheet {
${inside}  outline from a {
    top straight to b
    right-side straight to c
    foot straight to d
    left-side straight to a
  }
}
`;

const withoutWords = (text: string): string => text.replace(/ {2}0\r\nTEXT\r\n[\s\S]*?(?= {2}0\r\n)/g, '');

/** A golden of a few lines: what the file holds, and a hash of all of it but where its words stand. */
function golden(name: string, text: string): void {
  const file = fileURLToPath(new URL(`./goldens/${name}`, import.meta.url));
  const hash = createHash('sha256').update(withoutWords(text)).digest('hex');
  const now = `${dxfSummary(text)}sha256 ${hash}\n`;
  if (process.env.UPDATE_GOLDEN) writeFileSync(file, now);
  assert.equal(now, readFileSync(file, 'utf8'));
}

describe('DXF by ASTM D6673', () => {
  it('holds what its golden says', () => golden('bucket-exchange.txt', inSizes(graded, ['S', 'L'])));

  it('has one block for each size of each piece, in the order of the table, inserted once', () => {
    const text = inSizes(graded, ['S', 'M', 'L']);
    const names = ['front_S', 'front_M', 'front_L', 'patch_S', 'patch_M', 'patch_L'];
    const { blocks, entities } = readDxf(text);
    assert.deepEqual([...blocks.keys()], names);
    const inserts = entities.filter(({ type }) => type === 'INSERT');
    assert.deepEqual(
      inserts.map(({ name }) => name),
      names,
    );
  });

  it('says of the style and of each piece what the standard asks for', () => {
    const text = inSizes(graded, ['M']);
    assert.deepEqual(textsOf(readDxf(text).entities), [
      'STYLE NAME: Deck bucket',
      'AUTHOR: Draftwright',
      'SAMPLE SIZE: M',
      'UNITS: METRIC',
    ]);
    assert.deepEqual(textsOf(onLayer(blockOf(text, 'front_M'), '1')), [
      'PIECE NAME: front',
      'SIZE: M',
      'QUANTITY: 1',
      'ANNOTATION: cut 1 on fold',
    ]);
  });

  it('has the cutting line of a half closed along its fold, with y up, and the fold as mirror line', () => {
    const front = blockOf(inSizes(graded, ['M']), 'front_M');
    const [boundary, ...more] = onLayer(front, '1', 'POLYLINE');
    assert.equal(more.length, 0);
    // bust 92 cm less 80, and 1 cm; hip 91 cm less 60, and 1 cm at both ends
    assert.deepEqual(boxOfEntities([boundary!]), [0, -320, 130, 10]);
    assert.ok(Math.abs(areaOfPolyline(boundary!) - 130 * 330) < 0.01);
    const [fold] = onLayer(front, '6', 'LINE');
    assert.deepEqual(boxOfEntities([fold!]), [0, -320, 0, 10]);
  });

  it('has the sewing line of each edge but the fold, and the grain', () => {
    const front = blockOf(inSizes(graded, ['M']), 'front_M');
    const sewn = onLayer(front, '14');
    assert.equal(sewn.length, 3);
    assert.deepEqual(boxOfEntities(sewn), [0, -310, 120, 0]);
    assert.equal(onLayer(front, '7', 'LINE').length, 1);
  });

  it('calls the corners of straight lines turn points, and what lies on a curve curve points', () => {
    const patch = blockOf(inSizes(graded, ['M']), 'patch_M');
    const corners = onLayer(patch, '1', 'POLYLINE')[0]!.vertices!;
    const turns = onLayer(patch, '2', 'POINT').map(({ position }) => `${position!.x} ${position!.y}`);
    assert.ok(corners.every(({ x, y }) => turns.includes(`${x} ${y}`)));
    assert.equal(onLayer(patch, '3').length, 0);
    const sleeve = [...readDxf(exchange([patternOf('./sleeve.draft')])).blocks.values()][0]!;
    assert.ok(onLayer(sleeve, '3').length > 50, 'a sleeve head is a curve');
  });

  for (const path of drafts('.')) {
    it(`gives back the outlines, signs and counts of ${path}`, () => {
      const pattern = patternOf(path);
      const drawn = draw(pattern);
      const blocks = [...readDxf(exchange([pattern])).blocks.values()];
      assert.equal(blocks.length, drawn.pieces.length);
      drawn.pieces.forEach((one, i) => compareBlock(blocks[i]!, one));
    });
  }

  it('says what is wrong with a piece, and draws what is whole', () => {
    const bare = blockOf(exchange([patternIn(square('bib', ''))]), 'bib');
    assert.deepEqual(textsOf(onLayer(bare, '1')), [
      'PIECE NAME: bib',
      'ANNOTATION: not cut: the pattern does not say how many',
      'ANNOTATION: no cutting line could be had: the boundary is the sewing line',
      'ANNOTATION: no grain is stated',
    ]);
    assert.equal(areaOfPolyline(onLayer(bare, '1', 'POLYLINE')[0]!), 10_000);
    const gap = square('bib')
      .replace('left-side straight to a', 'left-side straight to e')
      .replace('point d =', 'point e = a down 1cm\n  point d =');
    assert.ok(
      textsOf(onLayer(blockOf(exchange([patternIn(gap)]), 'bib'), '1')).includes(
        'ANNOTATION: faulty: a gap of 10 mm between left-side and top',
      ),
    );
    const lost = exchange(
      [patternIn(graded)],
      ['sleeve is not drawn: it rests on something that has an error.'],
    );
    assert.ok(
      textsOf(readDxf(lost).entities).includes(
        'ANNOTATION: sleeve is not drawn: it rests on something that has an error.',
      ),
    );
  });

  it('counts what is cut of several cloths, and names them', () => {
    const inside = '  grain from a to d\n  cut pair in silk, 1 in coutil\n  allow 1cm\n';
    const words = textsOf(onLayer(blockOf(exchange([patternIn(square('bib', inside))]), 'bib'), '1'));
    assert.ok(words.includes('QUANTITY: 3'));
    assert.ok(words.includes('MATERIAL: silk, coutil'));
  });

  it('has both halves of what is cut open, and no mirror line for it', () => {
    const text = inSizes(graded.replace('cut 1 on fold', 'cut 1 open'), ['M']);
    const front = blockOf(text, 'front_M');
    assert.deepEqual(boxOfEntities(onLayer(front, '1', 'POLYLINE')), [-130, -320, 130, 10]);
    assert.equal(onLayer(front, '6').length, 0);
    assert.equal(onLayer(front, '14').length, 6);
  });

  it('has drill holes as points, and no circles for them', () => {
    const pattern = patternOf('./harbour-skirt.draft');
    const front = blockOf(exchange([pattern]), 'front_ferrywoman');
    assert.equal(onLayer(front, '13', 'POINT').length, 2);
    assert.ok(onLayer(front, '8').every(({ shape }) => shape !== true));
  });
});

/** A block holds as many of each kind as the drawing has, its areas to a hundredth of a square millimetre. */
function compareBlock(block: Parameters<typeof onLayer>[0], one: PieceDrawing): void {
  const count = (layer: string): number =>
    onLayer(block, layer, 'LINE').length + onLayer(block, layer, 'POLYLINE').length;
  assert.equal(count('14'), rolesIn(one, 'sewing').length, `${one.name}: sew lines`);
  assert.equal(onLayer(block, '4', 'POINT').length, rolesIn(one, 'notch').length, `${one.name}: notches`);
  assert.equal(onLayer(block, '11').length, rolesIn(one, 'hole').length, `${one.name}: holes`);
  assert.equal(onLayer(block, '6').length, rolesIn(one, 'fold').length, `${one.name}: fold`);
  assert.equal(onLayer(block, '7').length, rolesIn(one, 'grain').length, `${one.name}: grain`);
  const drilled = one.lines.filter((line) => line.drilled !== undefined);
  assert.equal(onLayer(block, '13', 'POINT').length, drilled.length, `${one.name}: drill holes`);
  const [cutting] = rolesIn(one, 'cutting');
  if (cutting === undefined) return;
  const path = pathOf(cutting);
  const closed = path.joinedTo(Path.line(path.end, path.start));
  const area = areaOfPolyline(onLayer(block, '1', 'POLYLINE')[0]!);
  const flat = areaOf([Path.polyline([...path.polyline(CHORD_TOLERANCE_MM), path.start])]);
  assert.ok(Math.abs(area - flat) < 0.01, `${one.name}: ${area} mm², flattened ${flat} mm²`);
  const off = Math.abs(area - areaOf([closed]));
  assert.ok(off < path.length * CHORD_TOLERANCE_MM, `${one.name}: ${off} mm² off the curves`);
}

describe('words in a DXF', () => {
  it('are seven bits, whatever the names are, and every name comes out as a block', () => {
    const name = 'mañana-מעיל';
    const inside = `  cut 1\n  allow 1cm\n  label "5 < 6 %%d “50 %” ½ × é 🧵 \\\\ ^J"\n`;
    const text = exchange([patternIn(square(name, inside).replace('Deck bucket', 'Kübel für’s Deck <&>'))]);
    assert.match(text, /^[\x20-\x7e\r\n]*$/);
    const { entities, blocks } = readDxf(text);
    assert.ok(textsOf(entities).includes("STYLE NAME: Kubel fur's Deck <&>"));
    const [[block, inBlock]] = [...blocks] as [[string, Parameters<typeof textsOf>[0]]];
    assert.match(block, /^manana-_*$/);
    assert.ok(textsOf(inBlock).includes('PIECE NAME: manana-????'));
    assert.ok(textsOf(inBlock).some((words) => words.startsWith('ANNOTATION: 5 < 6 % %d "50 %" 1/2 x e ?')));
  });

  it('are told apart where two names come to one, with 31 letters at most', () => {
    const names = ['köper', 'koper', `${'long-'.repeat(9)}a`, `${'long-'.repeat(9)}b`];
    const pieces = names.map((name) => square(name).replace(/^[\s\S]*?(?=piece )/, '')).join('\n');
    const text = exchange([patternIn(square('first') + pieces)]);
    const blocks = [...readDxf(text).blocks.keys()];
    assert.deepEqual(blocks.slice(0, 3), ['first', 'koper', 'koper-2']);
    assert.equal(blocks.length, 5);
    assert.ok(blocks.every((name) => name.length <= 31));
  });
});

describe('any words at all', () => {
  const anything = fc.string({
    unit: fc.nat(0xffff).map((code) => String.fromCharCode(code)),
    maxLength: 400,
  });

  it('become seven bits on one line, short enough, and begin no code', () => {
    fc.assert(
      fc.property(anything, (words) => {
        const plain = asciiOf(words);
        assert.match(plain, /^[ -~]{0,255}$/);
        assert.doesNotMatch(plain, /%%|[\\^{}]/);
      }),
    );
  });

  it('become names that a reader takes, each once', () => {
    fc.assert(
      fc.property(fc.array(anything, { maxLength: 12 }), (all) => {
        const names = new Names();
        const found = all.map((words) => names.of(words));
        found.forEach((name) => assert.match(name, /^[A-Za-z0-9_$-]{1,31}$/));
        assert.equal(new Set(found.map((name) => name.toUpperCase())).size, all.length);
      }),
    );
  });

  it('and any number is one that a reader takes', () => {
    for (const value of [NaN, Infinity, -Infinity, 1e300, -1e300, -1e-9, 0, 1 / 3])
      assert.match(real(value), /^-?\d+\.\d{1,6}$/, String(value));
    assert.deepEqual([real(-1e-9), real(1 / 3), real(12)], ['0.0', '0.333333', '12.0']);
  });
});

describe('two pieces of one name', () => {
  it('are a fault of the pattern, and the file is whole', () => {
    const twice = square('bib') + square('bib').replace(/^[\s\S]*?(?=piece )/, '');
    const pattern = patternIn(twice);
    assert.equal(readDxf(exchange([pattern])).blocks.size, draw(pattern).pieces.length);
    assert.ok(readDxf(toDrawingDxf(draw(pattern))).entities.length >= 3);
  });
});

describe('the form of a DXF', () => {
  const text = inSizes(graded, ['M']);

  it('is lines ended by CR LF; the reader takes LF as well', () => {
    assert.equal(text.replace(/\r\n/g, '').search(/[\r\n]/), -1);
    assert.ok(text.endsWith('  0\r\nEOF\r\n'));
    assert.equal(dxfSummary(text.replace(/\r\n/g, '\n')), dxfSummary(text));
  });

  it('is codes in three columns, and numbers with a point and no exponent', () => {
    const lines = text.split('\r\n');
    for (let i = 0; i + 1 < lines.length; i += 2) {
      assert.match(lines[i]!, /^[ \d]{2}\d$/);
      const code = Number(lines[i]);
      if (code >= 10 && code < 60) assert.match(lines[i + 1]!, /^-?\d+\.\d{1,6}$/);
      assert.notEqual(lines[i + 1], '-0.0');
    }
  });

  it('is the same bytes each time', () => assert.equal(inSizes(graded, ['M']), text));
});

describe('DXF as a plain drawing', () => {
  it('of two sizes holds what its golden says', () =>
    golden('bucket-drawing.txt', toDrawingDxf(nest(sizedDrawings(graded, ['S', 'L'])))));

  it('has its lines on layers named by what they are, each of them as long as it is drawn', () => {
    const drawn = draw(patternOf('./crew-shirt.draft'));
    const { entities } = readDxf(toDrawingDxf(drawn));
    const cut = onLayer(entities, 'CUTTING', 'POLYLINE');
    const lines = drawn.pieces.flatMap((one) => rolesIn(one, 'cutting'));
    assert.equal(cut.length, lines.length);
    cut.forEach(({ vertices = [], shape = false }, i) => {
      const around = shape ? [...vertices, vertices[0]!] : vertices;
      const long = around
        .slice(1)
        .reduce((sum, p, k) => sum + Math.hypot(p.x - around[k]!.x, p.y - around[k]!.y), 0);
      assert.ok(Math.abs(long - pathOf(lines[i]!).length) < 0.05, `${lines[i]!.name}: ${long}`);
    });
    const sewn = drawn.pieces.flatMap((one) => rolesIn(one, 'sewing'));
    assert.equal(onLayer(entities, 'SEWING').length, sewn.length);
  });

  it('lays the pieces beside each other, and below them a test square of 100 mm', () => {
    const drawn = draw(patternIn(graded));
    const { entities } = readDxf(toDrawingDxf(drawn));
    const [left, bottom, right, top] = boxOfEntities(onLayer(entities, 'TEST-SQUARE', 'POLYLINE'));
    assert.deepEqual([right! - left!, top! - bottom!], [100, 100]);
    const cut = boxOfEntities(onLayer(entities, 'CUTTING'));
    assert.ok(top! < cut[1]!);
    assert.deepEqual([cut[0], cut[2], cut[3]], [0, drawn.frame.right, 0]);
  });

  it('has a square of 4 inches for a pattern in inches', () => {
    const { entities } = readDxf(toDrawingDxf({ ...drawing([smallPiece()]), unit: 'in' }));
    const [left, , right] = boxOfEntities(onLayer(entities, 'TEST-SQUARE', 'POLYLINE'));
    assert.ok(Math.abs(right! - left! - 101.6) < 1e-6);
  });

  it('has a layer for each size of a nest, in its own line type', () => {
    const text = toDrawingDxf(nest(sizedDrawings(graded, ['S', 'M', 'L'])));
    const { layers, entities } = readDxf(text);
    for (const size of ['S', 'M', 'L']) {
      assert.ok(layers.includes(`CUTTING_${size}`));
      assert.equal(onLayer(entities, `CUTTING_${size}`).length, 1);
      assert.deepEqual(textsOf(onLayer(entities, `WORDS_${size}`)), [size]);
    }
    assert.match(text, /LTYPE\r\n {2}2\r\nCUTTING_M\r\n/);
  });

  it('says every layer that is drawn on in its table', () => {
    const { layers, entities } = readDxf(toDrawingDxf(draw(patternOf('./laced-bodice.draft'))));
    assert.deepEqual(
      new Set(entities.map(({ layer }) => layer)),
      new Set(layers.filter((name) => name !== '0')),
    );
  });

  it('is a file that can be read, even of nothing', () => {
    assert.equal(readDxf(toDrawingDxf(drawing([]))).entities.length, 3, 'the test square and its words');
    const empty = piece('nothing', { left: 0, top: 0, right: 0, bottom: 0 });
    assert.equal(readDxf(toDrawingDxf(drawing([empty]))).entities.length, 3);
  });
});

describe('every pattern, sound or not', () => {
  for (const folder of ['.', 'faults']) {
    it(`of samples/${folder} is written in both kinds of DXF and read back`, () => {
      for (const path of drafts(folder)) {
        const pattern = patternOf(path);
        const { pieces } = draw(pattern);
        assert.equal(readDxf(exchange([pattern])).blocks.size, pieces.length, path);
        assert.ok(readDxf(toDrawingDxf(draw(pattern))).entities.length >= 3, path);
      }
    }).timeout(60_000);
  }
});
