/** The grain line: parallel to the thread, inside the piece, long enough to lay a ruler by. */
import { say } from '../../grammar/say';
import type { Piece } from '../drafting/model';
import {
  add,
  areaOf,
  boxOfPaths,
  contains,
  distance,
  intersections,
  lineIntersections,
  normalised,
  Path,
  scale,
  subtract,
  type Point,
} from '../geometry';
import type { DrawnLine } from './model';
import { pathLine } from './path';

/** Share of the room inside the piece that the line takes (common practice: a third to a half of the piece, or more). */
const SHARE = 0.55;

export function grainDrawn(piece: Piece): DrawnLine[] {
  const { grain } = piece;
  const direction = grain && normalised(subtract(grain.to, grain.from));
  if (grain === undefined || direction === undefined) return [];
  const path = insideLine(piece, direction);
  const tip = grain.bias ? say`grain, on the bias` : say`grain`;
  return [{ ...pathLine('grain', path, { name: 'grain', source: grain.source, tip }), arrows: 'both' }];
}

/** Ways aside that are tried, as shares of the piece's size: the middle first, then to either side of it. */
const ASIDE = [0, 0.08, -0.08, 0.16, -0.16, 0.24, -0.24, 0.32, -0.32];

/** A line in a direction, within the outline, near the middle and clear of the darts. */
function insideLine(piece: Piece, direction: Point): Path {
  const paths = piece.edges.map(({ path }) => path);
  const box = boxOfPaths(paths);
  const size = distance({ x: box.minX, y: box.minY }, { x: box.maxX, y: box.maxY });
  const middle =
    areaOf(paths) > 0 ? centroid(paths) : { x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 };
  const across = { x: -direction.y, y: direction.x };
  const aside = (share: number): Path =>
    through(paths, add(middle, scale(across, share * size)), direction, size);
  const darts = [
    ...piece.darts.map(({ from, tip, to }) => Path.polyline([from, tip, to])),
    ...(piece.shaping?.fishDarts ?? []).map(({ from, left, to, right }) =>
      Path.polyline([from, left, to, right, from]),
    ),
  ];
  const holes = piece.holes.map(({ edges }) => edges.map(({ path }) => path));
  const clear = (line: Path): boolean =>
    [...darts, ...holes.flat()].every((path) => intersections(path, line).length === 0) &&
    !holes.some((hole) => contains(hole, line.start));
  let spare: Path | undefined;
  for (const share of ASIDE) {
    const line = aside(share);
    if (line.length <= size / 6 || !clear(line)) continue;
    if (clearOfMarks(piece, line)) return line;
    spare ??= line;
  }
  return spare ?? aside(ASIDE[0]!);
}

/** From the line to the sign of a mark, mm. */
const FROM_SIGN = 7;

const clearOfMarks = ({ marks }: Piece, line: Path): boolean =>
  marks.every(
    ({ points, paths }) =>
      points.every((point) => line.locate(point).distance > FROM_SIGN) &&
      paths.every(
        (path) =>
          intersections(path, line).length === 0 &&
          line.locate(path.pointAt(path.length / 2)).distance > FROM_SIGN,
      ),
  );

/** The middle part of what a ruler through a point covers of the piece. */
function through(paths: readonly Path[], at: Point, direction: Point, size: number): Path {
  const hits = paths.flatMap((path) => lineIntersections(at, direction, path).map(({ u }) => u));
  const ahead = Math.min(...hits.filter((u) => u > 0), Infinity);
  const behind = Math.max(...hits.filter((u) => u < 0), -Infinity);
  const whole = Number.isFinite(ahead) && Number.isFinite(behind);
  const [from, to] = whole ? [behind, ahead] : [-size / 16, size / 16];
  const centre = add(at, scale(direction, (from + to) / 2));
  const reach = (SHARE * (to - from)) / 2;
  return Path.line(add(centre, scale(direction, -reach)), add(centre, scale(direction, reach)));
}

/** Middle of the area, of the outline flattened to a millimetre: the eye asks no more. */
function centroid(paths: readonly Path[]): Point {
  const points = paths.flatMap((path) => path.polyline(1));
  let [area, x, y] = [0, 0, 0];
  for (let i = 0; i < points.length; i++) {
    const p = points[i]!;
    const q = points[i + 1] ?? points[0]!;
    const cross = p.x * q.y - q.x * p.y;
    area += cross;
    x += (p.x + q.x) * cross;
    y += (p.y + q.y) * cross;
  }
  return { x: x / (3 * area), y: y / (3 * area) };
}
