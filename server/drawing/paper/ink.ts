/** Where on the sheet something is drawn: boxes small enough to tell which papers would come out empty. */
import { keptFor } from '../../../grammar/kept';
import type { Drawing, DrawnLine, DrawnText, Frame, PieceDrawing, Spot } from '../model';
import { runs } from './along';
import { metrics } from './font';

/**
 * A stretch longer than this is told piece by piece, or a slanting line would ink every paper in its box. Coarse boxes are
 * few, for the many ways of laying that are tried; fine ones leave out what the coarse ones touch with a corner alone.
 */
const SHORT_MM = { coarse: 40, fine: 12 } as const;
export type Grain = keyof typeof SHORT_MM;

type Laid = Pick<Drawing, 'pieces' | 'placements'>;

/** Coarse and without the labels that stand on the pieces: those come to lie where a paper is anyway. */
export const inkOf = (drawing: Laid): readonly Frame[] => inkOfAll(drawing, 'coarse').flat();

/** Of each piece that is placed. */
export function inkOfAll({ pieces, placements }: Laid, grain: Grain): readonly (readonly Frame[])[] {
  const named = new Map(pieces.map((piece) => [piece.name, piece]));
  return placements.flatMap(({ piece, by }) => {
    const drawn = named.get(piece);
    if (drawn === undefined) return [];
    const ink = grain === 'coarse' ? coarseInk(drawn) : [...inkOfPiece(drawn, grain), ...labelsOf(drawn)];
    return [ink.map((frame) => shifted(frame, by))];
  });
}

/** A piece is laid in many ways before the best is known: its boxes are had once. */
export const coarseInk = keptFor((piece: PieceDrawing) => inkOfPiece(piece, 'coarse'));

function inkOfPiece(piece: PieceDrawing, grain: Grain): readonly Frame[] {
  const short = SHORT_MM[grain];
  const drawn = piece.lines.filter(({ role }) => role !== 'construction');
  const words = piece.texts.filter((text) => !isLabel(text, piece));
  const dots = piece.dots.filter(({ role }) => role !== 'point').map(({ at }) => around([at], 1));
  return [...drawn.flatMap((line) => merged(boxesOf(line, short), short)), ...words.map(boxOfText), ...dots];
}

const labelsOf = (piece: PieceDrawing): readonly Frame[] =>
  piece.texts.filter((text) => isLabel(text, piece)).map(boxOfText);

/** A label below a piece that is too small for it has no other place. */
function isLabel({ role, at }: DrawnText, { lines }: PieceDrawing): boolean {
  if (role !== 'title' && role !== 'detail') return false;
  return lines.some(
    (line) => line.start.y > at.y || line.stretches.some((stretch) => stretch.at(-1)! > at.y),
  );
}

function boxOfText({ text, at, size, turn }: DrawnText): Frame {
  const half = runs(text, size, metrics()) / 2;
  const angle = (turn * Math.PI) / 180;
  const [x, y] = [Math.cos(angle) * half, Math.sin(angle) * half];
  return around(
    [
      { x: at.x - x, y: at.y - y },
      { x: at.x + x, y: at.y + y },
    ],
    size,
  );
}

/** Neighbours as one, as long as that is short: a notch or a hole is a single box. */
function merged(boxes: readonly Frame[], short: number): Frame[] {
  const found: Frame[] = [];
  for (const box of boxes) {
    const last = found.at(-1);
    const both = last && joined(last, box);
    if (both !== undefined && both.right - both.left <= short && both.bottom - both.top <= short)
      found[found.length - 1] = both;
    else found.push(box);
  }
  return found;
}

const joined = (a: Frame, b: Frame): Frame => ({
  left: Math.min(a.left, b.left),
  top: Math.min(a.top, b.top),
  right: Math.max(a.right, b.right),
  bottom: Math.max(a.bottom, b.bottom),
});

function boxesOf(line: DrawnLine, short: number): Frame[] {
  const boxes: Frame[] = [];
  let at: Spot = line.start;
  for (const stretch of line.stretches) {
    const spots = [at, ...spotsOf(stretch)];
    for (const box of spots.length === 2 ? cutUp(spots[0]!, spots[1]!, short) : curveBoxes(spots, short))
      boxes.push(box);
    at = spots[spots.length - 1]!;
  }
  return line.closed ? boxes.concat(cutUp(at, line.start, short)) : boxes;
}

const spotsOf = (stretch: readonly number[]): Spot[] =>
  Array.from({ length: stretch.length / 2 }, (_, i) => ({ x: stretch[2 * i]!, y: stretch[2 * i + 1]! }));

function cutUp(from: Spot, to: Spot, short: number): Frame[] {
  const parts = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / short));
  const spot = (share: number): Spot => ({
    x: from.x + (to.x - from.x) * share,
    y: from.y + (to.y - from.y) * share,
  });
  return Array.from({ length: parts }, (_, i) => around([spot(i / parts), spot((i + 1) / parts)]));
}

/** A curve lies inside its control polygon; halved until that is short. */
function curveBoxes(spots: readonly Spot[], short: number): Frame[] {
  const box = around(spots);
  if (Math.max(box.right - box.left, box.bottom - box.top) <= short) return [box];
  const [a, b, c, d] = spots as [Spot, Spot, Spot, Spot];
  const middle = (p: Spot, q: Spot): Spot => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const [ab, bc, cd] = [middle(a, b), middle(b, c), middle(c, d)];
  const [abc, bcd] = [middle(ab, bc), middle(bc, cd)];
  const half = middle(abc, bcd);
  return [...curveBoxes([a, ab, abc, half], short), ...curveBoxes([half, bcd, cd, d], short)];
}

function around(spots: readonly Spot[], room = 0): Frame {
  const [xs, ys] = [spots.map(({ x }) => x), spots.map(({ y }) => y)];
  return {
    left: Math.min(...xs) - room,
    top: Math.min(...ys) - room,
    right: Math.max(...xs) + room,
    bottom: Math.max(...ys) + room,
  };
}

const shifted = (frame: Frame, { x, y }: Spot): Frame => ({
  left: frame.left + x,
  top: frame.top + y,
  right: frame.right + x,
  bottom: frame.bottom + y,
});
