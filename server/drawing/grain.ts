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

/** From the line to the outline, and to a line that runs along beside it, at least, mm. */
const FROM_LINE = 12;

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
  const isClear = clearOfDarts(piece);
  // of a hollow piece the middle may lie beside it
  const isInside = (line: Path): boolean => contains(paths, line.pointAt(line.length / 2));
  const isLong = (line: Path): boolean => line.length > size / 6;
  const usual = ASIDE.map(aside).filter((line) => isLong(line) && isClear(line) && isInside(line));
  const beside = linesBeside(piece, direction);
  const room = (line: Path): number => roomAbout(line, beside);
  const found = usual.find((line) => clearOfMarks(piece, line) && room(line) > FROM_LINE);
  if (found !== undefined) return found;
  const [roomiest] = linesAcross(paths, direction)
    .filter((line) => isLong(line) && isClear(line) && clearOfMarks(piece, line))
    .map((line) => ({ line, worth: line.length * Math.min(room(line), ENOUGH) }))
    .sort((a, b) => b.worth - a.worth);
  return roomiest?.line ?? usual[0] ?? aside(0);
}

function clearOfDarts({ darts, holes, shaping }: Piece): (line: Path) => boolean {
  const drawn = [
    ...darts.map(({ from, tip, to }) => Path.polyline([from, tip, to])),
    ...(shaping?.fishDarts ?? []).map(({ from, left, to, right }) =>
      Path.polyline([from, left, to, right, from]),
    ),
  ];
  const rings = holes.map(({ edges }) => edges.map(({ path }) => path));
  return (line) =>
    [...drawn, ...rings.flat()].every((path) => intersections(path, line).length === 0) &&
    !rings.some((ring) => contains(ring, line.start));
}

/** More room beside the line than this, mm, is worth nothing: length is. */
const ENOUGH = 30;

/** What the line should not run along: the outline, and lines of the piece that go the same way, such as the fold of a band. */
function linesBeside({ edges, balance, marks }: Piece, direction: Point): readonly Path[] {
  const along = (path: Path): boolean => {
    const way = normalised(subtract(path.end, path.start));
    return way !== undefined && Math.abs(way.x * direction.y - way.y * direction.x) < PARALLEL;
  };
  return [
    ...edges.map(({ path }) => path),
    ...[...balance.map(({ path }) => path), ...marks.flatMap(({ paths }) => paths)].filter(along),
  ];
}

/** The sine of so small an angle. */
const PARALLEL = 0.1;

/** How far it is square to the line to the nearest of what lies beside it. */
function roomAbout(line: Path, beside: readonly Path[]): number {
  const along = line.tangentAt(0);
  const square = { x: -along.y, y: along.x };
  const hits = [0, 0.25, 0.5, 0.75, 1].flatMap((share) => {
    const at = line.pointAt(line.length * share);
    return beside.flatMap((path) => lineIntersections(at, square, path).map(({ u }) => Math.abs(u)));
  });
  return Math.min(...hits);
}

/** So many rulers are laid across a piece. */
const RULERS = 19;

/** The middle part of what each ruler in a direction covers of the piece, where it is longest; the middle ruler first. */
function linesAcross(paths: readonly Path[], direction: Point): readonly Path[] {
  const across = { x: -direction.y, y: direction.x };
  const spots = paths.flatMap((path) => path.polyline(2));
  const sides = spots.map(({ x, y }) => x * across.x + y * across.y);
  const [low, high] = [Math.min(...sides), Math.max(...sides)];
  const shares = Array.from({ length: RULERS }, (_, i) => (i + 1) / (RULERS + 1));
  return shares
    .sort((a, b) => Math.abs(a - 0.5) - Math.abs(b - 0.5))
    .flatMap((share): Path[] => {
      const at = scale(across, low + share * (high - low));
      const hits = paths.flatMap((path) => lineIntersections(at, direction, path).map(({ u }) => u));
      const within = chordsOf(hits).filter(([from, to]) =>
        contains(paths, add(at, scale(direction, (from + to) / 2))),
      );
      const longest = within.sort((a, b) => b[1] - b[0] - (a[1] - a[0]))[0];
      return longest === undefined ? [] : [middlePart(at, direction, longest)];
    });
}

const chordsOf = (hits: readonly number[]): (readonly [number, number])[] => {
  const sorted = [...hits].sort((a, b) => a - b);
  return sorted.slice(1).map((to, i) => [sorted[i]!, to] as const);
};

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
  return middlePart(at, direction, [from, to]);
}

function middlePart(at: Point, direction: Point, [from, to]: readonly [number, number]): Path {
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
