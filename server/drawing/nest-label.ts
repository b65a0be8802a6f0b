/** The label of a nest: the words of its smallest size, and what is said of some sizes only with their names before it. */
import { say } from '../../grammar/say';
import type { DrawnText } from './model';
import type { Sized, SizedPiece } from './nest';
import { rounded } from './path';
import { forWhom } from './told';

/** Height of a line of text, in heights of a capital, as in words.ts. */
const LEADING = 1.9;

/** Smallest first, so that the label lies within every size. Lengths of edges differ from size to size, and are left out. */
export function nestedLabel(laid: readonly SizedPiece[], sized: readonly Sized[]): readonly DrawnText[] {
  const bodies = new Map(sized.map(({ size, drawing }) => [size, forWhom(drawing.body)]));
  const said = laid.map(({ size, piece }) =>
    piece.texts
      .filter(({ role, text }) => role === 'detail' && text !== bodies.get(size))
      .map(({ text }) => text),
  );
  const [first] = laid;
  if (first === undefined) return [];
  const own = first.piece.texts.filter(({ role }) => role === 'title' || role === 'note');
  const sizes = laid.map(({ size }) => size);
  return [...own, ...placed(first, [say`sizes ${sizes.join(', ')}`, ...linesInSizes(said, sizes)], bodies)];
}

/** Every line once, in the order of the first size that says it; with the names of its sizes, unless all say it. */
export function linesInSizes(
  said: readonly (readonly string[])[],
  sizes: readonly string[],
): readonly string[] {
  const of = new Map<string, string[]>();
  said.forEach((lines, i) => {
    for (const text of new Set(lines)) of.set(text, [...(of.get(text) ?? []), sizes[i]!]);
  });
  return [...of].map(([text, some]) => (some.length === sizes.length ? text : `${some.join(', ')}: ${text}`));
}

/** Where the lines of the first size stand, the line of its body taken by that of the sizes; further ones below them. */
function placed(
  { size, piece }: SizedPiece,
  lines: readonly string[],
  bodies: ReadonlyMap<string, string>,
): readonly DrawnText[] {
  const places = piece.texts.filter(({ role }) => role === 'detail');
  const last = places.at(-1);
  if (last === undefined) return [];
  const body = places.findIndex(({ text }) => text === bodies.get(size));
  const [sizeLine, ...others] = lines as [string, ...string[]];
  const order =
    body < 0 ? [...others, sizeLine] : [...others.slice(0, body), sizeLine, ...others.slice(body)];
  const room = Math.max(...piece.texts.filter(isLabel).map(({ text, size: high }) => text.length * high));
  return order.map((text, i): DrawnText => {
    const own = places[i] ?? last;
    const below = Math.max(0, i - places.length + 1) * last.size * LEADING;
    const high = own.size * Math.min(1, Math.max(SMALLEST, room / (text.length * own.size)));
    return { ...own, text, size: rounded(high), at: { x: own.at.x, y: rounded(own.at.y + below) } };
  });
}

/** A line that is wider than the label had room for is set so much smaller at the most. */
const SMALLEST = 0.6;

const isLabel = ({ role }: DrawnText): boolean => role === 'title' || role === 'detail';
