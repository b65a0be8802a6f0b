/** What a piece answers to: its edges (`front.waist`) and the named points of its outline (`front.neck-cf`). */
import type { Ref } from '../../../grammar/syntax';
import { Path, type Point } from '../../geometry';
import type { Dart, Edge, Piece, Shape } from '../model';
import { nearest } from '../names/spelling';
import { report, wordsOf, type Reader } from '../values/reader';

/**
 * An edge as a shape: what is sewn of it, so that a place is counted without the darts. A straight one is a line and
 * extends under the ruler.
 */
export function edgeShape(edge: Pick<Edge, 'parts' | 'drawn'>): Shape {
  const path = Path.of(edge.parts.flatMap((part) => (part.dart === undefined ? part.path.segments : [])));
  const { drawn } = edge;
  if (path.segments.length === 1 && path.segments[0]!.kind === 'line') return { kind: 'line', path, drawn };
  return { kind: 'curve', path, closed: path.isClosed(), drawn };
}

/** A point of a dart: its ends on the edge nearer to and farther from where it is pressed, its pivot, its sewn tip. */
export function dartPoint(dart: Dart, word: string): Shape | undefined {
  const inner = dart.pressed === 'to' ? dart.to : dart.from;
  const outer = inner === dart.from ? dart.to : dart.from;
  const points: Readonly<Record<string, Point>> = { inner, outer, pivot: dart.pivot, tip: dart.tip };
  return Object.hasOwn(points, word) ? { kind: 'point', point: points[word]! } : undefined;
}

/** @param wanted which of an edge and a corner of one name is meant */
export function ofPiece(
  reader: Reader,
  ref: Ref,
  piece: Piece,
  rest: Ref['path'],
  wanted?: 'point' | 'path',
): Shape | undefined {
  const [word, end] = rest;
  // a piece that is not fully itself has no lengths to rely on; it has said so
  if (piece.unbuilt.length > 0) {
    reader.blocked = true;
    return undefined;
  }
  if (word === undefined) {
    return report(
      reader,
      'wrong-kind',
      ref.at,
      `${wordsOf(reader, ref)} is a piece; name one of its edges, such as ${piece.name}.${piece.edges[0]?.name ?? 'edge'}.`,
    );
  }
  const edge = piece.edges.find(({ name }) => name === word.text);
  const corner = piece.corners.find(({ name }) => name === word.text);
  if (edge !== undefined && end?.text === 'start') return { kind: 'point', point: edge.path.start };
  if (edge !== undefined && end?.text === 'end') return { kind: 'point', point: edge.path.end };
  const asCorner = corner !== undefined && (wanted === 'point' || edge === undefined);
  if (end === undefined && edge !== undefined && !asCorner) return edgeShape(edge);
  if (end === undefined && corner !== undefined) return { kind: 'point', point: corner.point };
  const dart = piece.darts.find(({ name }) => name === word.text);
  const dartEnd = dart && end && dartPoint(dart, end.text);
  if (dartEnd !== undefined) return dartEnd;
  const wrong = edge === undefined && corner === undefined ? word : end!;
  const near = nearest(
    wrong.text,
    [...piece.edges, ...piece.corners].map(({ name }) => name),
  );
  const advice = near === undefined ? '' : ` Did you mean ${near}?`;
  return report(
    reader,
    'unknown-name',
    wrong.at,
    `${piece.name} has no edge or corner called ${wrong.text}.${advice}`,
    {
      related: [{ source: piece.source, message: `${piece.name} is defined here.` }],
      fixes:
        near === undefined
          ? []
          : [
              {
                title: `Change to ${near}`,
                edits: [{ statement: reader.statement, at: wrong.at, text: near }],
              },
            ],
    },
  );
}
