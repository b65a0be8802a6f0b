/** What stands round a pattern: its choices, the sheets of its bodies, why a piece differs from side to side. */
import type { Span, Statement } from '../../grammar/syntax';
import type { Source } from './finding';
import type { Quantity, Value } from './model';

/** A choice, as it can be set from outside. */
export interface PatternChoice {
  readonly path: string;
  readonly source: Source;
  readonly value?: Value;
  /** The line that makes it, and where its value stands in it. */
  readonly statement: Statement;
  readonly valueAt: Span;
  /** As written. */
  readonly low?: string;
  readonly high?: string;
  readonly among: readonly string[];
  readonly doc: string;
}

/** One measurement as it stands on a body's sheet. */
export interface TakenMeasure {
  readonly left: Quantity;
  readonly right: Quantity;
  readonly sided: boolean;
  readonly statement: Statement;
  readonly at: Span;
}

/** The sheet of one body, or of one size of a table. */
export interface BodySheet {
  readonly name: string;
  readonly size?: string;
  readonly source: Source;
  readonly statement: Statement;
  readonly measures: ReadonlyMap<string, TakenMeasure>;
  /** `taken 2026-09-14`, as written. */
  readonly taken?: { readonly date: string; readonly statement: Statement };
  readonly foundation?: Foundation;
}

/** The size of a table that a body takes from what was not measured of itself: `body understudy from standard M`. */
export interface Foundation {
  readonly table: string;
  readonly size: string;
  /** Where the size is written, in the body's statement. */
  readonly at: Span;
  /** Every size of the table in its order, this one among them. */
  readonly sizes: readonly { readonly size: string; readonly measures: ReadonlyMap<string, TakenMeasure> }[];
}

/** A measurement that the pattern declares itself: `measure fist "round the closed hand" in 15cm .. 35cm`. */
export interface OwnMeasurement {
  readonly name: string;
  /** How it is taken, in its author's words. */
  readonly words: string;
  /** Plausible range in mm; undefined where none is written, or not as plain lengths. */
  readonly low?: number;
  readonly high?: number;
}

/** Why a piece differs from side to side: a measurement with two sides, named where it says not which. */
export interface SidedReason {
  readonly measurement: string;
  readonly source: Source;
  readonly statement: Statement;
  /** The name as written. */
  readonly at: Span;
}
