/** What lies at the two ends of a seam: the corners of its pieces, and what becomes of the edges that go on from there. */
import type { Edge, Finish, Pattern, Piece, Seam, SewnEdge } from '../drafting/model';
import type { SeamRun } from '../drafting/sewing-model';
import { edgeNamed } from '../drafting/sewing/course';
import { angleBetween, signedArea } from '../geometry';

/** A corner of a piece between an edge and the one that goes on from it. */
export interface CornerBeside {
  readonly piece: Piece;
  readonly edge: Edge;
  readonly neighbour: Edge;
  /** The corner's own name, '' where its author gave none. */
  readonly name: string;
  /** Inside the piece, degrees; the same whichever way the outline is walked, and of a piece that is turned over. */
  readonly inside: number;
}

/** Ends of an edge and of a seam count as one within this, mm. */
const AT_END = 0.05;

/** At the first or last corner of an edge of the outline; undefined where a dart opens at it. */
export function cornerBeside(piece: Piece, edge: Edge, atStart: boolean): CornerBeside | undefined {
  const { edges } = piece;
  const index = edges.indexOf(edge);
  if (index < 0 || edges.length < 2) return undefined;
  const neighbour = edges[(index + (atStart ? -1 : 1) + edges.length) % edges.length]!;
  const [before, after] = atStart ? [neighbour, edge] : [edge, neighbour];
  const [arriving, leaving] = [before.parts.at(-1), after.parts[0]];
  if (arriving === undefined || leaving === undefined) return undefined;
  if (arriving.dart !== undefined || leaving.dart !== undefined) return undefined;
  const sense = signedArea(edges.map(({ path }) => path)) < 0 ? -1 : 1;
  const turn = angleBetween(
    arriving.path.tangentAt(arriving.path.length, 'before'),
    leaving.path.tangentAt(0),
  );
  const inside = 180 - (sense * turn * 180) / Math.PI;
  return { piece, edge, neighbour, name: atStart ? edge.fromName : edge.toName, inside };
}

/** The corner at a seam's end; undefined where the seam ends in the middle of an edge. */
export function cornerAt(
  edges: readonly SewnEdge[],
  run: SeamRun,
  end: 'from' | 'to',
): CornerBeside | undefined {
  const piece = edges.find((one) => one.piece === run.piece && one.edge === run.edge)?.of;
  const edge = piece && edgeNamed(piece, run.edge);
  if (piece === undefined || edge === undefined) return undefined;
  const s = run[end];
  if (s < AT_END) return cornerBeside(piece, edge, true);
  return s > edge.sewn - AT_END ? cornerBeside(piece, edge, false) : undefined;
}

/** Both corners at each end of a seam; for one sewn to its pair the same corner twice. */
export function cornersOf(seam: Seam): readonly (readonly [CornerBeside, CornerBeside])[] {
  const { course, left, right, itsPair } = seam;
  if (course === undefined) return [];
  const ends = [
    [course.left[0], course.right[0], 'from'],
    [course.left.at(-1), course.right.at(-1), 'to'],
  ] as const;
  return ends.flatMap(([one, other, end]) => {
    const a = one && cornerAt(left, one, end);
    const b = other && cornerAt(itsPair ? left : right, other, end);
    return a === undefined || b === undefined ? [] : [[a, b] as const];
  });
}

/** What becomes of an edge: the seam and its side, or the finish. */
export interface Fate {
  readonly seam?: Seam;
  readonly side?: 'left' | 'right';
  readonly finish?: Finish;
}

const takes = (edges: readonly SewnEdge[], { base }: Piece, edge: string): boolean =>
  edges.some((one) => one.piece === base && one.edge === edge);

/** @param side of the wearer, where the two differ */
export function fateOf(
  pattern: Pick<Pattern, 'seamsOf' | 'finishesOf'>,
  piece: Piece,
  edge: string,
  side: Seam['side'],
): Fate {
  for (const seam of pattern.seamsOf(piece.base)) {
    if (seam.side !== undefined && side !== undefined && seam.side !== side) continue;
    if (takes(seam.left, piece, edge)) return { seam, side: 'left' };
    if (takes(seam.right, piece, edge)) return { seam, side: 'right' };
  }
  const finish = pattern.finishesOf(piece.base).find(({ edges }) => takes(edges, piece, edge));
  return finish === undefined ? {} : { finish };
}

export const isBandOf = (edges: readonly SewnEdge[]): boolean =>
  edges.some(({ of }) => of?.statement.node.kind === 'band');

export { called } from '../drafting/names/spelling';
