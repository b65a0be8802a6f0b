/**
 * Words as a DXF of release 12 can hold them: seven bits, and no sign that means something else there. An accent is left
 * off (é is e), a typographic sign becomes the plain one („ is "), a letter of another script or an emoji becomes a
 * question mark. Nothing is refused.
 */
import { isEnglish } from '../../../grammar/say';

/** What does not fall apart into a letter and its accents. */
const PLAIN: Readonly<Record<string, string>> = {
  ß: 'ss',
  ẞ: 'SS',
  æ: 'ae',
  Æ: 'AE',
  œ: 'oe',
  Œ: 'OE',
  ø: 'o',
  Ø: 'O',
  đ: 'd',
  Đ: 'D',
  ð: 'd',
  Ð: 'D',
  þ: 'th',
  Þ: 'Th',
  ł: 'l',
  Ł: 'L',
  ı: 'i',
  '‘': "'",
  '’': "'",
  '‚': "'",
  '′': "'",
  '“': '"',
  '”': '"',
  '„': '"',
  '″': '"',
  '«': '"',
  '»': '"',
  '‐': '-',
  '‑': '-',
  '–': '-',
  '—': '-',
  '−': '-',
  '⁄': '/',
  '×': 'x',
  '·': '.',
  '•': '-',
  '°': ' deg',
  '€': 'EUR',
  '£': 'GBP',
};

/** In words of a DXF `^` and `%%` begin a code, and a `{` may. */
const CODES: Readonly<Record<string, string>> = { '^': '?', '{': '(', '}': ')', '\\': '/' };

const GERMAN: Readonly<Record<string, string>> = {
  ...{ ä: 'ae', ö: 'oe', ü: 'ue', ß: 'ss' },
  ...{ Ä: 'Ae', Ö: 'Oe', Ü: 'Ue' },
};

/**
 * A sentence of ours in letters of seven bits. What its author named or wrote is the same in every language, so that
 * files of one pattern can be compared: it keeps its letters within the sentence.
 */
export function spelt(words: string, authored: readonly string[] = []): string {
  if (isEnglish()) return words;
  const kept = [...new Set(authored)]
    .filter((name) => /[äöüßÄÖÜ]/.test(name))
    .sort((a, b) => b.length - a.length);
  const whole = kept.map((name) => `(?<![\\p{L}\\d-])${literal(name)}(?![\\p{L}\\d-])`);
  const found = new RegExp(`(${whole.join('|') || '(?!)'})|[äöüßÄÖÜ]`, 'gu');
  return words.replace(found, (part: string, name?: string) => name ?? GERMAN[part]!);
}

const literal = (name: string): string => name.replace(/[\\^$.*+?()[\]{}|/]/g, '\\$&');

/** Joins letters, or sets their direction, and is not seen. */
const UNSEEN = /[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufe00-\ufe0f\ufeff]/gu;

/** Longest value of a group of text in release 12, in characters, *from memory*. */
const LONGEST = 255;

export function asciiOf(words: string): string {
  const plain = [...words.replace(UNSEEN, '').normalize('NFKD').replace(/\p{M}/gu, '')]
    .map((sign) => PLAIN[sign] ?? CODES[sign] ?? (/[\u0000-\u001f\u007f]/.test(sign) ? ' ' : sign))
    .map((sign) => (/^[ -~]*$/.test(sign) ? sign : '?'))
    .join('');
  return plain
    .replace(/%(?=%)/g, '% ')
    .trim()
    .slice(0, LONGEST);
}

/** Letters of a name of a block or a layer in release 12 (31 of them, without blanks), *from memory*. */
const LONGEST_NAME = 31;

/** Names of blocks or layers, each once in the file, told apart without regard to capitals. */
export class Names {
  private readonly taken = new Set<string>();

  of(words: string): string {
    const plain = asciiOf(words).replace(/[^A-Za-z0-9_$-]+/g, '_') || '_';
    for (let i = 1; ; i++) {
      const end = i === 1 ? '' : `-${i}`;
      const name = plain.slice(0, LONGEST_NAME - end.length) + end;
      if (this.taken.has(name.toUpperCase())) continue;
      this.taken.add(name.toUpperCase());
      return name;
    }
  }
}
