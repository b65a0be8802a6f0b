/** A piece carried by a rigid movement, as paper is moved or turned over. */
import { apply, type Affine } from '../../geometry';
import type { Dart, Piece } from '../model';
import { carriedBy, movedEdge } from './carried';
import { shapingMoved } from './shaped';

/** With all that is drawn on it. */
export function moved(piece: Piece, m: Affine): Piece {
  const at = <T extends { readonly point: { x: number; y: number } }>(one: T): T => ({
    ...one,
    point: apply(m, one.point),
  });
  return {
    ...piece,
    ...carriedBy(piece, m),
    edges: piece.edges.map((edge) => movedEdge(edge, m)),
    darts: piece.darts.map((dart) => movedDart(dart, m)),
    ...(piece.shaping && { shaping: shapingMoved(piece.shaping, m) }),
    corners: piece.corners.map(at),
    notches: piece.notches.map(at),
    cornerCuts: piece.cornerCuts.map(at),
    gaps: piece.gaps.map((gap) => ({ ...gap, from: apply(m, gap.from), to: apply(m, gap.to) })),
    ...(piece.grain && {
      grain: { ...piece.grain, from: apply(m, piece.grain.from), to: apply(m, piece.grain.to) },
    }),
    ...(piece.cutting && { cutting: piece.cutting.map((path) => path.transformed(m)) }),
    ...(piece.cutShape && {
      cutShape: {
        ...piece.cutShape,
        corners: piece.cutShape.corners.map((corner) => ({
          ...corner,
          at: apply(m, corner.at),
          tip: apply(m, corner.tip),
        })),
        inlayLines: piece.cutShape.inlayLines.map(({ edge, path }) => ({ edge, path: path.transformed(m) })),
      },
    }),
  };
}

const movedDart = (dart: Dart, m: Affine): Dart => ({
  ...dart,
  from: apply(m, dart.from),
  to: apply(m, dart.to),
  pivot: apply(m, dart.pivot),
  tip: apply(m, dart.tip),
});
