/** Reads an `expect` line: a pattern's own check. */
import { say } from '../../../grammar/say';
import type { Compare, ExpectNode, Expr } from '../../../grammar/syntax';
import type { Quantity } from '../model';
import { ofKind } from './arithmetic';
import { comparison, condition, holds, wordChoice } from './conditions';
import { print, printLengthFine } from './quantity';
import { report, wordsOf, type ExpectAnswer, type Reader } from './reader';

/** Without `within`, equal means equal to a hundredth of a millimetre (or of a degree, or of one). */
const USUAL_WITHIN = 0.01;

export function readExpect(reader: Reader, node: ExpectNode): ExpectAnswer | undefined {
  const expr = withoutBrackets(node.condition);
  const words = expr.kind === 'compare' ? wordChoice(reader, expr) : undefined;
  if (expr.kind !== 'compare' || words !== undefined) {
    const held = words === undefined ? condition(reader, expr) : words.holds;
    if (held === undefined) return undefined;
    if (!held)
      report(
        reader,
        'expectation-missed',
        expr.at,
        say`This was expected, but does not hold: ${wordsOf(reader, expr)}. Mend what it comes from, or the expectation if that is wrong.`,
      );
    return { is: 'expect', held };
  }
  const sides = comparison(reader, expr);
  if (sides === undefined) return undefined;
  const within =
    node.within === undefined ? USUAL_WITHIN : ofKind(reader, node.within, sides.left.kind, 'within');
  if (within === undefined) return undefined;
  const held = holds(
    expr.op,
    sides.left.amount,
    sides.right.amount,
    expr.op === '=' ? within : node.within === undefined ? 1e-6 : within,
  );
  if (!held) missed(reader, expr, sides, node.within === undefined ? undefined : within);
  return { is: 'expect', held };
}

const withoutBrackets = (expr: Expr): Expr => (expr.kind === 'bracket' ? withoutBrackets(expr.inside) : expr);

const OP_WORDS: Readonly<Record<Compare['op'], string>> = {
  get '='() {
    return say`equal to`;
  },
  get '<'() {
    return say`less than`;
  },
  get '<='() {
    return say`at most`;
  },
  get '>'() {
    return say`more than`;
  },
  get '>='() {
    return say`at least`;
  },
};

function missed(
  reader: Reader,
  expr: Compare,
  { left, right }: { left: Quantity; right: Quantity },
  within: number | undefined,
): void {
  const show = (q: Quantity): string =>
    q.kind === 'length' ? printLengthFine(q.amount, reader.unit) : print(q, reader.unit);
  const apart = show({ kind: left.kind, amount: Math.abs(left.amount - right.amount) });
  const allowed =
    within === undefined ? '' : say`, and ${show({ kind: left.kind, amount: within })} is allowed`;
  const words = wordsOf(reader, expr.right);
  const which = words === show(right) ? words : say`${words}, which is ${show(right)}`;
  report(
    reader,
    'expectation-missed',
    expr.at,
    say`${wordsOf(reader, expr.left)} is ${show(left)}; it was expected to be ${OP_WORDS[expr.op]} ${which}. They are ${apart} apart${allowed}. Mend what they come from, or the expectation if that is wrong.`,
  );
}
