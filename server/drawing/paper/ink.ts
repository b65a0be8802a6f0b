/** Where on the sheet there is a piece: boxes small enough to tell which papers would come out empty. */
import type { Drawing, DrawnLine, Frame, PieceDrawing, Spot } from '../model';

/** A stretch longer than this is told piece by piece, or a slanting line would ink every paper in its box. */
const SHORT_MM = 40;

export function inkOf({ pieces, placements }: Pick<Drawing, 'pieces' | 'placements'>): readonly Frame[] {
  const named = new Map(pieces.map((piece) => [piece.name, piece]));
  return placements.flatMap(({ piece, by }) => {
    const drawn = named.get(piece);
    return drawn === undefined ? [] : inkOfPiece(drawn).map((frame) => shifted(frame, by));
  });
}

const kept = new WeakMap<PieceDrawing, readonly Frame[]>();

/** A piece is laid in many ways before the best is known: its boxes are had once. */
function inkOfPiece(piece: PieceDrawing): readonly Frame[] {
  const before = kept.get(piece);
  if (before !== undefined) return before;
  const texts = piece.texts.map(({ at, size }) => around([at], size));
  const boxes = [...bounding(piece).flatMap(boxesOf), ...inside(piece), ...texts];
  kept.set(piece, boxes);
  return boxes;
}

/** What is drawn within the cutting line lies on papers that the line or the cloth within it wants already. */
function bounding({ lines }: PieceDrawing): readonly DrawnLine[] {
  const outer = lines.filter(({ role }) => role === 'cutting' || role === 'fold');
  return outer.some(({ role }) => role === 'cutting') ? outer : lines;
}

/** The middle of a large piece has no line on it, and yet is no hole in the paper: dots so close that none is missed. */
function inside({ lines, frame }: PieceDrawing): Frame[] {
  const outline = lines.find(({ role, closed }) => closed && role === 'cutting');
  const round = outline ? [outline] : lines.filter(({ role }) => role === 'cutting');
  const polygon = round.flatMap((line) => boxesOf(line).map(({ left, top }) => ({ x: left, y: top })));
  const dots: Frame[] = [];
  for (let y = frame.top + EVERY_MM / 2; y < frame.bottom; y += EVERY_MM)
    for (let x = frame.left + EVERY_MM / 2; x < frame.right; x += EVERY_MM)
      if (holds(polygon, { x, y })) dots.push(around([{ x, y }], 0.5));
  return dots;
}

/** No paper is so narrow that a dot could miss it. */
const EVERY_MM = 80;

/** By the crossings of a ray to the right. */
const holds = (polygon: readonly Spot[], { x, y }: Spot): boolean =>
  polygon.filter((a, i) => {
    const b = polygon[(i + 1) % polygon.length]!;
    return a.y > y !== b.y > y && x < a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x);
  }).length %
    2 ===
  1;

function boxesOf(line: DrawnLine): Frame[] {
  const boxes: Frame[] = [];
  let at: Spot = line.start;
  for (const stretch of line.stretches) {
    const spots = [at, ...spotsOf(stretch)];
    for (const box of spots.length === 2 ? cutUp(spots[0]!, spots[1]!) : curveBoxes(spots)) boxes.push(box);
    at = spots[spots.length - 1]!;
  }
  return line.closed ? boxes.concat(cutUp(at, line.start)) : boxes;
}

const spotsOf = (stretch: readonly number[]): Spot[] =>
  Array.from({ length: stretch.length / 2 }, (_, i) => ({ x: stretch[2 * i]!, y: stretch[2 * i + 1]! }));

function cutUp(from: Spot, to: Spot): Frame[] {
  const parts = Math.max(1, Math.ceil(Math.hypot(to.x - from.x, to.y - from.y) / SHORT_MM));
  const spot = (share: number): Spot => ({
    x: from.x + (to.x - from.x) * share,
    y: from.y + (to.y - from.y) * share,
  });
  return Array.from({ length: parts }, (_, i) => around([spot(i / parts), spot((i + 1) / parts)]));
}

/** A curve lies inside its control polygon; halved until that is short. */
function curveBoxes(spots: readonly Spot[]): Frame[] {
  const box = around(spots);
  if (Math.max(box.right - box.left, box.bottom - box.top) <= SHORT_MM) return [box];
  const [a, b, c, d] = spots as [Spot, Spot, Spot, Spot];
  const middle = (p: Spot, q: Spot): Spot => ({ x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 });
  const [ab, bc, cd] = [middle(a, b), middle(b, c), middle(c, d)];
  const [abc, bcd] = [middle(ab, bc), middle(bc, cd)];
  const half = middle(abc, bcd);
  return [...curveBoxes([a, ab, abc, half]), ...curveBoxes([half, bcd, cd, d])];
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
