/** What a check is. One file and one page each, named by its code; the folder is the catalogue. */
import type { Finding, Severity, SourcedFinding } from '../drafting/finding';
import type { Pattern, Piece, Seam } from '../drafting/model';
import type { AroundPiece, AroundSeam } from './around';
import type { Usual } from './usual';

/** What every entry of the catalogue says of itself. */
export interface Entry {
  /** Names the fault in the user's words; reads well after "allow". Never reused once retired. */
  readonly code: string;
  readonly severity: Severity;
  /** One line, as the page's heading has it. */
  readonly title: string;
  /**
   * No pattern accepts it and no setting hides it: where it is found, something can't be read or drawn, and what rests on
   * it is not checked. Every error that is found while a pattern is read and drafted is firm.
   */
  readonly firm?: true;
}

/** A fault that an earlier phase finds while it reads: the entry is all that stands here. */
export interface Raised extends Entry {
  readonly by: 'syntax' | 'names' | 'values' | 'shapes' | 'pieces' | 'sewing' | 'acceptance' | 'sweep';
}

/** What a judgement of one thing may read of the pattern beside it. */
export type Judging = Pick<Pattern, 'unit' | 'usual'>;

/**
 * A fault that is judged on the drafted pattern. Each judges one thing at a time, so that an edit judges again only what
 * it changed; none reads another's findings.
 */
export interface Judged extends Entry {
  readonly by: 'judgement';
  /** The ranges it judges by, which a pattern may override; its page lists them with their standing. */
  readonly usual?: readonly Usual[];
  /** Of the thing alone: judged again when it comes out otherwise. */
  readonly ofPiece?: (piece: Piece, pattern: Judging) => readonly Finding[];
  readonly ofSeam?: (seam: Seam, pattern: Judging) => readonly Finding[];
  /** Of the thing and what it is sewn to: judged again when one of these does. */
  readonly ofSewnPiece?: (piece: Piece, around: AroundPiece) => readonly Finding[];
  readonly ofSewnSeam?: (seam: Seam, around: AroundSeam) => readonly Finding[];
  /** Of all at once: judged at every edit, so it has to be cheap or to keep what it found. */
  readonly ofPattern?: (pattern: Pattern) => readonly SourcedFinding[];
}

export type Check = Raised | Judged;

/** A finding with the usual empty parts filled in. */
export const finding = (
  code: string,
  place: Pick<Finding, 'statement' | 'at'>,
  message: string,
  extra: Partial<Pick<Finding, 'related' | 'fixes' | 'piece'>> = {},
): Finding => ({ code, message, statement: place.statement, at: place.at, related: [], fixes: [], ...extra });
