/** Finds darts that reach beyond the outline of their piece. */
import { say } from '../../grammar/say';
import { contains, type Point } from '../geometry';
import type { Finding } from '../drafting/finding';
import type { Dart, FishDart, Piece } from '../drafting/model';
import { printLength } from '../drafting/values/quantity';
import { finding, type Judged, type Judging } from './check';
import { fishDartsOf, placeOf } from './dart-places';

export const dartOffPiece: Judged = {
  code: 'dart-off-piece',
  severity: 'error',
  title: 'A dart that reaches beyond its piece',
  by: 'judgement',
  ofPiece: (piece, pattern) =>
    piece.gaps.length > 0
      ? []
      : [
          ...piece.darts.flatMap((dart) => beyond(piece, dart, [dart.tip], pattern)),
          ...fishDartsOf(piece).flatMap((dart) =>
            beyond(piece, dart, [dart.from, dart.to, dart.left, dart.right], pattern),
          ),
        ],
};

/** A point so near to the outline, mm, lies on it. */
const ON_OUTLINE = 0.05;

function beyond(
  piece: Piece,
  dart: Dart | FishDart,
  points: readonly Point[],
  { unit }: Judging,
): readonly Finding[] {
  const outline = piece.edges.map(({ path }) => path);
  const off = points.map((p) =>
    contains(outline, p) ? 0 : Math.min(...outline.map((path) => path.locate(p).distance)),
  );
  const farthest = Math.max(...off);
  if (farthest <= ON_OUTLINE) return [];
  const message = say`${dart.name} reaches ${printLength(farthest, unit)} beyond the outline of ${piece.name}: make it shorter or narrower, or move it inside.`;
  return [
    finding('dart-off-piece', { statement: dart.statement, at: placeOf(dart) }, message, {
      piece: piece.name,
    }),
  ];
}
