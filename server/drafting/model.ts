/**
 * What a pattern comes to once it is drafted: values, shapes, pieces, seams. Plain immutable data, read by the checks,
 * the drawing, the editor features and the command line. Lengths in millimetres, areas in mm², angles in degrees,
 * y down.
 */
import type { DefinitionInfo } from './definition-model';
import type { CornerCut, CutShape, RuledCorner, RunningAllowance, StatedAllowance } from './allowance-model';
import type { Path } from '../geometry/path';
import type { Point } from '../geometry/point';
import type { BalanceLine, CutWords, Hole, Mark } from './marks-model';
import type { SeamCourse, SeamOpening, Stretch } from './sewing-model';
import type { FacedEdge, FacingOf } from './derived-model';
import type { BodySheet, OwnMeasurement, PatternChoice, SidedReason } from './surroundings-model';
import type { Acceptance, OwnUsual, UsualLine } from './rules-model';
import type { Dart, Shaping, Smoothed, Trued } from './shaping-model';
import type { Span, Statement } from '../../grammar/syntax';
import type { Fix, Severity, Source, SourcedFinding } from './finding';

export type Kind = 'length' | 'area' | 'angle' | 'ratio' | 'text';

/** A number with its kind: mm, mm², degrees, or plain. A count is a ratio that happens to be whole. */
export interface Quantity {
  readonly kind: Exclude<Kind, 'text'>;
  readonly amount: number;
}
export interface Words {
  readonly kind: 'text';
  readonly text: string;
}
export type Value = Quantity | Words;

export type DisplayUnit = 'cm' | 'mm' | 'in';

export interface PointShape {
  readonly kind: 'point';
  readonly point: Point;
}
/** A straight line; it extends under the ruler when something is to meet it. */
export interface LineShape {
  readonly kind: 'line';
  readonly path: Path;
  /** For an edge: its length on paper, with the mouths of its darts; `path` is what is sewn. */
  readonly drawn?: number;
  /** For an edge with gathers: its length once they are drawn up. */
  readonly sewn?: number;
}
export interface CurveShape {
  readonly kind: 'curve';
  readonly path: Path;
  /** Closed curves and arcs know their centre. */
  readonly centre?: Point;
  /** A curve that is written by how deep it is knows where that is. */
  readonly deepest?: Point;
  readonly closed: boolean;
  /** For an edge: its length on paper, with the mouths of its darts; `path` is what is sewn. */
  readonly drawn?: number;
  /** For an edge with gathers: its length once they are drawn up. */
  readonly sewn?: number;
}
export type Shape = PointShape | LineShape | CurveShape;

/** A stretch of an edge that is sewn, or what a dart or a pleat takes of it. */
export interface EdgePart {
  readonly path: Path;
  /** The dart whose straight mouth it is, or the pleat that takes it: `fan 2`, the second of the row `fan`. */
  readonly dart?: string;
  /** Gathering threads draw it up to this share of its length. */
  readonly gathered?: { readonly by: string; readonly share: number };
}

/** A named edge of a piece, walked in the direction of the outline. */
export interface Edge {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  /** Its runs, end to end, mouths of darts straight across; where the text leaves a gap the path bridges it straight. */
  readonly path: Path;
  /** The same by parts: what is sewn, and between them the mouths of darts. */
  readonly parts: readonly EdgePart[];
  /** Length on paper, with the mouths of darts. */
  readonly drawn: number;
  /** Length when sewn, darts closed. */
  readonly sewn: number;
  /** For the edge of a cut: the division that made it, which is sewn up again as a seam of itself. */
  readonly divided?: Source;
  /** Names of the points at its ends, where the author named them. */
  readonly fromName: string;
  readonly toName: string;
}

/** A place where the outline does not go on where it ended. */
export interface Gap {
  readonly from: Point;
  readonly to: Point;
  /** Millimetres between them. */
  readonly size: number;
  /** The edge that ends, and the edge that should have begun there (the first one, when the outline does not close). */
  readonly before: string;
  readonly after: string;
  /** The run that begins away from its start (undefined: the outline does not come back). */
  readonly statement: Statement;
  readonly at: Span;
  readonly closing: boolean;
  /** In the outline of a hole of that name. */
  readonly hole?: string;
}

export interface Notch {
  readonly name: string;
  readonly source: Source;
  /** Edge it lies on, the sewn distance from the edge's first corner, and the strokes. */
  readonly edge: string;
  readonly distance: number;
  readonly count: 1 | 2 | 3;
  readonly point: Point;
}

export interface Corner {
  readonly name: string;
  readonly point: Point;
}

export interface Piece {
  /** As it is cut and printed: `front`, or `front-left` where the wearer's sides differ. */
  readonly name: string;
  /** Its name in the text, by which seams and finishes know it. */
  readonly base: string;
  /** The side of the wearer, for a piece that is not the same on both. */
  readonly side?: 'left' | 'right';
  readonly source: Source;
  readonly statement: Statement;
  /** The draft it is taken from. */
  readonly draft: string;
  /** In the order of the outline, end to end. */
  readonly edges: readonly Edge[];
  readonly corners: readonly Corner[];
  readonly gaps: readonly Gap[];
  /** Enclosed area of the half or whole that is drawn, sewing line, mm². */
  readonly area: number;
  /** Undefined: a piece without cutting words, a step on the way to another. */
  readonly cut?: CutWords;
  readonly fold?: { readonly edge: string; readonly source: Source };
  readonly grain?: {
    readonly from: Point;
    readonly to: Point;
    readonly bias: boolean;
    readonly source: Source;
  };
  /** Allowance of each edge, mm; undefined where none is stated. */
  readonly allowances: ReadonlyMap<string, number>;
  /** Edges that are turned up, and how often each is folded. */
  readonly hems: ReadonlyMap<string, 1 | 2>;
  /** Allowances that run from one width to another along a stretch of an edge, mm from the edge's start. */
  readonly running: readonly RunningAllowance[];
  /** Corners whose allowance is cut otherwise than usual. */
  readonly cornerCuts: readonly CornerCut[];
  /** Widths that the text gives to edges by name; a finish that wants another is told. */
  readonly statedAllowances?: readonly StatedAllowance[];
  /** Room to let out beyond the allowance, mm, by edge. */
  readonly inlays?: ReadonlyMap<string, number>;
  /** Corners that are cut by a rule of the trade or of the text; the others are mitred. */
  readonly ruledCorners?: readonly RuledCorner[];
  /** Set together with the cutting line. */
  readonly cutShape?: CutShape;
  /** The cutting line, one run for each edge; undefined where it can't be had (unclosed, or no allowance stated). */
  readonly cutting?: readonly Path[];
  readonly darts: readonly Dart[];
  readonly trued: readonly Trued[];
  /** Corners rounded off by lines of this piece or of those it is worked from. */
  readonly smoothed?: readonly Smoothed[];
  /** Fish darts, pleats, gathers; undefined: none, and no dart was closed. */
  readonly shaping?: Shaping;
  readonly notches: readonly Notch[];
  readonly balance: readonly BalanceLine[];
  readonly marks: readonly Mark[];
  /** Cut out of it: their area is none of its own. */
  readonly holes: readonly Hole[];
  readonly labels: readonly { readonly text: string; readonly at?: Point; readonly source: Source }[];
  readonly facing?: FacingOf;
  /** For a band: how far one end laps under the other, mm. */
  readonly underlap?: number;
  /** Sewn to copies of itself until it closes, as a gored skirt is: how many go round. */
  readonly copies?: number;
  /** What the tool has to add to the label: from which side a pair was drafted. */
  readonly remarks: readonly string[];
  /** Lines that are not drawn, faulty darts or words of later parts of the language: the piece is not fully itself. */
  readonly unbuilt: readonly string[];
}

/** A stretch of an edge as a seam takes it. */
export interface SewnEdge {
  readonly piece: string;
  readonly edge: string;
  readonly source: Source;
  /** Sewn length, mm. */
  readonly length: number;
  readonly at: Span;
  /** Names of the edges before and after it in the outline. */
  readonly beside?: readonly [string, string];
  /** Where it is not the whole edge. */
  readonly stretch?: Stretch;
  /** The piece as it stands when it is sewn. */
  readonly of?: Piece;
}

export interface Seam {
  readonly name: string;
  /** Set where the wearer's two sides come out differently: one seam for each. */
  readonly side?: 'left' | 'right';
  readonly source: Source;
  readonly statement: Statement;
  readonly left: readonly SewnEdge[];
  /** Empty for `its pair`. */
  readonly right: readonly SewnEdge[];
  readonly itsPair: boolean;
  readonly leftLength: number;
  readonly rightLength: number;
  /** right − left, after what is asked for by easing and stretching. */
  readonly difference: number;
  /** How far the two may be apart, mm, and where that comes from. */
  readonly tolerance: number;
  readonly toleranceStated: boolean;
  /** False where a piece is missing or not fully itself: lengths are then not compared. */
  readonly comparable: boolean;
  /** How it runs; undefined where its ends can't be paired, and for a band, which is counted round the body. */
  readonly course?: SeamCourse;
  readonly openings?: readonly SeamOpening[];
}

export interface Finish {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  readonly edges: readonly SewnEdge[];
  readonly how: 'turned-up' | 'turned-twice' | 'bound' | 'faced' | 'rolled' | 'selvedge' | 'raw';
  readonly width: number;
  /** For `faced by X`: what each edge is sewn to; none where X is a strip. */
  readonly faced?: readonly FacedEdge[];
  /** The piece X. */
  readonly facedBy?: string;
}

/** Offsets in a file, as characters. */
export interface FileRange {
  readonly uri: string;
  readonly from: number;
  readonly to: number;
}

/** A finding with its places in files: what editors, terminals and reviews print. */
export interface PlacedFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: FileRange;
  readonly source: Source;
  readonly piece?: string;
  /** The reason, where the pattern accepts it. */
  readonly accepted?: string;
  readonly related: readonly { readonly place: FileRange; readonly message: string }[];
  readonly fixes: readonly PlacedFix[];
}
export interface PlacedFix {
  readonly title: string;
  readonly edits: readonly { readonly place: FileRange; readonly text: string }[];
}

/** Who the pattern is drafted for. */
export interface BodyChoice {
  readonly name: string;
  readonly size?: string;
}

export type {
  ClosedDart,
  Dart,
  FishDart,
  Gathers,
  Pleat,
  Pleats,
  Shaping,
  Smoothed,
  Trued,
} from './shaping-model';
export type {
  CornerCut,
  CutShape,
  RuledCorner,
  RunningAllowance,
  StatedAllowance,
  TightAllowance,
} from './allowance-model';
export type { BalanceLine, CutLayer, CutWords, Hole, Mark } from './marks-model';
export type {
  BodySheet,
  OwnMeasurement,
  PatternChoice,
  SidedReason,
  TakenMeasure,
} from './surroundings-model';

export type { Acceptance, OwnUsual, UsualLine } from './rules-model';

export type { DefinitionInfo } from './definition-model';

/** A value or a shape with the statement that defines it. */
export interface Defined<T> {
  readonly name: string;
  readonly statement: Statement;
  readonly drafted: T;
}

/** What a block defines, in file order. */
export interface DefinedIn {
  readonly values: readonly Defined<Value>[];
  readonly shapes: readonly Defined<Shape>[];
}

/** One pattern, drafted: made once for a version of its text and shared by everybody who reads it. */
export interface Pattern {
  readonly uri: string;
  readonly title: string;
  /** Which state of the pattern this is, and of which day, as its first line says. */
  readonly revision?: string;
  readonly dated?: string;
  readonly unit: DisplayUnit;
  readonly body?: BodyChoice;
  /** Files it was read from, itself first. */
  readonly files: readonly string[];
  /** Values of its own file by their written path, `skirt.quarter-hip`, in file order. */
  readonly values: ReadonlyMap<string, Value>;
  /** Points, lines and curves of its own file by their written path, in file order. */
  readonly shapes: ReadonlyMap<string, Shape>;
  /** Pieces that can be drawn, in file order (of its own file; pieces of used files are never cut). */
  readonly pieces: readonly Piece[];
  /** Every piece of this garment that the text names, drawn or not. */
  readonly pieceNames: readonly string[];
  /** Pieces that `when` leaves out of it. */
  readonly leftOut: readonly string[];
  readonly seams: readonly Seam[];
  readonly finishes: readonly Finish[];
  /** Seams that take an edge of the piece of that name; the same list while they stay the same. */
  seamsOf(piece: string): readonly Seam[];
  /** Finishes of edges of the piece of that name; the same list while they stay the same. */
  finishesOf(piece: string): readonly Finish[];
  /**
   * What reading and drafting found, in its own file and where it rests on used files; `checks/` adds what it judges and
   * gives all of it severity and place.
   */
  readonly findings: readonly SourcedFinding[];
  /** What of the asked body and choices could not be had, as sentences: `--set` of an unknown choice, an unknown size. */
  readonly refused: readonly string[];
  /** A finding's places in files as they stand now. */
  place(found: SourcedFinding, severity: Severity): PlacedFinding;
  /** The body drafted for, and every body and size of its own file. */
  readonly bodies: readonly BodySheet[];
  /** Measurements that the pattern rests on, well-known ones in taking order, then its own. */
  readonly needs: readonly string[];
  /** What `measure` lines of its own file and the files it uses declare, by name. */
  readonly ownMeasurements: ReadonlyMap<string, OwnMeasurement>;
  /** Every choice of its own file and the files it uses, by written path, with both ends of its range. */
  readonly choices: readonly PatternChoice[];
  /** Everybody it can be drafted for, of its own file and those it uses. */
  readonly everybody: readonly BodyChoice[];
  /** Sizes of the table it is drafted for; none for a single body. */
  readonly sizes: readonly string[];
  /** Days written in the pattern on which cloth was cut or a toile fitted, as written. */
  readonly days: readonly string[];
  /** Why a piece differs from side to side; empty when it does not. */
  sidedReasons(piece: Source): readonly SidedReason[];
  /** `piece.edge` names that stand in seams and finishes which could not be read: nothing is said of those edges. */
  readonly doubtful: ReadonlySet<string>;
  /** Ranges that the pattern puts in place of the usual ones, by name; the same map while they stay the same. */
  readonly usual: ReadonlyMap<string, OwnUsual>;
  /** Every `usual` line of its own file, in file order. */
  readonly usualLines: readonly UsualLine[];
  /** The findings that its own file accepts, in file order. */
  readonly acceptances: readonly Acceptance[];
  /** Values and shapes of its own file that nothing in it speaks of, in file order. */
  readonly unused: readonly { readonly source: Source; readonly name: string; readonly place: FileRange }[];
  /** Changes of a single written length that would make a mismatched seam match, the smallest first. */
  closingFixes(seam: Seam): readonly Fix[];
  /** What one block of its own file defines, or with '' the file outside of all, in file order. */
  definedIn(block: string): DefinedIn;
  /** Where a definition's name stands now; undefined for an unknown source. */
  locate(source: Source): FileRange | undefined;
  /** Everything that a place in a file defines or names, innermost first. */
  sourcesAt(uri: string, offset: number): readonly Source[];
  /** What is known of a definition. */
  info(source: Source): DefinitionInfo | undefined;
}

/** The one door to files: open buffers first, then the workspace. Returns undefined for what can't be read. */
export interface Door {
  read(uri: string): string | undefined;
  /** The file a `use "path"` in `from` means; `outside` when that leaves the workspace. */
  resolve(from: string, path: string): { readonly uri: string } | { readonly outside: true };
}
