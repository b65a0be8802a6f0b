/**
 * The messages between language server, extension and preview view: the only place where they are written down.
 *
 * The view's page is set once. A `sheet` message with `full: true` replaces all the view holds; one with
 * `full: false` carries only the pieces that changed since the version named in `since`, and a view that does not
 * hold that version asks for a full sheet (`ask`). Zoom, pan and selection belong to the view and survive every sheet.
 */
import type {
  DrawnDot,
  DrawnLine,
  DrawnText,
  PieceDrawing,
  Placement,
  Frame,
  Source,
  Spot,
} from '../../server/drawing/model';

/** What is tried without touching the text: another body than the file names, other values than it chooses, as written. */
export interface Trial {
  readonly for?: { readonly name: string; readonly size?: string };
  readonly set: Readonly<Record<string, string>>;
}

/** A decision of the pattern as it can be tried. */
export interface TriedChoice {
  readonly path: string;
  readonly doc: string;
  /** As it is drafted at present. */
  readonly value: string;
  /** As the file writes it. */
  readonly written: string;
  readonly low?: string;
  readonly high?: string;
  readonly among: readonly string[];
}

/** A length in a point's line, and which way the point goes when it grows. */
export interface Axis {
  /**
   * On the paper, x to the right, y down. Of length 1, or shorter where the point goes further than its length grows.
   */
  readonly x: number;
  readonly y: number;
  /** As written, and how many millimetres its unit has. */
  readonly amount: number;
  readonly unit: string;
  readonly mm: number;
}

/** How a point can be moved by hand, or why it can't. */
export type Grip = { readonly axes: readonly Axis[] } | { readonly reason: string };

/** What is laid out in front of the person instead of the sheet. */
export type Laying =
  /** One side of a seam along the other, to a place so many millimetres (as sewn) along its left side. */
  | { readonly kind: 'walk'; readonly of: Source; readonly at: number }
  /** The pieces of a seam, edge to edge as they lie at one of its ends. */
  | { readonly kind: 'together'; readonly of: Source; readonly at: 'start' | 'end' }
  /** The edges of a piece as they run when its darts are closed. */
  | { readonly kind: 'darts'; readonly of: Source }
  /** The piece for one side of the wearer on that for the other. */
  | { readonly kind: 'sides'; readonly of: Source };

/** A thing that can be laid out, with its words in a list. */
export interface Layable {
  readonly kind: Laying['kind'];
  readonly of: Source;
  readonly words: string;
  /** What a person may have pointed at who means it: edges of a seam, lines of a piece. */
  readonly about: readonly Source[];
}

/** x' = a x + c y + e, y' = b x + d y + f: how a piece lies on the paper, turned, turned over and moved. */
export type Matrix = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** A piece as it lies there. */
export interface LaidPiece {
  readonly piece: string;
  readonly by: Matrix;
  /** Left out where the view has been sent it before. */
  readonly drawing?: PieceDrawing;
  /** It lies below what is shown of it: drawn faintly. */
  readonly faint?: boolean;
}

/** A line laid over the pieces: what was walked, what is left over, what the other side matches, what came of it. */
export interface LaidLine {
  readonly kind: 'walked' | 'over' | 'closed' | 'apart';
  readonly line: DrawnLine;
}

/** A place of a walk that is worth a stop: an end, a join of edges, a notch. */
export interface Stop {
  readonly at: number;
  readonly words: string;
}

/** Where a walk stands. */
export interface Walk {
  readonly at: number;
  readonly length: number;
  /** Which way the seam goes there, of length 1, and the place itself. */
  readonly along: Spot;
  readonly touch: Spot;
  readonly stops: readonly Stop[];
}

/** Server → extension → view: what is laid out; sent anew whenever it changes. */
export interface Laid {
  readonly type: 'laid';
  readonly uri: string;
  readonly seat: string;
  readonly laying: Laying;
  /** Sentences: what is compared, both numbers, what that means. */
  readonly words: readonly string[];
  readonly pieces: readonly LaidPiece[];
  readonly lines: readonly LaidLine[];
  readonly dots: readonly DrawnDot[];
  readonly texts: readonly DrawnText[];
  readonly frame: Frame;
  readonly walk?: Walk;
}

/** What a preview wants to see besides the pieces as they are cut; what it does not want costs nothing. */
export interface Want {
  /** All sizes of the table on one another. */
  readonly sizes?: boolean;
  /** What is drawn as a half, with its other half. */
  readonly whole?: boolean;
  /** Lines and points of the draft beneath the pieces. */
  readonly construction?: boolean;
  readonly laying?: Laying;
}

/** A place that a ruler is laid on: on the sheet, and in the piece that it belongs to. */
export interface Pin {
  readonly at: Spot;
  readonly piece?: string;
  /** In the piece's own millimetres. */
  readonly own?: Spot;
}

/** What a ruler tells between two places, in words. */
export interface Measured {
  readonly straight: string;
  /** How far across and how far down; empty where it is one of the two. */
  readonly apart: string;
  /** Along the outline, where both places lie on one, and that stretch in the piece's own millimetres. */
  readonly along?: string;
  readonly line?: DrawnLine;
}

export const PROTOCOL_VERSION = 1;

export interface PreviewProblem {
  readonly severity: 'error' | 'warning' | 'note';
  readonly code: string;
  readonly message: string;
  /** What the problem is about; a click on it goes to the text. */
  readonly source: Source;
  /** The piece it touches, when there is one. */
  readonly piece?: string;
  /** Where it is on the pieces, in their own millimetres. */
  readonly spots?: readonly { readonly piece: string; readonly at: Spot }[];
}

/** Which problem is meant: its place is asked for when it is wanted, since typing moves it. */
export type ToldProblem = Pick<PreviewProblem, 'code' | 'message'>;

/** Server → extension → view. */
export interface Sheet {
  readonly type: 'sheet';
  readonly protocol: typeof PROTOCOL_VERSION;
  /** File of the pattern. */
  readonly uri: string;
  /** Which preview of the file it is for. */
  readonly seat: string;
  /** Counts up with every sheet of one preview. */
  readonly version: number;
  /** The version this one builds on; meaningless in a full sheet. */
  readonly since: number;
  readonly full: boolean;
  readonly title: string;
  readonly body: string;
  /** Everybody it can be drawn for, as they are written: `ferrywoman`, `chorus M`. */
  readonly everybody: readonly string[];
  /** What the pattern leaves to choose, in the order of the file. */
  readonly choices: readonly TriedChoice[];
  /** Body and values that are tried without touching the text. */
  readonly trial: Trial;
  /** Sizes that can be drawn on one another; of those that are, see `nested`. */
  readonly sizes: readonly string[];
  /** The sizes that are drawn on one another; none: one body or size alone. */
  readonly nested: readonly string[];
  readonly unit: 'cm' | 'mm' | 'in';
  /** All pieces of the drawing, in file order, with their place on the sheet. */
  readonly placements: readonly Placement[];
  readonly frame: Frame;
  /** New and changed pieces only (all of them in a full sheet). */
  readonly pieces: readonly PieceDrawing[];
  /** Pieces that can't be drawn from the present text: their last good drawing stays, marked with the reason. */
  readonly stale: readonly { readonly piece: string; readonly reason: string }[];
  readonly problems: readonly PreviewProblem[];
}

/** Extension → view: what the cursor in the text stands on. */
export interface Marked {
  readonly type: 'marked';
  readonly sources: readonly Source[];
}

/** Extension → view: what was tried stands in the text now. */
export interface Written {
  readonly type: 'written';
}

/** Extension → view: the drawing as a picture for the clipboard, in base 64; '' with the reason where there is none. */
export interface Picture {
  readonly type: 'picture';
  readonly png: string;
  readonly reason: string;
}

/** Extension → view: how the point that was taken hold of can be moved. */
export interface Gripped {
  readonly type: 'gripped';
  readonly source: Source;
  readonly grip: Grip;
}

/** Extension → view: the server's answer to what the view asked; null where it has none. */
export interface Answered {
  readonly type: 'answered';
  readonly id: number;
  readonly answer: unknown;
}

/** Extension → view: a command of the editor chose a tool. */
export interface Do {
  readonly type: 'do';
  readonly tool: string;
}

export type ToView = Sheet | Marked | Written | Gripped | Answered | Do | Picture | Laid;

/** What the view remembers, kept by the editor over hiding and reloading. */
export interface ViewState {
  readonly schema: 1;
  readonly uri: string;
  readonly seat?: string;
  readonly pinned?: boolean;
  /** Screen pixels a millimetre, and the sheet's millimetre at the view's top left corner. 0 zoom: fit. */
  readonly zoom: number;
  readonly left: number;
  readonly top: number;
  readonly selected: Source | '';
  /** What the *Show* list has switched on. */
  readonly shown: readonly string[];
  /** What was being tried. */
  readonly trial?: Trial;
  readonly laying?: Laying;
}

export type FromView =
  | {
      readonly type: 'ready';
      readonly protocol: number;
      readonly trial?: Trial;
      readonly pinned?: boolean;
      readonly want?: Want;
    }
  | { readonly type: 'want'; readonly want: Want }
  /** Unpinned, it shows the draft that the person turns to. */
  | { readonly type: 'pin'; readonly pinned: boolean }
  | { readonly type: 'try'; readonly trial: Trial }
  | { readonly type: 'write'; readonly trial: Trial }
  | { readonly type: 'ask'; readonly have: number }
  | { readonly type: 'grip'; readonly source: Source; readonly piece: string }
  | { readonly type: 'pull'; readonly source: Source; readonly amounts: readonly number[] }
  | { readonly type: 'release' }
  /** To the text of a thing, or to the very place of a problem that is told of it. */
  | { readonly type: 'goto'; readonly source: Source; readonly problem?: ToldProblem }
  /** Takes the last change of the text back, or makes it again: by the editor's keys, with the keyboard in the view. */
  | { readonly type: 'history'; readonly way: 'undo' | 'redo' }
  /** Saves the text that is drawn, by the editor's key for it: of itself the editor would save the view, which is no file. */
  | { readonly type: 'save' }
  /** A question that the extension hands on to the server, with the preview's file and seat. */
  | { readonly type: 'question'; readonly id: number; readonly about: Question; readonly params: object }
  /** Opens the form of an export, or puts the drawing on the clipboard. */
  | { readonly type: 'export' }
  | { readonly type: 'copy'; readonly as: 'svg' | 'png' }
  /** The picture lies on the clipboard, or did not get there. */
  | { readonly type: 'copied'; readonly failed: string }
  | { readonly type: 'select'; readonly source: Source | '' };

/** What the view may ask of the server by itself. */
export type Question = 'measure' | 'layable';

/** What a sweep over sizes and choices found; the ranges are the protocol's. */
export interface Swept {
  /** How many sizes and ends of choices were tried, the pattern as it stands among them. */
  readonly variants: number;
  readonly findings: readonly {
    readonly code: string;
    readonly severity: 'error' | 'warning' | 'note';
    readonly message: string;
    readonly uri: string;
    readonly range: { readonly start: LineAndColumn; readonly end: LineAndColumn };
  }[];
}

interface LineAndColumn {
  readonly line: number;
  readonly character: number;
}

/** A command of the server that any client may have carried out: with the address of a pattern, answered by Swept. */
export const SWEEP = 'draftwright.sweep';

/** Requests and notifications between extension and language server (method names and their payloads). */
export const methods = {
  /**
   * Extension → server: begin (or begin again) to send sheets of this file; the answer is a full Sheet. Params
   * `{ uri, seat?, last?, trial?, want? }`: `seat` tells several previews of one file apart; `last` holds the pieces as they
   * were drawn last, for those that can't be drawn at present; `trial` what the view tries, `want` what it wants to see.
   */
  openPreview: 'draftwright/openPreview',
  /** Extension → server notification: no more sheets. Params `{ uri, seat? }`. */
  closePreview: 'draftwright/closePreview',
  /** Extension → server notification: the preview tries other values. Params `{ uri, seat?, trial }`; a Sheet follows. */
  tryOut: 'draftwright/tryOut',
  /** Extension → server notification: the preview wants to see more, or less. Params `{ uri, seat?, want }`. */
  want: 'draftwright/want',
  /** Extension → server: the edits that write a trial into the text. Params `{ uri, trial }`; answer WorkspaceEdit. */
  writeTrial: 'draftwright/writeTrial',
  /** Extension → server: how a point can be moved by hand. Params `{ uri, source, piece }`; answer Grip. */
  grip: 'draftwright/grip',
  /** Extension → server: the edits that move it. Params `{ uri, source, amounts }`; answer WorkspaceEdit or null. */
  pull: 'draftwright/pull',
  /** Server → extension notification: a Sheet. */
  sheet: 'draftwright/sheet',
  /** Server → extension notification: what is laid out, a Laid. */
  laid: 'draftwright/laid',
  /**
   * Extension → server: where a source stands in the text, or a problem of it. Params
   * `{ uri, seat?, source, problem?: ToldProblem }`; answer `{ uri, range } | null`.
   */
  locate: 'draftwright/locate',
  /** Extension → server: what the cursor stands on. Params `{ uri, position }`; answer `Source[]`. */
  sourcesAt: 'draftwright/sourcesAt',
  /** Extension → server: a ruler between two places. Params `{ uri, seat?, from: Pin, to: Pin }`; answer Measured. */
  measure: 'draftwright/measure',
  /** Extension → server notification: files that the server can't read by itself. Params `{ files: [{ uri, text | null }] }`. */
  files: 'draftwright/files',
  /** Extension → server: a file against another state of it. Params `{ uri, against: Against }`; answer ComparedPanel. */
  compare: 'draftwright/compare',
  /** Extension → server: what a file can be compared with. Params `{ uri }`; answer Versions. */
  versions: 'draftwright/versions',
  /** Extension → server: all that can be laid out. Params `{ uri, seat? }`; answer `Layable[]`. */
  layable: 'draftwright/layable',
  /** Extension → server: the page of a code of the catalogue. Params `{ code }`; answer Markdown or null. */
  explain: 'draftwright/explain',
} as const;

/** What a file is compared with: a revision of its repository, another file, or itself for another body or size. */
export type Against =
  | { readonly kind: 'revision'; readonly name: string }
  | { readonly kind: 'file'; readonly uri: string }
  | { readonly kind: 'body'; readonly name: string; readonly size?: string };

/** What there is of a file's earlier states and bodies. */
export interface Versions {
  readonly branches: readonly string[];
  readonly commits: readonly { readonly name: string; readonly subject: string }[];
  readonly bodies: readonly { readonly name: string; readonly size?: string }[];
}

interface TextRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** A place of one side: in a file, or in the text that a revision has at a path. */
export type SourcePlace =
  | { readonly uri: string; readonly range: TextRange }
  | { readonly revision: string; readonly path: string; readonly range: TextRange };

/** A comparison as the panel shows it, or why there is none; `texts` are those of a revision, by path. */
export type ComparedPanel =
  | {
      readonly title: string;
      readonly verdict: string;
      readonly html: string;
      readonly texts: Readonly<Record<string, string>>;
    }
  | { readonly refusal: string };
