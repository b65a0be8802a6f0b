/** Finds sewn edges of which no allowance is stated, in a pattern that states allowances. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece, Seam } from '../drafting/model';
import { everyEdge } from '../drafting/shapes/parts';
import { isJudged, sewnEdges } from './allowed';
import { finding, type Judged } from './check';
import { nameOfPiece } from './places';

export const missingAllowance: Judged = {
  code: 'missing-allowance',
  severity: 'error',
  title: 'A sewn edge without an allowance',
  by: 'judgement',
  // a pattern without any allowance is drawn to the finished size: the cutter adds them on the cloth
  ofSewnPiece: (piece, { net, seams }) =>
    net || !isJudged(piece) || piece.side === 'left' ? [] : bareEdges(piece, seams),
};

function bareEdges(piece: Piece, seams: readonly Seam[]): readonly Finding[] {
  const sewn = sewnEdges(piece, seams);
  const bare = everyEdge(piece)
    .map(({ name }) => name)
    .filter((name) => sewn.has(name) && !isAllowed(piece, name));
  return bare.length === 0 || isDoubtful(piece) ? [] : [missing(piece, bare)];
}

const isAllowed = ({ allowances, running }: Piece, edge: string): boolean =>
  allowances.has(edge) || running.some((one) => one.edge === edge);

/** A line that could not be read may be the one. */
const isDoubtful = ({ statement }: Piece): boolean =>
  (statement.block ?? []).some(({ node }) => node.kind === 'broken');

function missing(piece: Piece, bare: readonly string[]): Finding {
  const names =
    bare.length === 1 ? bare[0]! : say`${bare.slice(0, -1).join(', ')} and ${bare[bare.length - 1]!}`;
  const message = say`No allowance is stated at ${names} of ${piece.base}, ${bare.length === 1 ? say`which is sewn` : say`which are sewn`}: cut on its line, the piece comes out too small. Say allow 1.5cm for the whole piece or allow 1.5cm at ${bare[0]!}; 0cm, if that is meant.`;
  return finding('missing-allowance', nameOfPiece(piece), message, { piece: piece.name });
}
