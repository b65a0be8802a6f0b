/** The edges that a seam or a finish takes: whole, or from one point to another. */
import { say } from '../../../grammar/say';
import type { Place, Sewn } from '../../../grammar/syntax';
import type { Edge, Piece, SewnEdge } from '../model';
import type { Stretch } from '../sewing-model';
import { edgeShape, everyEdge, sewnTo } from '../shapes/parts';
import type { PathShape } from '../shapes/phrase';
import { distanceAlong, ON_LINE } from '../shapes/places';
import { nearest } from '../names/spelling';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';

/** An edge in a seam, with the piece it belongs to. */
export interface TakenEdge extends SewnEdge {
  readonly of: Piece;
  /** From where to where as sewn: the whole edge along its outline, where nothing else is said. */
  readonly run: Stretch;
  /** What the text says of its direction: by its two ends, or by `reversed`. */
  readonly directed: 'by-ends' | 'reversed' | '';
}

/** @returns undefined when the piece or the edge can't be had */
export function takenEdge(reader: Reader, sewn: Sewn): TakenEdge | undefined {
  const found = reader.find(sewn.edge);
  if (found === undefined) return undefined;
  const { answer, rest } = found;
  if (answer.is !== 'piece' || rest.length === 0) {
    const name = wordsOf(reader, sewn.edge);
    return report(
      reader,
      'wrong-kind',
      sewn.edge.at,
      say`${name} is no edge: write the piece and its edge, such as front.side.`,
    );
  }
  if (answer.piece.gaps.length > 0) {
    // what it measures is not known until the outline is closed; it has said so
    reader.blocked = true;
    return undefined;
  }
  const edge = edgeOf(reader, answer.piece, sewn);
  if (edge === undefined) return undefined;
  const { piece } = answer;
  if (sewn.from !== undefined) reader.standOn(piece);
  const stretch =
    sewn.from === undefined ? undefined : stretchOf(reader, edge, { from: sewn.from, to: sewn.to });
  if (sewn.from !== undefined && stretch === undefined) return undefined;
  const run = stretch ?? (sewn.reversed ? { from: edge.sewn, to: 0 } : { from: 0, to: edge.sewn });
  return {
    piece: piece.name,
    edge: edge.name,
    source: edge.source,
    length: Math.abs(run.to - run.from),
    at: sewn.at,
    beside: besideOf(piece, edge),
    ...(stretch && { stretch }),
    of: piece,
    run,
    directed: stretch !== undefined ? 'by-ends' : sewn.reversed ? 'reversed' : '',
  };
}

/** All of them but those of pieces that `when` leaves out; undefined when one can't be had, or none is left. */
export function presentEdges(reader: Reader, sewn: readonly Sewn[]): readonly TakenEdge[] | undefined {
  const present = sewn.filter(({ edge }) => !reader.isAbsent(edge));
  const edges = present.map((one) => takenEdge(reader, one));
  if (present.length === 0 && sewn.length > 0) reader.blocked = true;
  return reader.blocked || edges.some((edge) => edge === undefined) ? undefined : (edges as TakenEdge[]);
}

/** Those of them that can be had: what is wrong with the others has been said. Undefined when none can. */
export function soundEdges(reader: Reader, sewn: readonly Sewn[]): readonly TakenEdge[] | undefined {
  const present = sewn.filter(({ edge }) => !reader.isAbsent(edge));
  const edges = present.flatMap((one) => takenEdge(reader, one) ?? []);
  reader.blocked = edges.length === 0;
  return edges.length === 0 ? undefined : edges;
}

/** A hole's edge has its neighbours in the hole: none of the piece's own. */
function besideOf({ edges }: Piece, edge: Edge): readonly [string, string] {
  const index = edges.indexOf(edge);
  if (index < 0) return ['', ''];
  const at = (i: number): string => edges[(i + edges.length) % edges.length]!.name;
  return [at(index - 1), at(index + 1)];
}

function edgeOf(reader: Reader, piece: Piece, sewn: Sewn): Edge | undefined {
  const word = sewn.edge.path[sewn.edge.path.length - 1]!;
  const edges = everyEdge(piece);
  const edge = edges.find(({ name }) => name === word.text);
  if (edge !== undefined) return edge;
  const near = nearest(
    word.text,
    edges.map(({ name }) => name),
  );
  const advice =
    near === undefined
      ? say`Its edges are ${edges.map(({ name }) => name).join(', ')}.`
      : say`Did you mean ${piece.name}.${near}?`;
  return report(
    reader,
    'unknown-name',
    word.at,
    say`${piece.name} has no edge called ${word.text}. ${advice}`,
    {
      related: [{ source: piece.source, message: say`${piece.name} is made here.` }],
      fixes:
        near === undefined
          ? []
          : [
              {
                title: say`Change to ${near}`,
                edits: [{ statement: reader.statement, at: word.at, text: near }],
              },
            ],
    },
  );
}

/** From one place of an edge to another, in this order. */
function stretchOf(
  reader: Reader,
  edge: Edge,
  { from, to }: { from: Place; to: Place | undefined },
): Stretch | undefined {
  const shape = edgeShape(edge);
  if (shape.kind === 'point') return undefined;
  const a = placeWithin(reader, shape, from, edge.name);
  const b = to === undefined ? shape.path.length : placeWithin(reader, shape, to, edge.name);
  return a === undefined || b === undefined ? undefined : { from: sewnTo(edge, a), to: sewnTo(edge, b) };
}

/** Millimetres from an edge's first corner to a place that must lie on it. */
export function placeWithin(
  reader: Reader,
  shape: PathShape,
  place: Place,
  name: string,
): number | undefined {
  const at = distanceAlong(reader, shape, place, name);
  if (at === undefined) return undefined;
  const { length } = shape.path;
  const over = Math.max(-at, at - length);
  if (over <= ON_LINE) return Math.min(Math.max(at, 0), length);
  return report(
    reader,
    'out-of-reach',
    place.at,
    say`${name} is ${printLength(length, reader.unit)} long when sewn: this place lies ${printLength(over, reader.unit)} beyond its end.`,
  );
}
