/** What a pattern says of how it is to be judged: ranges of its own, and findings that it lets stand. */
import type { Span, Statement } from '../../grammar/syntax';
import type { Source } from './finding';
import type { Quantity } from './model';

/** A range in place of a usual one: lengths in mm, angles in degrees, shares as plain numbers. */
export interface OwnUsual {
  readonly kind: Quantity['kind'];
  readonly low: number;
  readonly high: number;
}

/** A `usual` line, whether or not any check judges by a range of that name. */
export interface UsualLine {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  readonly nameAt: Span;
  readonly rangeAt: Span;
  /** Undefined where it can't be had; what is wrong has been said. */
  readonly range?: OwnUsual;
}

/** An `accept` line. */
export interface Acceptance {
  readonly source: Source;
  readonly statement: Statement;
  readonly code: string;
  readonly codeAt: Span;
  /** What the finding must concern; undefined where the line names nothing. */
  readonly of?: {
    /** As written: `front.hem`. */
    readonly text: string;
    readonly at: Span;
    /** Undefined for a name that leads nowhere, which has been said. */
    readonly source?: Source;
  };
  /** Why, in the author's words. */
  readonly reason: string;
}
