/** One piece drafted for each side of the wearer: a pair, when they are alike; two pieces, when they are not. */
import { apply, distance, mirror, type Affine, type Path, type Point } from '../../geometry';
import type { Dart, Edge, EdgePart, Notch, Piece } from '../model';
import { carriedBy, carriedTogether, movedEdge } from './carried';
import { openCut, sidedCut } from './cut-words';
import { shapingMoved, shapingTogether } from './shaped';

/** Two sides whose points lie no further apart are cut as one pair, from the larger (language reference, sides). */
export const ALIKE_WITHIN = 1.5;

/** Places compared along every line, beside its ends. */
const COMPARED = 8;

/** The greatest distance between corresponding points of two pieces drafted alike, with all that is drawn on them. */
export function greatestDifference(one: Piece, other: Piece): number {
  const [lines, twins] = [linesOf(one), linesOf(other)];
  const apart = lines.flatMap((line, i) => (twins[i] === undefined ? [] : linesApart(line, twins[i])));
  const [spots, places] = [spotsOf(one), spotsOf(other)];
  apart.push(...spots.flatMap((spot, i) => (places[i] === undefined ? [] : distance(spot, places[i]))));
  return Math.max(0, ...apart);
}

const linesOf = ({ edges, holes, balance, marks }: Piece): readonly Path[] => [
  ...edges.map(({ path }) => path),
  ...holes.flatMap((hole) => hole.edges.map(({ path }) => path)),
  ...balance.map(({ path }) => path),
  ...marks.flatMap(({ paths }) => paths),
];

const spotsOf = ({ darts, marks, shaping }: Piece): readonly Point[] => [
  ...darts.flatMap(({ tip, pivot }) => [tip, pivot]),
  ...marks.flatMap(({ points }) => points),
  ...(shaping?.fishDarts ?? []).flatMap(({ from, to, left, right }) => [from, to, left, right]),
];

const linesApart = (line: Path, twin: Path): number[] =>
  Array.from({ length: COMPARED + 1 }, (_, k) => {
    const share = k / COMPARED;
    return distance(line.pointAt(share * line.length), twin.pointAt(share * twin.length));
  });

const UPRIGHT = mirror({ x: 0, y: 0 }, { x: 0, y: 1 });

/** A piece as it is when the paper is turned over. */
export const turnedOver = (piece: Piece): Piece => moved(piece, UPRIGHT);

/** A piece carried by a rigid movement, with all that is drawn on it. */
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

/**
 * What is cut of a piece drafted for both sides. The first is as the draft is drawn, the other turned over.
 *
 * @param drawn the piece for the side its draft is drawn for
 */
export function ofBothSides(drawn: Piece, other: Piece, side: 'left' | 'right'): readonly Piece[] {
  const otherSide = side === 'right' ? 'left' : 'right';
  const greatest = greatestDifference(drawn, other);
  if (drawn.fold !== undefined && other.fold !== undefined) return [opened(drawn, other)];
  if (greatest <= ALIKE_WITHIN) {
    const larger = other.area > drawn.area ? otherSide : side;
    const chosen = larger === side ? drawn : other;
    return [
      greatest > 1e-6
        ? { ...chosen, remarks: [`for both sides, from the ${larger}, which is the larger`] }
        : chosen,
    ];
  }
  return [oneSide(drawn, side), turnedOver(oneSide(other, otherSide))];
}

function oneSide(piece: Piece, side: 'left' | 'right'): Piece {
  const cut = piece.cut && sidedCut(piece.cut, side);
  return { ...piece, name: `${piece.name}-${side}`, side, ...(cut && { cut }) };
}

/** Fold edges that differ by more than this can't be one line down the middle of an open piece. */
export const FOLDS_WITHIN = 0.5;

const mirroredEdge = (edge: Edge, m: Affine): Edge => ({
  ...edge,
  name: `${edge.name}-other`,
  path: edge.path.transformed(m).reversed(),
  parts: edge.parts.map((part) => mirroredPart(part, m)).reverse(),
  fromName: edge.toName,
  toName: edge.fromName,
});

const mirroredPart = (part: EdgePart, m: Affine): EdgePart => ({
  ...part,
  path: part.path.transformed(m).reversed(),
  ...(part.dart !== undefined && { dart: `${part.dart}-other` }),
});

/** A dart of the other half: its legs change places, since the outline is walked on across the fold. */
function mirroredDart(dart: Dart, m: Affine): Dart {
  const { from, to, pressed, ...rest } = movedDart(dart, m);
  return {
    ...rest,
    name: `${dart.name}-other`,
    edge: `${dart.edge}-other`,
    ...{ from: to, to: from },
    pressed: pressed === 'from' ? 'to' : pressed === 'to' ? 'from' : pressed,
  };
}

const mirroredNotch = (notch: Notch, { edges }: Piece, m: Affine): Notch => ({
  ...notch,
  edge: `${notch.edge}-other`,
  distance: (edges.find(({ name }) => name === notch.edge)?.sewn ?? 0) - notch.distance,
  point: apply(m, notch.point),
});

const otherHalf = <T>([edge, of]: readonly [string, T]): readonly [string, T] => [`${edge}-other`, of];

/** A piece on the fold, drafted for both sides: both halves joined along the fold, cut open. */
function opened(drawn: Piece, other: Piece): Piece {
  const fold = drawn.edges.findIndex(({ name }) => name === drawn.fold!.edge);
  const axis = drawn.edges[fold]!.path;
  const m = mirror(axis.start, axis.end);
  const half = [...drawn.edges.slice(fold + 1), ...drawn.edges.slice(0, fold)];
  const otherFold = other.edges.findIndex(({ name }) => name === other.fold!.edge);
  const back = [...other.edges.slice(otherFold + 1), ...other.edges.slice(0, otherFold)]
    .map((edge): Edge => mirroredEdge(edge, m))
    .reverse();
  const { fold: _, ...rest } = drawn;
  const widths = new Map(drawn.allowances);
  for (const [edge, width] of other.allowances) widths.set(`${edge}-other`, width);
  return {
    ...rest,
    edges: [...half, ...back],
    notches: [...drawn.notches, ...other.notches.map((notch) => mirroredNotch(notch, other, m))],
    area: drawn.area + other.area,
    allowances: widths,
    hems: new Map([...drawn.hems, ...[...other.hems].map(otherHalf)]),
    inlays: new Map([...(drawn.inlays ?? []), ...[...(other.inlays ?? [])].map(otherHalf)]),
    remarks: ['one open piece: the two halves differ'],
    ...carriedTogether(drawn, carriedBy(other, m)),
    darts: [...drawn.darts, ...other.darts.map((dart) => mirroredDart(dart, m))],
    ...(drawn.shaping && {
      shaping: shapingTogether(drawn.shaping, other.shaping && shapingMoved(other.shaping, m)),
    }),
    ...(drawn.cut && { cut: openCut(drawn.cut) }),
  };
}
