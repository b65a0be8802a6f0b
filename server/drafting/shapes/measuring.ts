/** The functions of shapes: `length`, `drawn`, `distance`, `slope`, `angle`, `area`. */
import { say } from '../../../grammar/say';
import type { Call, Expr } from '../../../grammar/syntax';
import { areaOf as outlineArea, distance, subtract, type Point } from '../../geometry';
import type { Quantity } from '../model';
import { angle, area, length } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { pathOf, pointOf, shapeOf } from './phrase';

type Measure = (reader: Reader, call: Call) => Quantity | undefined;

const DEGREES = 180 / Math.PI;

/** A quarter turn is exactly 90: rounding to 10⁻¹² of a degree keeps squares square in comparisons. */
const degrees = (radians: number): number => Math.round(radians * DEGREES * 1e12) / 1e12;

function need(reader: Reader, call: Call, count: number, words: string): boolean {
  if (call.args.length === count) return true;
  report(
    reader,
    'wrong-kind',
    call.at,
    say`${call.func.text} takes ${words}; ${call.args.length} ${call.args.length === 1 ? say`stands` : say`stand`} here.`,
  );
  return false;
}

const lengthOf: Measure = (reader, call) => {
  if (!need(reader, call, 1, say`one line, curve or edge`)) return undefined;
  const shape = pathOf(reader, call.args[0]!, call.func.text);
  if (shape === undefined) return undefined;
  const { drawn, sewn, path } = shape;
  return length((call.func.text === 'drawn' ? drawn : sewn) ?? path.length);
};

const distanceOf: Measure = (reader, call) => {
  if (!need(reader, call, 2, say`two points`)) return undefined;
  const [a, b] = call.args.map((arg) => pointOf(reader, arg, 'distance'));
  return a && b && length(distance(a, b));
};

/** Clockwise from right, as drawn, between −180 and 180 degrees: what `at slope(l) for …` takes up again. */
const slopeOf: Measure = (reader, call) => {
  if (!need(reader, call, 1, say`one line`)) return undefined;
  const shape = pathOf(reader, call.args[0]!, 'slope');
  if (shape === undefined) return undefined;
  const along = subtract(shape.path.end, shape.path.start);
  return angle(degrees(Math.atan2(along.y, along.x)));
};

/** `angle(P, Q, R)`: the angle at Q; `angle(l, m)`: between the directions of two lines. 0 … 180 degrees. */
const angleOf: Measure = (reader, call) => {
  if (call.args.length === 3) {
    const [p, q, r] = call.args.map((arg) => pointOf(reader, arg, 'angle'));
    return p && q && r && between(reader, call, subtract(p, q), subtract(r, q));
  }
  if (!need(reader, call, 2, say`three points (the angle at the middle one) or two lines`)) return undefined;
  const [l, m] = call.args.map((arg) => pathOf(reader, arg, 'angle'));
  return (
    l && m && between(reader, call, subtract(l.path.end, l.path.start), subtract(m.path.end, m.path.start))
  );
};

function between(reader: Reader, call: Call, a: Point, b: Point): Quantity | undefined {
  const cross = a.x * b.y - a.y * b.x;
  const dot = a.x * b.x + a.y * b.y;
  if (cross === 0 && dot === 0)
    return report(
      reader,
      'no-direction',
      call.at,
      say`${wordsOf(reader, call)} has no angle: two of its points are one.`,
    );
  return angle(degrees(Math.atan2(Math.abs(cross), dot)));
}

const areaOf: Measure = (reader, call) => {
  if (!need(reader, call, 1, say`one piece or closed curve`)) return undefined;
  const arg = call.args[0]!;
  const piece = pieceNamed(reader, arg);
  if (piece !== undefined) return area(piece.area);
  if (reader.blocked) return undefined;
  const shape = shapeOf(reader, arg);
  if (shape === undefined) return undefined;
  if (shape.kind === 'curve' && shape.closed) return area(outlineArea([shape.path]));
  return report(
    reader,
    'wrong-kind',
    arg.at,
    say`area takes a piece or a closed curve; ${wordsOf(reader, arg)} encloses nothing.`,
  );
};

function pieceNamed(reader: Reader, arg: Expr): { readonly area: number } | undefined {
  if (arg.kind !== 'ref') return undefined;
  const found = reader.find(arg);
  return found?.answer.is === 'piece' && found.rest.length === 0 ? found.answer.piece : undefined;
}

const MEASURES: Readonly<Record<string, Measure>> = {
  length: lengthOf,
  drawn: lengthOf,
  distance: distanceOf,
  slope: slopeOf,
  angle: angleOf,
  area: areaOf,
};

/** The value of a function of shapes; a word that is no function of ours is reported. */
export function measured(reader: Reader, call: Call): Quantity | undefined {
  const measure = Object.hasOwn(MEASURES, call.func.text) ? MEASURES[call.func.text] : undefined;
  if (measure !== undefined) return measure(reader, call);
  return report(reader, 'unknown-name', call.func.at, say`There is no function called ${call.func.text}.`);
}
