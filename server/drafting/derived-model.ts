/** What pieces made from other pieces carry besides what every piece has; lengths in millimetres. */
import type { Source } from './finding';

/** Of a facing: the piece it is cut after, and how wide it is. */
export interface FacingOf {
  readonly piece: string;
  /** Edges of that piece that it faces; the facing's own bear the same names. */
  readonly edges: readonly string[];
  readonly depth: number;
}

/** An edge that a finish faces, and the edge of the facing that is sewn to it. */
export interface FacedEdge {
  readonly piece: string;
  readonly edge: string;
  readonly length: number;
  readonly facing: {
    readonly piece: string;
    readonly edge: string;
    readonly source: Source;
    readonly length: number;
  };
}
