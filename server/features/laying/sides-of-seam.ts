/** The two sides of a seam as they are laid: places along them, the stretches that lie between, and what meets what. */
import { say } from '../../../grammar/say';
import type { Edge, Pattern, Piece, Seam } from '../../drafting/model';
import {
  across,
  edgeNamed,
  placeOnSide,
  pointOn,
  sewnPath,
  sideLength,
  sizeOf,
} from '../../drafting/sewing/course';
import type { SeamCourse, SeamRun } from '../../drafting/sewing-model';
import { flatAt } from '../../drafting/shapes/parts';
import { scale, type Path } from '../../geometry';
import { clothOf, type EdgePlace } from './paper';

export type Side = 'left' | 'right';

/** A seam that can be laid: its course is known, and every piece of it is there. */
export interface LaidSeam {
  readonly seam: Seam;
  readonly course: SeamCourse;
  readonly pieces: ReadonlyMap<string, Piece>;
}

/** Undefined where the seam, its course or a piece of it can't be had. */
export function laidSeam(pattern: Pattern, source: string): LaidSeam | undefined {
  const seam = pattern.seams.find((one) => sourceOfSeam(one) === source);
  if (seam?.course === undefined || !seam.comparable) return undefined;
  const { course } = seam;
  const pieces = new Map<string, Piece>();
  for (const run of [...course.left, ...course.right]) {
    const piece = pieceOf(pattern, seam, run.piece);
    if (piece === undefined || edgeNamed(piece, run.edge) === undefined) return undefined;
    pieces.set(run.piece, piece);
  }
  return { seam, course, pieces };
}

/** Seams of either side of the wearer are two, of one source. */
export const sourceOfSeam = ({ source, side }: Seam): string =>
  side === undefined ? source : `${source} ${side}`;

/** As it is cut where it is cut, else as it stands when it is sewn. */
function pieceOf({ pieces }: Pattern, seam: Seam, base: string): Piece | undefined {
  const own = pieces.filter((piece) => piece.base === base);
  const cut = own.find(({ side }) => seam.side === undefined || side === undefined || side === seam.side);
  return cut ?? [...seam.left, ...seam.right].find(({ piece }) => piece === base)?.of;
}

export const lengthOf = ({ course }: LaidSeam, side: Side): number => sideLength(course[side]);

const edgeOf = ({ pieces }: LaidSeam, { piece, edge }: SeamRun): readonly [Piece, Edge] => {
  const found = pieces.get(piece)!;
  return [found, edgeNamed(found, edge)!];
};

/** The place at a distance along a side, and the way that the seam goes there. */
export function placeAt(laid: LaidSeam, side: Side, s: number): EdgePlace {
  const { run, distance } = placeOnSide(laid.course[side], s)!;
  return placeOnRun(laid, run, distance);
}

/** A sewn distance from the first corner of a run's edge. */
export function placeOnRun(laid: LaidSeam, run: SeamRun, distance: number): EdgePlace {
  const [piece, edge] = edgeOf(laid, run);
  const path = sewnPath(edge);
  const flat = flatAt(edge, distance);
  const forward = run.to >= run.from;
  // where the way ends there is nothing after it
  const before = forward ? flat >= path.length - 1e-6 : flat > 1e-6;
  const tangent = path.tangentAt(flat, before ? 'before' : 'after');
  const cloth = clothOf(piece, edge);
  return {
    ...{ piece, edge, point: pointOn(edge, distance) },
    along: forward ? tangent : scale(tangent, -1),
    cloth: forward ? cloth : cloth === 1 ? -1 : 1,
  };
}

/** The place of the other side that comes to lie on a place of one: what is asked to be eased is shared, and no more. */
export function partnerOf(laid: LaidSeam, s: number): number {
  const { course, seam } = laid;
  const [left, right] = [lengthOf(laid, 'left'), lengthOf(laid, 'right')];
  const apart = right - left;
  const asked = apart - (seam.itsPair ? 0 : seam.difference);
  const share = Math.abs(apart) < 1e-6 ? 0 : asked / apart;
  const partner = s + (across(course, 'left', s) - s) * share;
  return Math.min(Math.max(partner, 0), right);
}

/** The place of the left side that comes to lie on a place of the right. */
export function partnerOfRight(laid: LaidSeam, r: number): number {
  let [low, high] = [0, lengthOf(laid, 'left')];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (partnerOf(laid, middle) < r) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** What lies of a side between two places of it, run by run, without the mouths of darts. */
export function stretchesOf(
  laid: LaidSeam,
  side: Side,
  [from, to]: readonly [number, number],
): readonly { readonly piece: Piece; readonly edge: Edge; readonly path: Path }[] {
  return laid.course[side].flatMap((run) => {
    const [low, high] = [Math.max(from - run.start, 0), Math.min(to - run.start, sizeOf(run))];
    if (high - low < 1e-6) return [];
    const [piece, edge] = edgeOf(laid, run);
    const way = Math.sign(run.to - run.from);
    const ends = [run.from + way * low, run.from + way * high].map((sewn) => flatAt(edge, sewn));
    const [start, end] = [Math.min(...ends), Math.max(...ends)];
    return partsBetween(edge, start, end).map((path) => ({ piece, edge, path }));
  });
}

function partsBetween({ parts }: Edge, from: number, to: number): readonly Path[] {
  let flat = 0;
  return parts.flatMap(({ path, dart }) => {
    if (dart !== undefined) return [];
    const [low, high] = [Math.max(from - flat, 0), Math.min(to - flat, path.length)];
    flat += path.length;
    return high - low > 1e-6 ? [path.part(low, high)] : [];
  });
}

/** `front side and yoke side` */
export const sideWords = ({ course, seam }: LaidSeam, side: Side): string =>
  seam.itsPair && side === 'right'
    ? say`its pair`
    : course[side].map(({ piece, edge }) => `${piece} ${edge}`).join(say` and `);
