/**
 * The drawing model: what is drawn, where, as which kind of line, from which statement. Printers (the preview, SVG,
 * PNG and those to come) read this and nothing else of the engine. Millimetres, y down, numbers rounded to a
 * thousandth so that the same pattern gives the same bytes on every machine.
 */

export interface Spot {
  readonly x: number;
  readonly y: number;
}

export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/**
 * What a line is; each printer has one table from this to weight and dash (ISO 128 line types: thick solid for the
 * cutting line, thin dashed for the sewing line, long-dash-dot for fold and centre).
 */
export type LineRole =
  | 'cutting' // where the shears go
  | 'sewing' // the finished size
  | 'fold' // cloth folded here, never cut
  | 'grain'
  | 'notch'
  | 'inlay' // where the allowance ends and cloth to let out begins
  | 'dart'
  | 'balance' // hip line, scye line, bust line
  | 'mark'
  | 'tape'
  | 'topstitch'
  | 'crease'
  | 'centre' // of a piece that is drawn whole
  | 'construction' // lines and curves of the draft, shown on demand
  | 'hole'; // cloth cut out of the piece

/** Where a drawn thing comes from: the path of its definition (`front/side`, `skirt/hip-curve`), stable over edits. */
export type Source = string;

/** `[x, y]` a straight stretch to there; `[x1, y1, x2, y2, x, y]` a cubic Bézier stretch. */
export type Stretch = readonly [number, number] | readonly [number, number, number, number, number, number];

export interface DrawnLine {
  readonly role: LineRole;
  readonly source: Source;
  /** The author's name for it: edge, notch, balance line. */
  readonly name: string;
  readonly start: Spot;
  readonly stretches: readonly Stretch[];
  readonly closed: boolean;
  /** Arrow heads, for the grain and the fold. */
  readonly arrows: 'none' | 'end' | 'both';
  /** What a person reads when pointing at it: "side, 68.4 cm, sewn to back side". */
  readonly tip: string;
  /** In a nest: the size that it belongs to; undefined for what all sizes share. */
  readonly ofSize?: string;
  /** It is the sign of a drill hole: where the awl goes in. */
  readonly drilled?: Spot;
}

export interface DrawnText {
  /** `size` stands in a nest alone: the size, written beside its line. */
  readonly role: 'title' | 'detail' | 'edge' | 'note' | 'size';
  readonly source: Source;
  readonly text: string;
  /** Middle of the text's base line. */
  readonly at: Spot;
  /** Height of a capital letter, mm. */
  readonly size: number;
  /** Degrees, clockwise as seen. */
  readonly turn: number;
  /** In a nest: the size that it belongs to. */
  readonly ofSize?: string;
  /** Of an edge: its length, with which the text ends. */
  readonly length?: string;
  /** It stands on lines: bare paper is left behind the words. */
  readonly clear?: boolean;
}

/** A point of the draft or a corner of the piece: a small dot, its name on hover. */
export interface DrawnDot {
  readonly role: 'corner' | 'point' | 'mark';
  readonly source: Source;
  readonly name: string;
  readonly at: Spot;
  /** In a nest: the size that it belongs to. */
  readonly ofSize?: string;
}

export interface PieceDrawing {
  /** Unique in the drawing: `front`, or `front-left` where two sides differ. */
  readonly name: string;
  readonly source: Source;
  /** In the piece's own coordinates (those of its draft). */
  readonly frame: Frame;
  readonly lines: readonly DrawnLine[];
  readonly dots: readonly DrawnDot[];
  readonly texts: readonly DrawnText[];
  /** What of the lines of its label its author wrote: cloths and labels, the same in every language. */
  readonly authored?: readonly string[];
  /** A sentence for the screen reader: "front, cut 1 on fold, 4 edges, 3 seams". */
  readonly spoken: string;
}

/** Where a piece lies on the sheet: what is added to its own coordinates. */
export interface Placement {
  readonly piece: string;
  readonly by: Spot;
}

/** A whole pattern drawn, every piece laid beside the others without overlap, in file order. */
export interface Drawing {
  readonly title: string;
  /** Body or size it is drafted for: `ferrywoman`, `standard M`, or ''. */
  readonly body: string;
  readonly unit: 'cm' | 'mm' | 'in';
  readonly pieces: readonly PieceDrawing[];
  readonly placements: readonly Placement[];
  readonly frame: Frame;
  /** In a nest: the sizes that are drawn on one another, as their table has them. */
  readonly sizes?: readonly string[];
}
