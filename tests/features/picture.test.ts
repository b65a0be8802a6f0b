/** The small picture of a hover: what it shows, read back as an image, and that no author's word gets into its markup. */
import assert from 'node:assert/strict';
import { Resvg } from '@resvg/resvg-js';
import { hover } from '../../server/features/hover';
import { asMarkdown, pictureOf, type Picture } from '../../server/features/picture';
import type { Pattern } from '../../server/drafting/model';
import { apron } from '../support/apron';
import { drafts, patternOf } from '../support/faults';
import { draftOf, namesOf } from '../support/features';

/** Dark dots in columns and rows of the picture, drawn by a library that is not ours. */
function inked({ svg }: Picture): { left: number; right: number; top: number; bottom: number; dots: number } {
  const { width, height, pixels } = new Resvg(svg).render();
  const found = { left: width, right: 0, top: height, bottom: 0, dots: 0 };
  for (let y = 4; y < height - 4; y++) {
    for (let x = 4; x < width - 4; x++) {
      if (pixels[(y * width + x) * 4]! > 96) continue;
      found.left = Math.min(found.left, x);
      found.right = Math.max(found.right, x);
      found.top = Math.min(found.top, y);
      found.bottom = Math.max(found.bottom, y);
      found.dots++;
    }
  }
  return found;
}

function shown(pattern: Pattern, source: string): Picture {
  const picture = pictureOf(pattern, pattern.info(source)!);
  assert.ok(picture !== undefined, source);
  return picture;
}

/** Nothing but paper, lines and dots, all of numbers. */
const PLAIN = /^<svg [\w=":/. ]+>(<(rect|path|circle|g)( [a-z-]+="[A-Za-z0-9#.() -]*")*\/?>|<\/g>)+<\/svg>$/;

describe('the small picture of a hover', () => {
  const { pattern } = draftOf(apron);

  it('shows a piece in its proportions', () => {
    const { left, right, top, bottom } = inked(shown(pattern, 'bib'));
    // 30cm by 25cm and its hems of 2cm all round, within a dot or two
    assert.ok(Math.abs((right - left) / (bottom - top) - 34 / 29) < 0.03);
  });

  it('shows a line alone, from end to end', () => {
    const { left, right, top, bottom } = inked(shown(pattern, 'bib-sheet/diagonal'));
    assert.ok(Math.abs((right - left) / (bottom - top) - 30 / 25) < 0.05);
  });

  it('shows an edge heavier than the piece that it belongs to', () => {
    const [edge, other] = ['bib/foot', 'bib/top'].map((source) => shown(pattern, source).svg);
    assert.equal(edge!.match(/stroke-width="3.2"/g)?.length, 1);
    assert.notEqual(edge, other);
    assert.equal(shown(pattern, 'bib').svg.includes('stroke-width="3.2"'), false);
  });

  it('is none of a point, a value or a measurement', () => {
    for (const source of ['sheet/hem-left', '=width'])
      assert.equal(pictureOf(pattern, pattern.info(source)!), undefined);
  });

  it('holds nothing but lines and numbers and is small, for everything of the wardrobe', () => {
    for (const path of drafts('.')) {
      const one = patternOf(path);
      const parts = one.pieces.flatMap(({ source, edges }) => [source, ...edges.map((edge) => edge.source)]);
      for (const source of parts) {
        const { svg } = shown(one, source);
        assert.match(svg, PLAIN);
        assert.ok(svg.length < 12_000, `${path} ${source}: ${svg.length}`);
      }
    }
  });

  it('is told in words that are no markup, and fetches nothing', () => {
    const text = apron.replaceAll('bib', 'b-ä');
    const draft = draftOf(text);
    const { pattern: other } = draft;
    const names = namesOf(draft);
    const found = hover(other, names, text, text.indexOf('piece b-ä') + 7)!;
    const markdown = asMarkdown(found.picture()!);
    assert.match(
      markdown,
      /^!\[b\\-ä, cut 1, 4 edges, [^\][()<>]*\]\(data:image\/svg\+xml;base64,[A-Za-z0-9+/=]+\)$/,
    );
  });
});
