/** What a piece answers to: its edges (`front.waist`) and the named points of its outline (`front.neck-cf`). */
import type { Name, Ref } from '../../../grammar/syntax';
import { Path, type Point } from '../../geometry';
import type { Dart, Edge, Piece, Shape } from '../model';
import { nearest } from '../names/spelling';
import type { Fix } from '../finding';
import { replace, report, wordsOf, type Reader } from '../values/reader';

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
  // a piece that is not fully itself, or has a gap, has no lengths to rely on; it has said so
  if (piece.unbuilt.length > 0 || piece.gaps.length > 0) {
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
  return partNamed(piece, word.text, end?.text, wanted) ?? noSuchPart(reader, piece, word, end);
}

/** An edge, one of its ends, a corner, or a point of a dart. */
function partNamed(
  piece: Piece,
  word: string,
  end: string | undefined,
  wanted?: 'point' | 'path',
): Shape | undefined {
  const edge = piece.edges.find(({ name }) => name === word);
  const corner = piece.corners.find(({ name }) => name === word);
  if (edge !== undefined && end === 'start') return { kind: 'point', point: edge.path.start };
  if (edge !== undefined && end === 'end') return { kind: 'point', point: edge.path.end };
  if (end === undefined) {
    if (corner !== undefined && (wanted === 'point' || edge === undefined))
      return { kind: 'point', point: corner.point };
    return edge && edgeShape(edge);
  }
  const dart = piece.darts.find(({ name }) => name === word);
  return dart && dartPoint(dart, end);
}

function noSuchPart(reader: Reader, piece: Piece, word: Name, end: Name | undefined): undefined {
  const known = [...piece.edges, ...piece.corners].map(({ name }) => name);
  const wrong = known.includes(word.text) && end !== undefined ? end : word;
  const near = nearest(wrong.text, known);
  const advice = near === undefined ? '' : ` Did you mean ${near}?`;
  const change = (to: string): Fix => replace(reader, `Change to ${to}`, wrong.at, to);
  return report(
    reader,
    'unknown-name',
    wrong.at,
    `${piece.name} has no edge or corner called ${wrong.text}.${advice}`,
    {
      related: [{ source: piece.source, message: `${piece.name} is defined here.` }],
      fixes: near === undefined ? [] : [change(near)],
    },
  );
}
