/** Reads how far the two edges of a seam may differ (`tolerance 2mm`): a plain length, as everything is judged by it. */
import { say } from '../../../grammar/say';
import type { Expr } from '../../../grammar/syntax';
import { ofKind } from './arithmetic';
import { written } from './quantity';
import { report, type Reader } from './reader';

/** The tolerance in mm; undefined where the line does not give one. */
export function toleranceOf(value: Expr | undefined): number | undefined {
  if (value?.kind !== 'quantity') return undefined;
  const { kind, amount } = written(value);
  return kind === 'length' && amount > 0 ? amount : undefined;
}

/** Says what is wrong with a tolerance that is none; it answers nothing to anybody. */
export function readTolerance(reader: Reader, value: Expr): undefined {
  if (toleranceOf(value) !== undefined) return undefined;
  const found = ofKind(reader, value, 'length', say`the tolerance`);
  if (found === undefined) return undefined;
  const message =
    value.kind === 'quantity'
      ? say`A tolerance is more than nothing: no two edges are cut alike to the last hair.`
      : say`A tolerance is written as a plain length, such as 2mm: it is needed before anything is worked out.`;
  return report(reader, 'no-such-number', value.at, message);
}
