/** Words along a line, close beside it and clear of everything else. */
import type { DrawnText, Spot } from '../model';
import { rounded } from '../path';
import type { Metrics } from './font';
import { baseOf, textHigh, type Space } from './space';

/** Capital height as a share of the font size in the bundled font (Noto Sans: 714 of 1000 units). */
const CAPITAL_HEIGHT = 0.714;

/** How wide a text runs whose capitals are so high. */
export const runs = (text: string, size: number, font: Metrics): number =>
  (font.widthOf(text) * size) / CAPITAL_HEIGHT;

/** Places along the line that are tried, as shares of its length: the middle first. */
const SHARES = [0.5, 0.42, 0.58, 0.34, 0.66, 0.26, 0.74, 0.18, 0.82, 0.1, 0.9];
/** Places between these, for words that find no room at any of them: from the middle to the ends by a fiftieth. */
const CLOSER_SHARES = Array.from(
  { length: 49 },
  (_, i) => 0.5 + (i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2) * 0.02,
);
/** White between the line and the words, mm, and how much farther off is tried. */
export const BESIDE_MM = 1.1;
const FARTHER_MM = [0, 1.5, 3.5, 6];
/** From the ends of the line, mm. */
const ENDS_MM = 1.5;

export interface Wanted {
  readonly run: readonly Spot[];
  readonly text: string;
  /** What is said instead where the words are read against the line. */
  readonly textBack?: string;
  /** Capital heights, the largest first. */
  readonly sizes: readonly number[];
  /** How much farther from the line than beside it may be tried, mm. */
  readonly farther?: readonly number[];
  /** Whether the middle of the words may lie there. */
  readonly accept: (middle: Spot) => boolean;
}

type Found = Pick<DrawnText, 'text' | 'at' | 'size' | 'turn'> | undefined;

/** Where the words stand; undefined where there is no room for them. */
export const along = (wanted: Wanted, space: Space, font: Metrics): Found =>
  alongAt(SHARES, wanted, space, font) ?? alongAt(CLOSER_SHARES, wanted, space, font);

function alongAt(
  shares: readonly number[],
  { run, text, textBack = text, sizes, farther = FARTHER_MM, accept }: Wanted,
  space: Space,
  font: Metrics,
): Found {
  const line = measured(run);
  for (const size of sizes) {
    const wide = Math.max(runs(text, size, font), runs(textBack, size, font));
    if (wide + 2 * ENDS_MM > line.long) continue;
    for (const more of farther) {
      for (const share of shares) {
        const from = Math.min(Math.max(share * line.long - wide / 2, ENDS_MM), line.long - ENDS_MM - wide);
        const found = beside(line, { from, wide, size, off: BESIDE_MM + more }, accept, space);
        if (found === undefined) continue;
        const { isBack, ...place } = found;
        return { ...place, text: isBack ? textBack : text, size };
      }
    }
  }
  return undefined;
}

interface Line {
  readonly run: readonly Spot[];
  /** Distance of each spot from the first. */
  readonly far: readonly number[];
  readonly long: number;
}

function measured(run: readonly Spot[]): Line {
  const far = [0];
  run.slice(1).forEach((spot, i) => far.push(far[i]! + Math.hypot(spot.x - run[i]!.x, spot.y - run[i]!.y)));
  return { run, far, long: far[far.length - 1]! };
}

function spotAt({ run, far }: Line, s: number): Spot {
  const next = Math.max(
    1,
    far.findIndex((one) => one >= s),
  );
  const [a, b] = [run[next - 1]!, run[next]!];
  const share = (s - far[next - 1]!) / (far[next]! - far[next - 1]! || 1);
  return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
}

interface Try {
  readonly from: number;
  readonly wide: number;
  readonly size: number;
  readonly off: number;
}

interface Place extends Pick<DrawnText, 'at' | 'turn'> {
  /** Read against the stretch that the words stand on, which may run another way than the whole line. */
  readonly isBack: boolean;
}

/** On the chord under the words, as far aside as the line bulges. */
function beside(
  line: Line,
  { from, wide, size, off }: Try,
  accept: (middle: Spot) => boolean,
  space: Space,
): Place | undefined {
  const [p, q] = [spotAt(line, from), spotAt(line, from + wide)];
  const long = Math.hypot(q.x - p.x, q.y - p.y);
  if (long < wide / 2) return undefined;
  const [dx, dy] = [(q.x - p.x) / long, (q.y - p.y) / long];
  const turn = uprightTurn(dx, dy);
  const angle = (turn * Math.PI) / 180;
  const isBack = dx * Math.cos(angle) + dy * Math.sin(angle) < 0;
  for (const side of [1, -1]) {
    const [nx, ny] = [-dy * side, dx * side];
    const bulge = line.run
      .filter((_, i) => line.far[i]! > from && line.far[i]! < from + wide)
      .reduce((most, { x, y }) => Math.max(most, (x - p.x) * nx + (y - p.y) * ny), 0);
    const reach = bulge + off + textHigh(size) / 2;
    const middle = { x: (p.x + q.x) / 2 + nx * reach, y: (p.y + q.y) / 2 + ny * reach };
    if (!accept(middle) || !space.free({ ...middle, wide, high: textHigh(size), turn })) continue;
    const { x, y } = baseOf(middle, size, turn);
    return { at: { x: rounded(x), y: rounded(y) }, turn, isBack };
  }
  return undefined;
}

/** Never upside down; what stands upright is read from the right, as on a drawing board. */
function uprightTurn(dx: number, dy: number): number {
  const turn = (Math.atan2(dy, dx) * 180) / Math.PI;
  return rounded(turn > 89.999 ? turn - 180 : turn <= -90.001 ? turn + 180 : turn);
}
