/** The SVG as other programs read it: its lengths by another reader, its picture by two renderers, its names. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import { svgPathProperties } from 'svg-path-properties';
import { draw } from '../../server/drawing/draw';
import { bundledFont } from '../../server/drawing/bundled';
import { nest } from '../../server/drawing/nest';
import { toPng } from '../../server/drawing/png';
import { toSvg } from '../../server/drawing/svg';
import type { Drawing } from '../../server/drawing/model';
import { launchBrowser } from '../editor/browser.mjs';
import { drafts, patternOf } from '../support/faults';
import { readPng, type Picture } from '../support/png';
import { graded, sizedDrawings } from '../support/sheets-of-sizes';

/** Path data of every line by its identifier. */
const pathsOf = (svg: string): ReadonlyMap<string, string> =>
  new Map([...svg.matchAll(/<path id="([^"]+)" d="([^"]+)"/g)].map(([, id, d]) => [id!, d!]));

describe('an SVG in a vector program', () => {
  for (const path of drafts('.')) {
    it(`has the sewing lines of ${path} as long as they are drafted, by another reader of paths`, () => {
      const pattern = patternOf(path);
      const drawn = draw(pattern);
      const paths = pathsOf(toSvg(drawn));
      let compared = 0;
      for (const { name, edges, fold } of pattern.pieces) {
        if (!drawn.pieces.some((one) => one.name === name)) continue;
        for (const edge of edges) {
          if (edge.name === fold?.edge) continue;
          const d = paths.get(`piece-${name}.sewing.${edge.name}`);
          assert.ok(d, `${name}.${edge.name} is a line of that name`);
          const long = new svgPathProperties(d).getTotalLength();
          const off = Math.abs(long - edge.path.length);
          assert.ok(off < 0.01, `${name}.${edge.name}: ${long} mm, drafted ${edge.path.length} mm`);
          compared++;
        }
      }
      assert.ok(compared > 0 || pattern.pieces.length === 0);
    });
  }

  it('is one group a piece, with an identifier and a title, and every line has both', () => {
    for (const path of drafts('.')) {
      const drawn = draw(patternOf(path));
      const svg = toSvg(drawn);
      const pieces = [...svg.matchAll(/<g id="piece-[^."]+" class="piece"[^>]*>\n\s*<title>([^<]+)</g)];
      assert.deepEqual(
        pieces.map(([, title]) => title),
        drawn.pieces.map(({ spoken }) => spoken),
      );
      const lines = [...svg.matchAll(/<path id="[^"]+" d="[^"]*"(?:\/>|><title>([^<]*))/g)];
      assert.ok(lines.every(([, title]) => title !== undefined && title !== ''));
      const ids = [...svg.matchAll(/ id="([^"]*)"/g)].map(([, id]) => id);
      assert.equal(new Set(ids).size, ids.length, `${path}: every name once`);
    }
  });

  it('runs nothing, fetches nothing, and says its size in millimetres', () => {
    for (const folder of ['.', 'faults'])
      for (const path of drafts(folder)) {
        const svg = toSvg(draw(patternOf(path)));
        assert.doesNotMatch(
          svg,
          /<(script|style|image|foreignObject|use|iframe)|\bhref|url\(|\son\w+=|@import/,
        );
        const [, wide, high, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg)!;
        assert.deepEqual(box!.split(' ').slice(2), [wide, high]);
      }
  }).timeout(30_000);
});

/** Pixels across in which the two renderers are compared. */
const WIDE = 1500;

/** How dark the lightest and the darkest pixel about a place are. */
function around(picture: Picture, x: number, y: number): readonly [least: number, most: number] {
  let [least, most] = [255, 0];
  for (let v = Math.max(0, y - 1); v <= Math.min(picture.height - 1, y + 1); v++)
    for (let u = Math.max(0, x - 1); u <= Math.min(picture.width - 1, x + 1); u++) {
      const dark = picture.darkness(u, v);
      if (dark < least) least = dark;
      if (dark > most) most = dark;
    }
  return [least, most];
}

/** A pixel may be as dark as any of its neighbours in the other picture, give or take a third: anti-aliasing. */
const BLUR = 85;

/** Pixels of one picture that are darker or lighter than anything about that place in the other. */
function strays(one: Picture, other: Picture): string[] {
  const found: string[] = [];
  for (let y = 0; y < one.height; y++)
    for (let x = 0; x < one.width; x++) {
      const dark = one.darkness(x, y);
      if (Math.abs(dark - other.darkness(x, y)) <= BLUR) continue;
      const [least, most] = around(other, x, y);
      if (dark > most + BLUR || dark < least - BLUR)
        found.push(`${x} ${y}: ${dark}, about it ${least} to ${most}`);
    }
  return found;
}

describe('an SVG in two renderers', function () {
  this.timeout(60_000);
  let browser: Browser | undefined;

  before(async function () {
    const launched = await launchBrowser();
    browser = launched.browser;
    if (browser) return;
    process.stderr.write(
      `SKIPPED: no browser starts here (${launched.reasons?.join('; ')}): SVG in two renderers\n`,
    );
    this.skip();
  });

  after(() => browser?.close());

  async function inBrowser(svg: string, width: number, height: number): Promise<Picture> {
    const font = readFileSync(bundledFont()!).toString('base64');
    const style = `@font-face{font-family:'Noto Sans';src:url(data:font/ttf;base64,${font})}body{margin:0}text{text-rendering:geometricPrecision}svg{display:block;width:${width}px;height:${height}px}`;
    const page = await browser!.newPage({ viewport: { width, height } });
    await page.setContent(`<style>${style}</style>${svg.replace(/^<\?xml.*\n/, '')}`);
    await page.evaluate(() => document.fonts.ready.then(() => undefined));
    const bytes = await page.screenshot();
    await page.close();
    return readPng(bytes);
  }

  const samples: Readonly<Record<string, () => Drawing>> = {
    'a skirt': () => draw(patternOf('./harbour-skirt.draft')),
    'a laced bodice': () => draw(patternOf('./laced-bodice.draft')),
    'sizes on one another': () => nest(sizedDrawings(graded, ['S', 'M', 'L'])),
  };

  /** Pixels that stray, of how many. */
  async function compared(svg: string): Promise<{ readonly found: readonly string[]; readonly of: number }> {
    const { value } = await toPng(svg, { width: WIDE });
    const ours = readPng(value!);
    const theirs = await inBrowser(svg, ours.width, ours.height);
    assert.deepEqual([theirs.width, theirs.height], [ours.width, ours.height]);
    return { found: [...strays(ours, theirs), ...strays(theirs, ours)], of: ours.width * ours.height };
  }

  for (const [what, drawing] of Object.entries(samples)) {
    it(`is the same picture of ${what}: its lines within anti-aliasing, its words but for a pixel in 10,000`, async () => {
      const svg = toSvg(drawing());
      const lines = await compared(svg.replace(/<text [^>]*>[^<]*<\/text>/g, ''));
      assert.deepEqual(lines.found, []);
      const { found, of } = await compared(svg);
      assert.ok(
        found.length < of / 10_000,
        `${found.length} of ${of} pixels stray: ${found.slice(0, 5).join('; ')}`,
      );
    });
  }

  it('is told apart from a picture in which one line is missing', async () => {
    const drawn = draw(patternOf('./harbour-skirt.draft'));
    const [first, ...others] = drawn.pieces;
    const without = { ...first!, lines: first!.lines.filter(({ role }) => role !== 'grain') };
    const { value } = await toPng(toSvg(drawn), { width: WIDE });
    const ours = readPng(value!);
    const theirs = await inBrowser(
      toSvg({ ...drawn, pieces: [without, ...others] }),
      ours.width,
      ours.height,
    );
    assert.ok(strays(ours, theirs).length > 100);
  });
});
