/**
 * What a phase has to say of the text: a finding. Findings name the fault and where it is in terms of definitions, never
 * of offsets in a file, so that they stay true while the text around them moves; `Pattern.findings` turns them into
 * places in files.
 */
import type { Span, Statement } from '../../grammar/syntax';

export type Severity = 'error' | 'warning' | 'note';

/** Path of a definition, stable over edits: `hip-ease`, `skirt/hip-curve`, `front/side`, `seam:side`, `other.draft#waist`. */
export type Source = string;

/** A repair: edits of this file that, applied, make the finding go away. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly FixEdit[];
}

/** Replaces `at` (counted from the statement's first character) by `text`. */
export interface FixEdit {
  readonly statement: Statement;
  readonly at: Span;
  readonly text: string;
  /** The definition that owns the statement, where it is another than the finding's own. */
  readonly source?: Source;
}

export interface Related {
  /** The definition that is meant; or, with a statement, the one that owns this line. */
  readonly source: Source;
  readonly statement?: Statement;
  readonly message: string;
}

export interface Finding {
  /** A code of the catalogue (`checks/`), which gives its severity and its page. */
  readonly code: string;
  readonly message: string;
  /** The statement it stands in (for a piece: a line of its block). */
  readonly statement: Statement;
  readonly at: Span;
  readonly related: readonly Related[];
  readonly fixes: readonly Fix[];
  /** The piece it speaks of, where there is one. */
  readonly piece?: string;
}

/** A finding and the definition in whose statement it stands. */
export interface SourcedFinding {
  readonly source: Source;
  readonly finding: Finding;
}
