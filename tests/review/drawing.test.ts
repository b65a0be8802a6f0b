/** The drawing of a change, read back with a parser that is not ours: what is there, where, and what it means without colour. */
import assert from 'node:assert/strict';
import { XMLParser } from 'fast-xml-parser';
import { plateDocument, platesOf, compare, rowsOf } from '../../server/review';
import { apron, apronWith } from '../support/apron';
import { taken } from '../support/compared';

interface Node {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Node[];
  readonly text: string;
}

function parsed(svg: string): Node {
  const parser = new XMLParser({ ignoreAttributes: false, preserveOrder: true, attributeNamePrefix: '' });
  const convert = (raw: Record<string, unknown>): Node => {
    const name = Object.keys(raw).find((key) => key !== ':@') ?? '';
    const inside = Array.isArray(raw[name]) ? (raw[name] as Record<string, unknown>[]) : [];
    return {
      name,
      attributes: (raw[':@'] ?? {}) as Record<string, string>,
      children: inside.map(convert),
      text: inside.map((one) => String(one['#text'] ?? '')).join(''),
    };
  };
  return convert(parser.parse(svg).find((one: object) => 'svg' in one));
}

const all = (node: Node): Node[] => [node, ...node.children.flatMap(all)];
const withClass = (node: Node, name: string): Node[] =>
  all(node).filter(({ attributes }) => attributes.class === name);

function drawnChange(before: string, after: string) {
  const [was, now] = [taken(before), taken(after)];
  const review = compare(was, now);
  const plates = platesOf(review, was, now);
  return { review, plates, svg: parsed(plateDocument('a change', plates)) };
}

const narrow = apronWith('width = 60cm', 'width = 58cm');

describe('the drawing of a change', () => {
  it('draws what stayed thin, what was dashed and what is heavier', () => {
    const { svg } = drawnChange(apron, narrow);
    const plate = withClass(svg, 'plate')[0]!;
    const looks = (look: string) => withClass(plate, look).map(({ attributes }) => attributes);
    const weight = (look: string) => Math.max(...looks(look).map((one) => Number(one['stroke-width'])));
    assert.ok(weight('same') < weight('was') && weight('was') < weight('now'));
    assert.ok(looks('was').every((one) => one['stroke-dasharray'] !== undefined));
    assert.ok(looks('now').every((one) => one['stroke-dasharray'] === undefined));
    assert.deepEqual(
      looks('now').map(({ d }) => d),
      ['M580 0L580 500'],
    );
    assert.equal(
      withClass(plate, 'same').filter(({ attributes }) => attributes.d === 'M0 500L0 0').length,
      1,
    );
  });

  it('hatches what was lost and what was gained in two ways', () => {
    const { svg } = drawnChange(apron, narrow);
    const [lost] = withClass(svg, 'lost');
    assert.equal(lost!.attributes.fill, 'url(#hatch-lost)');
    assert.deepEqual(withClass(svg, 'gained'), []);
    const back = drawnChange(narrow, apron).svg;
    assert.equal(withClass(back, 'gained')[0]!.attributes.fill, 'url(#hatch-gained)');
    const hatches = all(svg).filter(({ name }) => name === 'pattern');
    assert.deepEqual(
      hatches.map(({ attributes }) => attributes.patternTransform),
      ['rotate(45)', 'rotate(-45)'],
    );
    const dashes = hatches.map(({ children }) => children[0]!.attributes['stroke-dasharray'] !== undefined);
    assert.deepEqual(dashes, [true, false]);
  });

  it('bears a mark for every row that has a place, and no two of them lie on each other', () => {
    const { review, svg, plates } = drawnChange(apron, narrow);
    const rows = review.pieces
      .flatMap((one) => rowsOf(one, review.unit))
      .filter(({ at }) => at !== undefined);
    const marks = withClass(svg, 'mark').map(({ attributes }) => attributes['data-row']);
    assert.deepEqual(
      marks,
      rows.map(({ mark }) => mark),
    );
    for (const { marks: placed, size } of plates)
      placed.forEach((one, i) =>
        placed.slice(i + 1).forEach((other) => {
          assert.ok(
            Math.hypot(one.at.x - other.at.x, one.at.y - other.at.y) > 2 * size,
            `${one.mark} and ${other.mark}`,
          );
        }),
      );
  });

  it('points an arrow to where a point went', () => {
    const { svg } = drawnChange(apron, narrow);
    const tips = withClass(svg, 'arrow').map(
      ({ children }) => /^M([\d.]+ [\d.]+)L/.exec(children[1]!.attributes.d!)?.[1],
    );
    assert.deepEqual(tips, ['580 0', '580 500']);
  });

  it('uses no colour', () => {
    const { svg } = drawnChange(apron, narrow);
    const paints = new Set(all(svg).flatMap(({ attributes }) => [attributes.fill, attributes.stroke]));
    for (const paint of paints)
      assert.ok(paint === undefined || /^(none|#000|#fff|url\(#hatch-(lost|gained)\))$/.test(paint), paint);
  });

  it('lays a piece that was moved as well where it was before', () => {
    const moved = narrow.replace(
      'point waist-left = origin',
      'point waist-left = origin right 30cm down 7cm',
    );
    const { review, plates } = drawnChange(apron, moved);
    assert.deepEqual(
      review.pieces.map(({ words }) => words),
      [['reshaped']],
    );
    const [plate] = plates;
    const now = plate!.lines.filter(({ look, outline }) => look === 'now' && outline);
    assert.deepEqual(
      now.map(({ path }) => [path.start, path.end].map(({ x, y }) => [x, y])),
      [
        [
          [580, 0],
          [580, 500],
        ],
      ],
    );
  });
});
