/** The font of everything that is printed on paper: how wide a text runs, and which letters it has. */
import * as fontkit from 'fontkit';
import { say } from '../../../grammar/say';
import { readBundledFont } from '../bundled';

export interface Metrics {
  /** At size 1. */
  widthOf(text: string): number;
  /** Whether there is a glyph for a letter; one that is missing is printed as an empty box. */
  shows(letter: string): boolean;
}

let kept: Metrics | undefined;
let opened: fontkit.Font | undefined;

/** Throws where the font was not packed with the program. */
export function fontBytes(): Uint8Array {
  const bytes = readBundledFont();
  if (bytes === undefined) throw new Error(say`the font for the words was not found.`);
  return bytes;
}

/**
 * The font, opened once: it takes longer than many pages. Letters are set one by one, as wide as each is: to lay texts out
 * with ligatures and kerning takes longer than all else, and they would run otherwise than `widthOf` says.
 */
export function openedFont(): fontkit.Font {
  if (opened !== undefined) return opened;
  const font = fontkit.create(fontBytes() as Buffer) as fontkit.Font;
  const layout = (text: string): { readonly glyphs: readonly fontkit.Glyph[] } => ({
    glyphs: [...text].map((letter) => font.glyphForCodePoint(letter.codePointAt(0)!)),
  });
  return (opened = Object.assign(font, { layout: layout as fontkit.Font['layout'] }));
}

export function metrics(): Metrics {
  if (kept !== undefined) return kept;
  const font = openedFont();
  const widths = new Map<number, number>();
  const width = (code: number): number => {
    const before = widths.get(code);
    if (before !== undefined) return before;
    // the box of a missing letter has the width that a PDF gives whatever it lists no width for (ISO 32000-1, 9.7.4.3)
    const known = font.hasGlyphForCodePoint(code);
    const found = known ? font.glyphForCodePoint(code).advanceWidth / font.unitsPerEm : 1;
    widths.set(code, found);
    return found;
  };
  kept = {
    widthOf: (text) => [...text].reduce((sum, letter) => sum + width(letter.codePointAt(0)!), 0),
    shows: (letter) => font.hasGlyphForCodePoint(letter.codePointAt(0)!),
  };
  return kept;
}

/** Letters that steer others and have no look of their own: they would turn a line about, or stand as a box. */
const UNSEEN = /[\p{Cc}\p{Cf}\u{fe00}-\u{fe0f}]/gu;

/** A text as it can be printed on one line. */
export const printable = (text: string): string =>
  text.normalize('NFC').replace(/\s+/gu, ' ').replace(UNSEEN, '').trim();

/** The letters of some texts that the font lacks, each once. */
export const missingLetters = (texts: readonly string[]): readonly string[] => {
  const { shows } = metrics();
  return [...new Set(texts.flatMap((text) => [...printable(text)]))].filter((letter) => !shows(letter));
};
