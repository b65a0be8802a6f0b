/** Lays the pieces of a drawing so that they need few papers: rows of several widths are tried, the best is kept. */
import { place } from '../draw';
import type { Drawing } from '../model';
import { MARGIN_MM, MOST_PAPERS, OVERLAP_MM, papersOver, tilingFor, type Tiling } from './tiles';
import type { Paper } from './papers';

/** Rows of up to so many papers are tried: a table of that length is rare. */
const MOST_ACROSS = 8;

export interface Arranged {
  readonly drawing: Drawing;
  readonly tiling: Tiling;
}

/** The drawing as laid, or laid anew where that saves a paper. */
export function arranged(drawing: Drawing, paper: Paper): Arranged {
  const tries = [drawing, ...widths(paper).map((wide) => ({ ...drawing, ...place(drawing.pieces, wide) }))];
  const few = tries.filter(({ frame }) => papersOver(frame, paper) <= MOST_PAPERS);
  const all = (few.length > 0 ? few : [drawing]).map((one): Arranged => ({
    drawing: one,
    tiling: tilingFor(one, paper),
  }));
  return all.reduce((best, one) => (one.tiling.tiles.length < best.tiling.tiles.length ? one : best));
}

function widths({ width, height }: Paper): number[] {
  const steps = [width, height].map((side) => side - 2 * MARGIN_MM - OVERLAP_MM);
  const across = Array.from({ length: MOST_ACROSS }, (_, i) => i + 1);
  return steps.flatMap((step) => across.map((count) => count * step + OVERLAP_MM));
}
