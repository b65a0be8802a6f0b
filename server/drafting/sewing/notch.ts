/** Reads a notch: a stroke across an edge at a place; on a seam, one on each of its two sides. */
import type { NotchNode, Sewn } from '../../../grammar/syntax';
import { signedArea, type Point } from '../../geometry';
import type { Edge, Notch, Piece } from '../model';
import { edgeShape } from '../shapes/parts';
import { distanceAlong } from '../shapes/places';
import { pointOf } from '../shapes/phrase';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { takenEdge, type TakenEdge } from './edges';

/** A notch and the piece it is cut into. */
export interface PlacedNotch extends Notch {
  readonly piece: string;
}

/** `notch balance on front.armhole at 8cm from pit, single`; `notch hip-level on side at hip-b` */
export function readNotch(
  reader: Reader,
  node: NotchNode,
  source: string,
  seam: readonly Sewn[],
): readonly PlacedNotch[] | undefined {
  if (node.on.kind !== 'ref') {
    return report(
      reader,
      'wrong-kind',
      node.on.at,
      'A notch stands on an edge: write the piece and its edge, such as front.side.',
    );
  }
  if (seam.length > 0) return onSeam(reader, node, source, seam);
  const found = reader.find(node.on);
  if (found === undefined) return undefined;
  const { answer, rest } = found;
  if (answer.is !== 'piece' || rest.length !== 1) {
    return report(
      reader,
      'wrong-kind',
      node.on.at,
      `${wordsOf(reader, node.on)} is no edge: write the piece and its edge, such as front.side.`,
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
  const edge = piece.edges.find((one) => one.name === name);
  if (edge === undefined) {
    return report(
      reader,
      'unknown-name',
      node.on.at,
      `${piece.name} has no edge called ${name}. Its edges are ${piece.edges.map((one) => one.name).join(', ')}.`,
    );
  }
  const shape = edgeShape(edge);
  if (shape.kind === 'point') return undefined;
  reader.standOn(piece);
  const distance = distanceAlong(reader, shape, node.place, edge.name);
  if (distance === undefined) return undefined;
  if (distance < 0 || distance > shape.path.length) {
    return report(
      reader,
      'out-of-reach',
      node.place.at,
      `This place lies beyond the end of ${edge.name}, so the notch would be cut into nothing.`,
    );
  }
  return cutInto(node, piece, edge, distance, source);
}

/** At a sewn distance along an edge. */
function cutInto(
  node: NotchNode,
  piece: Piece,
  edge: Edge,
  distance: number,
  source: string,
): PlacedNotch | undefined {
  const shape = edgeShape(edge);
  if (shape.kind === 'point') return undefined;
  const point = shape.path.pointAt(distance);
  return {
    name: node.name.text,
    source,
    edge: edge.name,
    distance,
    count: node.count,
    point,
    piece: piece.base,
  };
}

/** A seam of one edge each: the point lies on one of them, and the partner falls as far from the shared corner. */
function onSeam(
  reader: Reader,
  node: NotchNode,
  source: string,
  seam: readonly Sewn[],
): readonly PlacedNotch[] | undefined {
  const taken = seam.map((sewn) => takenEdge(reader, sewn));
  if (taken.some((edge) => edge === undefined)) return undefined;
  const [one, other] = taken as TakenEdge[];
  if (one === undefined || other === undefined || taken.length !== 2) {
    return report(
      reader,
      'not-built-yet',
      node.on.at,
      'Notches on a seam of more than two edges are not built yet: write one for each edge, such as front.side.',
    );
  }
  const { value, counted } = node.place;
  if (counted !== undefined || (value.kind !== 'ref' && value.kind !== 'bracket')) {
    return report(
      reader,
      'not-built-yet',
      node.place.at,
      'On a seam a notch stands at a named point; for a counted place write one for each edge, such as front.side.',
    );
  }
  reader.standOn(other.of);
  reader.standOn(one.of);
  const point = pointOf(reader, value, 'at');
  return point && pairedAt(reader, node, source, one, other, point);
}

/** A point counts as on an edge within what a sharp pencil can tell, mm. */
const ON_EDGE = 0.05;

function pairedAt(
  reader: Reader,
  node: NotchNode,
  source: string,
  one: TakenEdge,
  other: TakenEdge,
  point: Point,
): readonly PlacedNotch[] | undefined {
  const [a, b] = [edgeNamed(one), edgeNamed(other)];
  const near = [a, b].map((edge) => {
    const shape = edgeShape(edge);
    return shape.kind === 'point' ? { s: 0, distance: Infinity } : shape.path.locate(point);
  });
  const has = near[0]!.distance <= near[1]!.distance ? 0 : 1;
  const { s, distance } = near[has]!;
  if (distance > ON_EDGE) {
    return report(
      reader,
      'not-on-line',
      node.place.at,
      `${wordsOf(reader, node.place)} lies on neither edge of ${wordsOf(reader, node.on)}: it is ${printLength(distance, reader.unit)} away.`,
    );
  }
  const [own, partner, ownPiece, partnerPiece] =
    has === 0 ? [a, b, one.of, other.of] : [b, a, other.of, one.of];
  // laid side by side, right sides up, two outlines walked the same way round pass their common seam in opposite directions
  const opposite = turn(ownPiece) === turn(partnerPiece);
  const share = own.sewn > 0 ? s / own.sewn : 0;
  const there = (opposite ? 1 - share : share) * partner.sewn;
  return [
    cutInto(node, ownPiece, own, s, source),
    cutInto(node, partnerPiece, partner, there, source),
  ].filter((notch): notch is PlacedNotch => notch !== undefined);
}

const edgeNamed = (taken: TakenEdge): Edge => taken.of.edges.find(({ name }) => name === taken.edge)!;

const turn = (piece: Piece): number => Math.sign(signedArea(piece.edges.map(({ path }) => path)));
