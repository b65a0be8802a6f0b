/** Reads a PDF back with a reader that knows nothing of ours: pages, their sizes, their words, their lines. */
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPage {
  /** In points. */
  readonly width: number;
  readonly height: number;
  readonly words: readonly string[];
  /** Each with the left end of its base line, in points from the upper left corner, y down. */
  readonly placed: readonly { readonly text: string; readonly at: Spot }[];
  /** Every straight line or box edge that is stroked, with its ends in points from the lower left corner. */
  readonly lines: readonly Line[];
  /** The four control points of every curve. */
  readonly curves: readonly (readonly [Spot, Spot, Spot, Spot])[];
  /** Rectangles that what follows them is clipped to: lower left and upper right corner. */
  readonly clips: readonly (readonly [Spot, Spot])[];
  /** How many runs of content stand in each layer, by the layer's name. */
  readonly layers: ReadonlyMap<string, number>;
}

export type Spot = readonly [x: number, y: number];
export type Line = readonly [Spot, Spot];
type Matrix = readonly [number, number, number, number, number, number];

export async function readPdf(bytes: Uint8Array): Promise<readonly ReadPage[]> {
  const document = await getDocument({ data: new Uint8Array(bytes), verbosity: 0, useSystemFonts: false })
    .promise;
  const content = await document.getOptionalContentConfig();
  const pages: ReadPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const [left, bottom, right, top] = page.view as [number, number, number, number];
    const { items } = await page.getTextContent();
    const words = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item.str] : []));
    const placed = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, at: [item.transform[4] - left, top - item.transform[5]] as const }]
        : [],
    );
    const { fnArray, argsArray } = await page.getOperatorList();
    const layers = new Map<string, number>();
    fnArray.forEach((fn, i) => {
      if (fn !== OPS.beginMarkedContentProps) return;
      const [tag, props] = argsArray[i] as [string, { id?: string }];
      const name = tag === 'OC' ? content.getGroup(props.id ?? '')?.name : undefined;
      if (name) layers.set(name, (layers.get(name) ?? 0) + 1);
    });
    const size = { width: right - left, height: top - bottom };
    pages.push({ ...size, words, placed, ...drawnIn(fnArray, argsArray), layers });
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

type Drawn = Pick<ReadPage, 'clips' | 'curves' | 'lines'>;
type Place = (x: number, y: number) => Spot;

/** Follows the transformations, and collects the stretches of every path. */
function drawnIn(fnArray: readonly number[], argsArray: readonly unknown[]): Drawn {
  const drawn = { lines: [] as Line[], curves: [] as ReadPage['curves'][number][], clips: [] as Line[] };
  const stack: Matrix[] = [];
  let now: Matrix = [1, 0, 0, 1, 0, 0];
  const at: Place = (x, y) => [now[0] * x + now[2] * y + now[4], now[1] * x + now[3] * y + now[5]];
  fnArray.forEach((fn, i) => {
    const args = argsArray[i] as never;
    if (fn === OPS.save) stack.push(now);
    else if (fn === OPS.restore) now = stack.pop() ?? now;
    else if (fn === OPS.transform) now = times(now, args);
    else if (fn === OPS.paintFormXObjectBegin) {
      stack.push(now);
      if ((args as [Matrix | null])[0]) now = times(now, (args as [Matrix])[0]);
    } else if (fn === OPS.paintFormXObjectEnd) now = stack.pop() ?? now;
    else if (fn === OPS.constructPath) {
      const path = stretchesOf(args, at);
      if (fnArray[i + 1] === OPS.clip) drawn.clips.push([path.lines[0]![0], path.lines[2]![0]]);
      else {
        drawn.lines.push(...path.lines);
        drawn.curves.push(...path.curves);
      }
    }
  });
  return drawn;
}

function stretchesOf(
  [kinds, numbers]: [readonly number[], readonly number[]],
  at: Place,
): Pick<Drawn, 'curves' | 'lines'> {
  const lines: Line[] = [];
  const curves: (readonly [Spot, Spot, Spot, Spot])[] = [];
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
      const [one, other, to] = [next(), next(), next()];
      curves.push([at(...here), at(...one), at(...other), at(...to)]);
      here = to;
    } else if (kind === OPS.rectangle) lines.push(...sidesOf(next(), next(), at));
  }
  return { lines, curves };
}

function sidesOf([x, y]: Spot, [wide, high]: Spot, at: Place): Line[] {
  const corners: Spot[] = [
    [x, y],
    [x + wide, y],
    [x + wide, y + high],
    [x, y + high],
  ];
  return corners.map((corner, i): Line => [at(...corner), at(...corners[(i + 1) % 4]!)]);
}

export const lengthOf = ([[x1, y1], [x2, y2]]: Line): number => Math.hypot(x2 - x1, y2 - y1);
