/** Keystrokes at seeded random places: each changes a number, a name or a comment, and is taken back by the next. */
import { random } from '../support/random';

export interface Keystroke {
  readonly kind: 'number' | 'name' | 'comment';
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** A digit is exchanged for another, so that a value changes and stays plausible. */
const NUMBER = /(?<=[\d. ])\d(?=(?:cm|mm)\b)/g;
/** A letter is added at the end of a name: where it is mentioned or defined, never to a word of the language. */
const NAME = /(?<=\b(?:point|line|curve|let|piece|seam|along|to|from) [a-z][a-z-]*[a-z])(?=\d*\b)/g;
const COMMENT = /(?<=# [^\n]*)\b/g;

const places = (text: string, of: RegExp): number[] => [...text.matchAll(of)].map(({ index }) => index);

/** @returns `count` keystrokes, every second of which undoes the one before it */
export function keystrokes(text: string, count: number, seed: number): readonly Keystroke[] {
  const below = random(seed);
  const found = { number: places(text, NUMBER), name: places(text, NAME), comment: places(text, COMMENT) };
  const kinds = (['number', 'name', 'comment'] as const).filter((kind) => found[kind].length > 0);
  const keys: Keystroke[] = [];
  while (keys.length < count) {
    const kind = kinds[(keys.length / 2) % kinds.length]!;
    const from = found[kind][below(found[kind].length)]!;
    const { to, typed } =
      kind === 'number' ? digit(text, from) : { to: from, typed: kind === 'name' ? 'x' : 'a' };
    keys.push({ kind, from, to, text: typed });
    keys.push({ kind, from, to: from + typed.length, text: text.slice(from, to) });
  }
  return keys;
}

/** In how wide a dart is: the last digit before the point or the unit. */
const DART = /(?<=\bdart-width = )\d/g;

/** @returns `count` keystrokes in the widths of darts, every second of which undoes the one before it */
export function dartStrokes(text: string, count: number, seed: number): readonly Keystroke[] {
  const below = random(seed);
  const found = places(text, DART);
  return Array.from({ length: found.length === 0 ? 0 : count / 2 }, () => {
    const from = found[below(found.length)]!;
    const { to } = digit(text, from);
    const typed = text[from] === '2' ? '3' : '2';
    return [
      { kind: 'number', from, to, text: typed },
      { kind: 'number', from, to, text: text.slice(from, to) },
    ] as const;
  }).flat();
}

const digit = (text: string, from: number): { to: number; typed: string } => ({
  to: from + 1,
  typed: String((Number(text[from]) % 9) + 1),
});
