/** From geometry to the drawing model: stretches with their numbers rounded, so that every machine gives the same bytes. */
import { boxOfPaths, cubic, line, Path, type Point, type Segment } from '../geometry';
import type { DrawnLine, Frame, LineRole, Spot, Stretch } from './model';

/** A thousandth of a millimetre: far below any pencil, short in the file. */
export const rounded = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

export const spot = ({ x, y }: Point): Spot => ({ x: rounded(x), y: rounded(y) });

const stretch = (segment: Segment): Stretch => {
  const { p3 } = segment;
  if (segment.kind === 'line') return [rounded(p3.x), rounded(p3.y)];
  const { p1, p2 } = segment;
  return [rounded(p1.x), rounded(p1.y), rounded(p2.x), rounded(p2.y), rounded(p3.x), rounded(p3.y)];
};

/** @param segments those to draw, when they are more than the path's own */
export function pathLine(
  role: LineRole,
  path: Path,
  { name, source, tip }: Pick<DrawnLine, 'name' | 'source' | 'tip'>,
  segments: readonly Segment[] = path.segments,
): DrawnLine {
  return {
    role,
    name,
    source,
    tip,
    start: spot(path.start),
    stretches: segments.map(stretch),
    closed: false,
    arrows: 'none',
  };
}

/** A drawn line as a path again, for measuring what was drawn and for whatever has to be broken into short chords. */
export function pathOf({
  start,
  stretches,
  closed,
}: Pick<DrawnLine, 'start' | 'stretches' | 'closed'>): Path {
  let at: Point = start;
  const segments = stretches.map((stretch): Segment => {
    const p0 = at;
    if (stretch.length === 2) {
      at = { x: stretch[0], y: stretch[1] };
      return line(p0, at);
    }
    const [x1, y1, x2, y2, x, y] = stretch;
    at = { x, y };
    return cubic(p0, { x: x1, y: y1 }, { x: x2, y: y2 }, at);
  });
  const open = closed && (at.x !== start.x || at.y !== start.y);
  return Path.of(open ? [...segments, line(at, start)] : segments);
}

/** What holds all of the lines. */
export function frameOfLines(lines: readonly DrawnLine[]): Frame {
  if (lines.length === 0) return { left: 0, top: 0, right: 0, bottom: 0 };
  const { minX, minY, maxX, maxY } = boxOfPaths(lines.map(pathOf));
  return { left: rounded(minX), top: rounded(minY), right: rounded(maxX), bottom: rounded(maxY) };
}
