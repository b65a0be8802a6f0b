/** What shapes a piece: darts on its edges and inside it, pleats, gathers. Millimetres, degrees, y down. */
import type { Statement } from '../../grammar/syntax';
import type { Path, Point } from '../geometry';
import type { Source } from './finding';

/** A dart as it lies in the piece: two legs of one length from the pivot to the edge. */
export interface Dart {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  readonly edge: string;
  /** Leg ends on the edge, in the direction of the outline. */
  readonly from: Point;
  readonly to: Point;
  /** About what the paper swings when the dart is closed; the legs are drawn and sewn to `tip`, which may stop short of it. */
  readonly pivot: Point;
  readonly tip: Point;
  /** Straight across the mouth, mm. */
  readonly width: number;
  /** Between the legs, degrees. */
  readonly angle: number;
  /** To which side the folded dart is pressed: that of the leg `from`, that of `to`, or open; '' when it is not said. */
  readonly pressed: 'from' | 'to' | 'open' | '';
  /** Longest leg less shortest before they were made equal, mm. */
  readonly legsApart: number;
  /** Before its edge was trued, mm: across the mouth, and from the middle of that to the end that is sewn. */
  readonly asLaid: { readonly width: number; readonly length: number };
  /** Drafted in the outline, not laid on an edge. */
  readonly drafted: boolean;
}

/** What truing did to an edge: nothing moved where no join bent by a degree. */
export interface Trued {
  readonly edge: string;
  /** Bend at each closed dart before, degrees; 0 is straight. */
  readonly kinks: readonly number[];
  /** Farthest that a leg end moved, mm. */
  readonly moved: number;
  readonly sewnBefore: number;
}

/** What rounding a corner off did to the outline. */
export interface Smoothed {
  /** The corner as it is written. */
  readonly name: string;
  readonly edge: string;
  readonly statement: Statement;
  /** How far from the corner the curve begins and ends, mm. */
  readonly by: number;
  /** Farthest from the corner to the curve, mm. */
  readonly moved: number;
  /** The corner was hollow, so that the piece grew there. */
  readonly added: boolean;
}

/** A dart inside the piece, pointed at both ends: four legs, straight from the points to the widest place. */
export interface FishDart {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  readonly from: Point;
  readonly to: Point;
  /** At the widest place: on the left and on the right of the way from `from` to `to`, as seen on paper. */
  readonly left: Point;
  readonly right: Point;
  /** Across the widest place. */
  readonly width: number;
  /** To which side it is pressed; '' where it is not said. */
  readonly pressed: 'left' | 'right' | 'open' | '';
}

/** One pleat as it is folded: the cloth between two lines vanishes beneath. */
export interface Pleat {
  /** The part of the edge that it takes, as its `dart` names it. */
  readonly part: string;
  /** Lines from the edge into the piece: where the part begins in the direction of the outline, and where it ends. */
  readonly start: Path;
  readonly end: Path;
  /** What is folded: the start on to the end, the end on to the start, or both on to the middle (inverted). */
  readonly folds: 'start' | 'end' | 'both';
  /** Millimetres of edge that it takes. */
  readonly width: number;
}

/** A `pleats` line: a row of pleats on one edge. */
export interface Pleats {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  readonly form: 'knife' | 'box' | 'inverted';
  readonly edge: string;
  /** What is taken each; a box pleat is two folds of half as much. */
  readonly taking: number;
  /** Where each lies on the edge as it is sewn, from the edge's start. */
  readonly places: readonly number[];
  readonly pleats: readonly Pleat[];
  /** The piece grew by them; otherwise they are taken out of the width that was drawn. */
  readonly added: boolean;
  /** How far down from the edge they are stitched; 0: not at all. */
  readonly stitched: number;
}

/** A stretch of an edge drawn up by gathering threads. */
export interface Gathers {
  readonly name: string;
  readonly source: Source;
  readonly statement: Statement;
  readonly edge: string;
  /** Of the stretch before it is drawn up, without darts and pleats. */
  readonly flat: number;
  readonly gathered: number;
}

/** A dart that a step of the work has closed for good. */
export interface ClosedDart {
  readonly name: string;
  /** The piece whose line closed it. */
  readonly source: Source;
  readonly statement: Statement;
}

export interface Shaping {
  readonly fishDarts: readonly FishDart[];
  readonly pleats: readonly Pleats[];
  readonly gathers: readonly Gathers[];
  readonly closed: readonly ClosedDart[];
}

export const NO_SHAPING: Shaping = { fishDarts: [], pleats: [], gathers: [], closed: [] };
