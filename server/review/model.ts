/**
 * What a change to a pattern comes to: causes, pieces, seams and problems, before beside after. Plain data; whoever swaps
 * the two sides gets the same with `was` and `now` exchanged. Lengths in millimetres, areas in mm², y down.
 */
import type { DisplayUnit, FileRange, Piece, PlacedFinding } from '../drafting/model';
import type { Region, Rigid } from '../geometry';
import type { Point } from '../geometry/point';

/** What is nearer than this is the same, mm: half a tenth, below what a cutter can mark. */
export const TOLERANCE = 0.05;

/** Something on both sides of a comparison; one of them is missing where it was added or taken away. */
export interface Both<T> {
  readonly was?: T;
  readonly now?: T;
}

export type CauseKind =
  'body' | 'measurement' | 'choice' | 'let' | 'line' | 'renamed' | 'order' | 'added' | 'removed';

/** One decision that changed, as the text says it. */
export interface Cause {
  readonly kind: CauseKind;
  /** What it is of: `hip-ease`, `skirt.hip-side`, `allow of front`. */
  readonly name: string;
  /** What stood there and what stands there now, without the name where the name says it all. */
  readonly text: Both<string>;
  readonly place: Both<FileRange>;
}

/** A worked-out value that came out different although its own line did not change. */
export interface Followed {
  readonly name: string;
  readonly text: Both<string>;
}

export type PieceWord = 'renamed' | 'moved' | 'reshaped' | 'marks' | 'allowance' | 'wording';

/** A place on an edge: so far along it from the nearer of its ends. */
export interface EdgePlace {
  readonly edge: string;
  readonly along: number;
  /** The end's name, '' where the author gave none. */
  readonly from: string;
  readonly point: Point;
}

/** How far an outline strays from the other, at the most, and where on either side. */
export interface Deviation {
  readonly by: number;
  /** Edge by its names. */
  readonly edge: Both<string>;
  /** On the side, or both, from which it is so far to the other. */
  readonly at: Both<EdgePlace>;
}

export interface EdgeChange {
  readonly edge: Both<string>;
  /** Sewn lengths. */
  readonly length: Both<number>;
}

/** A named corner that moved, as the two outlines lie on each other; `to` and `from` in the old piece's place. */
export interface MovedPoint {
  readonly name: Both<string>;
  readonly point: Both<Point>;
  readonly by: number;
}

/** One mark, allowance or word that changed. */
export interface Detail {
  readonly word: 'marks' | 'allowance' | 'wording';
  readonly thing: string;
  readonly text: Both<string>;
  /** Where it is, on either side's own paper. */
  readonly at: Both<Point>;
  /** How far it moved, where it did. */
  readonly moved?: number;
}

/** How the new piece was laid on the old one. */
export interface Anchor {
  /** Takes the new piece to the old one's place. */
  readonly move: Rigid;
  /** What was held: `the fold`, `the grain`, `waist-cf`. */
  readonly held: string;
  /** It lies elsewhere on the sheet of its draft. */
  readonly moved: boolean;
}

export interface PieceChange {
  /** In the order in which they are told, from one, as the drawing marks them. */
  readonly number: number;
  readonly name: Both<string>;
  readonly words: readonly PieceWord[];
  readonly anchor?: Anchor;
  readonly deviation?: Deviation;
  readonly edges: readonly EdgeChange[];
  readonly area: Both<number>;
  readonly lost: readonly Region[];
  readonly gained: readonly Region[];
  readonly lostArea: number;
  readonly gainedArea: number;
  readonly points: readonly MovedPoint[];
  readonly details: readonly Detail[];
  readonly place: Both<FileRange>;
  readonly piece: Both<Piece>;
}

export type SeamVerdict = 'matches' | 'apart' | 'its pair' | 'not compared';

export interface SeamSide {
  readonly left: number;
  readonly right: number;
  /** right − left, after what is asked for by easing. */
  readonly difference: number;
  readonly tolerance: number;
  readonly verdict: SeamVerdict;
  readonly place?: FileRange;
}

export interface SeamChange {
  readonly name: Both<string>;
  readonly seam: Both<SeamSide>;
}

export interface ProblemChange {
  readonly problem: Both<PlacedFinding>;
}

/** What a side could not draft, with the reason. */
export interface Undrafted {
  readonly name: string;
  readonly why: string;
}

/** The same comparison for one size of the table. */
export interface SizeChange {
  readonly size: string;
  /** Largest deviation, and sewn lengths that changed, of each piece that did. */
  readonly pieces: readonly Pick<PieceChange, 'name' | 'words' | 'deviation' | 'edges' | 'area'>[];
  readonly seams: readonly SeamChange[];
  readonly problems: readonly ProblemChange[];
}

export interface Review {
  readonly title: Both<string>;
  readonly unit: DisplayUnit;
  /** Files that were read, by the names that the caller gave. */
  readonly file: Both<string>;
  readonly body: Both<string>;
  readonly causes: readonly Cause[];
  /** Comments, layout or order changed in the text. */
  readonly textChanged: boolean;
  readonly followed: readonly Followed[];
  /** How many pieces there are. */
  readonly pieceCount: Both<number>;
  readonly pieces: readonly PieceChange[];
  readonly seams: readonly SeamChange[];
  readonly problems: readonly ProblemChange[];
  readonly undrafted: Both<readonly Undrafted[]>;
  readonly sizes: readonly SizeChange[];
  /** Sizes of the table that one side lacks. */
  readonly unmatchedSizes: Both<readonly string[]>;
}
