/** Places on a line, curve or edge: `halfway`, `1/3 from A`, `7cm from A toward B`, `2cm beyond B`. */
import { say } from '../../../grammar/say';
import type { Expr, Place } from '../../../grammar/syntax';
import { add, scale, type Point } from '../../geometry';
import { quantity } from '../values/arithmetic';
import { kindWords, printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { pathOf, pointOf, type PathShape } from './phrase';

/** A named point counts as on a line when it lies no further away than this: what a sharp pencil can tell. */
export const ON_LINE = 0.05;

/** A sentence, with a blank before it. */
export type Hint = (point: Point, words: string) => string;

/** `on L PLACE` */
export function onPlace(reader: Reader, on: Expr, place: Place): Point | undefined {
  const shape = pathOf(reader, on, 'on');
  if (shape === undefined) return undefined;
  const s = distanceAlong(reader, shape, place, wordsOf(reader, on));
  return s === undefined ? undefined : atDistance(reader, shape, s, place, wordsOf(reader, on));
}

const isHalfway = (expr: Expr): boolean =>
  expr.kind === 'ref' && expr.path.length === 1 && expr.path[0]!.text === 'halfway';

/**
 * Millimetres from a shape's start to a place; outside 0 … length on a line's extension.
 *
 * @param name the shape as written, for messages
 * @param hint what to do about a point that does not lie on it
 */
export function distanceAlong(
  reader: Reader,
  shape: PathShape,
  place: Place,
  name: string,
  hint?: Hint,
): number | undefined {
  const { path } = shape;
  if (place.counted === undefined) {
    if (isHalfway(place.value)) return path.length / 2;
    return bare(reader, shape, place, name, hint);
  }
  const by = counted(reader, shape, place);
  const at = place.point && standsAt(reader, shape, place.point, name, hint);
  const ahead = at === undefined ? undefined : direction(reader, shape, place, at, name);
  return by === undefined || at === undefined || ahead === undefined ? undefined : at + ahead * by;
}

/** A place without a count: a named point, or a length that lacks the point it is counted from. */
function bare(reader: Reader, shape: PathShape, place: Place, name: string, hint?: Hint): number | undefined {
  if (place.value.kind === 'ref' || place.value.kind === 'bracket')
    return standsAt(reader, shape, place.value, name, hint);
  return report(
    reader,
    'place-without-start',
    place.at,
    say`${wordsOf(reader, place)} is counted from nowhere: say from which point of ${name}, such as ${wordsOf(reader, place)} from A.`,
  );
}

/** The length to count: a length as it stands, a share of the whole. */
function counted(reader: Reader, shape: PathShape, place: Place): number | undefined {
  if (isHalfway(place.value)) return shape.path.length / 2;
  const found = quantity(reader, place.value);
  if (found === undefined) return undefined;
  if (found.kind === 'length') return found.amount;
  if (found.kind === 'ratio') return share(reader, shape, place, found.amount);
  return report(
    reader,
    'wrong-kind',
    place.value.at,
    say`A place wants a length or a share; this is ${kindWords(found.kind)}.`,
  );
}

function share(reader: Reader, shape: PathShape, place: Place, amount: number): number | undefined {
  if (Math.abs(amount) <= 1 || shape.kind === 'line') return amount * shape.path.length;
  return report(
    reader,
    'missing-unit',
    place.value.at,
    say`${wordsOf(reader, place.value)} without a unit is a share of the whole, and a share is at most 1. If a length is meant, write ${wordsOf(reader, place.value)}${reader.unit}.`,
    {
      fixes: [
        {
          title: say`Write ${wordsOf(reader, place.value)}${reader.unit}`,
          edits: [
            {
              statement: reader.statement,
              at: place.value.at,
              text: wordsOf(reader, place.value) + reader.unit,
            },
          ],
        },
      ],
    },
  );
}

/** Where a named point stands on a shape. */
function standsAt(
  reader: Reader,
  shape: PathShape,
  expr: Expr,
  name: string,
  hint: Hint = () => '',
): number | undefined {
  const point = pointOf(reader, expr, say`a place`);
  if (point === undefined) return undefined;
  const { s, distance } = shape.path.locate(point);
  if (distance <= ON_LINE) return s;
  if (shape.kind === 'line') {
    const along = shape.path.tangentAt(0);
    const off = { x: point.x - shape.path.start.x, y: point.y - shape.path.start.y };
    if (Math.abs(off.x * along.y - off.y * along.x) <= ON_LINE) return off.x * along.x + off.y * along.y;
  }
  return report(
    reader,
    'not-on-line',
    expr.at,
    say`${wordsOf(reader, expr)} does not lie on ${name}: it is ${printLength(distance, reader.unit)} away.${hint(point, wordsOf(reader, expr))}`,
  );
}

/** +1: counted toward the shape's end; −1: toward its start. */
function direction(
  reader: Reader,
  shape: PathShape,
  place: Place,
  at: number,
  name: string,
): 1 | -1 | undefined {
  const { path } = shape;
  const atStart = at <= ON_LINE;
  const atEnd = at >= path.length - ON_LINE;
  switch (place.counted) {
    case 'before':
      return -1;
    case 'after':
      return 1;
    case 'below':
    case 'above': {
      const { y } = path.tangentAt(Math.min(Math.max(at, 0), path.length), atEnd ? 'before' : 'after');
      return (place.counted === 'below') === y >= 0 ? 1 : -1;
    }
    case 'beyond':
      if (atEnd !== atStart) return atEnd ? 1 : -1;
      break;
    default:
      if (place.toward !== undefined) return towardPoint(reader, shape, place.toward, at, name);
      if (atEnd !== atStart) return atStart ? 1 : -1;
      break;
  }
  const point = wordsOf(reader, place.point!);
  return report(
    reader,
    'which-way',
    place.at,
    say`${point} is no end of ${name}, so ${wordsOf(reader, place)} could lie either way: write before or after ${point}, or from ${point} toward another point.`,
  );
}

function towardPoint(
  reader: Reader,
  shape: PathShape,
  toward: Expr,
  at: number,
  name: string,
): 1 | -1 | undefined {
  const aim = standsAt(reader, shape, toward, name);
  if (aim === undefined) return undefined;
  if (Math.abs(aim - at) > ON_LINE) return aim > at ? 1 : -1;
  return report(
    reader,
    'no-direction',
    toward.at,
    say`${wordsOf(reader, toward)} is where the count begins, so it does not say which way.`,
  );
}

/** The point at a distance; beyond its ends a line runs on, a curve has nothing. */
function atDistance(
  reader: Reader,
  shape: PathShape,
  s: number,
  place: Place,
  name: string,
): Point | undefined {
  const { path } = shape;
  if (s >= -ON_LINE && s <= path.length + ON_LINE) return path.pointAt(Math.min(Math.max(s, 0), path.length));
  if (shape.kind === 'line') return add(path.start, scale(path.tangentAt(0), s));
  const over = s < 0 ? -s : s - path.length;
  return report(
    reader,
    'out-of-reach',
    place.at,
    say`${name} is ${printLength(path.length, reader.unit)} long: this place lies ${printLength(over, reader.unit)} beyond its end, and a curve does not run on. Count less, or draw it longer.`,
  );
}
