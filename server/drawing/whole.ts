/**
 * A piece that is drafted as a half and cut open, flat: it is drawn whole, the other half as the mirror image of the one
 * drafted, and what is the fold of the half is the centre line of the whole.
 */
import type { Edge, Piece } from '../drafting/model';
import { carriedBy, carriedTogether } from '../drafting/pieces/carried';
import { apply, mirror, type Affine } from '../geometry';
import type { DrawnDot, DrawnLine, Spot } from './model';
import { movedLine, movedSpot } from './moved';

/** Whether a half is drafted of what is cut flat. */
export const isOpen = (piece: Piece): boolean =>
  piece.fold !== undefined && (piece.cut?.layers.some(({ as }) => as === 'open') ?? false);

/** The mirror about the fold of a piece that is cut open; undefined for any other. */
export function openingOf(piece: Piece): Affine | undefined {
  const fold = isOpen(piece) ? piece.edges.find(({ name }) => name === piece.fold?.edge) : undefined;
  return fold && mirror(fold.path.start, fold.path.end);
}

/** Both halves as one outline, for whatever looks for room in it. */
export function wholePiece(piece: Piece, m: Affine): Piece {
  const fold = piece.edges.findIndex(({ name }) => name === piece.fold?.edge);
  const half = [...piece.edges.slice(fold + 1), ...piece.edges.slice(0, fold)];
  const other = half.map((edge) => mirrored(edge, m)).reverse();
  const darts = piece.darts.map((dart) => ({
    ...dart,
    from: apply(m, dart.from),
    to: apply(m, dart.to),
    tip: apply(m, dart.tip),
    pivot: apply(m, dart.pivot),
  }));
  const { fold: _, ...rest } = piece;
  return {
    ...rest,
    ...carriedTogether(piece, carriedBy(piece, m)),
    edges: [...half, ...other],
    darts: [...piece.darts, ...darts],
  };
}

const mirrored = (edge: Edge, m: Affine): Edge => ({
  ...edge,
  path: edge.path.transformed(m).reversed(),
  parts: edge.parts.map((part) => ({ ...part, path: part.path.transformed(m).reversed() })).reverse(),
  fromName: edge.toName,
  toName: edge.fromName,
});

/** The other half of what is drawn of one; lines on the centre itself stand there already. */
export const otherHalf = (lines: readonly DrawnLine[], m: Affine): DrawnLine[] =>
  lines.flatMap((line) => {
    const other = movedLine(line, m);
    return isSame(line, other) ? [] : [other];
  });

export const otherDots = (dots: readonly DrawnDot[], m: Affine): DrawnDot[] =>
  dots.flatMap((dot) => {
    const at = movedSpot(dot.at, m);
    return near(at, dot.at) ? [] : [{ ...dot, at }];
  });

const near = (a: Spot, b: Spot): boolean => Math.hypot(a.x - b.x, a.y - b.y) < 0.01;

const isSame = (a: DrawnLine, b: DrawnLine): boolean =>
  near(a.start, b.start) &&
  a.stretches.every((stretch, i) => stretch.every((n, k) => Math.abs(n - b.stretches[i]![k]!) < 0.01));
