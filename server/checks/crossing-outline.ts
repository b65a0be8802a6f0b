/** Finds outlines that cross themselves: such a piece can't be cut. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Edge, Piece } from '../drafting/model';
import { selfCrossings } from '../geometry';
import { finding, type Judged } from './check';

export const crossingOutline: Judged = {
  code: 'crossing-outline',
  severity: 'error',
  title: 'An outline that crosses itself',
  by: 'judgement',
  firm: true,
  ofPiece: (piece) => [
    ...crossings(piece, piece.edges, say`The outline of ${piece.name}`),
    ...piece.holes.flatMap(({ edges, name }) =>
      crossings(piece, edges, say`The hole ${name} in ${piece.name}`),
    ),
  ],
};

function crossings(piece: Piece, edges: readonly Edge[], what: string): readonly Finding[] {
  const pairs = new Map<string, { one: number; other: number }>();
  for (const { sA, sB } of selfCrossings(edges.map(({ path }) => path))) {
    const [one, other] = [edgeAt(edges, sA), edgeAt(edges, sB)].sort((a, b) => a - b) as [number, number];
    pairs.set(`${one} ${other}`, { one, other });
  }
  return [...pairs.values()].map(({ one, other }) => crossing(piece, [edges[one]!, edges[other]!], what));
}

/** Which edge holds a distance along the whole outline. */
function edgeAt(edges: readonly Edge[], s: number): number {
  let end = 0;
  for (const [index, { path }] of edges.entries()) {
    end += path.length;
    if (s < end) return index;
  }
  return edges.length - 1;
}

function crossing(piece: Piece, [a, b]: readonly [Edge, Edge], whole: string): Finding {
  const { node } = b.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  const what = a === b ? say`${a.name} crosses itself` : say`${b.name} crosses ${a.name}`;
  const message = say`${whole} can't be cut: ${what}. Look at the points between which it runs.`;
  const related = a === b ? [] : [{ source: a.source, message: say`${a.name} runs here.` }];
  return finding('crossing-outline', { statement: b.statement, at }, message, { piece: piece.name, related });
}
