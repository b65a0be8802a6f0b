/** A half on the fold as it looks when the cloth is opened: with its other half by mirror, the fold its centre line. */
import { say } from '../../grammar/say';
import { mirror, Path } from '../geometry';
import type { DrawnLine, PieceDrawing } from './model';
import { movedLine } from './moved';
import { frameOfLines, pathLine, pathOf } from './path';
import { otherDots, otherHalf } from './whole';

const kept = new WeakMap<PieceDrawing, PieceDrawing>();

/** A piece without a fold, and every piece the second time, comes back as the same object. */
export function wholeByMirror(piece: PieceDrawing): PieceDrawing {
  const fold = piece.lines.find(({ role }) => role === 'fold');
  if (fold === undefined) return piece;
  const before = kept.get(piece);
  if (before !== undefined) return before;
  const made = opened(piece, fold);
  kept.set(piece, made);
  return made;
}

function opened(piece: PieceDrawing, fold: DrawnLine): PieceDrawing {
  const { start, end } = pathOf(fold);
  const m = mirror(start, end);
  const cut = piece.lines.filter(({ role, closed }) => role === 'cutting' && !closed);
  const once = piece.lines.filter(({ role }) => role === 'grain');
  const half = piece.lines.filter((line) => line !== fold && !cut.includes(line) && !once.includes(line));
  const centre: DrawnLine = {
    ...fold,
    role: 'centre',
    arrows: 'none',
    tip: fold.tip.replace(say`on the fold`, say`centre`),
  };
  const lines = [
    ...cut.map((line) => closedWith(line, movedLine(line, m))),
    ...half,
    ...otherHalf(half, m),
    centre,
    ...once,
  ];
  return {
    ...piece,
    lines,
    dots: [...piece.dots, ...otherDots(piece.dots, m)],
    frame: frameOfLines(lines),
    spoken: say`${piece.spoken}, drawn whole`,
  };
}

/** Both halves of a cutting line as one, so that its corners are mitred. */
function closedWith(half: DrawnLine, other: DrawnLine): DrawnLine {
  const back = pathOf(other).reversed();
  const line = pathLine('cutting', Path.of([...pathOf(half).segments, ...back.segments]), half);
  return { ...line, closed: true };
}
