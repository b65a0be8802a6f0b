/** Finds hollow curves that bend more tightly than their allowance can follow. */
import { say } from '../../grammar/say';
import type { Finding } from '../drafting/finding';
import type { Piece, TightAllowance } from '../drafting/model';
import { allowanceAt } from '../drafting/pieces/widths';
import { printLength } from '../drafting/values/quantity';
import { isJudged } from './allowed';
import { finding, type Judged, type Judging } from './check';
import { edgeOfPiece } from './places';

export const tightAllowance: Judged = {
  code: 'tight-allowance',
  severity: 'warning',
  title: 'A hollow curve tighter than its allowance',
  by: 'judgement',
  ofPiece: (piece, pattern) =>
    isJudged(piece) && piece.side !== 'left'
      ? (piece.cutShape?.tight ?? []).flatMap((stretch) => tight(piece, stretch, pattern))
      : [],
};

/** Shorter or flatter stretches are no more than a rounded corner: mm, radians. */
const SHORTEST = 2;
const LEAST_TURN = Math.PI / 18;

function tight(
  piece: Piece,
  { edge: name, from, to }: TightAllowance,
  { unit }: Judging,
): readonly Finding[] {
  const edge = piece.edges.find((one) => one.name === name);
  if (edge === undefined || to - from < SHORTEST) return [];
  const turn = Math.abs(edge.path.part(from, to).turning());
  if (turn < LEAST_TURN) return [];
  const [radius, width] = [(to - from) / turn, allowanceAt(piece, name, (from + to) / 2)];
  const message = say`${piece.base}.${name} bends round a radius of ${printLength(radius, unit)}, and its allowance of ${printLength(width, unit)} can't follow that ${printLength((from + to) / 2, unit)} from the start of the edge: the cutting line has a corner there, and the allowance will not lie flat. Allow less than ${printLength(radius, unit)} at ${name}, or draw the curve rounder.`;
  return [finding('tight-allowance', edgeOfPiece(edge), message, { piece: piece.name })];
}
