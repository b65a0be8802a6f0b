/** Reads a notch: a stroke across an edge at a place. */
import type { NotchNode } from '../../../grammar/syntax';
import type { Notch, Piece } from '../model';
import { edgeShape } from '../shapes/parts';
import { distanceAlong } from '../shapes/places';
import { report, wordsOf, type Reader } from '../values/reader';

/** A notch and the piece it is cut into. */
export interface PlacedNotch extends Notch {
  readonly piece: string;
}

/** `notch balance on front.armhole at 8cm from pit, single` */
export function readNotch(reader: Reader, node: NotchNode, source: string): PlacedNotch | undefined {
  if (node.on.kind !== 'ref') {
    return report(reader, 'wrong-kind', node.on.at, 'A notch stands on an edge: write the piece and its edge, such as front.side.');
  }
  const found = reader.find(node.on);
  if (found === undefined) return undefined;
  const { answer, rest } = found;
  if (answer.is === 'seam') return report(reader, 'not-built-yet', node.on.at, 'Notches on a whole seam are not built yet: write one for each edge, such as front.side.');
  if (answer.is !== 'piece' || rest.length !== 1) {
    return report(reader, 'wrong-kind', node.on.at, `${wordsOf(reader, node.on)} is no edge: write the piece and its edge, such as front.side.`);
  }
  return onEdge(reader, node, answer.piece, rest[0]!.text, source);
}

function onEdge(reader: Reader, node: NotchNode, piece: Piece, name: string, source: string): PlacedNotch | undefined {
  const edge = piece.edges.find((one) => one.name === name);
  if (edge === undefined) {
    return report(reader, 'unknown-name', node.on.at, `${piece.name} has no edge called ${name}. Its edges are ${piece.edges.map((one) => one.name).join(', ')}.`);
  }
  const shape = edgeShape(edge);
  if (shape.kind === 'point') return undefined;
  const distance = distanceAlong(reader, shape, node.place, edge.name);
  if (distance === undefined) return undefined;
  if (distance < 0 || distance > shape.path.length) {
    return report(reader, 'out-of-reach', node.place.at, `This place lies beyond the end of ${edge.name}, so the notch would be cut into nothing.`);
  }
  const point = shape.path.pointAt(distance);
  return { name: node.name.text, source, edge: edge.name, distance, count: node.count, point, piece: piece.name };
}
