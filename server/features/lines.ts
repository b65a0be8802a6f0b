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

/** A text's line starts. A line ends with CR LF, LF or a lone CR, as the protocol has it. */
export class Lines {
  readonly #starts: readonly number[];

  constructor(readonly text: string) {
    this.#starts = lineStarts(text);
  }

  get count(): number {
    return this.#starts.length;
  }

  /** Where an offset stands; offsets outside the text are taken to its nearest end. */
  position(offset: number): Position {
    const inside = Math.min(Math.max(offset, 0), this.text.length);
    const line = this.#lineOf(inside);
    return { line, character: inside - this.#starts[line]! };
  }

  range(from: number, to: number): PositionRange {
    return { start: this.position(from), end: this.position(to) };
  }

  /** The offset of a position; a character beyond its line's end is taken to that end. */
  offset({ line, character }: Position): number {
    if (line < 0) return 0;
    if (line >= this.#starts.length) return this.text.length;
    const start = this.#starts[line]!;
    return start + Math.min(Math.max(character, 0), this.line(line).length);
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

const CR = 13;
const LF = 10;

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const sign = text.charCodeAt(i);
    if (sign === LF || (sign === CR && text.charCodeAt(i + 1) !== LF)) starts.push(i + 1);
  }
  return starts;
}
