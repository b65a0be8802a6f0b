/** Reads a PDF back with a reader that knows nothing of ours: pages, their sizes, their words, their lines. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPage {
  /** In points. */
  readonly width: number;
  readonly height: number;
  readonly words: readonly string[];
  /** Every straight line or box edge that is stroked, with its ends in points from the lower left corner. */
  readonly lines: readonly Line[];
}

type Spot = readonly [x: number, y: number];
export type Line = readonly [Spot, Spot];
type Matrix = readonly [number, number, number, number, number, number];

export async function readPdf(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false })
    .promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const [left, bottom, right, top] = page.view as [number, number, number, number];
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : []));
    const { fnArray, argsArray } = await page.getOperatorList();
    pages.push({ width: right - left, height: top - bottom, words, lines: linesOf(fnArray, argsArray) });
  }
  await document.destroy();
  return pages;
}

const times = (a: Matrix, b: Matrix): Matrix => [
  a[0] * b[0] + a[2] * b[1],
  a[1] * b[0] + a[3] * b[1],
  a[0] * b[2] + a[2] * b[3],
  a[1] * b[2] + a[3] * b[3],
  a[0] * b[4] + a[2] * b[5] + a[4],
  a[1] * b[4] + a[3] * b[5] + a[5],
];

/** Follows the transformations, and collects the straight stretches of every path. */
function linesOf(fnArray: readonly number[], argsArray: readonly unknown[]): Line[] {
  const lines: Line[] = [];
  const stack: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  const at = (x: number, y: number): Spot => [
    now[0] * x + now[2] * y + now[4],
    now[1] * x + now[3] * y + now[5],
  ];
  fnArray.forEach((fn, i) => {
    const args = argsArray[i] as never;
    if (fn === OPS.save) stack.push(now);
    else if (fn === OPS.restore) now = stack.pop() ?? now;
    else if (fn === OPS.transform) now = times(now, args);
    else if (fn === OPS.paintFormXObjectBegin) {
      stack.push(now);
      if ((args as [Matrix | null])[0]) now = times(now, (args as [Matrix])[0]);
    } else if (fn === OPS.paintFormXObjectEnd) now = stack.pop() ?? now;
    else if (fn === OPS.constructPath) lines.push(...straightOf(args, at));
  });
  return lines;
}

function straightOf(
  [kinds, numbers]: [readonly number[], readonly number[]],
  at: (x: number, y: number) => Spot,
): Line[] {
  const lines: Line[] = [];
  let k = 0;
  let here: Spot = [0, 0];
  const next = (): Spot => [numbers[k++]!, numbers[k++]!];
  for (const kind of kinds) {
    if (kind === OPS.moveTo) here = next();
    else if (kind === OPS.lineTo) {
      const to = next();
      lines.push([at(...here), at(...to)]);
      here = to;
    } else if (kind === OPS.curveTo) {
      k += 4;
      here = next();
    } else if (kind === OPS.rectangle) {
      const [x, y] = next();
      const [wide, high] = next();
      const corners: Spot[] = [
        [x, y],
        [x + wide, y],
        [x + wide, y + high],
        [x, y + high],
      ];
      corners.forEach((corner, i) => lines.push([at(...corner), at(...corners[(i + 1) % 4]!)]));
    }
  }
  return lines;
}

export const lengthOf = ([[x1, y1], [x2, y2]]: Line): number => Math.hypot(x2 - x1, y2 - y1);
