/** The edges that a seam or a finish takes: whole, or from one point to another. */
import type { Place, Sewn } from '../../../grammar/syntax';
import type { Edge, Piece, SewnEdge } from '../model';
import { edgeShape } from '../shapes/parts';
import { distanceAlong } from '../shapes/places';
import { nearest } from '../names/spelling';
import { report, wordsOf, type Reader } from '../values/reader';

/** An edge in a seam, with the piece it belongs to. */
export interface TakenEdge extends SewnEdge {
  readonly of: Piece;
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
      `${name} is no edge: write the piece and its edge, such as front.side.`,
    );
  }
  if (answer.piece.gaps.length > 0) {
    // what it measures is not known until the outline is closed; it has said so
    reader.blocked = true;
    return undefined;
  }
  const edge = edgeOf(reader, answer.piece, sewn);
  if (edge === undefined) return undefined;
  if (sewn.from !== undefined) reader.standOn(answer.piece);
  const length = sewn.from === undefined ? edge.sewn : stretchOf(reader, edge, sewn.from, sewn.to);
  if (length === undefined) return undefined;
  return {
    piece: answer.piece.name,
    edge: edge.name,
    source: edge.source,
    length,
    at: sewn.at,
    of: answer.piece,
  };
}

function edgeOf(reader: Reader, piece: Piece, sewn: Sewn): Edge | undefined {
  const word = sewn.edge.path[sewn.edge.path.length - 1]!;
  const edge = piece.edges.find(({ name }) => name === word.text);
  if (edge !== undefined) return edge;
  const near = nearest(
    word.text,
    piece.edges.map(({ name }) => name),
  );
  const advice =
    near === undefined
      ? `Its edges are ${piece.edges.map(({ name }) => name).join(', ')}.`
      : `Did you mean ${piece.name}.${near}?`;
  return report(reader, 'unknown-name', word.at, `${piece.name} has no edge called ${word.text}. ${advice}`, {
    related: [{ source: piece.source, message: `${piece.name} is made here.` }],
    fixes:
      near === undefined
        ? []
        : [{ title: `Change to ${near}`, edits: [{ statement: reader.statement, at: word.at, text: near }] }],
  });
}

/** Sewn length between two places of an edge. */
function stretchOf(reader: Reader, edge: Edge, from: Place, to: Place | undefined): number | undefined {
  const shape = edgeShape(edge);
  if (shape.kind === 'point') return undefined;
  const a = distanceAlong(reader, shape, from, edge.name);
  const b = to === undefined ? shape.path.length : distanceAlong(reader, shape, to, edge.name);
  return a === undefined || b === undefined ? undefined : Math.abs(b - a);
}
