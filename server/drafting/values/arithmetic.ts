/** Reads the expressions that are values: numbers with units, names, sums, functions, conditions. */
import { say } from '../../../grammar/say';
import type { Call, Expr, Product, Ref, Sum } from '../../../grammar/syntax';
import type { Quantity, Value } from '../model';
import { condition } from './conditions';
import { applied, FUNCTION_NAMES } from './functions';
import { added, divided, kindWords, length, multiplied, print, ratio, written } from './quantity';
import { replace, report, wordsOf, type Found, type Reader } from './reader';

/** Any value; undefined when there is none. */
export function value(reader: Reader, expr: Expr): Value | undefined {
  if (expr.kind === 'text') return { kind: 'text', text: expr.text };
  if (expr.kind === 'bracket') return value(reader, expr.inside);
  if (expr.kind === 'ref') return named(reader, expr);
  return quantity(reader, expr);
}

/** A number with its kind. */
export function quantity(reader: Reader, expr: Expr): Quantity | undefined {
  switch (expr.kind) {
    case 'quantity':
      return finite(reader, expr, written(expr));
    case 'bracket':
      return quantity(reader, expr.inside);
    case 'negative':
      return negative(quantity(reader, expr.of));
    case 'sum':
      return sum(reader, expr);
    case 'product':
      return product(reader, expr);
    case 'call':
      return call(reader, expr);
    case 'ref':
      return number(reader, expr);
    case 'compare':
    case 'logic':
    case 'not':
      return report(
        reader,
        'wrong-kind',
        expr.at,
        say`A condition is no value: put it into if(…, …, …), or after expect or when.`,
      );
    case 'text':
      return report(reader, 'wrong-kind', expr.at, say`A text stands here, but a value is needed.`);
    default:
      return report(
        reader,
        'wrong-kind',
        expr.at,
        say`${wordsOf(reader, expr)} is a shape, but a value is needed here. length(…) or distance(P, Q) gives a length.`,
      );
  }
}

const negative = (q: Quantity | undefined): Quantity | undefined => q && { kind: q.kind, amount: -q.amount };

/** A value of one kind, with advice when a bare number stands where a length or an angle is due. */
export function ofKind(reader: Reader, expr: Expr, kind: Quantity['kind'], use: string): number | undefined {
  const found = quantity(reader, expr);
  if (found === undefined) return undefined;
  if (found.kind === kind) return found.amount;
  if (found.kind === 'ratio' && (kind === 'length' || kind === 'angle'))
    return missingUnit(reader, expr, kind, found, use);
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${wordsOf(reader, expr)} is ${kindWords(found.kind)}${inBrackets(reader, expr, found)}, but ${use} wants ${kindWords(kind)}.`,
  );
}

/** What an expression comes to, where that is not what stands there. */
function inBrackets(reader: Reader, expr: Expr, found: Quantity): string {
  const printed = print(found, reader.unit);
  return printed === wordsOf(reader, expr) ? '' : ` (${printed})`;
}

export const lengthOf = (reader: Reader, expr: Expr, use: string): number | undefined =>
  ofKind(reader, expr, 'length', use);

/** A length that may not fall below nothing. */
export function widthOf(reader: Reader, expr: Expr, use: string): number | undefined {
  const amount = lengthOf(reader, expr, use);
  if (amount === undefined || amount >= 0) return amount;
  const found = print(length(amount), reader.unit);
  return report(
    reader,
    'no-such-number',
    expr.at,
    say`${use} takes a length from nothing up; this comes to ${found}.`,
  );
}

export const angleOf = (reader: Reader, expr: Expr, use: string): number | undefined =>
  ofKind(reader, expr, 'angle', use);

/** `12` for `12cm`: the commonest slip of all, so it has a code and a fix of its own. */
export function missingUnit(
  reader: Reader,
  expr: Expr,
  kind: 'length' | 'angle',
  found: Quantity,
  use: string,
): undefined {
  const words = wordsOf(reader, expr);
  const bare = literal(expr);
  if (bare === undefined) {
    return report(
      reader,
      'missing-unit',
      expr.at,
      say`${words} comes to the plain number ${print(found, reader.unit)}, but ${use} wants ${kindWords(kind)}. Give one of its numbers a unit.`,
    );
  }
  const units =
    kind === 'angle'
      ? ['deg']
      : [reader.unit, ...(['cm', 'mm', 'in'] as const).filter((u) => u !== reader.unit)];
  const number = wordsOf(reader, bare);
  return report(
    reader,
    'missing-unit',
    bare.at,
    say`${number} has no unit, but ${use} wants ${kindWords(kind)}: write ${number}${units[0]!}.`,
    { fixes: units.map((unit) => replace(reader, say`Write ${number}${unit}`, bare.at, `${number}${unit}`)) },
  );
}

/** The written number behind brackets and signs, if that is all there is. */
export function literal(expr: Expr): Expr | undefined {
  if (expr.kind === 'quantity') return expr.unit === undefined ? expr : undefined;
  if (expr.kind === 'bracket') return literal(expr.inside);
  if (expr.kind === 'negative') return literal(expr.of);
  return undefined;
}

function finite(reader: Reader, expr: Expr, found: Quantity | undefined): Quantity | undefined {
  if (found === undefined || (Number.isFinite(found.amount) && Math.abs(found.amount) <= LARGEST))
    return found;
  return report(
    reader,
    'no-such-number',
    expr.at,
    say`${wordsOf(reader, expr)} comes to no number that can be drawn (a division by nothing, or beyond ten thousand kilometres).`,
  );
}

/**
 * Above this no number is taken: 10^10 mm is ten thousand kilometres. Larger ones would leave geometry without a
 * correct micrometre (a double has 16 digits); smaller bounds would forbid areas of large cloth in mm².
 */
const LARGEST = 1e10;

/** A plain number beside a length or an angle: its unit was left out. */
export function withoutUnit(
  expr: Pick<Sum, 'left' | 'right'>,
  left: Quantity,
  right: Quantity,
): { readonly side: Expr; readonly found: Quantity; readonly wanted: 'length' | 'angle' } | undefined {
  for (const [found, { kind: wanted }, side] of [
    [left, right, expr.left],
    [right, left, expr.right],
  ] as const) {
    if (found.kind !== 'ratio' || (wanted !== 'length' && wanted !== 'angle')) continue;
    if (literal(side) !== undefined) return { side, found, wanted };
  }
  return undefined;
}

function sum(reader: Reader, expr: Sum): Quantity | undefined {
  const left = quantity(reader, expr.left);
  const right = quantity(reader, expr.right);
  if (left === undefined || right === undefined) return undefined;
  const result = added(left, right, expr.op === '+' ? 1 : -1);
  if (result !== undefined) return finite(reader, expr, result);
  const bare = withoutUnit(expr, left, right);
  if (bare !== undefined)
    return missingUnit(
      reader,
      bare.side,
      bare.wanted,
      bare.found,
      expr.op === '+' ? say`the sum` : say`the difference`,
    );
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${wordsOf(reader, expr.left)} is ${kindWords(left.kind)} and ${wordsOf(reader, expr.right)} is ${kindWords(right.kind)}: ${expr.op === '+' ? say`they can't be added` : say`they can't be taken from each other`}.`,
  );
}

function product(reader: Reader, expr: Product): Quantity | undefined {
  const left = quantity(reader, expr.left);
  const right = quantity(reader, expr.right);
  if (left === undefined || right === undefined) return undefined;
  const result = (expr.op === '*' ? multiplied : divided)(left, right);
  if (result !== undefined) return finite(reader, expr, result);
  const how = expr.op === '*' ? 'times' : say`divided by`;
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${capital(kindWords(left.kind))} ${how} ${kindWords(right.kind)} is nothing that can be drawn.`,
  );
}

const capital = (words: string): string => words[0]!.toUpperCase() + words.slice(1);

function call(reader: Reader, expr: Call): Quantity | undefined {
  const name = expr.func.text;
  if (name === 'if') return either(reader, expr);
  if (!FUNCTION_NAMES.has(name)) return reader.measure(expr);
  const args = expr.args.map((arg) => quantity(reader, arg));
  if (args.some((arg) => arg === undefined)) return undefined;
  const result = applied(name, args as Quantity[]);
  if ('amount' in result) return finite(reader, expr, result);
  return report(reader, result.code, expr.at, result.message);
}

/** Both branches are read, so that a mistake shows whichever way the condition falls. */
function either(reader: Reader, expr: Call): Quantity | undefined {
  const [when, yes, no] = expr.args;
  if (expr.args.length !== 3) {
    return report(
      reader,
      'wrong-kind',
      expr.at,
      say`if takes three things: a condition, the value when it holds, and the value when it does not.`,
    );
  }
  const holds = condition(reader, when!);
  const a = quantity(reader, yes!);
  const b = quantity(reader, no!);
  if (holds === undefined || a === undefined || b === undefined) return undefined;
  if (a.kind === b.kind) return holds ? a : b;
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`The two values of an if must be of one kind; these are ${kindWords(a.kind)} and ${kindWords(b.kind)}.`,
  );
}

/** A name that must be a number. */
function number(reader: Reader, expr: Ref): Quantity | undefined {
  const found = named(reader, expr);
  if (found === undefined || found.kind !== 'text') return found;
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${wordsOf(reader, expr)} is the word "${found.text}", but a number is needed here. A choice among words can be asked with if(${wordsOf(reader, expr)} = ${found.text}, …, …).`,
  );
}

function named(reader: Reader, expr: Ref): Value | undefined {
  const name = expr.path[0]!.text;
  const found = reader.find(expr);
  if (found === undefined) {
    if (reader.blocked || reader.findings.length > 0) return undefined;
    return name === 'pi' ? ratio(Math.PI) : name === 'nothing' ? length(0) : undefined;
  }
  if (found.answer.is !== 'value') {
    return report(
      reader,
      'wrong-kind',
      expr.at,
      say`${wordsOf(reader, expr)} is no value: length(…) or area(…) gives one.`,
    );
  }
  return found.rest.length === 0 ? found.answer.value : ofSides(reader, expr, found);
}

const SIDES: Readonly<Record<string, (left: number, right: number) => number>> = {
  left: (left) => left,
  right: (_, right) => right,
  average: (left, right) => (left + right) / 2,
  larger: Math.max,
  smaller: Math.min,
};

/** `shoulder.left`, `.right` as the wearer has them; `.average`, `.larger`, `.smaller`. Taken once, both sides are alike. */
function ofSides(reader: Reader, expr: Ref, found: Found): Value | undefined {
  const { answer, rest } = found;
  if (answer.is !== 'value' || answer.value.kind === 'text') return undefined;
  const word = rest[0]!;
  const take = Object.hasOwn(SIDES, word.text) ? SIDES[word.text] : undefined;
  if (take === undefined || rest.length > 1) {
    return report(
      reader,
      'unknown-name',
      word.at,
      say`${expr.path[0]!.text} answers to .left, .right, .average, .larger and .smaller, not to .${word.text}.`,
    );
  }
  const { left, right } = answer.sides ?? { left: answer.value, right: answer.value };
  return { kind: answer.value.kind, amount: take(left.amount, right.amount) };
}
