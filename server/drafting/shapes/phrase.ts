/** Reads the phrases that are points, lines and curves. The door of this floor: what kind of phrase it is, and to whom it goes. */
import { say } from '../../../grammar/say';
import type { Expr, Ref } from '../../../grammar/syntax';
import { ORIGIN, type Point } from '../../geometry';
import type { CurveShape, LineShape, Shape } from '../model';
import { kindWords, print } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { changed } from './changes';
import { crossing } from './meeting';
import { ofPiece } from './parts';
import { midpointOf, pointStep } from './points';
import { onPlace } from './places';
import { joinedRun, section, way } from './ways';

export type PathShape = LineShape | CurveShape;

export const shapeWords = (kind: Shape['kind']): string =>
  ({
    point: say`a point`,
    line: say`a line`,
    curve: say`a curve`,
  })[kind];

export const pointShape = (point: Point): Shape => ({ kind: 'point', point });

/** Any shape; undefined when it can't be had (a finding says why, or the reading is blocked). */
export function shapeOf(reader: Reader, expr: Expr, wanted?: 'point' | 'path'): Shape | undefined {
  switch (expr.kind) {
    case 'ref':
      return namedShape(reader, expr, wanted);
    case 'bracket':
      return shapeOf(reader, expr.inside, wanted);
    case 'crossing':
      return asShape(crossing(reader, expr));
    case 'placed':
      return asShape(onPlace(reader, expr.on, expr.place));
    case 'midpoint':
      return asShape(midpointOf(reader, expr));
    case 'section':
      return section(reader, expr);
    case 'joined':
      return joinedRun(reader, expr);
    case 'way':
      return way(reader, expr, 'way');
    case 'step':
      return step(reader, expr);
    case 'coordinates':
      return report(
        reader,
        'wrong-kind',
        expr.at,
        say`Two numbers in a bracket are a dot of a trace; a draft places its points by lengths from others.`,
      );
    default:
      return report(
        reader,
        'wrong-kind',
        expr.at,
        say`${wordsOf(reader, expr)} is a value, but a point, line or curve is needed here.`,
      );
  }
}

const asShape = (point: Point | undefined): Shape | undefined => point && pointShape(point);

function step(reader: Reader, expr: Extract<Expr, { kind: 'step' }>): Shape | undefined {
  const { step: form } = expr;
  switch (form.kind) {
    case 'turned':
    case 'mirrored':
    case 'moved':
    case 'parallel':
    case 'laid':
    case 'reversed': {
      const base = shapeOf(reader, expr.base);
      return base && changed(reader, expr, form, base);
    }
    default:
      return asShape(pointStep(reader, expr, form));
  }
}

function namedShape(reader: Reader, ref: Ref, wanted?: 'point' | 'path'): Shape | undefined {
  const found = reader.find(ref, wanted);
  if (found === undefined) {
    if (reader.blocked || ref.path[0]!.text !== 'origin') return undefined;
    return ref.path.length === 1
      ? pointShape(ORIGIN)
      : endOf(reader, ref, pointShape(ORIGIN), ref.path.slice(1));
  }
  const { answer, rest } = found;
  if (answer.is === 'piece') return ofPiece(reader, ref, answer.piece, rest, wanted);
  if (answer.is === 'value') {
    const is =
      answer.value.kind === 'text'
        ? say`a word`
        : `${kindWords(answer.value.kind)} (${print(answer.value, reader.unit)})`;
    return report(
      reader,
      'wrong-kind',
      ref.at,
      say`${wordsOf(reader, ref)} is ${is}, but a point, line or curve is needed here.`,
    );
  }
  if (answer.is !== 'shape') return undefined;
  return rest.length === 0 ? answer.shape : endOf(reader, ref, answer.shape, rest);
}

/** `hem.start`, `hem.end` */
function endOf(reader: Reader, ref: Ref, shape: Shape, rest: Ref['path']): Shape | undefined {
  const word = rest[0]!;
  if (rest.length === 1 && shape.kind !== 'point') {
    if (word.text === 'start') return pointShape(shape.path.start);
    if (word.text === 'end') return pointShape(shape.path.end);
  }
  const answers =
    shape.kind === 'point'
      ? say`A point answers to no further name`
      : say`A line or curve answers to .start and .end`;
  return report(reader, 'unknown-name', word.at, say`${answers}; ${wordsOf(reader, ref)} is nothing.`);
}

/** A point, or a finding that says what stands there instead. */
export function pointOf(reader: Reader, expr: Expr, use: string | (() => string)): Point | undefined {
  const shape = shapeOf(reader, expr, 'point');
  if (shape === undefined) return undefined;
  if (shape.kind === 'point') return shape.point;
  const what = typeof use === 'string' ? use : use();
  const fix = say`Take one of its ends (.start, .end), or a place on it (on … halfway).`;
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${wordsOf(reader, expr)} is ${shapeWords(shape.kind)}, but ${what} wants a point. ${fix}`,
  );
}

/** A line or curve, or a finding that says what stands there instead. */
export function pathOf(reader: Reader, expr: Expr, use: string): PathShape | undefined {
  const shape = shapeOf(reader, expr, 'path');
  if (shape === undefined) return undefined;
  if (shape.kind !== 'point') return shape;
  const fix = say`Two points in a bracket make a line: (A to B).`;
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${wordsOf(reader, expr)} is a point, but ${use} wants a line or curve. ${fix}`,
  );
}
