/** The PNG export: the size that was asked for, true to scale, the same bytes each time. */
import assert from 'node:assert/strict';
import { toSvg } from '../../server/drawing/svg';
import { toPng } from '../../server/drawing/png';
import { drawing, skirt, smallPiece } from '../support/drawings';
import { readPng, type Picture } from '../support/png';

async function picture(svg: string, options: Parameters<typeof toPng>[1]): Promise<Picture> {
  const { value, problems } = await toPng(svg, options);
  assert.deepEqual(problems, []);
  return readPng(value!);
}

describe('drawing as PNG', () => {
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
