/** Edges counted round the whole body: what is cut on the fold or as a pair counts twice. */
import type { Piece, SewnEdge } from '../model';
import type { TakenEdge } from './edges';

/** How often a piece goes round the body. */
export const timesRound = (piece: Piece): number => (piece.copies ?? 1) * onceRound(piece);

function onceRound(piece: Piece): number {
  if (piece.fold !== undefined) return 2;
  const layer = piece.cut?.layers[0];
  if (layer === undefined) return 1;
  return layer.as === 'pairs' || layer.as === 'open' ? 2 : 1;
}

/** Length of edges round the whole body, mm. */
export const ringLength = (edges: readonly TakenEdge[]): number =>
  edges.reduce((sum, edge) => sum + edge.length * timesRound(edge.of), 0);

/** Whether a side of a seam is a band's, which is cut for the whole body. */
export const isBand = (edges: readonly (SewnEdge & { readonly of: Piece })[]): boolean =>
  edges.some((edge) => edge.of.statement.node.kind === 'band');

/** How much of its round a band may lack and still be sewn all round, mm: the tolerance of a short seam. */
const ALL_BUT = 1;

/** What a band measures round the body without its underlap, mm; undefined for an edge that is sewn in part, as to a bib. */
export function roundByBand({ edges, underlap = 0 }: Piece, taken: SewnEdge): number | undefined {
  const edge = edges.find(({ name }) => name === taken.edge);
  if (edge === undefined) return undefined;
  const round = edge.sewn - underlap;
  return taken.length < round - ALL_BUT ? undefined : round;
}
