/** `--sizes`: a pattern drafted for several sizes of its table, one drawing each. */
import { draw } from '../drawing/draw';
import type { Sized } from '../drawing/nest';
import { Unable } from './io';
import type { Bench, Choice, Opened } from './open';

/** `all`, or names with commas between: `36,40`. */
export const sizeNames = (words: string): readonly string[] =>
  words
    .split(',')
    .map((word) => word.trim())
    .filter((word) => word !== '');

/** One drawing a size, in the order of the table, however they were asked for. */
export function drawnSizes(
  { workshop }: Bench,
  { path, uri, pattern }: Opened,
  names: readonly string[],
  choice: Choice,
): readonly Sized[] {
  const { sizes, body } = pattern;
  if (sizes.length === 0 || body === undefined)
    throw new Unable(
      `${path} has no table of sizes behind it, so --sizes has nothing to draw. Name a size of a table: --for "standard M".`,
    );
  const lost = names.find((name) => name !== 'all' && !sizes.includes(name));
  if (lost !== undefined)
    throw new Unable(`${body.name} has no size ${lost}. Sizes are ${sizes.join(', ')}, or all.`);
  if (names.length === 0) throw new Unable(`--sizes needs sizes: all, or some of ${sizes.join(',')}.`);
  const asked = names.includes('all') ? sizes : sizes.filter((size) => names.includes(size));
  const sized: Sized[] = [];
  const choices = asked.map((size) => ({ ...choice, for: { name: body.name, size }, size }));
  workshop.forEach(uri, choices, (drafted, { size }) => sized.push({ size, drawing: draw(drafted) }));
  return sized;
}
