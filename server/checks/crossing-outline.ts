/** Finds outlines that cross themselves: such a piece can't be cut. */
import type { Finding } from '../drafting/finding';
import type { Piece } from '../drafting/model';
import { selfCrossings } from '../geometry';
import { finding, type Judged } from './check';

export const crossingOutline: Judged = {
  code: 'crossing-outline',
  severity: 'error',
  title: 'An outline that crosses itself',
  by: 'judgement',
  firm: true,
  ofPiece: (piece) => crossings(piece),
};

function crossings(piece: Piece): readonly Finding[] {
  const pairs = new Map<string, { one: number; other: number }>();
  for (const { sA, sB } of selfCrossings(piece.edges.map(({ path }) => path))) {
    const [one, other] = [edgeAt(piece, sA), edgeAt(piece, sB)].sort((a, b) => a - b) as [number, number];
    pairs.set(`${one} ${other}`, { one, other });
  }
  return [...pairs.values()].map(({ one, other }) => crossing(piece, one, other));
}

/** Which edge holds a distance along the whole outline. */
function edgeAt(piece: Piece, s: number): number {
  let end = 0;
  for (const [index, { path }] of piece.edges.entries()) {
    end += path.length;
    if (s < end) return index;
  }
  return piece.edges.length - 1;
}

function crossing(piece: Piece, one: number, other: number): Finding {
  const [a, b] = [piece.edges[one]!, piece.edges[other]!];
  const { node } = b.statement;
  const at = node.kind === 'edge' ? node.name.at : node.at;
  const what = one === other ? `${a.name} crosses itself` : `${b.name} crosses ${a.name}`;
  const message = `The outline of ${piece.name} can't be cut: ${what}. Look at the points between which it runs.`;
  const related = one === other ? [] : [{ source: a.source, message: `${a.name} runs here.` }];
  return finding('crossing-outline', { statement: b.statement, at }, message, { piece: piece.name, related });
}
