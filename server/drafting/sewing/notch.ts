/** Reads a notch: a stroke across an edge at a place; on a seam, one on each of its two sides, where the ease puts them. */
import { say } from '../../../grammar/say';
import type { NotchNode, Sewn } from '../../../grammar/syntax';
import type { Notch, Piece, Seam } from '../model';
import type { SeamRun } from '../sewing-model';
import { edgeShape, sewnTo } from '../shapes/parts';
import { report, wordsOf, type Reader } from '../values/reader';
import { across, edgeNamed, placeOnSide, pointOn } from './course';
import { placeWithin, presentEdges, type TakenEdge } from './edges';
import { isBand } from './ring';
import { whichEnd } from './seam';
import { spotOf } from './seam-places';

/** A notch and the piece it is cut into. */
export interface PlacedNotch extends Notch {
  readonly piece: string;
  /** The seam with a band on which it stands: the band is notched there too. */
  readonly seam?: string;
}

/** `notch balance on front.armhole at 8cm from pit, single`; `notch hip-level on side at hip-b` */
export function readNotch(
  reader: Reader,
  node: NotchNode,
  source: string,
  sewn: readonly Sewn[],
): readonly PlacedNotch[] | undefined {
  if (node.on.kind !== 'ref') {
    return report(
      reader,
      'wrong-kind',
      node.on.at,
      say`A notch stands on an edge: write the piece and its edge, such as front.side.`,
    );
  }
  const found = reader.find(node.on);
  if (found === undefined) return undefined;
  const { answer, rest } = found;
  if (answer.is === 'seam') return onSeam(reader, node, source, answer.seam, sewn);
  if (answer.is !== 'piece' || rest.length !== 1) {
    return report(
      reader,
      'wrong-kind',
      node.on.at,
      say`${wordsOf(reader, node.on)} is no edge: write the piece and its edge, such as front.side.`,
    );
  }
  const notch = onEdge(reader, node, answer.piece, rest[0]!.text, source);
  return notch && [notch];
}

function onEdge(
  reader: Reader,
  node: NotchNode,
  piece: Piece,
  name: string,
  source: string,
): PlacedNotch | undefined {
  const edge = edgeNamed(piece, name);
  if (edge === undefined) {
    return report(
      reader,
      'unknown-name',
      node.on.at,
      say`${piece.name} has no edge called ${name}. Its edges are ${piece.edges.map((one) => one.name).join(', ')}.`,
    );
  }
  if (piece.fold?.edge === name) return onFold(reader, node, piece, name);
  const shape = edgeShape(edge);
  if (shape.kind === 'point') return undefined;
  reader.standOn(piece);
  const distance = placeWithin(reader, shape, node.place, edge.name);
  return distance === undefined ? undefined : cutInto(node, source, piece, edge.name, sewnTo(edge, distance));
}

/** The shears never pass along a fold. */
const onFold = (reader: Reader, node: NotchNode, piece: Piece, edge: string): undefined =>
  report(
    reader,
    'wrong-kind',
    node.on.at,
    say`${piece.name} lies on the fold along ${edge}, so nothing is cut there and no notch either. Mark the place on the edge that meets the fold, or with mark ${node.name.text} = … in the piece.`,
  );

/** At a sewn distance along an edge. */
function cutInto(node: NotchNode, source: string, piece: Piece, edge: string, distance: number): PlacedNotch {
  const point = pointOn(edgeNamed(piece, edge)!, distance);
  const { count, name } = node;
  return { name: name.text, source, edge, distance, count, point, piece: piece.base };
}

/** The place lies on one side; the other side is cut where it comes to lie against it. */
function onSeam(
  reader: Reader,
  node: NotchNode,
  source: string,
  seam: Seam,
  sewn: readonly Sewn[],
): readonly PlacedNotch[] | undefined {
  const edges = presentEdges(reader, sewn);
  if (edges === undefined) return undefined;
  if (seam.course === undefined) return withoutCourse(reader, node, source, seam, edges);
  const { course } = seam;
  const spot = spotOf(reader, edges, course, node.place, node.on);
  if (spot === undefined) return undefined;
  const cut = (run: SeamRun, distance: number): PlacedNotch => {
    const { of } = edges.find(({ piece, edge }) => piece === run.piece && edge === run.edge)!;
    return cutInto(node, source, of, run.edge, distance);
  };
  const own = cut(spot.run, spot.distance);
  if (seam.itsPair) return [own];
  const other = spot.side === 'left' ? 'right' : 'left';
  const there = placeOnSide(course[other], across(course, spot.side, spot.at));
  if (there === undefined) return [own];
  const partner = cut(there.run, there.distance);
  // a corner needs no stroke: its partner alone is cut
  const strokes = [own, partner].filter((notch) => !isCorner(edges, notch));
  return strokes.length === 0 ? [own] : strokes;
}

/** Nearer to a corner than this, mm, a notch is the corner. */
const AT_CORNER = 0.05;

function isCorner(edges: readonly TakenEdge[], { piece, edge: name, distance }: PlacedNotch): boolean {
  const taken = edges.find(({ of, edge }) => of.base === piece && edge === name);
  const edge = taken && edgeNamed(taken.of, name);
  return edge !== undefined && (distance < AT_CORNER || distance > edge.sewn - AT_CORNER);
}

/** A band goes round the whole body: the notch is cut into the piece that has the place, and into the band when it is known. */
function withoutCourse(
  reader: Reader,
  node: NotchNode,
  source: string,
  seam: Seam,
  edges: readonly TakenEdge[],
): readonly PlacedNotch[] | undefined {
  const banded = isBand(edges);
  if (!banded) return report(reader, 'which-end', node.on.at, whichEnd(seam));
  const pieces = edges.filter((edge) => !isBand([edge]));
  let start = 0;
  const left = pieces.map(({ piece, edge, run, length }): SeamRun => {
    const next = { piece, edge, ...run, start };
    start += length;
    return next;
  });
  const spot = spotOf(reader, pieces, { left, right: [] }, node.place, node.on);
  if (spot === undefined) return undefined;
  const { of } = pieces.find(({ piece, edge }) => piece === spot.run.piece && edge === spot.run.edge)!;
  return [{ ...cutInto(node, source, of, spot.run.edge, spot.distance), seam: seam.source }];
}
