/** Paper pieces as a person lays them: which way an edge runs, on which side its cloth is, and how one comes to another. */
import type { LaidLine, LaidPiece, Walk } from '../../../client/preview/protocol';
import type { Edge, Pattern, Piece } from '../../drafting/model';
import { loopOf } from '../../drafting/sewing/course';
import { drawnPiece } from '../../drawing/draw';
import type { DrawnDot, DrawnText, Frame } from '../../drawing/model';
import { pathLine, rounded, spot } from '../../drawing/path';
import {
  add,
  apply,
  applyVector,
  boxOfPaths,
  compose,
  isMirroring,
  layOn,
  mirror,
  orientation,
  type Affine,
  type Path,
  type Point,
} from '../../geometry';

/** What a laying comes to. */
export interface LaidOut {
  readonly words: readonly string[];
  readonly pieces: readonly (LaidPiece & { readonly drawing: NonNullable<LaidPiece['drawing']> })[];
  readonly lines: readonly LaidLine[];
  readonly dots: readonly DrawnDot[];
  readonly texts: readonly DrawnText[];
  readonly frame: Frame;
  readonly walk?: Walk;
}

/** A piece and how it lies. */
export interface Lying {
  readonly piece: Piece;
  readonly by: Affine;
}

/** A place on an edge, in the piece's own millimetres, with the way that is walked there. */
export interface EdgePlace {
  readonly piece: Piece;
  readonly edge: Edge;
  readonly point: Point;
  /** Of length 1. */
  readonly along: Point;
  /** 1: cloth lies to the right of the way as seen on paper, -1: to its left. */
  readonly cloth: 1 | -1;
}

/** The side of an edge's outline on which cloth lies, walked in the outline's direction; beside a hole it lies outside. */
export function clothOf(piece: Piece, edge: Edge): 1 | -1 {
  const loop = loopOf(piece, edge);
  const turn = orientation(loop.map(({ path }) => path)) < 0 ? -1 : 1;
  return loop === piece.edges ? turn : turn === 1 ? -1 : 1;
}

/** Where cloth lies once a piece was laid so. */
export const clothAfter = (cloth: 1 | -1, by: Affine): 1 | -1 =>
  isMirroring(by) ? (cloth === 1 ? -1 : 1) : cloth;

/**
 * Lays a place of one piece on a place of another that lies already, both walked the same way: their edges touch, and
 * the cloth of one lies on the other side from that of the other. It is turned over where that asks for it.
 */
export function laidAgainst(lying: EdgePlace, by: Affine, place: EdgePlace): Affine {
  const [to, way] = [apply(by, lying.point), applyVector(by, lying.along)];
  const [a, b] = [place.point, add(place.point, place.along)];
  const laid = layOn(a, b, to, add(to, way));
  return clothAfter(lying.cloth, by) === place.cloth ? compose(mirror(a, b), laid) : laid;
}

export const overLine = (
  kind: LaidLine['kind'],
  path: Path,
  by: Affine,
  words: { readonly name: string; readonly source: string; readonly tip: string },
): LaidLine => ({ kind, line: pathLine('mark', path.transformed(by), words) });

const matrix = ({ a, b, c, d, e, f }: Affine): LaidPiece['by'] => {
  const fine = (n: number): number => Math.round(n * 1e9) / 1e9 + 0;
  return [fine(a), fine(b), fine(c), fine(d), rounded(e), rounded(f)];
};

/** Height of the capitals of the name on a piece that was turned over, mm. */
const NAME = 9;

/** The drawings of pieces where they lie; one that is turned over shows its name alone, for its words would be mirrored. */
export function laidPieces(
  pattern: Pattern,
  lying: readonly Lying[],
): Pick<LaidOut, 'pieces' | 'texts' | 'frame'> {
  return {
    pieces: lying.map(({ piece, by }) => ({
      piece: piece.name,
      by: matrix(by),
      drawing: drawnPiece(pattern, piece),
    })),
    texts: lying.filter(({ by }) => isMirroring(by)).map(nameOn),
    frame: frameOfAll(lying),
  };
}

function nameOn({ piece, by }: Lying): DrawnText {
  const { minX, minY, maxX, maxY } = boxOfPaths(piece.edges.map(({ path }) => path.transformed(by)));
  const at = spot({ x: (minX + maxX) / 2, y: (minY + maxY) / 2 });
  return { role: 'title', source: piece.source, text: piece.name, at, size: NAME, turn: 0 };
}

export function frameOfAll(lying: readonly Lying[]): Frame {
  const paths = lying.flatMap(({ piece, by }) =>
    [...piece.edges.map(({ path }) => path), ...(piece.cutting ?? [])].map((path) => path.transformed(by)),
  );
  const { minX, minY, maxX, maxY } = boxOfPaths(paths);
  return { left: rounded(minX), top: rounded(minY), right: rounded(maxX), bottom: rounded(maxY) };
}
