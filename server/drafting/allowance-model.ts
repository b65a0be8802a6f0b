/** What a piece knows of its allowances besides their widths; lengths in millimetres. */
import type { Span, Statement } from '../../grammar/syntax';
import type { CornerRule, CutCorner } from '../geometry/joint';
import type { Path } from '../geometry/path';
import type { Point } from '../geometry/point';

/** A stretch of an edge whose allowance has a width of its own, counted along the edge as drawn. */
export interface RunningAllowance {
  readonly edge: string;
  readonly from: number;
  readonly to: number;
  readonly widthFrom: number;
  readonly widthTo: number;
  /** Beyond its ends the edge has its usual width again: the cutting line steps there. */
  readonly stepped?: true;
}

/** A corner as its author wants it cut. */
export interface CornerCut {
  readonly point: Point;
  /** The named point of the outline, which keeps with the outline when it is worked. */
  readonly name?: string;
  readonly how: 'mitred' | 'squared' | 'stepped' | 'turned-back' | 'as-the-seam-folds';
}

/** How the corner between two edges that follow each other is cut, and by which rule of the trade. */
export interface RuledCorner {
  readonly before: string;
  readonly after: string;
  readonly rule: CornerRule;
  readonly why: 'said' | 'hem' | 'panel' | 'pressed-open' | 'faced';
}

/** A width that the piece's own text gives to an edge by its name. */
export interface StatedAllowance {
  readonly edge: string;
  readonly width: number;
  readonly statement: Statement;
  readonly at: Span;
  /** The line names other edges as well, or runs: its width can't be changed for this edge alone. */
  readonly shared: boolean;
}

/** Where an edge bends more tightly than its allowance can follow, counted along the edge as drawn. */
export interface TightAllowance {
  readonly edge: string;
  readonly from: number;
  readonly to: number;
}

/** How a piece is cut, worked out together with its cutting line. */
export interface CutShape {
  /** How each corner came out, in the order of the outline: the one at the end of the edge with the same number. */
  readonly corners: readonly CutCorner[];
  readonly tight: readonly TightAllowance[];
  /** Where the allowance ends within an inlay; one run for each edge that has an inlay. */
  readonly inlayLines: readonly { readonly edge: string; readonly path: Path }[];
}
