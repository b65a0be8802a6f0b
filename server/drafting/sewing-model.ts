/**
 * How a seam runs: its edges in the order in which they are sewn, which place of one side lies on which of the other, and
 * where it opens. All distances are millimetres as sewn, with darts closed and pleats laid.
 */
import type { Span } from '../../grammar/syntax';

/** A stretch of an edge, counted from the edge's first corner; `from` beyond `to`: as it was said, against the outline. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** An edge as it is passed on the way along one side of a seam. */
export interface SeamRun extends Stretch {
  readonly piece: string;
  readonly edge: string;
  /** From the beginning of the side. */
  readonly start: number;
}

/** Two places that are sewn together, counted from the beginning of either side. */
export interface SeamPlace {
  readonly left: number;
  readonly right: number;
}

export interface SeamCourse {
  readonly left: readonly SeamRun[];
  /** For a seam of an edge to its pair: the same as the left. */
  readonly right: readonly SeamRun[];
  /** From both beginnings to both ends; between two of them the ease is shared evenly. */
  readonly meets: readonly SeamPlace[];
}

/** A part of a seam that opens; distances along its left side, `from` before `to`. */
export interface SeamOpening extends Stretch {
  readonly how: 'zip' | 'buttoned' | 'laced' | 'hooked' | 'left-open';
  readonly whole: boolean;
  /** The wearer's side, where the seam is sewn once a side and opens on one of them. */
  readonly side?: 'left' | 'right';
  readonly at: Span;
}
