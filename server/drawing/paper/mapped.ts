/** Drawn pieces made smaller, or turned a quarter: on paper a piece may lie any way, its grain is drawn on it. */
import type { Affine } from '../../geometry';
import type { Frame, PieceDrawing } from '../model';
import { movedDot, movedLine, movedSpot, movedText } from '../moved';

/** The words keep their size, so that what is made smaller can still be read. */
export const mappedPiece = (piece: PieceDrawing, m: Affine): PieceDrawing => ({
  ...piece,
  frame: mappedFrame(piece.frame, m),
  lines: piece.lines.map((line) => movedLine(line, m)),
  dots: piece.dots.map((dot) => movedDot(dot, m)),
  texts: piece.texts.map((text) => movedText(text, m)),
});

function mappedFrame({ left, top, right, bottom }: Frame, m: Affine): Frame {
  const [a, b] = [movedSpot({ x: left, y: top }, m), movedSpot({ x: right, y: bottom }, m)];
  return {
    left: Math.min(a.x, b.x),
    top: Math.min(a.y, b.y),
    right: Math.max(a.x, b.x),
    bottom: Math.max(a.y, b.y),
  };
}

/** A quarter turn, clockwise as seen, about the origin. */
export const QUARTER: Affine = { a: 0, b: 1, c: -1, d: 0, e: 0, f: 0 };

export const quarterTurned = (piece: PieceDrawing): PieceDrawing => mappedPiece(piece, QUARTER);
