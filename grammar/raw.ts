/** The shapes that cutting a text yields, and its lines, each read once. */
import { readLine, type Line } from './lexer';
import type { Token } from './tokens';
import type { BlockKind } from './words';

/** What the cutting itself had to mend. */
export interface Mended {
  readonly code: 'missing-brace' | 'stray-brace' | 'semicolon' | 'shared-line' | 'too-deep';
  readonly from: number;
  readonly to: number;
  readonly edit?: { readonly from: number; readonly to: number; readonly text: string };
}

/** A statement's tokens, not yet parsed. Offsets are the file's. */
export interface Raw {
  readonly kind: BlockKind | 'share';
  readonly tokens: Token[];
  readonly doc: string;
  /** Where its documentation begins, or it itself. */
  readonly docFrom: number;
  readonly from: number;
  /** One past its own text, its opening brace included. */
  to: number;
  /** One past all of it, its block included. */
  end: number;
  block: Raw[] | undefined;
  readonly mended: Mended[];
  /** Where more stands than is read: what this one covers is left as text. */
  readonly unread?: true;
}

/**
 * Most that is read of one file, so that whatever stands in it is read within a second or so: a hundred thousand
 * statements, or five thousand that have a problem. What follows is left unread, and says so once.
 */
export const MOST_WEIGHT = 100_000;
/** What a problem weighs beside a statement that is read at once: working out what was meant takes many attempts. */
export const PROBLEM_WEIGHT = 20;

/** What stands from `first` on to the text's end, left as it is. */
export function unread(first: Token, text: string): Raw {
  const [from, end] = [first.startOffset, text.length];
  return {
    kind: 'file', tokens: [first], doc: '', docFrom: from, from, to: end, end, block: undefined, mended: [], unread: true,
  }; // prettier-ignore
}

export interface Group {
  readonly items: Raw[];
  /** Where the next group begins. */
  readonly next: number;
  /** One past the last character that had a say in how this group is cut. */
  readonly reach: number;
}

/** A block that is open while the text is cut. */
export interface Frame {
  readonly owner: Raw;
  readonly kind: BlockKind;
  readonly indent: number;
  readonly open: Token | undefined;
  /** Offset of the line that opened it. */
  readonly line: number;
  readonly items: Raw[];
  /** Whether its lines stand further in than its header; unknown before the first. */
  indented: boolean | undefined;
}

/**
 * Lines kept at a time: more than any look ahead and than nearly every block. With more, their tokens outlive the reading
 * and are carried through memory for nothing; with fewer, a block whose braces do not agree is read twice.
 */
const REMEMBERED = 300;

/** The lines of the text, each read once. */
export class Lines {
  private readonly known = new Map<number, Line>();
  constructor(readonly text: string) {}

  at(offset: number): Line {
    let line = this.known.get(offset);
    if (!line) {
      if (this.known.size >= REMEMBERED) this.known.clear();
      this.known.set(offset, (line = readLine(this.text, offset)));
    }
    return line;
  }

  /** The next line with tokens at or after `offset`. */
  *from(offset: number): Generator<Line> {
    for (let at = offset; at < this.text.length;) {
      const line = this.at(at);
      if (line.tokens.length > 0) yield line;
      at = line.next;
    }
  }

  indent(line: Line): number {
    let width = 0;
    for (let i = line.from; i < line.tokens[0]!.startOffset; i++) width += this.text[i] === '\t' ? 4 : 1;
    return width;
  }
}
