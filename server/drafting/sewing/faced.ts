/** Reads `faced by X`: which edge of X is sewn to each edge that is faced. */
import { say } from '../../../grammar/say';
import type { Ref } from '../../../grammar/syntax';
import type { FacedEdge } from '../derived-model';
import type { Edge, Finish, Piece } from '../model';
import { basePiece } from '../pieces/base';
import { report, type Reader } from '../values/reader';
import type { TakenEdge } from './edges';

type Faced = Pick<Finish, 'faced' | 'facedBy'>;

/** @returns undefined when the facing, or an edge of it, can't be had */
export function readFaced(reader: Reader, by: Ref, taken: readonly TakenEdge[]): Faced | undefined {
  const facing = basePiece(reader, by);
  if (facing === undefined) return undefined;
  // a strip is laid on edge after edge, as long as it lasts
  if (facing.statement.node.kind === 'strip') return { facedBy: facing.base };
  const edges = taken.map((edge) => facing.edges.find(({ name }) => name === edge.edge));
  const lacks = edges.findIndex((edge) => edge === undefined);
  if (lacks >= 0) return lacking(reader, by, facing, taken[lacks]!);
  return { facedBy: facing.base, faced: taken.map((edge, i) => facedEdge(edge, facing, edges[i]!)) };
}

const facedEdge = ({ piece, edge, length }: TakenEdge, facing: Piece, own: Edge): FacedEdge => ({
  ...{ piece, edge, length },
  facing: { piece: facing.base, edge: own.name, source: own.source, length: own.sewn },
});

function lacking(reader: Reader, by: Ref, facing: Piece, { piece, edge }: TakenEdge): undefined {
  const own = facing.edges.map(({ name }) => name).join(', ');
  return report(
    reader,
    'unknown-name',
    by.at,
    say`${facing.name} has no edge called ${edge} to be sewn to ${piece}.${edge}; its edges are ${own}. A facing's edge bears the name of the edge that it faces: facing NAME of ${piece} along ${edge}, 6cm deep.`,
    { related: [{ source: facing.source, message: say`${facing.name} is made here.` }] },
  );
}
