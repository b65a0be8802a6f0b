/** The draft beneath a piece: the lines, curves and points that it was drawn with, where they lie on its paper. */
import { say } from '../../grammar/say';
import type { Box, Point } from '../geometry';
import type { Pattern, Piece, Shape } from '../drafting/model';
import { ALIKE_WITHIN } from '../drafting/pieces/both-sides';
import { hollowRuns } from '../drafting/pieces/hollow-runs';
import { printLength } from '../drafting/values/quantity';
import type { Drawing, DrawnDot, DrawnLine, Frame, PieceDrawing } from './model';
import { frameOfLines, pathLine, spot } from './path';

/** A guide point may lie so far off the piece, mm: about a hand. What lies further belongs to another piece. */
const REACH = 80;

/** A drawing with the draft beneath each of its pieces; its pieces are not placed anew. */
export function withDrafts(drawing: Drawing, pattern: Pattern): Drawing {
  const pieces = new Map(pattern.pieces.map((piece) => [piece.name, piece]));
  return {
    ...drawing,
    pieces: drawing.pieces.map((drawn) => {
      const piece = pieces.get(drawn.name);
      return piece === undefined ? drawn : withDraft(drawn, piece, pattern);
    }),
  };
}

/** A piece that was worked on or turned over no longer lies on its draft, and is left alone. */
function withDraft(drawn: PieceDrawing, piece: Piece, pattern: Pattern): PieceDrawing {
  if (!liesAsDrafted(piece, pattern)) return drawn;
  const near = grown(drawn.frame);
  const corners = new Set(piece.corners.map(({ name }) => name));
  const lines: DrawnLine[] = [];
  const dots: DrawnDot[] = [];
  for (const [name, source, shape] of shapesOf(piece.draft, pattern)) {
    if (!within(boxOf(shape), near)) continue;
    if (shape.kind === 'point') {
      if (!corners.has(name)) dots.push({ role: 'point', source, name, at: spot(shape.point) });
      continue;
    }
    const tip = `${name}, ${printLength(shape.path.length, pattern.unit)}`;
    lines.push(pathLine('construction', shape.path, { name, source, tip }));
    if (shape.kind === 'curve' && shape.deepest !== undefined)
      dots.push({ role: 'point', source, name: say`${name}, where it is deepest`, at: spot(shape.deepest) });
  }
  for (const { source, edge, deepest } of hollowRuns(piece))
    dots.push({ role: 'point', source, name: say`${edge.name}, where it is deepest`, at: spot(deepest) });
  if (lines.length + dots.length === 0) return drawn;
  const frame = framed(drawn.frame, lines, dots);
  return { ...drawn, lines: [...lines, ...drawn.lines], dots: [...drawn.dots, ...dots], frame };
}

/**
 * Whether every corner of a piece that its draft has a point for lies where the draft has that point; a piece for both
 * sides may be cut from the other side, and then lies a hair beside it.
 */
export function liesAsDrafted(piece: Piece, { shapes }: Pattern): boolean {
  const known = piece.corners.flatMap(({ name, point }) => {
    const shape = shapes.get(`${piece.draft}.${name}`);
    return shape?.kind === 'point' ? [Math.hypot(shape.point.x - point.x, shape.point.y - point.y)] : [];
  });
  return known.length > 0 && known.every((away) => away <= ALIKE_WITHIN);
}

/** The shapes of a draft by their own names, with where each comes from. */
function shapesOf(draft: string, { shapes }: Pattern): readonly (readonly [string, string, Shape])[] {
  const own = `${draft}.`;
  return [...shapes]
    .filter(([path]) => path.startsWith(own))
    .map(([path, shape]) => {
      const name = path.slice(own.length);
      return [name, `${draft}/${name}`, shape] as const;
    });
}

const boxOf = (shape: Shape): Box => (shape.kind === 'point' ? boxAt(shape.point) : shape.path.box);

const boxAt = ({ x, y }: Point): Box => ({ minX: x, minY: y, maxX: x, maxY: y });

const grown = ({ left, top, right, bottom }: Frame): Box => ({
  ...{ minX: left - REACH, minY: top - REACH },
  ...{ maxX: right + REACH, maxY: bottom + REACH },
});

const within = (box: Box, room: Box): boolean =>
  box.minX >= room.minX && box.minY >= room.minY && box.maxX <= room.maxX && box.maxY <= room.maxY;

/** What holds the piece and all of the draft that is drawn with it. */
function framed(frame: Frame, lines: readonly DrawnLine[], dots: readonly DrawnDot[]): Frame {
  const frames = [frame, ...(lines.length > 0 ? [frameOfLines(lines)] : [])];
  const [xs, ys] = [dots.map(({ at }) => at.x), dots.map(({ at }) => at.y)];
  return {
    left: Math.min(...frames.map(({ left }) => left), ...xs),
    top: Math.min(...frames.map(({ top }) => top), ...ys),
    right: Math.max(...frames.map(({ right }) => right), ...xs),
    bottom: Math.max(...frames.map(({ bottom }) => bottom), ...ys),
  };
}
