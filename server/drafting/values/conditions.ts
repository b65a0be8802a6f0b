/** Reads conditions: comparisons, and words of a choice; `and`, `or`, `not`. */
import { say } from '../../../grammar/say';
import type { Compare, Expr } from '../../../grammar/syntax';
import type { Quantity } from '../model';
import { missingUnit, quantity, withoutUnit } from './arithmetic';
import { kindWords } from './quantity';
import { report, wordsOf, type Reader } from './reader';

/** Whether a condition holds; undefined when that can't be told. */
export function condition(reader: Reader, expr: Expr): boolean | undefined {
  switch (expr.kind) {
    case 'bracket':
      return condition(reader, expr.inside);
    case 'not': {
      const holds = condition(reader, expr.of);
      return holds === undefined ? undefined : !holds;
    }
    case 'logic': {
      const left = condition(reader, expr.left);
      const right = condition(reader, expr.right);
      if (left === undefined || right === undefined) return undefined;
      return expr.op === 'and' ? left && right : left || right;
    }
    case 'compare':
      return compared(reader, expr);
    default:
      return report(
        reader,
        'wrong-kind',
        expr.at,
        say`A condition is needed here, such as waist > 80cm; ${wordsOf(reader, expr)} compares nothing.`,
      );
  }
}

/** Numbers that should be equal rarely are to the last bit; this is far below anything that can be cut. */
const EQUAL_WITHIN = 1e-6;

function compared(reader: Reader, expr: Compare): boolean | undefined {
  const words = wordChoice(reader, expr);
  if (words !== undefined) return words.holds;
  // beside a mistyped choice stands one of its words, which is no fault of its own
  if (expr.op === '=' && isLoneName(expr.right) && isLoneName(expr.left) && !quantity(reader, expr.left))
    return;
  const sides = comparison(reader, expr);
  if (sides === undefined) return undefined;
  return holds(expr.op, sides.left.amount, sides.right.amount, EQUAL_WITHIN);
}

const isLoneName = (expr: Expr): boolean => expr.kind === 'ref' && expr.path.length === 1;

/** Whether `a op b`, with `=` meaning: no further apart than `within`. */
export function holds(op: Compare['op'], a: number, b: number, within: number): boolean {
  switch (op) {
    case '=':
      return Math.abs(a - b) <= within;
    case '<':
      return a < b;
    case '<=':
      return a <= b + within;
    case '>':
      return a > b;
    case '>=':
      return a >= b - within;
  }
}

/** Both sides of a comparison, of one kind. */
export function comparison(reader: Reader, expr: Compare): { left: Quantity; right: Quantity } | undefined {
  const left = quantity(reader, expr.left);
  const right = quantity(reader, expr.right);
  if (left === undefined || right === undefined) return undefined;
  if (left.kind === right.kind) return { left, right };
  const bare = withoutUnit(expr, left, right);
  if (bare !== undefined) return missingUnit(reader, bare.side, bare.wanted, bare.found, say`the comparison`);
  return report(
    reader,
    'wrong-kind',
    expr.at,
    say`${wordsOf(reader, expr.left)} is ${kindWords(left.kind)} and ${wordsOf(reader, expr.right)} is ${kindWords(right.kind)}: they can't be compared.`,
  );
}

/** `closure = zip`: the name of a choice on one side, one of its words on the other. */
export function wordChoice(reader: Reader, expr: Compare): { holds: boolean | undefined } | undefined {
  for (const [choice, word] of [
    [expr.left, expr.right],
    [expr.right, expr.left],
  ] as const) {
    if (choice.kind !== 'ref' || !reader.isWordChoice(choice)) continue;
    const found = reader.find(choice);
    if (found?.answer.is !== 'value' || found.answer.value.kind !== 'text') return { holds: undefined };
    const { text } = found.answer.value;
    const among = found.answer.among ?? [];
    const asked =
      word.kind === 'ref' && word.path.length === 1
        ? word.path[0]!.text
        : word.kind === 'text'
          ? word.text
          : '';
    if (!among.includes(asked)) {
      report(
        reader,
        'unknown-name',
        word.at,
        say`${wordsOf(reader, choice)} is chosen among ${among.join(', ')}; ${wordsOf(reader, word)} is none of them.`,
      );
      return { holds: undefined };
    }
    if (expr.op === '=') return { holds: text === asked };
    report(
      reader,
      'wrong-kind',
      expr.at,
      say`Words are alike or not, never more or less: write ${wordsOf(reader, choice)} = ${asked}.`,
    );
    return { holds: undefined };
  }
  return undefined;
}
