/** Finds holes whose allowances meet in the middle: nothing is left to be cut out. */
import { say } from '../../grammar/say';
import type { Hole, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { nameOfMark } from './places';

export const holeTooSmall: Judged = {
  code: 'hole-too-small',
  severity: 'warning',
  title: 'A hole that its allowances fill',
  by: 'judgement',
  ofPiece: (piece, pattern) =>
    piece.holes.length === 0 || piece.gaps.length > 0 || piece.allowances.size === 0
      ? []
      : piece.holes
          .filter(({ cutting }) => cutting === undefined)
          .map((hole) => filled(piece, hole, pattern)),
};

function filled(piece: Piece, hole: Hole, { unit }: Judging): ReturnType<typeof finding> {
  const widths = hole.edges.map(({ name }) => piece.allowances.get(name) ?? 0);
  const message = say`The hole ${hole.name} is filled by its own allowances (up to ${printLength(Math.max(...widths), unit)}, lying within it), so nothing is left to cut out. Allow less there: allow 5mm at ${hole.edges.map(({ name }) => name).join(', ')}; or bind or face it, with an allowance of 0cm.`;
  return finding('hole-too-small', nameOfMark(hole), message, { piece: piece.name });
}
