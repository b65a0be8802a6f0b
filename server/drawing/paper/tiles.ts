/**
 * How a drawing is cut into papers that are taped together: rows and columns that lap over each other, the same on every
 * machine. Millimetres of the drawing, y down.
 */
import type { Drawing, Frame, Spot } from '../model';
import { inkOf } from './ink';
import { turned, type Paper } from './papers';

/** White that every office printer leaves (*common practice*: 5 mm are enough for most, 10 mm for all). */
export const MARGIN_MM = 10;
/** How far neighbouring papers lap over each other. */
export const OVERLAP_MM = 10;

export interface Tile {
  /** Row by letter, column by number: `B3`. */
  readonly name: string;
  readonly row: number;
  readonly column: number;
  /** The part of the drawing that is printed on it. */
  readonly frame: Frame;
}

/** A cross that is printed on two neighbours, at one place of the drawing. */
export interface MatchMark {
  readonly at: Spot;
  readonly between: readonly [string, string];
  /** Whether the two lie side by side, or one below the other. */
  readonly beside: boolean;
  /** Whether its names stand above it or left of it, not below it or right. */
  readonly before: boolean;
  /** Whether its names stand in the middle of the strip, or at either side of it: a line may run along between. */
  readonly aside: 0 | 1 | -1;
}

export interface Tiling {
  /** As it lies in the printer. */
  readonly paper: Paper;
  readonly rows: number;
  readonly columns: number;
  /** Those with something on them, row by row. */
  readonly tiles: readonly Tile[];
  readonly marks: readonly MatchMark[];
}

/** Upright or on its side, whichever needs fewer papers. */
export function tilingFor(drawing: Pick<Drawing, 'pieces' | 'placements' | 'frame'>, paper: Paper): Tiling {
  const ink = inkOf(drawing);
  const [upright, across] = [paper, turned(paper)].map((one) => tiled(drawing.frame, ink, one)) as [
    Tiling,
    Tiling,
  ];
  return across.tiles.length < upright.tiles.length ? across : upright;
}

/** More papers than this, the empty ones counted, are a slip of the unit: 500 sheets of A4 cover 5 m by 5 m. */
export const MOST_PAPERS = 500;

/** How many papers lie over a frame, those that come out empty counted. */
export function papersOver(frame: Frame, paper: Paper): number {
  const { columns, rows } = gridFor(frame, paper);
  return columns * rows;
}

export function gridFor(frame: Frame, paper: Paper): { readonly columns: number; readonly rows: number } {
  const [wide, high] = [paper.width - 2 * MARGIN_MM, paper.height - 2 * MARGIN_MM];
  return {
    columns: countFor(frame.right - frame.left, wide),
    rows: countFor(frame.bottom - frame.top, high),
  };
}

/** @param ink boxes of what is drawn */
export const tiled = (frame: Frame, ink: readonly Frame[], paper: Paper): Tiling =>
  tilingOf(frame, paper, neededFor(frame, ink, paper));

/** @param needed numbers of papers, row by row */
export function tilingOf(frame: Frame, paper: Paper, needed: ReadonlySet<number>): Tiling {
  const { columns, rows } = gridFor(frame, paper);
  const tiles: Tile[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      if (!needed.has(row * columns + column)) continue;
      tiles.push({
        name: nameOf(row, column),
        row,
        column,
        frame: paperAt(frame, paper, row, column),
      });
    }
  }
  return { paper, rows, columns, tiles, marks: matchMarks(tiles) };
}

export const nameOf = (row: number, column: number): string => `${letters(row)}${column + 1}`;

/** The part of a drawing that is printed on the paper of a row and column. */
function paperAt({ left: x, top: y }: Frame, paper: Paper, row: number, column: number): Frame {
  const [wide, high] = [paper.width - 2 * MARGIN_MM, paper.height - 2 * MARGIN_MM];
  const [left, top] = [x + column * (wide - OVERLAP_MM), y + row * (high - OVERLAP_MM)];
  return { left, top, right: left + wide, bottom: top + high };
}

/** Every paper of the grid, those included that come out empty. */
export function everyPaper(frame: Frame, paper: Paper): readonly Pick<Tile, 'frame' | 'row' | 'column'>[] {
  const { columns, rows } = gridFor(frame, paper);
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    return { row, column, frame: paperAt(frame, paper, row, column) };
  });
}

/** Half the width of the thickest line, mm: so far inside a paper's frame nothing is clipped. */
const HALF_LINE_MM = 0.4;

/**
 * The papers that something is drawn on, by their number in the grid. What lies whole in the strip where two papers lap
 * over each other is printed on both, so that one of them is enough.
 */
export function neededFor(frame: Frame, ink: readonly Frame[], paper: Paper): ReadonlySet<number> {
  const { columns, rows } = gridFor(frame, paper);
  const across = reachOf(frame.left, paper.width - 2 * MARGIN_MM, columns);
  const down = reachOf(frame.top, paper.height - 2 * MARGIN_MM, rows);
  const needed = new Set<number>();
  const open: number[][][] = [];
  for (const { left, top, right, bottom } of ink) {
    const [xs, ys] = [across(left, right), down(top, bottom)];
    if (typeof xs === 'number' && typeof ys === 'number') needed.add(ys * columns + xs);
    else open.push(waysOf(xs, ys, columns));
  }
  for (const ways of open) {
    const enough = ways.some((way) => way.every((one) => needed.has(one)));
    if (!enough) ways[0]!.forEach((one) => needed.add(one));
  }
  return needed;
}

type Reach = number | readonly (readonly number[])[];

function waysOf(xs: Reach, ys: Reach, columns: number): number[][] {
  const [across, down] = [xs, ys].map((one) => (typeof one === 'number' ? [[one]] : one));
  return down!.flatMap((rows) =>
    across!.map((cols) => rows.flatMap((y) => cols.map((x) => y * columns + x))),
  );
}

/**
 * On which row (or column) a stretch lies; else the ways to print it, each as numbers that are all needed. One that holds
 * it whole is a way by itself.
 */
function reachOf(start: number, long: number, count: number): (from: number, to: number) => Reach {
  const step = long - OVERLAP_MM;
  const clamp = (n: number): number => Math.min(Math.max(n, 0), count - 1);
  return (from, to) => {
    const first = clamp(Math.floor((from - start - long) / step) + 1);
    const last = clamp(Math.ceil((to - start) / step) - 1);
    if (first >= last) return first;
    const met = Array.from({ length: Math.max(1, last - first + 1) }, (_, i) => first + i);
    const whole = met.filter((n) => {
      const own = start + n * step;
      return from >= own + HALF_LINE_MM && to <= own + long - HALF_LINE_MM;
    });
    return whole.length > 0 ? whole.map((n) => [n]) : [met];
  };
}

const countFor = (length: number, step: number): number =>
  Math.max(1, Math.ceil((length - OVERLAP_MM) / (step - OVERLAP_MM) - 1e-9));

/** A … Z, AA … */
function letters(row: number): string {
  const last = String.fromCharCode(65 + (row % 26));
  return row < 26 ? last : letters(Math.floor(row / 26) - 1) + last;
}

/** Where a cross may stand along a side that is shared, as shares of it: two are wanted, one in each half. */
const HALVES = [
  { usual: [0.25, 0.2, 0.3, 0.15, 0.35, 0.1, 0.4], from: 0.06, to: 0.44, otherFrom: 0.14 },
  // farther on, names would stand on the side of the strip to the right
  { usual: [0.75, 0.8, 0.7, 0.83, 0.65, 0.6], from: 0.56, to: 0.83, otherFrom: 0.7 },
] as const;
/** Where the usual places are all taken, others are tried in such steps. */
const STEP = 0.01;

/** A place along the side, and whether the names stand on the side of the cross where they usually don't. */
type Way = readonly [share: number, other: boolean, aside: MatchMark['aside']];

const WAYS = HALVES.map(({ usual, from, to, otherFrom }): readonly Way[] => {
  const far = (share: number): number => Math.abs(share - usual[0]);
  const steps = Array.from({ length: Math.round((to - from) / STEP) + 1 }, (_, i) => from + i * STEP);
  const all = [...usual, ...steps.sort((a, b) => far(a) - far(b))];
  // on the other side they need room before the cross, and must not meet those of the first one
  const turned = all.filter((share) => share >= otherFrom);
  return ([0, 1, -1] as const).flatMap((aside) => [
    ...all.map((share): Way => [share, false, aside]),
    ...turned.map((share): Way => [share, true, aside]),
  ]);
});

/** Whether a cross stands clear of everything, at least its names do, or these are at least clear of other words. */
export type Free = (mark: MatchMark, of: 'everything' | 'names' | 'words') => boolean;

/** The tiling with its crosses where nothing else is, as far as that can be. */
export const withMarks = (tiling: Tiling, free: Free): Tiling => ({
  ...tiling,
  marks: matchMarks(tiling.tiles, free),
});

/** Two to a side that is shared, in the middle of what laps over. */
function matchMarks(tiles: readonly Tile[], free: Free = () => true): MatchMark[] {
  const at = new Map(tiles.map((tile) => [`${tile.row} ${tile.column}`, tile]));
  return tiles.flatMap(({ frame, row, column, name }): MatchMark[] => {
    const [right, below] = [at.get(`${row} ${column + 1}`), at.get(`${row + 1} ${column}`)];
    const marks = (other: Tile | undefined, beside: boolean, spot: (share: number) => Spot): MatchMark[] =>
      other === undefined
        ? []
        : WAYS.map((ways) => {
            const made = ([share, turned, aside]: Way): MatchMark => ({
              at: spot(share),
              between: [name, other.name],
              beside,
              before: beside !== turned,
              aside,
            });
            const clear = (of: Parameters<Free>[1]): MatchMark | undefined => {
              const way = ways.find((one) => free(made(one), of));
              return way && made(way);
            };
            return clear('everything') ?? clear('names') ?? clear('words') ?? made(ways[0]!);
          });
    return [
      ...marks(right, true, (share) => ({
        x: frame.right - OVERLAP_MM / 2,
        y: frame.top + (frame.bottom - frame.top) * share,
      })),
      ...marks(below, false, (share) => ({
        x: frame.left + (frame.right - frame.left) * share,
        y: frame.bottom - OVERLAP_MM / 2,
      })),
    ];
  });
}
