/** A megabyte of one thing over and over, and worse: texts that nobody means, but that somebody may open. */
import { random } from './random';

const MEGABYTE = 1_000_000;

const filled = (part: string): string => part.repeat(Math.ceil(MEGABYTE / part.length)).slice(0, MEGABYTE);

function noise(highest: number): string {
  const below = random(5);
  return Array.from({ length: MEGABYTE }, () => String.fromCharCode(below(highest))).join('');
}

/** Title to text. */
export const FLOODS: Readonly<Record<string, () => string>> = {
  'letters on one line': () => filled('let a = b + '),
  'words on one line': () => filled('straight to '),
  'opening brackets on one line': () => filled('('),
  'opening braces on one line': () => filled('{'),
  'closing braces on one line': () => filled('}'),
  'empty blocks on one line': () => filled('{}'),
  'headers on one line': () => filled('draft a { '),
  'definitions on one line': () => filled('let a = 1 '),
  'quotes on one line': () => filled('"'),
  'little fractions on one line': () => filled('½'),
  'commas on one line': () => filled(','),
  'minus signs on one line': () => `let a = ${filled('-')}`,
  'steps in one statement': () => `point a = b ${filled('down 1cm ')}`,
  'line ends': () => filled('\n'),
  'carriage returns': () => filled('\r'),
  'lines of a closing brace': () => filled('}\n'),
  'lines of an opening brace': () => filled('{\n'),
  'lines of both braces': () => filled('{\n}\n'),
  'lines of an opening bracket': () => filled('(\n'),
  'lines of a lone quote': () => filled('"\n'),
  'lines of a comma': () => filled(',\n'),
  'lines of a digit': () => filled('1\n'),
  'lines of then': () => filled('then\n'),
  'lines of an unclosed call': () => filled('let a = max(1, 2\n'),
  'lines of an unclosed bracket': () => filled('let a = (\n'),
  'pieces that are never closed': () => filled('piece a of b {\n'),
  'outlines that are never closed': () => filled('outline from p {\n'),
  'blocks that stand in each other': () => filled('draft a {\n  piece b of c {\n'),
  'points in a block that is never closed': () => `draft a {\n${filled('  point p = origin\n')}`,
  'sound points of one draft': () => `draft a {\n${filled('  point p = origin down 5cm\n')}}\n`,
  'binary noise': () => noise(256),
  'characters from all planes': () => noise(65536),
  'ten thousand nested brackets': () => `let a = ${'('.repeat(10000)}b${')'.repeat(10000)}`,
  'ten thousand nested calls': () => `let a = ${'min('.repeat(10000)}b${')'.repeat(10000)}`,
  'ten thousand nested blocks': () => `${'draft a {'.repeat(10000)}${'}'.repeat(10000)}`,
};
