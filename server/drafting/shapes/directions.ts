/** Directions on the paper: up, down, left, right, bearings off them, and the headings of curves. */
import { say } from '../../../grammar/say';
import type { Bearing, Direction, Expr, Heading } from '../../../grammar/syntax';
import { add, dot, normalised, scale, subtract, type Point } from '../../geometry';
import { angleOf } from '../values/arithmetic';
import { report, wordsOf, type Reader } from '../values/reader';
import { pathOf, pointOf } from './phrase';

export const DIRECTIONS: Readonly<Record<Direction, Point>> = {
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
};

const RADIANS = Math.PI / 180;

/** Unit vector of `20deg below right`, `15deg left of down`, or of a slope alone (clockwise from right, as drawn). */
export function bearingOf(reader: Reader, bearing: Bearing): Point | undefined {
  const degrees = angleOf(reader, bearing.angle, say`a bearing`);
  if (degrees === undefined) return undefined;
  const along = DIRECTIONS[bearing.named?.along ?? 'right'];
  const away = DIRECTIONS[bearing.named?.away ?? 'down'];
  return add(scale(along, Math.cos(degrees * RADIANS)), scale(away, Math.sin(degrees * RADIANS)));
}

/**
 * Unit vector of travel for a curve's heading.
 *
 * @param at the knot that has the heading
 * @param chord from this knot to the next, or from the one before to this: of the two ways along or square to a line the
 *   one nearer the chord is meant
 */
export function headingOf(reader: Reader, heading: Heading, at: Point, chord: Point): Point | undefined {
  switch (heading.kind) {
    case 'direction':
      return DIRECTIONS[heading.direction];
    case 'bearing':
      return bearingOf(reader, heading.bearing);
    case 'toward': {
      const aim = pointOf(reader, heading.point, 'toward');
      return aim && (normalised(subtract(aim, at)) ?? sameSpot(reader, heading.point));
    }
    case 'square':
      return alongChord(reader, heading.to, at, chord, true);
    case 'along':
      return alongChord(reader, heading.line, at, chord, false);
  }
}

const sameSpot = (reader: Reader, expr: Expr): undefined =>
  report(
    reader,
    'no-direction',
    expr.at,
    say`${wordsOf(reader, expr)} lies where the curve already is, so it gives no direction.`,
  );

function alongChord(reader: Reader, expr: Expr, at: Point, chord: Point, square: boolean): Point | undefined {
  const shape = pathOf(reader, expr, square ? 'square to' : 'along');
  if (shape === undefined) return undefined;
  const { s } = shape.path.locate(at);
  const along = shape.path.tangentAt(s, s > shape.path.length / 2 ? 'before' : 'after');
  const direction = square ? { x: -along.y, y: along.x } : along;
  return dot(direction, chord) >= 0 ? direction : scale(direction, -1);
}
