/** Reads a `usual` line: a range of the pattern's own, in place of one that a check judges by. */
import { say } from '../../../grammar/say';
import type { UsualNode } from '../../../grammar/syntax';
import { ofKind, quantity } from './arithmetic';
import { turnedAbout } from './ranges';
import type { Reader, UsualAnswer } from './reader';

export function readUsual(reader: Reader, { range }: UsualNode): UsualAnswer | undefined {
  const [low, high] = [quantity(reader, range.low), quantity(reader, range.high)];
  if (low === undefined || high === undefined) return undefined;
  if (low.kind !== high.kind) {
    const kind = low.kind === 'ratio' ? high.kind : low.kind;
    for (const end of [range.low, range.high]) ofKind(reader, end, kind, say`the range`);
    return undefined;
  }
  const { kind } = low;
  if (low.amount <= high.amount) return { is: 'usual', range: { kind, low: low.amount, high: high.amount } };
  turnedAbout(reader, range, low, high);
  return { is: 'usual', range: { kind, low: high.amount, high: low.amount } };
}
