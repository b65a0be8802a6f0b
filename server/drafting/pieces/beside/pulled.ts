/** Draws one end of a path to another place, as a ruler's end is pushed over by a hair. */
import { add, cubic, line, Path, subtract, type Point } from '../../../geometry';

/** A path with one end elsewhere; the handle goes with it. */
export function pulled(path: Path, which: 'start' | 'end', to: Point): Path {
  const segments = [...path.segments];
  const at = which === 'start' ? 0 : segments.length - 1;
  const by = subtract(to, which === 'start' ? path.start : path.end);
  const seg = segments[at]!;
  const [p0, p3] = which === 'start' ? [to, seg.p3] : [seg.p0, to];
  const atStart = which === 'start';
  segments[at] =
    seg.kind === 'line'
      ? line(p0, p3)
      : cubic(p0, atStart ? add(seg.p1, by) : seg.p1, atStart ? seg.p2 : add(seg.p2, by), p3);
  return Path.of(segments);
}
