/** The PNG export: the size that was asked for, true to scale, the same bytes each time. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { Drawing } from '../../server/drawing/model';
import { nest } from '../../server/drawing/nest';
import { toSvg } from '../../server/drawing/svg';
import { toPng } from '../../server/drawing/png';
import { drawing, line, skirt, smallPiece, spot } from '../support/drawings';
import { readPng, type Picture } from '../support/png';

async function picture(svg: string, options: Parameters<typeof toPng>[1]): Promise<Picture> {
  const { value, problems } = await toPng(svg, options);
  assert.deepEqual(problems, []);
  return readPng(value!);
}

/** A golden picture stays so small that it can be looked at in a review, bytes. */
const LARGEST_GOLDEN = 20 * 1024;

/** Pixel for pixel; the bytes of another packer may differ. */
async function golden(name: string, drawing: Drawing, width = 640): Promise<void> {
  const file = fileURLToPath(new URL(`./goldens/${name}`, import.meta.url));
  const { value } = await toPng(toSvg(drawing, { margin: 5 }), { width });
  if (process.env.UPDATE_GOLDEN) writeFileSync(file, value!);
  const bytes = readFileSync(file);
  assert.ok(bytes.length <= LARGEST_GOLDEN, `${name} has ${bytes.length} bytes`);
  const [is, was] = [readPng(value!), readPng(bytes)];
  assert.deepEqual([is.width, is.height], [was.width, was.height]);
  for (let y = 0; y < is.height; y++)
    for (let x = 0; x < is.width; x++)
      assert.equal(is.darkness(x, y), was.darkness(x, y), `${name} at ${x} ${y}`);
}

/** A pocket of some width, half as high, cut on the fold. */
function pocketOf(wide: number): Drawing {
  const made = smallPiece();
  const high = wide / 2;
  const cut = made.lines.map((one) =>
    one.role === 'cutting'
      ? {
          ...one,
          start: spot(0, high),
          stretches: [[wide, high] as const, [wide, 0] as const, [0, 0] as const],
          closed: false,
        }
      : one,
  );
  const fold = line('fold', 'pocket/centre', spot(0, high), [[0, 0]], { arrows: 'both' });
  return drawing([{ ...made, lines: [...cut, fold] }]);
}

describe('drawing as PNG', () => {
  it('a small pattern looks as its golden picture does', () => golden('pocket.png', drawing([smallPiece()])));

  it('two sizes on one another look as their golden picture does', () =>
    golden(
      'pockets.png',
      nest(['S', 'M', 'L'].map((size, i) => ({ size, drawing: pocketOf(100 + 20 * i) }))),
    ));

  it('the picture is as wide as asked', async () => {
    const { width, height } = await picture(toSvg(skirt()), { width: 640 });
    assert.equal(width, 640);
    assert.ok(height > 300 && height < 640, String(height));
  });

  it('the test square is true to scale: 1000 pixels a side at 254 dots an inch', async () => {
    const seen = await picture(toSvg(drawing([smallPiece()]), { margin: 10 }), { dpi: 254 });
    // Ten pixels a millimetre; the square begins at the left margin, 15 mm under a piece of 60 mm.
    const row = (10 + 60 + 15 + 30) * 10;
    const dark = Array.from({ length: 1200 }, (_, x) => x).filter((x) => seen.darkness(x, row) > 127);
    const left = dark.filter((x) => x < 600);
    const right = dark.filter((x) => x > 600);
    const middle = (xs: number[]) => (xs[0]! + xs[xs.length - 1]!) / 2;
    assert.ok(Math.abs(middle(right) - middle(left) - 1000) <= 1, `${middle(left)} to ${middle(right)}`);
  });

  it('words are drawn with the bundled font', async () => {
    const inkOf = async (fontFile?: string) => {
      const seen = readPng((await toPng(toSvg(drawing([smallPiece()])), { width: 600, fontFile })).value!);
      let ink = 0;
      for (let y = 0; y < seen.height; y++) for (let x = 0; x < seen.width; x++) ink += seen.darkness(x, y);
      return ink;
    };
    assert.ok((await inkOf()) > 1.05 * (await inkOf('no-such-font.ttf')));
  });

  it('the same drawing gives the same picture, byte for byte', async () => {
    const svg = toSvg(skirt());
    const [first, second] = [await toPng(svg, { width: 500 }), await toPng(svg, { width: 500 })];
    assert.ok(first.value && Buffer.from(first.value).equals(second.value!));
  });

  it('the renderer in WebAssembly gives the same pixels as the native one', async () => {
    const svg = toSvg(skirt());
    const [native, twin] = [
      await picture(svg, { width: 400 }),
      await picture(svg, { width: 400, portable: true }),
    ];
    assert.deepEqual([twin.width, twin.height], [native.width, native.height]);
    for (let y = 0; y < native.height; y++) {
      for (let x = 0; x < native.width; x++) assert.equal(twin.darkness(x, y), native.darkness(x, y));
    }
  });

  it('a drawing too large for a picture is made coarser, and says so', async () => {
    const tall =
      '<svg xmlns="http://www.w3.org/2000/svg" width="10mm" height="4000mm" viewBox="0 0 10 4000"/>';
    const { value, problems } = await toPng(tall, { width: 1000, mostPixels: 640_000 });
    const { width, height } = readPng(value!);
    assert.ok(width === 40 && height === 16_000, `${width} x ${height}`);
    assert.match(problems[0]!, /40 pixels wide \(102 dpi\) instead of 1000/);
  });

  it('what is no drawing comes back as a problem and no picture', async () => {
    const { value, problems } = await toPng('<svg');
    assert.equal(value, undefined);
    assert.equal(problems.length, 1);
  });
});
