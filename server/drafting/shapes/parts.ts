/** What a piece answers to: its edges (`front.waist`) and the named points of its outline (`front.neck-cf`). */
import type { Ref } from '../../../grammar/syntax';
import type { Edge, Piece, Shape } from '../model';
import { nearest } from '../names/spelling';
import { report, wordsOf, type Reader } from '../values/reader';

/** An edge as a shape: a straight one is a line, so that it extends under the ruler. */
export function edgeShape(edge: Edge): Shape {
  const { path, sewn } = edge;
  if (path.segments.length === 1 && path.segments[0]!.kind === 'line') return { kind: 'line', path, sewn };
  return { kind: 'curve', path, closed: path.isClosed(), sewn };
}

export function ofPiece(reader: Reader, ref: Ref, piece: Piece, rest: Ref['path']): Shape | undefined {
  const [word, end] = rest;
  // a piece that is not fully itself has no lengths to rely on; it has said so
  if (piece.unbuilt.length > 0) {
    reader.blocked = true;
    return undefined;
  }
  if (word === undefined) {
    return report(reader, 'wrong-kind', ref.at, `${wordsOf(reader, ref)} is a piece; name one of its edges, such as ${piece.name}.${piece.edges[0]?.name ?? 'edge'}.`);
  }
  const edge = piece.edges.find(({ name }) => name === word.text);
  const corner = piece.corners.find(({ name }) => name === word.text);
  if (edge !== undefined && end?.text === 'start') return { kind: 'point', point: edge.path.start };
  if (edge !== undefined && end?.text === 'end') return { kind: 'point', point: edge.path.end };
  if (end === undefined && edge !== undefined) return edgeShape(edge);
  if (end === undefined && corner !== undefined) return { kind: 'point', point: corner.point };
  const wrong = edge === undefined && corner === undefined ? word : end!;
  const near = nearest(wrong.text, [...piece.edges, ...piece.corners].map(({ name }) => name));
  const advice = near === undefined ? '' : ` Did you mean ${near}?`;
  return report(reader, 'unknown-name', wrong.at, `${piece.name} has no edge or corner called ${wrong.text}.${advice}`, {
    related: [{ source: piece.source, message: `${piece.name} is defined here.` }],
    fixes: near === undefined ? [] : [{ title: `Change to ${near}`, edits: [{ statement: reader.statement, at: wrong.at, text: near }] }],
  });
}
