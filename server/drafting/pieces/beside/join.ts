/** Joins two pieces edge to edge, as paper is laid: the edge between them goes, and one piece is left. */
import { say } from '../../../../grammar/say';
import type { Expr, JoinNode } from '../../../../grammar/syntax';
import {
  add,
  compose,
  distance,
  identity,
  layOn,
  mirror,
  midpoint,
  orientation,
  subtract,
  translation,
  type Affine,
  type Point,
} from '../../../geometry';
import type { Edge, Piece } from '../../model';
import { printLength, printLengthFine } from '../../values/quantity';
import { report, wordsOf, type Reader } from '../../values/reader';
import { basePart } from '../base';
import { ownEdge } from '../cutting';
import { areaLeft } from '../holes';
import { moved } from '../moved';
import { outlineBack } from '../outline-back';
import type { OwnParts } from '../parts';
import { remember } from '../working/bench';
import type { MadePiece } from './blank';
import { merged } from './merge';

/** Edges that become one may differ by this much in length, and gape by this much, mm (common practice: a pencil line's width or two). */
const LENGTHS_WITHIN = 1;
const GAPE_WITHIN = 1;

/** Places at which two edges are compared. */
const COMPARED = 24;

export interface Side {
  readonly piece: Piece;
  readonly edge: Edge;
  /** As written: `yoke.shoulder`. */
  readonly words: string;
}

export function readJoin(
  reader: Reader,
  node: JoinNode,
  request: MadePiece & { readonly parts: OwnParts },
): Piece | undefined {
  const [one, other] = [sideOf(reader, node.one), sideOf(reader, node.other)];
  if (one === undefined || other === undefined) return undefined;
  if (one.piece.source === other.piece.source) {
    const why = say`${one.piece.name} can't be joined to itself; name an edge of each of two pieces.`;
    return report(reader, 'broken-join', node.other.at, why);
  }
  const laid = laidOn(one, other);
  const fault = faultOf(reader, one, laid);
  if (fault !== undefined) {
    return report(reader, 'broken-join', node.other.at, fault, {
      related: [{ source: one.edge.source, message: say`${one.words} runs here.` }],
    });
  }
  const piece = merged(one, laid, request);
  remember(request.parts, piece);
  return { ...piece, area: areaLeft(piece.edges, piece.holes) };
}

/** The piece and the edge that `yoke.shoulder` names. */
function sideOf(reader: Reader, expr: Expr): Side | undefined {
  if (expr.kind !== 'ref' || expr.path.length < 2) {
    const words = wordsOf(reader, expr);
    const why = say`${words} is no edge: write the piece and its edge, such as yoke.shoulder.`;
    return report(reader, 'wrong-kind', expr.at, why);
  }
  const found = basePart(reader, expr);
  const name = found?.rest[0];
  if (found === undefined || name === undefined) return undefined;
  const edge = ownEdge(reader, found.piece.edges, { kind: 'ref', path: [name], at: name.at });
  return edge && { piece: found.piece, edge, words: wordsOf(reader, expr) };
}

/** The second piece as it lies when its edge is laid on the first's, walked the same way round. */
export interface Laid extends Side {
  readonly turnedOver: boolean;
}

/**
 * Paper is laid as it is, or turned over where only that brings together what bears one name (neck to neck). The middles
 * of the chords lie on each other, so that a hair's difference in length is shared by both ends.
 */
function laidOn(one: Side, other: Side): Laid {
  const ways = [false, true].map((over) => turned(other, over));
  const [asIs, over] = ways.map((side) => ({ ...side, ...wound(one.piece, side) })) as [Laid, Laid];
  const turnedOver = agreeing(one, over) > agreeing(one, asIs);
  const side = turnedOver ? over : asIs;
  const piece = moved(side.piece, ontoEdge(one.edge, side.edge));
  return { ...named(piece, side), turnedOver };
}

const named = (piece: Piece, { edge, words }: Side): Side => ({
  piece,
  words,
  edge: piece.edges.find(({ name }) => name === edge.name)!,
});

const ACROSS = mirror({ x: 0, y: 0 }, { x: 0, y: 1 });

function turned(side: Side, over: boolean): Side {
  return over ? named(moved(side.piece, ACROSS), side) : side;
}

/** Walked the same way round as the first piece, so that the two edges run against each other. */
function wound(first: Piece, side: Side): Side {
  const paths = (piece: Piece) => piece.edges.map(({ path }) => path);
  if (orientation(paths(first)) === orientation(paths(side.piece))) return side;
  return named(outlineBack(side.piece), side);
}

/** How many names meet where they should: what runs on at either end, and the points there. */
function agreeing(one: Side, other: Side): number {
  const [a, b] = [neighbours(one), neighbours(other)];
  const same = (x: string | undefined, y: string | undefined): number =>
    x !== undefined && x !== '' && x === y ? 1 : 0;
  return (
    same(a.before?.name, b.after?.name) +
    same(a.after?.name, b.before?.name) +
    same(one.edge.fromName, other.edge.toName) +
    same(one.edge.toName, other.edge.fromName)
  );
}

export function neighbours({ piece, edge }: Pick<Side, 'piece' | 'edge'>): { before?: Edge; after?: Edge } {
  const { edges } = piece;
  const at = edges.findIndex(({ name }) => name === edge.name);
  return { before: edges[(at - 1 + edges.length) % edges.length]!, after: edges[(at + 1) % edges.length]! };
}

/** Lays an edge against another: its end on the other's start. Nothing moves where it lies there already. */
function ontoEdge(still: Edge, edge: Edge): Affine {
  const [start, end] = [edge.path.end, edge.path.start];
  const [from, to] = [still.path.start, still.path.end];
  if (distance(start, from) < LIES && distance(end, to) < LIES) return identity;
  const [own, there] = [midpoint(start, end), midpoint(from, to)];
  return compose(translation(subtract(there, own)), layOn(there, add(there, subtract(end, own)), there, to));
}

/** Rounding, mm. */
const LIES = 1e-7;

/** Why two edges can't be made one; undefined when they can. */
function faultOf(reader: Reader, one: Side, laid: Laid): string | undefined {
  const dart = [one, laid].find(({ edge }) => edge.parts.some((part) => part.dart !== undefined));
  if (dart !== undefined) {
    const name = dart.edge.parts.find((part) => part.dart !== undefined)!.dart;
    return say`${dart.words} has a dart, ${name!}, that opens where the pieces are to be joined: swing it away first.`;
  }
  const [a, b] = [one.edge.sewn, laid.edge.sewn];
  const words = say`${one.words} is ${printLengthFine(a, reader.unit)} long, ${laid.words} ${printLengthFine(b, reader.unit)}`;
  const allowed = printLength(LENGTHS_WITHIN, reader.unit);
  if (Math.abs(a - b) > LENGTHS_WITHIN) {
    return say`${words}: they differ by ${printLength(Math.abs(a - b), reader.unit)} (${allowed} is allowed). Edges that become one are as long as each other.`;
  }
  const gape = greatestGape(one.edge, laid.edge);
  if (gape <= GAPE_WITHIN) return undefined;
  return say`Laid on each other ${one.words} and ${laid.words} part by up to ${printLength(gape, reader.unit)} (${allowed} is allowed). Pieces are joined where both edges are straight, or one the mould of the other.`;
}

function greatestGape(one: Edge, other: Edge): number {
  let greatest = 0;
  for (let k = 0; k <= COMPARED; k++) {
    const share = k / COMPARED;
    const point: Point = one.path.pointAt(share * one.path.length);
    const twin: Point = other.path.pointAt((1 - share) * other.path.length);
    greatest = Math.max(greatest, distance(point, twin));
  }
  return greatest;
}
