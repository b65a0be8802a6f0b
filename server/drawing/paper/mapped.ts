/** Drawn pieces made smaller, or turned a quarter: on paper a piece may lie any way, its grain is drawn on it. */
import { apply, type Affine } from '../../geometry';
import type { DrawnLine, Frame, PieceDrawing, Spot, Stretch } from '../model';
import { rounded } from '../path';

export const mappedSpot = (at: Spot, m: Affine): Spot => {
  const { x, y } = apply(m, at);
  return { x: rounded(x), y: rounded(y) };
};

function mappedStretch(stretch: Stretch, m: Affine): Stretch {
  const flat: number[] = [];
  for (let i = 0; i < stretch.length; i += 2) {
    const { x, y } = mappedSpot({ x: stretch[i]!, y: stretch[i + 1]! }, m);
    flat.push(x, y);
  }
  return flat as unknown as Stretch;
}

export const mappedLine = (line: DrawnLine, m: Affine): DrawnLine => ({
  ...line,
  start: mappedSpot(line.start, m),
  stretches: line.stretches.map((stretch) => mappedStretch(stretch, m)),
});

/** The words keep their size, so that what is made smaller can still be read. */
export function mappedPiece(piece: PieceDrawing, m: Affine): PieceDrawing {
  const turn = (Math.atan2(m.b, m.a) * 180) / Math.PI;
  return {
    ...piece,
    frame: mappedFrame(piece.frame, m),
    lines: piece.lines.map((line) => mappedLine(line, m)),
    dots: piece.dots.map((dot) => ({ ...dot, at: mappedSpot(dot.at, m) })),
    texts: piece.texts.map((text) => ({
      ...text,
      at: mappedSpot(text.at, m),
      turn: rounded(text.turn + turn),
    })),
  };
}

function mappedFrame({ left, top, right, bottom }: Frame, m: Affine): Frame {
  const [a, b] = [mappedSpot({ x: left, y: top }, m), mappedSpot({ x: right, y: bottom }, m)];
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
