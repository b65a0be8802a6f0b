/** To which of its two sides a dart is pressed, as its line says it. */
import { say } from '../../../grammar/say';
import type { Expr, Pressing } from '../../../grammar/syntax';
import { distance, type Point } from '../../geometry';
import { shapeOf } from '../shapes/phrase';
import { report, wordsOf, type Reader } from '../values/reader';

/** A side that a dart may be pressed to, and where it lies at its widest. */
export interface Side<T extends string> {
  readonly side: T;
  readonly at: Point;
}

/** @returns '' where it is not said, or can't be told */
export function pressing<T extends string>(
  reader: Reader,
  pressed: Pressing | undefined,
  one: Side<T>,
  other: Side<T>,
): T | 'open' | '' {
  switch (pressed?.way) {
    case 'open':
      return 'open';
    case 'up':
      return one.at.y <= other.at.y ? one.side : other.side;
    case 'down':
      return one.at.y >= other.at.y ? one.side : other.side;
    case 'toward':
      return nearer(reader, pressed.toward!, one, other);
    default:
      return '';
  }
}

function nearer<T extends string>(reader: Reader, toward: Expr, one: Side<T>, other: Side<T>): T | '' {
  const shape = shapeOf(reader, toward);
  if (shape === undefined) return '';
  const away = ({ at }: Side<T>): number =>
    shape.kind === 'point' ? distance(shape.point, at) : shape.path.locate(at).distance;
  const [a, b] = [away(one), away(other)];
  if (Math.abs(a - b) > 1e-6) return a < b ? one.side : other.side;
  const message = say`${wordsOf(reader, toward)} lies as far from one side of the dart as from the other, so it does not say to which it is pressed.`;
  report(reader, 'no-direction', toward.at, message);
  return '';
}
