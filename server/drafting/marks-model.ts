/** What is written on a piece and cut out of it: cutting words, balance lines, marks, holes. Millimetres, y down. */
import type { MarkWord, Statement } from '../../grammar/syntax';
import type { Path, Point } from '../geometry';
import type { Source } from './finding';
import type { Edge } from './model';

export interface CutLayer {
  /** Pieces cut in all: two for a pair. */
  readonly count: number;
  readonly as: 'pairs' | 'alike' | 'open' | 'fold' | 'left' | 'right' | 'single';
  readonly cloth: string;
}

/** `cut pair in silk, right side up` as the piece is to be cut. */
export interface CutWords {
  readonly layers: readonly CutLayer[];
  readonly rightSideUp: boolean;
  /** As printed: "cut 1 on fold". */
  readonly text: string;
}

export interface BalanceLine {
  readonly name: string;
  readonly source: Source;
  readonly path: Path;
}

/** A mark, or a row of marks counted along a line. */
export interface Mark {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  /** Of a row as well: what each of it is. */
  readonly word: MarkWord;
  /** Where it lies, in the order in which a row is counted; none for a line. A buttonhole's is where the button will sit. */
  readonly points: readonly Point[];
  /** Bones, tapes, topstitching and creases; a buttonhole from end to end. In a row one each. */
  readonly paths: readonly Path[];
  readonly row?: MarkRow;
  /** Across a button, or along a buttonhole, where it is stated. */
  readonly size?: number;
}

export interface MarkRow {
  /** From each to the next along the line, sewn distance on an edge. */
  readonly apart: number;
  /** The line it is counted along, as written. */
  readonly along: string;
}

/** Cloth cut out of a piece, bounded by edges of its own. */
export interface Hole {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  /** End to end; they are sewn, finished and allowed as the edges of the outline are. */
  readonly edges: readonly Edge[];
  /** Within its sewing line. */
  readonly area: number;
  /** Within the sewing line by the allowance; undefined where that can't be had. */
  readonly cutting?: readonly Path[];
}
