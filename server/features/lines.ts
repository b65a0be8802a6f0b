/** Places in a text: from offsets, as the engine counts, to lines and characters, as editors and terminals count. */

/** Zero-based line, and characters (UTF-16 code units) from its start: the counting of the language server protocol. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface PositionRange {
  readonly start: Position;
  readonly end: Position;
}

/** What a character is to a client: a UTF-16 code unit, a byte of UTF-8, or a whole sign of Unicode. */
export type Encoding = 'utf-16' | 'utf-8' | 'utf-32';

export const ENCODINGS: readonly Encoding[] = ['utf-16', 'utf-8', 'utf-32'];

/** A text's line starts. A line ends with CR LF, LF or a lone CR, as the protocol has it. */
export class Lines {
  readonly #starts: readonly number[];

  constructor(
    readonly text: string,
    readonly encoding: Encoding = 'utf-16',
  ) {
    this.#starts = lineStarts(text);
  }

  get count(): number {
    return this.#starts.length;
  }

  /** Where an offset stands; offsets outside the text are taken to its nearest end. */
  position(offset: number): Position {
    const inside = Math.min(Math.max(offset, 0), this.text.length);
    const line = this.#lineOf(inside);
    const start = this.#starts[line]!;
    if (this.encoding === 'utf-16') return { line, character: inside - start };
    return { line, character: unitsOf(this.text.slice(start, inside), this.encoding) };
  }

  /** Where offsets stand that come in their order, from one on: the search for a line goes on from the last. */
  following(from: number): (offset: number) => Position {
    let line = this.#lineOf(from);
    return (offset) => {
      while (offset >= (this.#starts[line + 1] ?? Infinity)) line++;
      const start = this.#starts[line]!;
      if (this.encoding === 'utf-16') return { line, character: offset - start };
      return { line, character: unitsOf(this.text.slice(start, offset), this.encoding) };
    };
  }

  range(from: number, to: number): PositionRange {
    return { start: this.position(from), end: this.position(to) };
  }

  /** The offset of a position; a character beyond its line's end is taken to that end. */
  offset({ line, character }: Position): number {
    if (line < 0) return 0;
    if (line >= this.#starts.length) return this.text.length;
    const start = this.#starts[line]!;
    const text = this.line(line);
    if (this.encoding === 'utf-16') return start + Math.min(Math.max(character, 0), text.length);
    return start + codeUnits(text, character, this.encoding);
  }

  /** The text of a line without its line end; '' beyond the last line. */
  line(line: number): string {
    const start = this.#starts[line];
    if (start === undefined) return '';
    const next = this.#starts[line + 1] ?? this.text.length;
    return this.text.slice(start, next).replace(/[\r\n]+$/, '');
  }

  /** The last line that starts at or before the offset, by halving. */
  #lineOf(offset: number): number {
    let low = 0;
    let high = this.#starts.length - 1;
    while (low < high) {
      const middle = (low + high + 1) >> 1;
      if (this.#starts[middle]! <= offset) low = middle;
      else high = middle - 1;
    }
    return low;
  }
}

/** The units that one sign of Unicode takes. */
function unitsOfSign(sign: string, encoding: Encoding): number {
  if (encoding === 'utf-32') return 1;
  const code = sign.codePointAt(0)!;
  if (encoding === 'utf-16') return sign.length;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}

function unitsOf(text: string, encoding: Encoding): number {
  let sum = 0;
  for (const sign of text) sum += unitsOfSign(sign, encoding);
  return sum;
}

/** How many code units of our texts the first `units` of a line take; never the half of a sign. */
function codeUnits(line: string, units: number, encoding: Encoding): number {
  let [at, left] = [0, units];
  for (const sign of line) {
    left -= unitsOfSign(sign, encoding);
    if (left < 0) break;
    at += sign.length;
  }
  return at;
}

const CR = 13;
const LF = 10;

function lineStarts(text: string): number[] {
  const starts = [0];
  // the machine finds a line end faster than we do; hardly a text has the other kinds
  if (!text.includes('\r')) {
    for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) starts.push(at + 1);
    return starts;
  }
  for (let i = 0; i < text.length; i++) {
    const sign = text.charCodeAt(i);
    if (sign === LF || (sign === CR && text.charCodeAt(i + 1) !== LF)) starts.push(i + 1);
  }
  return starts;
}
