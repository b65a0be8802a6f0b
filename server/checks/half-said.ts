/** Edges that seams and finishes take by stretches (`front.side from A to B`), and what these leave over. */
import { say } from '../../grammar/say';
import type { DisplayUnit, Edge, Piece, SewnEdge } from '../drafting/model';
import type { Stretch } from '../drafting/sewing-model';
import { everyEdge } from '../drafting/shapes/parts';
import { printLength } from '../drafting/values/quantity';

/** A stretch shorter than this is left by rounding or by a place that was measured, mm. */
const SHORTEST = 3;

type Span = readonly [number, number];

export interface Left {
  readonly edge: Edge;
  /** Sewn distances from the edge's first corner. */
  readonly left: readonly Span[];
}

/**
 * Edges of a piece that are taken by stretches alone, which do not cover them.
 *
 * @param taken what the seams and finishes of the piece take, side by side
 */
export function halfSaid(piece: Piece, taken: readonly (readonly SewnEdge[])[]): readonly Left[] {
  if (!taken.some((edges) => edges.some((one) => one.stretch !== undefined && one.piece === piece.base)))
    return [];
  const own = taken.flat().filter((one) => one.piece === piece.base);
  const parted = new Set(own.flatMap(({ edge, stretch }) => (stretch === undefined ? [] : [edge])));
  return [...parted].flatMap((name) => {
    const edge = everyEdge(piece).find((one) => one.name === name);
    const stretches = own.filter((one) => one.edge === name).map(({ stretch }) => stretch);
    if (edge === undefined || stretches.includes(undefined)) return [];
    const left = uncovered(edge.sewn, stretches as Stretch[]);
    return left.length === 0 ? [] : [{ edge, left }];
  });
}

/** What stretches leave of a length. */
function uncovered(length: number, stretches: readonly Stretch[]): readonly Span[] {
  const spans = stretches.map(({ from, to }): Span => [Math.min(from, to), Math.max(from, to)]);
  spans.sort((a, b) => a[0] - b[0]);
  const left: Span[] = [];
  let at = 0;
  for (const [from, to] of [...spans, [length, length]] as const) {
    if (from! - at > SHORTEST) left.push([at, from!]);
    at = Math.max(at, to!);
  }
  return left;
}

/** "5cm from hem-side", for each. */
export function stretchesInWords(edge: Edge, left: readonly Span[], unit: DisplayUnit): readonly string[] {
  const [start, end] = [edge.fromName || say`its beginning`, edge.toName || say`its end`];
  return left.map(([from, to]) => {
    const long = printLength(to - from, unit);
    if (from < SHORTEST) return say`${long} from ${start}`;
    return to > edge.sewn - SHORTEST
      ? say`${long} from ${end}`
      : say`${long} in its middle, ${printLength(from, unit)} from ${start}`;
  });
}
