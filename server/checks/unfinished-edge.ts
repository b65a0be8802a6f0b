/** Finds edges that are neither sewn, nor on a fold, nor finished: somebody will ask at the machine what becomes of them. */
import type { SourcedFinding } from '../drafting/finding';
import type { Edge, Pattern, Piece } from '../drafting/model';
import { finding, type Judged } from './check';

export const unfinishedEdge: Judged = {
  code: 'unfinished-edge',
  severity: 'warning',
  title: 'An edge that is neither sewn, folded nor finished',
  by: 'judgement',
  ofPattern: (pattern) => unfinished(pattern),
};

function unfinished(pattern: Pattern): readonly SourcedFinding[] {
  const taken = new Set<string>(pattern.doubtful);
  for (const { left, right } of pattern.seams)
    for (const { piece, edge } of [...left, ...right]) taken.add(`${piece}.${edge}`);
  for (const { edges } of pattern.finishes)
    for (const { piece, edge } of edges) taken.add(`${piece}.${edge}`);
  // where the wearer's sides differ, the right one speaks for both
  const cut = pattern.pieces.filter(
    (piece) =>
      piece.cut !== undefined &&
      piece.statement.node.kind !== 'band' &&
      piece.unbuilt.length === 0 &&
      piece.side !== 'left',
  );
  return cut.flatMap((piece) =>
    piece.edges
      .filter(
        (edge) =>
          !otherHalf(edge) && !folded(piece).has(edge.name) && !taken.has(`${piece.base}.${edge.name}`),
      )
      .map((edge) => ({ source: piece.source, finding: open(piece, edge) })),
  );
}

/** Of an open piece drafted each side the half as drawn speaks for both. */
const otherHalf = ({ name, source }: Edge): boolean =>
  name === `${source.slice(source.lastIndexOf('/') + 1)}-other`;

/** Edges that a fold line names, whether or not they can be folded. */
function folded(piece: Piece): ReadonlySet<string> {
  const lines = piece.statement.block ?? [];
  return new Set(
    lines.flatMap(({ node }) => (node.kind === 'fold' ? node.edge.path.map(({ text }) => text) : [])),
  );
}

function open(piece: Piece, edge: Edge): SourcedFinding['finding'] {
  const { node } = edge.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  const name = `${piece.base}.${edge.name}`;
  const message = `Nothing is said of ${name}: it is neither sewn to anything, nor on a fold, nor finished. Add a seam or a finish (finish ${edge.name} ${name} turned up 2cm; raw, if that is meant).`;
  return finding('unfinished-edge', { statement: edge.statement, at }, message, { piece: piece.name });
}
