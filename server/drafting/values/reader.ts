/**
 * How a definition is read: where its names lead, where its findings go. A reading never throws; what can't be had is
 * `undefined`, and either a finding says why, or the reading is `blocked` by something that has said it already.
 */
import type { Call, Expr, Ref, Span, Statement } from '../../../grammar/syntax';
import type { Finding, Fix, Related } from '../finding';
import type { DisplayUnit, Finish, Notch, OwnUsual, Piece, Quantity, Seam, Shape, Value } from '../model';

/** A measurement of the body; `sides` where it was taken left and right. `value` is that of the side being drafted. */
export interface ValueAnswer {
  readonly is: 'value';
  readonly value: Value;
  readonly sides?: { readonly left: Quantity; readonly right: Quantity };
  /** For a choice among words: the words offered. */
  readonly among?: readonly string[];
  /** For a choice within a range: its two ends. */
  readonly ends?: readonly [Quantity, Quantity];
}
export interface ShapeAnswer {
  readonly is: 'shape';
  readonly shape: Shape;
}
export interface PieceAnswer {
  readonly is: 'piece';
  readonly piece: Piece;
}
export interface SeamAnswer {
  readonly is: 'seam';
  readonly seam: Seam;
}
export interface FinishAnswer {
  readonly is: 'finish';
  readonly finish: Finish;
}
export interface NotchAnswer {
  readonly is: 'notch';
  /** One stroke, or one on each side of a seam. */
  readonly notches: readonly (Notch & { readonly piece: string })[];
}
/** An `expect` line: whether it held. */
export interface ExpectAnswer {
  readonly is: 'expect';
  readonly held: boolean;
}
/** A `usual` line. */
export interface UsualAnswer {
  readonly is: 'usual';
  readonly range: OwnUsual;
}
/** A piece or seam whose `when` does not hold: it is not part of this garment. */
export interface AbsentAnswer {
  readonly is: 'absent';
}
/** What another definition answers to its name. */
export type Answer =
  | AbsentAnswer
  | ValueAnswer
  | ShapeAnswer
  | PieceAnswer
  | SeamAnswer
  | FinishAnswer
  | NotchAnswer
  | ExpectAnswer
  | UsualAnswer;

/** An answer, and the names behind it in the reference that it should itself answer to. */
export interface Found {
  readonly answer: Answer;
  readonly rest: Ref['path'];
  /** Path of the definition, for related places. */
  readonly source: string;
}

export interface Reader {
  readonly unit: DisplayUnit;
  readonly findings: Finding[];
  /** The statement whose expressions are being read. */
  statement: Statement;
  /** In a piece: +1 when its inside lies to the right of the outline's travel, as seen on paper; −1 to the left. */
  inward?: 1 | -1;
  /** Something this rests on has no value; whoever lacks it has said so. */
  blocked: boolean;
  /** What a name leads to; undefined blocks the reading. */
  find(ref: Ref, wanted?: 'point' | 'path'): Found | undefined;
  /** Whether a name is that of a choice among words. */
  isWordChoice(ref: Ref): boolean;
  /** Whether a name is that of a piece or seam that is left out by `when`, its own or that of what it is made of. */
  isAbsent(ref: Ref): boolean;
  /** The draft or piece in whose block a name is defined; undefined where it leads to nothing. */
  homeOf(ref: Ref): string | undefined;
  /** From here on the corners of a piece mean where its work left them, not where the draft has them. */
  standOn(piece: Piece): void;
  /** A function of shapes: `length(hem)`. */
  measure(call: Call): Quantity | undefined;
}

export interface Extra {
  readonly related?: readonly Related[];
  readonly fixes?: readonly Fix[];
}

/** Puts a finding on record; answers undefined, so that a reading can end with it. */
export function report(
  reader: Reader,
  code: string,
  at: Span,
  message: string,
  extra: Extra = {},
): undefined {
  const { related = [], fixes = [] } = extra;
  reader.findings.push({ code, message, statement: reader.statement, at, related, fixes });
  return undefined;
}

/** A repair that replaces a stretch of the statement being read. */
export function replace(reader: Reader, title: string, at: Span, text: string): Fix {
  return { title, edits: [{ statement: reader.statement, at, text }] };
}

/** The words of an expression as written. */
export const wordsOf = (reader: Reader, expr: Expr | { at: Span }): string =>
  reader.statement.text.slice(expr.at.from, expr.at.to);
