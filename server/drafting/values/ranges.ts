/** What there is to say of a written range. */
import { say } from '../../../grammar/say';
import type { Range } from '../../../grammar/syntax';
import type { Quantity } from '../model';
import { print } from './quantity';
import { replace, report, wordsOf, type Reader } from './reader';

/** The higher end stands first. */
export function turnedAbout(reader: Reader, range: Range, low: Quantity, high: Quantity): void {
  const message = say`This range runs from ${print(low, reader.unit)} down to ${print(high, reader.unit)}: the lower end comes first.`;
  const text = `${wordsOf(reader, range.high)} .. ${wordsOf(reader, range.low)}`;
  report(reader, 'range-turned-about', range.at, message, {
    fixes: [replace(reader, say`Put the lower end first`, range.at, text)],
  });
}
