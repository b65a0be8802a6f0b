/** `--sizes`: a pattern drafted for several sizes of its table, one drawing each. */
import { say } from '../../grammar/say';
import { draw } from '../drawing/draw';
import type { Sized } from '../drawing/nest';
import type { Pattern } from '../drafting/model';
import { Unable } from './io';
import type { Bench, Choice, Opened } from './open';

/** `all`, or names with commas between: `36,40`. */
export const sizeNames = (words: string): readonly string[] =>
  words
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');

/** What is made of the pattern for each of some sizes, in the order of the table, however they were asked for. */
export function inSizes<T>(
  { workshop }: Bench,
  { path, uri, pattern }: Opened,
  names: readonly string[],
  choice: Choice,
  make: (drafted: Pattern) => T,
): readonly T[] {
  const { sizes, body } = pattern;
  if (sizes.length === 0 || body === undefined) throw new Unable(whyNoSizes(path, pattern));
  const lost = names.find((name) => name !== 'all' && !sizes.includes(name));
  if (lost !== undefined)
    throw new Unable(say`${body.name} has no size ${lost}. Sizes are ${sizes.join(', ')}, or all.`);
  if (names.length === 0) throw new Unable(say`--sizes needs sizes: all, or some of ${sizes.join(',')}.`);
  const asked = names.includes('all') ? sizes : sizes.filter((size) => names.includes(size));
  const made: T[] = [];
  const choices = asked.map((size) => ({ ...choice, for: { name: body.name, size } }));
  workshop.forEach(uri, choices, (drafted) => made.push(make(drafted)));
  return made;
}

/** One drawing a size. */
export const drawnSizes = (
  bench: Bench,
  opened: Opened,
  names: readonly string[],
  choice: Choice,
): readonly Sized[] =>
  inSizes(bench, opened, names, choice, (drafted) => ({
    size: drafted.body?.size ?? '',
    drawing: draw(drafted),
  }));

/** A line for each piece that is drawn for some sizes and not for others. */
export function lackingSizes(
  sized: readonly { readonly size: string; readonly pieces: readonly { readonly name: string }[] }[],
): readonly string[] {
  const names = new Set(sized.flatMap(({ pieces }) => pieces.map(({ name }) => name)));
  return [...names].flatMap((name) => {
    const lacking = sized.filter(({ pieces }) => !pieces.some((piece) => piece.name === name));
    const sizes = lacking.map(({ size }) => size).join(', ');
    return lacking.length === 0 ? [] : [say`${name} is not drawn for size ${sizes}: it has an error there.`];
  });
}

/** Says which table could be asked for, where the pattern or a file that it uses has one. */
function whyNoSizes(path: string, { body, everybody }: Pattern): string {
  const why =
    body === undefined
      ? say`${path} is drafted for nobody, so --sizes has nothing to draw.`
      : say`${path} is drafted for ${body.name}, one body, so --sizes has nothing to draw.`;
  const sized = everybody.find(({ size }) => size !== undefined);
  const next =
    sized === undefined
      ? say`A table is written sizes chorus { size S M L … }, with a row for each measurement.`
      : say`Name a size of a table as well: --for "${sized.name} ${sized.size!}".`;
  return `${why} ${next}`;
}
