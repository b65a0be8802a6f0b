/** What a piece answers to: its edges (`front.waist`) and the named points of its outline (`front.neck-cf`). */
import { say } from '../../../grammar/say';
import type { Name, Ref } from '../../../grammar/syntax';
import { Path, type Point } from '../../geometry';
import type { Dart, Edge, FishDart, Mark, Piece, Shape } from '../model';
import { nearest } from '../names/spelling';
import type { Fix } from '../finding';
import { replace, report, wordsOf, type Reader } from '../values/reader';

/** What is sewn of an edge, its darts closed and laid flat. */
export const withoutMouths = (parts: Edge['parts']): Path =>
  Path.joined(parts.filter((part) => part.dart === undefined).map((part) => part.path));

/**
 * An edge as a shape: what is sewn of it, so that a place is counted without the darts. A straight one is a line and
 * extends under the ruler.
 */
export function edgeShape(edge: Pick<Edge, 'parts' | 'drawn' | 'sewn'>): Shape {
  const path = withoutMouths(edge.parts);
  const gathered = edge.parts.some((part) => part.gathered !== undefined);
  const lengths = { drawn: edge.drawn, ...(gathered && { sewn: edge.sewn }) };
  if (path.segments.length === 1 && path.segments[0]!.kind === 'line')
    return { kind: 'line', path, ...lengths };
  return { kind: 'curve', path, closed: path.isClosed(), ...lengths };
}

/** Sewn length from an edge's start to a place on what is sewn of it, counted flat: shorter where gathers draw it up. */
export function sewnTo({ parts }: Pick<Edge, 'parts'>, flat: number): number {
  let [left, sewn] = [flat, 0];
  for (const { path, dart, gathered } of parts) {
    if (dart !== undefined) continue;
    const here = Math.min(left, path.length);
    sewn += here * (gathered?.share ?? 1);
    left -= here;
    if (left <= 0) break;
  }
  return sewn + left;
}

/** The place on what is sewn of an edge, counted flat, that lies at a sewn length from its start. */
export function flatAt({ parts }: Pick<Edge, 'parts'>, sewn: number): number {
  let [left, flat] = [sewn, 0];
  for (const { path, dart, gathered } of parts) {
    if (dart !== undefined) continue;
    const share = gathered?.share ?? 1;
    const here = Math.min(left, path.length * share);
    flat += share > 0 ? here / share : path.length;
    left -= here;
    if (left <= 0) break;
  }
  return flat + left;
}

/** The edges of a piece, with those of its holes. */
export const everyEdge = ({ edges, holes }: Pick<Piece, 'edges' | 'holes'>): readonly Edge[] =>
  holes.length === 0 ? edges : [...edges, ...holes.flatMap((hole) => hole.edges)];

/** A point of a dart: its ends on the edge nearer to and farther from where it is pressed, its pivot, its sewn tip. */
export function dartPoint(dart: Dart, word: string): Shape | undefined {
  const inner = dart.pressed === 'to' ? dart.to : dart.from;
  const outer = inner === dart.from ? dart.to : dart.from;
  const points: Readonly<Record<string, Point>> = { inner, outer, pivot: dart.pivot, tip: dart.tip };
  return Object.hasOwn(points, word) ? { kind: 'point', point: points[word]! } : undefined;
}

/** A point of a fish dart: its widest place on the side that it is pressed to, and on the other. */
export function fishPoint(dart: FishDart, word: string): Shape | undefined {
  const inner = dart.pressed === 'right' ? dart.right : dart.left;
  if (word === 'inner') return { kind: 'point', point: inner };
  return word === 'outer'
    ? { kind: 'point', point: inner === dart.left ? dart.right : dart.left }
    : undefined;
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
      say`${wordsOf(reader, ref)} is a piece; name one of its edges, such as ${piece.name}.${piece.edges[0]?.name ?? 'edge'}.`,
    );
  }
  return partNamed(piece, word.text, end?.text, wanted) ?? noSuchPart(reader, piece, word, end);
}

/** An edge, one of its ends, a corner, a point of a dart, a balance line or a mark. */
function partNamed(
  piece: Piece,
  word: string,
  end: string | undefined,
  wanted?: 'point' | 'path',
): Shape | undefined {
  const edge = everyEdge(piece).find(({ name }) => name === word);
  const corner = piece.corners.find(({ name }) => name === word);
  if (edge !== undefined && end === 'start') return { kind: 'point', point: edge.path.start };
  if (edge !== undefined && end === 'end') return { kind: 'point', point: edge.path.end };
  if (end === undefined) {
    if (corner !== undefined && (wanted === 'point' || edge === undefined))
      return { kind: 'point', point: corner.point };
    return edge === undefined ? markedShape(piece, word) : edgeShape(edge);
  }
  const dart = piece.darts.find(({ name }) => name === word);
  if (dart !== undefined) return dartPoint(dart, end);
  const fish = piece.shaping?.fishDarts.find(({ name }) => name === word);
  if (fish !== undefined) return fishPoint(fish, end);
  const marked = end === 'start' || end === 'end' ? markedShape(piece, word) : undefined;
  if (marked === undefined || marked.kind === 'point') return undefined;
  return { kind: 'point', point: end === 'start' ? marked.path.start : marked.path.end };
}

/** Balance lines and marks of a piece by name: places on its edges may be told by them. */
export const markedShapes = ({ balance, marks }: Piece): readonly (readonly [string, Shape])[] => [
  ...balance.map(({ name, path }) => [name, { kind: 'line', path }] as const),
  ...marks.flatMap((mark) => {
    const shape = shapeOfMark(mark);
    return shape === undefined ? [] : [[mark.name, shape] as const];
  }),
];

/** A mark as a point or a line; a row of them is neither. */
export function shapeOfMark({ points, paths, row }: Mark): Shape | undefined {
  if (row !== undefined) return undefined;
  if (points[0] !== undefined) return { kind: 'point', point: points[0] };
  const path = paths[0];
  if (path === undefined) return undefined;
  const straight = path.segments.length === 1 && path.segments[0]!.kind === 'line';
  return straight ? { kind: 'line', path } : { kind: 'curve', path, closed: path.isClosed() };
}

function markedShape({ balance, marks }: Piece, word: string): Shape | undefined {
  const line = balance.find(({ name }) => name === word);
  if (line !== undefined) return { kind: 'line', path: line.path };
  const mark = marks.find(({ name }) => name === word);
  return mark && shapeOfMark(mark);
}

function noSuchPart(reader: Reader, piece: Piece, word: Name, end: Name | undefined): undefined {
  const known = [...everyEdge(piece), ...piece.corners, ...piece.balance, ...piece.marks].map(
    ({ name }) => name,
  );
  const wrong = known.includes(word.text) && end !== undefined ? end : word;
  const near = nearest(wrong.text, known);
  const advice = near === undefined ? '' : say` Did you mean ${near}?`;
  const change = (to: string): Fix => replace(reader, say`Change to ${to}`, wrong.at, to);
  return report(
    reader,
    'unknown-name',
    wrong.at,
    say`${piece.name} has no edge or corner called ${wrong.text}.${advice}`,
    {
      related: [{ source: piece.source, message: say`${piece.name} is defined here.` }],
      fixes: near === undefined ? [] : [change(near)],
    },
  );
}
