/** The same piece with its outline walked the other way: everything that is counted along an edge is counted from its other end. */
import type { Dart, Edge, Piece } from '../model';
import { walkedBack } from './shaped';

export function outlineBack(piece: Piece): Piece {
  const drawn = new Map(piece.edges.map(({ name, drawn }) => [name, drawn]));
  const sewn = new Map(piece.edges.map(({ name, sewn }) => [name, sewn]));
  const { shaping } = piece;
  return {
    ...piece,
    ...(shaping && { shaping: { ...shaping, pleats: shaping.pleats.map(walkedBack) } }),
    edges: piece.edges.map(edgeBack).reverse(),
    darts: piece.darts.map(dartBack),
    running: piece.running.map((run) => ({
      ...run,
      ...{ from: drawn.get(run.edge)! - run.to, to: drawn.get(run.edge)! - run.from },
      ...{ widthFrom: run.widthTo, widthTo: run.widthFrom },
    })),
    notches: piece.notches.map((notch) => ({
      ...notch,
      distance: (sewn.get(notch.edge) ?? 0) - notch.distance,
    })),
  };
}

const edgeBack = (edge: Edge): Edge => ({
  ...edge,
  path: edge.path.reversed(),
  parts: edge.parts.map((part) => ({ ...part, path: part.path.reversed() })).reverse(),
  fromName: edge.toName,
  toName: edge.fromName,
});

const dartBack = (dart: Dart): Dart => ({
  ...dart,
  ...{ from: dart.to, to: dart.from },
  pressed: dart.pressed === 'from' ? 'to' : dart.pressed === 'to' ? 'from' : dart.pressed,
});
