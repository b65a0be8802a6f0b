/** Reads one definition of a draft: a value, a point, a line, a curve, a circle. */
import { say } from '../../../grammar/say';
import type { ChooseNode, CircleNode, Expr, ShapeNode, Span, Statement } from '../../../grammar/syntax';
import { circle, Path, samePoint, type Point } from '../../geometry';
import type { Quantity, Shape, Value } from '../model';
import { lengthOf, ofKind, quantity, value } from '../values/arithmetic';
import { kindWords, print, printLength } from '../values/quantity';
import { turnedAbout } from '../values/ranges';
import { report, wordsOf, type Reader, type ShapeAnswer, type ValueAnswer } from '../values/reader';
import { pointOf, shapeOf, shapeWords } from './phrase';
import { curveShape, way } from './ways';

const shaped = (shape: Shape | undefined): ShapeAnswer | undefined => shape && { is: 'shape', shape };

export const valued = (found: Value | undefined): ValueAnswer | undefined =>
  found && { is: 'value', value: found };

/** Where a choice was set, in another file than its own. */
export interface Blamed {
  readonly statement: Statement;
  readonly at: Span;
}

/** A choice as written, or as it was set from outside: within its range and of its kind, whichever it is. */
export function choice(
  reader: Reader,
  node: ChooseNode,
  given: Value | undefined,
  blamed?: Blamed,
): ValueAnswer | undefined {
  const complain: Complain = (code, at, message) => {
    const own = reader.statement;
    if (blamed !== undefined) reader.statement = blamed.statement;
    report(reader, code, blamed?.at ?? at, message);
    reader.statement = own;
    return undefined;
  };
  return node.among === undefined
    ? inRange(reader, node, given, complain)
    : amongWords(reader, node, node.among, given, complain);
}

/** Says what is wrong with the value that a choice has, where it was given. */
type Complain = (code: string, at: Span, message: string) => undefined;

function inRange(
  reader: Reader,
  node: ChooseNode,
  given: Value | undefined,
  complain: Complain,
): ValueAnswer | undefined {
  const own = quantity(reader, node.value);
  if (own === undefined) return undefined;
  const chosen = given ?? own;
  if (chosen.kind !== own.kind) {
    return complain(
      'wrong-kind',
      node.name.at,
      say`${node.name.text} is ${kindWords(own.kind)}, but it was set to ${kindWords(chosen.kind)}.`,
    );
  }
  const number = chosen as Quantity;
  if (node.range === undefined) return valued(number);
  const [low, high] = [node.range.low, node.range.high].map((end) => quantity(reader, end));
  if (low === undefined || high === undefined) return undefined;
  if (low.kind !== own.kind || high.kind !== own.kind)
    return rangeOfKind(reader, node, own.kind, low.kind === high.kind ? low.kind : undefined);
  if (low.amount > high.amount) {
    turnedAbout(reader, node.range, low, high);
  } else if (number.amount < low.amount - ENDS_WITHIN || number.amount > high.amount + ENDS_WITHIN) {
    complain(
      'choice-out-of-range',
      given === undefined ? node.value.at : node.name.at,
      say`${node.name.text} is ${print(number, reader.unit)}, outside its range of ${print(low, reader.unit)} to ${print(high, reader.unit)}. Choose within it, or widen the range.`,
    );
  }
  return { is: 'value', value: number, ends: [low, high] };
}

/** Ends that are worked out are tried as written to 5 digits, which in inches is as much as this, in mm. */
const ENDS_WITHIN = 2e-4;

/** Says which of the value and the two ends lacks its unit, or is of another kind than the others. */
function rangeOfKind(
  reader: Reader,
  node: ChooseNode,
  own: Quantity['kind'],
  ends: Quantity['kind'] | undefined,
): undefined {
  if (own === 'ratio' && ends !== undefined) ofKind(reader, node.value, ends, node.name.text);
  else for (const end of [node.range!.low, node.range!.high]) ofKind(reader, end, own, say`the range`);
  return undefined;
}

/** The words of `choose closure = zip among zip, buttons`; numbers may be offered as well. */
function amongWords(
  reader: Reader,
  node: ChooseNode,
  among: readonly Expr[],
  given: Value | undefined,
  complain: Complain,
): ValueAnswer | undefined {
  const offered = among.map((option) => word(option) ?? wordsOf(reader, option));
  const own = word(node.value);
  const chosen = given === undefined ? own : given.kind === 'text' ? given.text : undefined;
  if (own === undefined) return choiceOfNumbers(reader, node, among, given, complain);
  if (chosen === undefined || !offered.includes(chosen)) {
    const is = chosen ?? say`a number`;
    return complain(
      'unknown-name',
      node.value.at,
      say`${node.name.text} is chosen among ${offered.join(', ')}; ${is} is none of them.`,
    );
  }
  return { is: 'value', value: { kind: 'text', text: chosen }, among: offered };
}

function choiceOfNumbers(
  reader: Reader,
  node: ChooseNode,
  among: readonly Expr[],
  given: Value | undefined,
  complain: Complain,
): ValueAnswer | undefined {
  const own = quantity(reader, node.value);
  const offered = among.map((option) => quantity(reader, option));
  if (own === undefined || offered.some((option) => option === undefined)) return undefined;
  const chosen = given ?? own;
  const fits = offered.some(
    (option) => option!.kind === chosen.kind && Math.abs(option!.amount - (chosen as Quantity).amount) < 1e-9,
  );
  if (!fits) {
    const list = among.map((option) => wordsOf(reader, option)).join(', ');
    complain(
      'choice-out-of-range',
      node.value.at,
      say`${node.name.text} is chosen among ${list}; ${chosen.kind === 'text' ? chosen.text : print(chosen, reader.unit)} is none of them.`,
    );
  }
  return valued(chosen);
}

function word(expr: Expr): string | undefined {
  if (expr.kind === 'text') return expr.text;
  return expr.kind === 'ref' && expr.path.length === 1 ? expr.path[0]!.text : undefined;
}

export const letValue = (reader: Reader, expr: Expr): ValueAnswer | undefined => valued(value(reader, expr));

/** `point P = …`, `line l = …`, `curve c = …`, `arc a = …` */
export function namedShape(reader: Reader, node: ShapeNode): ShapeAnswer | undefined {
  if (node.form === 'point') {
    const point = pointOf(reader, node.phrase, `point ${node.name.text}`);
    return point && shaped({ kind: 'point', point });
  }
  return shaped(pathShape(reader, node, node.phrase, node.form));
}

/** A line may be given by any way to its end (`line l = p across to q`); a curve by any shape that has length. */
function pathShape(
  reader: Reader,
  node: ShapeNode,
  phrase: Expr,
  form: 'line' | 'curve' | 'arc',
): Shape | undefined {
  if (phrase.kind === 'bracket') return pathShape(reader, node, phrase.inside, form);
  if (phrase.kind === 'way') return way(reader, phrase, form);
  const shape = shapeOf(reader, phrase);
  if (shape === undefined) return undefined;
  if (shape.kind === 'point') return lineTo(reader, node, phrase, shape.point);
  if (form === 'line' && shape.kind === 'curve') {
    if (!shape.path.isStraight(1e-6)) {
      return report(
        reader,
        'wrong-kind',
        phrase.at,
        say`${wordsOf(reader, phrase)} bends: write curve ${node.name.text} = … instead of line.`,
      );
    }
    return { kind: 'line', path: Path.line(shape.path.start, shape.path.end) };
  }
  if (form !== 'line' && shape.kind === 'line') return curveShape(shape.path);
  return shape;
}

/** The line from where a chain of steps begins to where it ends. */
function lineTo(reader: Reader, node: ShapeNode, phrase: Expr, end: Point): Shape | undefined {
  let base = phrase;
  while (base.kind === 'step') base = base.base;
  const start = base === phrase ? undefined : pointOf(reader, base, node.form);
  if (base === phrase || node.form !== 'line') {
    const what =
      node.form === 'line'
        ? say`A line goes from one point to another`
        : say`${shapeWords('curve')} goes from one point to another`;
    return report(
      reader,
      'wrong-kind',
      phrase.at,
      say`${wordsOf(reader, phrase)} is a point. ${what[0]!.toUpperCase()}${what.slice(1)}: P to Q.`,
    );
  }
  if (start === undefined) return undefined;
  if (samePoint(start, end, 1e-6))
    return report(
      reader,
      'no-length',
      phrase.at,
      say`${node.name.text} goes nowhere: both ends are one point. Name two points that lie apart.`,
    );
  return { kind: 'line', path: Path.line(start, end) };
}

/** `circle k = centre O radius 9cm`, `… round 40cm`: by its radius or by its length. Begins at the right, goes clockwise. */
export function namedCircle(reader: Reader, node: CircleNode): ShapeAnswer | undefined {
  const centre = pointOf(reader, node.centre, 'centre');
  const size = lengthOf(reader, node.size, node.by);
  if (centre === undefined || size === undefined) return undefined;
  const radius = node.by === 'radius' ? size : size / (2 * Math.PI);
  if (radius <= 0) {
    return report(
      reader,
      'no-such-number',
      node.size.at,
      node.by === 'radius'
        ? say`A circle's radius must be above zero; this one comes to ${printLength(size, reader.unit)}.`
        : say`A circle's length must be above zero; this one comes to ${printLength(size, reader.unit)}.`,
    );
  }
  return shaped({ kind: 'curve', path: circle(centre, radius), centre, closed: true });
}
