/** Units apart from their number, or written otherwise, read as one length: `4 cm`, `2,5 inches`, `1 1/2 feet`. */
import { say } from './say';
import { substitution, type Repair } from './mending';
import * as t from './tokens';
import { isMeasure, isName, isWord, W, type Token } from './tokens';
import { endsInFeet } from './feet-marks';
import { isFeet, unitMeant } from './unit-names';
import { isUnit } from './words';
import type { Unit } from './syntax';

/** Heads of the statements that hold a range, where `in` may be the word before it. */
export const RANGED = new Set(['choose', 'measure', 'solve', 'usual']);

export function unitWords(written: string, meant: string): string {
  if (endsInFeet(written))
    return say`\`${written}\`: feet are no unit here; a foot is 12 inches, so \`${meant}\`.`;
  return say`\`${written}\`: the unit is written \`${meant.replace(/^[\d./ ]+/, '')}\`, so \`${meant}\`.`;
}

const feetAndInchesWords = (written: string, meant: string): string =>
  say`\`${written}\` is feet and inches; a length is one number and one unit, so write \`${meant}\`.`;

export const signWords = (written: string, meant: string): string =>
  say`\`${written}\` has a sign that only looks like the one meant: write \`${meant}\`.`;

export const commaWords = (written: string, meant: string): string =>
  say`\`${written}\` has a decimal comma; numbers take a point: \`${meant}\`.`;

/** A length that takes several tokens. */
interface Found {
  readonly meant: { readonly amount: number; readonly unit: Unit; readonly text: string };
  readonly size: number;
  /** What is told where it is more than a space before the unit. */
  readonly why?: 'unknown-unit' | 'unusual-sign' | 'feet-and-inches';
  /** The unit was taken for the word before a range, which therefore stands there a second time. */
  readonly doubled?: Token;
}

/** @param given the same tokens as they are written */
export function units(tokens: readonly Token[], given: readonly Token[], repairs: Repair[]): Token[] {
  const out: Token[] = [];
  for (let i = 0; i < tokens.length;) {
    const found = feetAndInchesAt(tokens, i) ?? lengthAt(tokens, i);
    if (found === undefined) {
      out.push(tokens[i++]!);
      continue;
    }
    const length = lengthOf(given.slice(i, i + found.size), found);
    out.push(length, ...(found.doubled ? [found.doubled] : []));
    repairs.push(told(length, found));
    i += found.size;
  }
  return out;
}

/** The length as one token, whose image stays what is written: a message may quote it. */
function lengthOf(written: readonly Token[], { meant }: Found): Token {
  const length = written[0]!.as(t.Length, meant.text);
  length.endOffset = written[written.length - 1]!.endOffset;
  length.image = written
    .map((token, i) => (i > 0 && token.startOffset > written[i - 1]!.end ? ' ' : '') + token.image)
    .join('');
  length.unit = meant.unit;
  length.amount = meant.amount;
  length.fractional = meant.text.includes('/');
  return length;
}

function told(length: Token, { meant, why, doubled }: Found): Repair {
  const text = doubled ? `${meant.text} in` : meant.text;
  const edit = { from: length.startOffset, to: length.end, text };
  if (why === 'feet-and-inches')
    return substitution('unknown-unit', feetAndInchesWords(length.image, text), edit);
  if (why === 'unknown-unit') return substitution(why, unitWords(length.image, text), edit);
  if (why === 'unusual-sign') return substitution(why, signWords(length.image, text), edit);
  if (!doubled && /^\d+,\d/.test(length.image))
    return substitution('comma-in-number', commaWords(length.image, text), edit);
  const message = doubled
    ? say`\`${length.image}\` before a range needs its unit as well: \`${text}\`.`
    : say`A unit touches its number: \`${text}\`.`;
  return substitution('space-before-unit', message, edit);
}

/** `5 ft 3 in`, `5ft3in`, `5' 3"`, `5' 3`: what follows feet is inches where it is less than a foot. */
function feetAndInchesAt(tokens: readonly Token[], i: number): Found | undefined {
  const feet = feetAt(tokens, i);
  const inches = feet && inchesAt(tokens, i + feet.size);
  if (!inches || inches.amount >= 12) return undefined;
  const amount = Number((feet.amount * 12 + inches.amount).toFixed(4));
  const meant = { amount, unit: 'in' as const, text: `${amount}in` };
  return {
    meant,
    size: feet.size + inches.size,
    why: 'feet-and-inches',
    ...(inches.doubled && { doubled: inches.doubled }),
  };
}

/** A whole number of feet. */
function feetAt(
  tokens: readonly Token[],
  i: number,
): { readonly amount: number; readonly size: number } | undefined {
  const [token, unit] = [tokens[i]!, tokens[i + 1]];
  const amount = /^\d+/.exec(token.image);
  if (!amount) return undefined;
  if (token.tokenType === t.Length && isFeet(token.image.slice(amount[0].length)))
    return { amount: Number(amount[0]), size: 1 };
  if (!isBareNumber(token) || !WHOLE.test(token.image)) return undefined;
  return unit?.tokenType === t.Name && isFeet(unit.image)
    ? { amount: Number(amount[0]), size: 2 }
    : undefined;
}

/** Inches, their unit touching or apart, and a number whose unit is left out. */
function inchesAt(
  tokens: readonly Token[],
  i: number,
): { readonly amount: number; readonly size: number; readonly doubled?: Token } | undefined {
  const token = tokens[i];
  if (!token) return undefined;
  const found = lengthAt(tokens, i);
  if (found !== undefined) {
    const { amount, unit } = found.meant;
    return unit === 'in'
      ? { amount, size: found.size, ...(found.doubled && { doubled: found.doubled }) }
      : undefined;
  }
  if (token.tokenType === t.Length)
    return token.unit === 'in' ? { amount: token.amount!, size: 1 } : undefined;
  const figure = figureAt(tokens, i);
  if (figure === undefined) return undefined;
  const after = tokens[i + figure.size];
  // an `in` that was no unit is the word before a range
  return isWord(after) && after!.tokenType !== W.in ? undefined : figure;
}

function lengthAt(tokens: readonly Token[], i: number): Found | undefined {
  const figure = figureAt(tokens, i);
  if (figure === undefined) return undefined;
  const at = i + figure.size;
  const unit = tokens[at];
  const size = figure.size + 1;
  // a foot, apart, is more likely a point or a measurement of that name
  if (unit?.tokenType === t.Name && unit.text !== 'foot' && !isUnit(unit.text)) {
    const meant = unitMeant(figure.text, figure.amount, unit.image);
    if (meant !== undefined) return { meant, size, why: 'unknown-unit' };
  }
  if (!isUnitApart(tokens, at)) return touchingAt(tokens.slice(i, i + 2));
  const meant = { amount: figure.amount, unit: unit!.text as Unit, text: figure.text + unit!.text };
  const doubled = unit!.tokenType === W.in && isLengthIn(tokens[at + 1]);
  return { meant, size, ...(doubled && { doubled: unit! }) };
}

/** A number without a unit as it should be written; `1 1/2` and `1 ½` are one. */
function figureAt(
  tokens: readonly Token[],
  i: number,
): { readonly text: string; readonly amount: number; readonly size: number } | undefined {
  const token = tokens[i]!;
  if (!isBareNumber(token)) return undefined;
  const [text, amount, next] = [mended(token), token.amount!, tokens[i + 1]];
  if (!WHOLE.test(token.image) || next?.tokenType !== t.Fraction) return { text, amount, size: 1 };
  return { text: `${text} ${mended(next)}`, amount: amount + next.amount!, size: 2 };
}

/** `1 1/2inches`, `1 ½"`: a fraction that its unit touches belongs to the whole number before it. */
function touchingAt([whole, part]: readonly (Token | undefined)[]): Found | undefined {
  if (!whole || !isBareNumber(whole) || !WHOLE.test(whole.image)) return undefined;
  if (part?.tokenType !== t.Length || !part.slip || !FRACTION.test(part.image)) return undefined;
  const { code, meant } = part.slip;
  const why = code as Found['why'];
  if (FRACTION.test(meant)) {
    const amount = whole.amount! + part.amount!;
    return { meant: { amount, unit: part.unit!, text: `${whole.image} ${meant}` }, size: 2, why };
  }
  // feet have become inches, which are told as one number
  const amount = Number((whole.amount! * 12 + part.amount!).toFixed(4));
  return { meant: { amount, unit: 'in', text: `${amount}in` }, size: 2, why };
}

const WHOLE = /^\d+$/;
const FRACTION = /^(?:\d+\/\d|\p{No})/u;

const mended = ({ slip, image }: Token): string => slip?.meant ?? image;

const isBareNumber = ({ tokenType, unit }: Token): boolean =>
  (tokenType === t.Number || tokenType === t.Fraction) && unit === undefined;

const isLengthIn = (token: Token | undefined): boolean =>
  token?.tokenType === t.Length && token.unit === 'in';

/** Whether what stands at `at`, behind a number, is its unit. */
function isUnitApart(tokens: readonly Token[], at: number): boolean {
  const [unit, after] = [tokens[at], tokens[at + 1]];
  if (!unit || !isUnit(unit.text)) return false;
  if (unit.tokenType !== W.in) return true;
  if (RANGED.has(tokens[0]!.text)) return !isValueStart(after) || isLengthIn(after);
  return !isName(after);
}

function isValueStart(token: Token | undefined): boolean {
  if (!token) return false;
  return (
    isMeasure(token) ||
    isName(token) ||
    token.tokenType === t.Open ||
    token.tokenType === t.Minus ||
    token.tokenType === t.Func
  );
}
