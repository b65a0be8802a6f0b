/** Finds the written length that, changed alone, would make a mismatched seam match and spoil no other. */
import { say } from '../../grammar/say';
import type { Expr, Quantity as Written, Statement } from '../../grammar/syntax';
import { add, scale } from '../geometry';
import type { Evaluation, Result } from './evaluation';
import type { Fix } from './finding';
import type { DisplayUnit, Seam } from './model';
import type { Network, Node } from './names/network';
import { DIRECTIONS } from './shapes/directions';
import { printLength } from './values/quantity';
import type { Answer } from './values/reader';

/** More fixes than this are no help to choose from. */
const MOST = 3;

/** A change larger than this, mm, is another design, not a mend. */
const LARGEST_CHANGE = 60;

/** A length that moves the seam by less than this share of its own change does not govern it. */
const LEAST_SLOPE = 0.1;

/** One number in the text that could be changed, and what its definition would then answer. */
interface Lever {
  readonly node: Node;
  readonly number: Written;
  readonly answerAt: (change: number) => Answer | undefined;
}

export function closing(
  network: Network,
  evaluation: Evaluation,
  seam: Seam,
  unit: DisplayUnit,
): readonly Fix[] {
  const found: { fix: Fix; change: number }[] = [];
  for (const lever of levers(network, evaluation, seam.source)) {
    const change = closingChange(network, evaluation, lever, seam);
    if (change === undefined) continue;
    const fix = fixOf(lever, change, unit);
    if (fix !== undefined) found.push({ fix, change });
  }
  found.sort((a, b) => Math.abs(a.change) - Math.abs(b.change));
  return found.slice(0, MOST).map(({ fix }) => fix);
}

/** Every single written length that the seam rests on, in the pattern's own file. */
function* levers(network: Network, evaluation: Evaluation, seam: string): Iterable<Lever> {
  const seen = new Set<string>([seam]);
  for (const id of seen) for (const input of network.nodes.get(id)?.links.inputs ?? []) seen.add(input);
  for (const id of seen) {
    const node = network.nodes.get(id);
    const lever =
      node === undefined || node.file.key !== '' ? undefined : leverOf(node, evaluation.result(id).answer);
    if (lever !== undefined) yield lever;
  }
}

const isLength = (expr: Expr): expr is Written =>
  expr.kind === 'quantity' && expr.unit !== undefined && expr.unit !== 'deg' && expr.unit !== '%';

function leverOf(node: Node, answer: Answer | undefined): Lever | undefined {
  const syntax = node.declaration.statement.node;
  if (
    (syntax.kind === 'let' || syntax.kind === 'choose') &&
    isLength(syntax.value) &&
    answer?.is === 'value'
  ) {
    const { value } = answer;
    if (value.kind !== 'length') return undefined;
    return {
      node,
      number: syntax.value,
      answerAt: (by) => ({ is: 'value', value: { kind: 'length', amount: value.amount + by } }),
    };
  }
  if (syntax.kind !== 'shape' || syntax.phrase.kind !== 'step' || syntax.phrase.step.kind !== 'by')
    return undefined;
  const { direction, distance } = syntax.phrase.step;
  if (!isLength(distance) || answer?.is !== 'shape' || answer.shape.kind !== 'point') return undefined;
  const { point } = answer.shape;
  return {
    node,
    number: distance,
    answerAt: (by) => ({
      is: 'shape',
      shape: { kind: 'point', point: add(point, scale(DIRECTIONS[direction], by)) },
    }),
  };
}

/** Newton's rule from the slope of one millimetre, once corrected; the result must close this seam and spoil no other. */
function closingChange(
  network: Network,
  evaluation: Evaluation,
  lever: Lever,
  seam: Seam,
): number | undefined {
  const differences = (by: number): ReadonlyMap<string, number> | undefined => {
    const answer = lever.answerAt(by);
    return answer && evaluation.whatIf(lever.node.id, answer, (result) => seamDifferences(network, result));
  };
  const at = (by: number): number => differences(by)?.get(seam.source) ?? NaN;
  const slope = at(1) - seam.difference;
  if (!(Math.abs(slope) >= LEAST_SLOPE)) return undefined;
  const first = -seam.difference / slope;
  const left = at(first);
  const change = Math.round((first - (left / slope || 0)) * 10) / 10;
  if (!(Math.abs(change) <= LARGEST_CHANGE)) return undefined;
  const then = differences(change);
  if (then === undefined || !(Math.abs(then.get(seam.source) ?? NaN) <= seam.tolerance)) return undefined;
  for (const [source, difference] of seamDifferences(network, (id) => evaluation.result(id))) {
    if (source !== seam.source && Math.abs((then.get(source) ?? NaN) - difference) > 0.05) return undefined;
  }
  return change;
}

function seamDifferences(network: Network, result: (id: string) => Result): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const [id, node] of network.nodes) {
    if (node.declaration.space !== 'seam' || node.file.key !== '') continue;
    const { answer } = result(id);
    if (answer?.is === 'seam' && answer.seam.comparable) found.set(id, answer.seam.difference);
  }
  return found;
}

/** Millimetres in the unit a number was written in, and how many digits it then wants for a tenth of a millimetre. */
const WRITTEN_IN: Readonly<Record<string, readonly [number, number]>> = {
  mm: [1, 1],
  cm: [10, 2],
  m: [1000, 4],
  in: [25.4, 3],
  yd: [914.4, 4],
};

function fixOf({ node, number }: Lever, change: number, unit: DisplayUnit): Fix | undefined {
  const [size, digits] = WRITTEN_IN[number.unit ?? ''] ?? [1, 1];
  const amount = number.amount + change / size;
  if (amount <= 0) return undefined;
  const text = `${Number(amount.toFixed(digits))}${number.unit}`;
  const statement: Statement = node.declaration.statement;
  const was = statement.text.slice(number.at.from, number.at.to);
  const how = `${printLength(Math.abs(change), unit)} ${change > 0 ? say`more` : say`less`}`;
  return {
    title: say`Make ${node.declaration.name} ${text} instead of ${was} (${how})`,
    edits: [{ statement, at: number.at, text, source: node.id }],
  };
}
