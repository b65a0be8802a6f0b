/** Places the marks of the rows beside what they speak of, so that none lies on another or hides an outline. */
import type { Box, Path, Point } from '../geometry';
import type { Row } from './rows';

/** A ring with the row's number, and the place that it points to. */
export interface PlacedMark {
  readonly mark: string;
  readonly at: Point;
  readonly to: Point;
}

/** How far from its place a mark may stand, in heights of a letter, the nearest first; and in how many directions. */
const RADII = [2.2, 3.2, 4.4, 5.8, 7.4, 9.2, 11.2];
const DIRECTIONS = 16;
/** Half the width of a mark, in heights of a letter: two letters and a digit. */
export const RING = 1.15;

/** In the order of the rows; the first places are the best. */
export function spread(
  rows: readonly Row[],
  box: Box,
  size: number,
  outlines: readonly Path[],
): PlacedMark[] {
  const centre = { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const looks = outlines.flatMap((path) => spaced(path, size));
  const placed: PlacedMark[] = [];
  for (const { mark, at } of rows) {
    if (at === undefined) continue;
    placed.push({ mark, to: at, at: bestPlace(at, centre, size, placed, looks) });
  }
  return placed;
}

function bestPlace(
  to: Point,
  centre: Point,
  size: number,
  placed: readonly PlacedMark[],
  outlines: readonly Point[],
): Point {
  let best: { at: Point; cost: number } = { at: to, cost: Infinity };
  const away = Math.atan2(to.y - centre.y, to.x - centre.x);
  for (const radius of RADII) {
    for (let i = 0; i < DIRECTIONS; i++) {
      const turn = (Math.ceil(i / 2) * (i % 2 === 0 ? 1 : -1) * 2 * Math.PI) / DIRECTIONS;
      const at = {
        x: to.x + radius * size * Math.cos(away + turn),
        y: to.y + radius * size * Math.sin(away + turn),
      };
      // far away costs a little, over an outline some, over another mark far too much
      const onMarks = placed.filter(
        (one) => Math.hypot(one.at.x - at.x, one.at.y - at.y) < 2.4 * RING * size,
      ).length;
      const onTargets = placed.filter(
        (one) => Math.hypot(one.to.x - at.x, one.to.y - at.y) < 1.4 * RING * size,
      ).length;
      const onLines = outlines.filter((p) => Math.hypot(p.x - at.x, p.y - at.y) < 1.3 * RING * size).length;
      const cost = radius + Math.abs(turn) / 2 + 1000 * onMarks + 200 * onTargets + 3 * Math.min(onLines, 4);
      if (cost < best.cost) best = { at, cost };
    }
    if (best.cost < radius + 3) break;
  }
  return best.at;
}

/** Points along an outline, about a letter apart. */
function spaced(path: Path, size: number): Point[] {
  const count = Math.min(200, Math.max(1, Math.ceil(path.length / size)));
  return Array.from({ length: count + 1 }, (_, i) => path.pointAt((i * path.length) / count));
}
