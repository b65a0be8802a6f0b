/** From geometry to the drawing model: stretches with their numbers rounded, so that every machine gives the same bytes. */
import type { Path, Point, Segment } from '../geometry';
import type { DrawnLine, LineRole, Spot, Stretch } from './model';

/** A thousandth of a millimetre: far below any pencil, short in the file. */
export const rounded = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

export const spot = ({ x, y }: Point): Spot => ({ x: rounded(x), y: rounded(y) });

const stretch = (segment: Segment): Stretch => {
  const end = spot(segment.p3);
  if (segment.kind === 'line') return [end.x, end.y];
  const [a, b] = [spot(segment.p1), spot(segment.p2)];
  return [a.x, a.y, b.x, b.y, end.x, end.y];
};

/** @param segments those to draw, when they are more than the path's own */
export function pathLine(
  role: LineRole,
  path: Path,
  words: Pick<DrawnLine, 'name' | 'source' | 'tip'>,
  segments: readonly Segment[] = path.segments,
): DrawnLine {
  return {
    role,
    ...words,
    start: spot(path.start),
    stretches: segments.map(stretch),
    closed: false,
    arrows: 'none',
  };
}
