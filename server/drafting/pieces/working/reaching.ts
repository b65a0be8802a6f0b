/** From edge to edge: a line that a piece is divided at is drawn on under the ruler, and ends where it leaves the piece. */
import {
  add,
  contains,
  intersections,
  lineIntersections,
  normalised,
  Path,
  scale,
  subtract,
} from '../../../geometry';
import type { Edge } from '../../model';

/** Ends that should meet may lie this far apart, mm: less than a pencil line. */
export const MEETS = 0.5;

/** Which ends of the line have to lie on the outline; the others meet a dart. */
export interface Loose {
  readonly start: boolean;
  readonly end: boolean;
}

/**
 * The stretch of the line that lies within the piece. Straight lines go on where they stop short, curves do not; a line that
 * is within the piece more than once stays as it is, since nobody knows which stretch is meant.
 */
export function fromEdgeToEdge(edges: readonly Edge[], line: Path, straight: boolean, loose: Loose): Path {
  const outline = edges.map(({ path }) => path);
  const meets = (p: { x: number; y: number }): boolean =>
    outline.some((path) => path.locate(p).distance <= MEETS);
  const [start, end] = [loose.start && !meets(line.start), loose.end && !meets(line.end)];
  if (!start && !end) return line;
  const stretch = straight ? ruled(outline, line) : within(outline, line);
  if (stretch === undefined) return line;
  const [from, to] = [start ? stretch[0] : 0, end ? stretch[1] : line.length];
  if (!straight) return line.part(from, to);
  const along = normalised(subtract(line.end, line.start))!;
  return Path.line(add(line.start, scale(along, from)), add(line.start, scale(along, to)));
}

type Stretch = readonly [number, number];

/** Of the endless line, counted in mm from where the drawn one starts. */
function ruled(outline: readonly Path[], line: Path): Stretch | undefined {
  const along = normalised(subtract(line.end, line.start));
  if (along === undefined) return undefined;
  const crossed = outline.flatMap((path) => lineIntersections(line.start, along, path).map(({ u }) => u));
  const drawn = ([from, to]: Stretch): boolean => from < line.length && to > 0;
  return only(stretches(crossed, (u) => contains(outline, add(line.start, scale(along, u)))).filter(drawn));
}

function within(outline: readonly Path[], line: Path): Stretch | undefined {
  const crossed = outline.flatMap((path) => intersections(line, path).map(({ sA }) => sA));
  return only(stretches([0, ...crossed, line.length], (s) => contains(outline, line.pointAt(s))));
}

const stretches = (places: readonly number[], inside: (place: number) => boolean): readonly Stretch[] => {
  const inOrder = [...places].sort((a, b) => a - b);
  return inOrder
    .slice(1)
    .map((to, i): Stretch => [inOrder[i]!, to])
    .filter(([from, to]) => to - from > MEETS && inside((from + to) / 2));
};

const only = <T>(list: readonly T[]): T | undefined => (list.length === 1 ? list[0] : undefined);
