/** How a buttonhole lies that is given by the place of its button alone. */
import {
  add,
  contains,
  lineIntersections,
  normalised,
  Path,
  scale,
  subtract,
  type Point,
} from '../../geometry';
import type { Edge } from '../model';
import type { MarkBench } from './marks';

/** Of a buttonhole whose length is not stated, mm: a shirt or bodice button of 15 to 18 mm with its thickness (common practice). */
export const USUAL_BUTTONHOLE = 20;

/** A hole across begins so far beyond its button on the side of the edge: the button is pulled there (common practice: 2 to 3 mm). */
const BEYOND = 3;

/**
 * The cut of a buttonhole: square to the edge (across), since the pull comes from there, beginning a little beyond the
 * button; lengthways, along the edge, with the button in its middle.
 *
 * @param line the line that a row is counted along, and how far along it this one stands; else the nearest edge counts
 */
export function barAt(
  { edges }: Pick<MarkBench, 'edges'>,
  at: Point,
  long: number,
  lengthways: boolean,
  line?: { readonly path: Path; readonly s: number },
): Path {
  const [path, s] = line === undefined ? nearestEdge(edges, at) : [line.path, line.s];
  const along = path.tangentAt(Math.min(Math.max(s, 0), path.length));
  if (lengthways) {
    const half = scale(along, long / 2);
    return Path.line(subtract(at, half), add(at, half));
  }
  const out = outward(edges, at, { x: along.y, y: -along.x });
  const start = add(at, scale(out, BEYOND));
  return Path.line(start, subtract(start, scale(out, long)));
}

function nearestEdge(edges: readonly Edge[], at: Point): readonly [Path, number] {
  const places = edges.map(({ path }) => ({ path, ...path.locate(at) }));
  const near = places.reduce((a, b) => (b.distance < a.distance - 1e-9 ? b : a));
  return [near.path, near.s];
}

/** Which of both ways square to a line leads out of the piece first. */
function outward(edges: readonly Edge[], at: Point, across: Point): Point {
  const paths = edges.map(({ path }) => path);
  const inside = (way: Point): boolean => contains(paths, add(at, scale(way, 0.5)));
  const back = scale(across, -1);
  if (inside(across) !== inside(back)) return inside(across) ? back : across;
  const reach = (way: Point): number =>
    Math.min(
      ...paths.flatMap((path) => lineIntersections(at, way, path).flatMap(({ u }) => (u > 1e-6 ? [u] : []))),
      Infinity,
    );
  return reach(across) <= reach(back) ? across : (normalised(back) ?? back);
}
