/** Where lines and curves meet. Lines extend under the ruler, curves never; the message says by how much they miss. */
import { say } from '../../../grammar/say';
import type { Crossing } from '../../../grammar/syntax';
import {
  circleIntersections,
  intersections,
  lineIntersections,
  lineLine,
  nearestBetween,
  subtract,
  type Path,
  type Point,
} from '../../geometry';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { pathOf, type PathShape } from './phrase';
import { picked, type Candidate } from './picking';

/** How far outside its ends a point may lie and still count as on the line as drawn: rounding, not drawing. */
const ON_DRAWN = 1e-6;

const onDrawn = (path: Path, point: Point): boolean => path.locate(point).distance <= ON_DRAWN;

/** `where L meets M` */
export function crossing(reader: Reader, expr: Crossing): Point | undefined {
  const one = pathOf(reader, expr.one, 'where … meets');
  const other = pathOf(reader, expr.other, 'where … meets');
  if (one === undefined || other === undefined) return undefined;
  const names = say`${wordsOf(reader, expr.one)} and ${wordsOf(reader, expr.other)}`;
  const candidates = meetings(one, other);
  if (candidates.length > 0) return picked(reader, candidates, expr.pick, expr.at, say`${names} meet`);
  return report(reader, 'never-meet', expr.at, say`${names} never meet: ${miss(reader, one, other)}.`);
}

function miss(reader: Reader, one: PathShape, other: PathShape): string {
  if (one.kind === 'line' && other.kind === 'line') return say`they run side by side`;
  const { distance } = nearestBetween(one.path, other.path);
  const ruler =
    one.kind === 'line' || other.kind === 'line' ? say`, and not with the line made longer either` : '';
  return say`they come no nearer than ${printLength(distance, reader.unit)}${ruler}`;
}

/** All meeting points, lines extended. */
export function meetings(one: PathShape, other: PathShape): readonly Candidate[] {
  if (one.kind === 'line' && other.kind === 'line') return linesMeet(one.path, other.path);
  if (one.kind === 'line') return lineMeets(one.path, other.path);
  if (other.kind === 'line') return lineMeets(other.path, one.path);
  return intersections(one.path, other.path).map(({ point }) => ({ point, drawn: true }));
}

function linesMeet(a: Path, b: Path): readonly Candidate[] {
  const point = lineLine(a.start, subtract(a.end, a.start), b.start, subtract(b.end, b.start));
  return point === undefined ? [] : [{ point, drawn: onDrawn(a, point) && onDrawn(b, point) }];
}

function lineMeets(line: Path, curve: Path): readonly Candidate[] {
  const direction = subtract(line.end, line.start);
  return lineIntersections(line.start, direction, curve).map(({ point }) => ({
    point,
    drawn: onDrawn(line, point),
  }));
}

/** Where a ruler laid from `origin` in a direction meets a shape; `ahead` in millimetres (direction a unit vector). */
export function rulerMeets(
  origin: Point,
  direction: Point,
  shape: PathShape,
): readonly (Candidate & { ahead: number })[] {
  if (shape.kind === 'curve') {
    return lineIntersections(origin, direction, shape.path).map(({ point, u }) => ({
      point,
      drawn: true,
      ahead: u,
    }));
  }
  const { start, end } = shape.path;
  const point = lineLine(origin, direction, start, subtract(end, start));
  if (point === undefined) return [];
  const ahead = (point.x - origin.x) * direction.x + (point.y - origin.y) * direction.y;
  return [{ point, drawn: onDrawn(shape.path, point), ahead }];
}

/** Where the compass, set in `centre` and opened to `radius`, meets a shape. */
export function compassMeets(centre: Point, radius: number, shape: PathShape): readonly Candidate[] {
  if (shape.kind === 'curve') {
    return circleIntersections(centre, radius, shape.path).map(({ point }) => ({ point, drawn: true }));
  }
  return onInfiniteLine(centre, radius, shape.path);
}

/** Both points of a line, extended either way, at a distance from a point outside it. */
function onInfiniteLine(centre: Point, radius: number, line: Path): readonly Candidate[] {
  const along = line.tangentAt(0);
  const toCentre = subtract(centre, line.start);
  const foot = toCentre.x * along.x + toCentre.y * along.y;
  const away = toCentre.x * along.y - toCentre.y * along.x;
  const square = radius * radius - away * away;
  // a compass that just touches: half of a square root's noise on the side of missing is forgiven
  if (square < -1e-9 * Math.max(1, radius * radius)) return [];
  const half = Math.sqrt(Math.max(0, square));
  return [foot - half, foot + half].map((s) => {
    const point = { x: line.start.x + along.x * s, y: line.start.y + along.y * s };
    return { point, drawn: onDrawn(line, point) };
  });
}
