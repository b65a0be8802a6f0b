/** The SVG export: full size, safe with any name, the same bytes each time. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { XMLParser, XMLValidator } from 'fast-xml-parser';
import { svgPathProperties } from 'svg-path-properties';
import { toSvg } from '../../server/drawing/svg';
import { arrowHeads, lineTypes, pathData } from '../../server/drawing/lines';
import { drawing, line, piece, skirt, smallPiece, spot } from '../support/drawings';

type Node = Record<string, unknown>;

const parser = new XMLParser({
  ignoreAttributes: false,
  attributeNamePrefix: '@',
  htmlEntities: true,
  trimValues: false,
});

/** The document as a plain tree, read by an XML reader that is not ours. */
function read(svg: string): Node {
  assert.equal(XMLValidator.validate(svg), true);
  return (parser.parse(svg) as { svg: Node }).svg;
}

/** Every element of a kind, wherever it stands. */
function all(tree: unknown, tag: string): Node[] {
  if (Array.isArray(tree)) return tree.flatMap((each) => all(each, tag));
  if (typeof tree !== 'object' || tree === null) return [];
  return Object.entries(tree).flatMap(([key, inside]) => {
    const here = key === tag ? (Array.isArray(inside) ? inside : [inside]) : [];
    return [...(here as Node[]), ...all(inside, tag)];
  });
}

function withClass(tree: unknown, name: string): Node[] {
  return all(tree, 'g').filter((g) => g['@class'] === name);
}

function golden(name: string): string {
  return fileURLToPath(new URL(`./goldens/${name}`, import.meta.url));
}

describe('drawing as SVG', () => {
  it('a small pattern is written as the golden says', () => {
    const svg = toSvg(drawing([smallPiece()]));
    if (process.env.UPDATE_GOLDEN) writeFileSync(golden('pocket.svg'), svg);
    assert.equal(svg, readFileSync(golden('pocket.svg'), 'utf8'));
  });

  it('a user unit is a millimetre, so that the drawing prints in full size', () => {
    const svg = read(toSvg(skirt(), { margin: 7 }));
    const [left, top, width, height] = String(svg['@viewBox']).split(' ').map(Number);
    assert.deepEqual([left, top], [-7, -7]);
    assert.equal(svg['@width'], `${width}mm`);
    assert.equal(svg['@height'], `${height}mm`);
  });

  it('a bare drawing is as large as its pieces and its margin', () => {
    const svg = read(toSvg(drawing([smallPiece()]), { margin: 5, bare: true }));
    assert.deepEqual([svg['@width'], svg['@height']], ['110mm', '70mm']);
    assert.equal(withClass(svg, 'legend').length, 0);
  });

  it('a curve keeps its length through the path data', () => {
    // A quarter circle of 100 mm by the usual cubic, 4/3 (√2 - 1): within 0.03 % of π/2 · 100.
    const k = (400 * (Math.SQRT2 - 1)) / 3;
    const quarter = line('sewing', 'cloak/hem', spot(100, 0), [[100, k, k, 100, 0, 100]]);
    const [path] = withClass(
      read(
        toSvg(drawing([piece('cloak', { left: 0, top: 0, right: 100, bottom: 100 }, { lines: [quarter] })])),
      ),
      'sewing',
    );
    const length = new svgPathProperties(String((path!.path as Node)['@d'])).getTotalLength();
    assert.ok(Math.abs(length - (Math.PI / 2) * 100) < 0.05, String(length));
  });

  it('lines are grouped by what they are, with the weight and dash of their type', () => {
    const svg = read(toSvg(skirt()));
    const cutting = withClass(svg, 'cutting')[0]!;
    const sewing = withClass(svg, 'sewing')[0]!;
    assert.deepEqual([cutting['@stroke-width'], cutting['@stroke-dasharray']], ['0.7', undefined]);
    assert.deepEqual([sewing['@stroke-width'], sewing['@stroke-dasharray']], ['0.35', '4.2 1.05']);
  });

  it('one ink draws everything: black on white, without style sheet, script or anything from outside', () => {
    const svg = toSvg(skirt());
    const colours = new Set([...svg.matchAll(/(?:fill|stroke)="([^"]*)"/g)].map((found) => found[1]));
    assert.deepEqual(colours, new Set(['#000', '#fff', 'none']));
    assert.doesNotMatch(svg, /<style|<script|href|url\(|onload/);
  });

  it('construction is drawn on demand only', () => {
    assert.equal(withClass(read(toSvg(skirt())), 'construction').length, 0);
    assert.equal(withClass(read(toSvg(skirt(), { construction: true })), 'construction').length, 1);
  });

  it('the test square of a metric pattern measures 100 mm and lies below every piece', () => {
    const svg = read(toSvg(skirt()));
    const square = withClass(svg, 'test-square')[0]!;
    assert.deepEqual([(square.rect as Node)['@width'], (square.rect as Node)['@height']], ['100', '100']);
    assert.ok(JSON.stringify(square).includes('measure before you cut'));
    const top = Number(/translate\(\S+ (\S+)\)/.exec(String(withClass(svg, 'legend')[0]!['@transform']))![1]);
    assert.ok(top > skirt().frame.bottom);
  });

  it('the test square of a pattern in inches measures 4 inches', () => {
    const svg = read(toSvg({ ...skirt(), unit: 'in' }));
    assert.equal((withClass(svg, 'test-square')[0]!.rect as Node)['@width'], '101.6');
  });

  it('a narrow drawing is widened so that its test square is whole', () => {
    const svg = read(toSvg(drawing([smallPiece()])));
    const width = Number(String(svg['@viewBox']).split(' ')[2]);
    assert.ok(width >= 100 + 200, String(width));
  });

  it('a drawing without pieces still is a document that says its name', () => {
    const svg = read(toSvg(drawing([], { title: 'Nothing yet' })));
    assert.equal(svg.title, 'Nothing yet, for ferrywoman');
  });

  it('names with signs of XML, right-to-left letters and emoji come through as text', () => {
    const words = '5 < 6 & "50 %" \'x\' מעיל معطف 🧵 ]]> </svg><script>';
    const made = smallPiece();
    const svg = toSvg(
      drawing([{ ...made, spoken: words, texts: made.texts.map((t) => ({ ...t, text: words })) }]),
    );
    assert.doesNotMatch(svg, /<script/);
    const tree = read(svg);
    assert.ok(all(tree, 'text').some((node) => node['#text'] === words));
    assert.ok(withClass(tree, 'piece').some((node) => node.title === words));
  });

  it('characters that XML cannot hold are replaced, whatever the name', () => {
    const anyCodeUnit = fc.nat(0xffff).map((unit) => String.fromCharCode(unit)); // lone surrogates too
    fc.assert(
      fc.property(fc.string({ unit: anyCodeUnit, maxLength: 12 }), (name) => {
        const svg = toSvg(drawing([{ ...smallPiece('p'), name, spoken: name }], { title: name }), {
          bare: true,
        });
        return XMLValidator.validate(svg) === true && Buffer.from(svg, 'utf8').toString('utf8') === svg;
      }),
    );
  });

  it('two pieces never share an identifier', () => {
    const svg = toSvg(drawing([smallPiece('köper'), smallPiece('koper'), smallPiece('k_f6_per')]));
    const ids = [...svg.matchAll(/id="([^"]*)"/g)].map((found) => found[1]);
    assert.equal(new Set(ids).size, ids.length);
    assert.equal(ids.filter((id) => !id!.includes('.')).length, 3);
  });

  it('the same drawing gives the same bytes', () => {
    assert.equal(toSvg(skirt()), toSvg(skirt()));
  });
});

describe('line types', () => {
  it('wide lines are twice as wide as narrow ones, as ISO 128 asks', () => {
    assert.equal(lineTypes.cutting.weight / lineTypes.sewing.weight, 2);
  });

  it('every weight is one of the ISO 128 series', () => {
    const series = [0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4, 2]; // ISO 128-20, clause 5.1, from memory
    for (const { weight } of Object.values(lineTypes)) assert.ok(series.includes(weight), String(weight));
  });

  it('arrow heads point outward at both ends of the grain', () => {
    const heads = arrowHeads(line('grain', 'a/grain', spot(0, 0), [[0, 50]], { arrows: 'both' }));
    assert.deepEqual(heads, [
      { at: spot(0, 50), turn: 90 },
      { at: spot(0, 0), turn: -90 },
    ]);
  });

  it('a curve that ends in a doubled control point still has an arrow along its course', () => {
    const [head] = arrowHeads(line('fold', 'a/f', spot(0, 0), [[10, 0, 30, 30, 30, 30]], { arrows: 'end' }));
    assert.ok(Math.abs(head!.turn - (Math.atan2(30, 20) * 180) / Math.PI) < 1e-9);
  });

  it('a line without length has no arrow', () => {
    assert.deepEqual(arrowHeads(line('grain', 'a/grain', spot(3, 3), [[3, 3]], { arrows: 'both' })), []);
  });

  it('path data never shows a negative zero or more than thousandths', () => {
    assert.equal(pathData(line('mark', 'a/m', spot(-0.0001, 1 / 3), [[2e-7, 5]])), 'M0 0.333L0 5');
  });
});
