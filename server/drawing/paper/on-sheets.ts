/** What is known once the pieces lie on their sheets: words go off the sheets' edges, crosses where nothing else is. */
import type { Drawing, Frame, PieceDrawing, Spot } from '../model';
import { connected } from './connected';
import { clearMarks } from './crosses';
import { inkOfAll } from './ink';
import type { SheetEdges } from './lettering';
import { everyPaper, neededFor, tilingOf, type Tile, type Tiling } from './tiles';

export type Off = (piece: PieceDrawing, edges: SheetEdges) => PieceDrawing;

/** The drawing with its words off the edges of the sheets, and the sheets that something is drawn on. */
export function settled(
  drawing: Drawing,
  tiling: Tiling,
  off: Off | undefined,
): { readonly drawing: Drawing; readonly tiling: Tiling } {
  const lettered = off === undefined ? drawing : offEdges(drawing, tiling, off);
  const { frame } = drawing;
  const { paper } = tiling;
  const ink = inkOfAll(lettered, 'fine');
  const needed = neededFor(frame, ink.flat(), paper);
  const piecesOf = (): readonly ReadonlySet<number>[] =>
    ink.map((boxes) => new Set([...neededFor(frame, boxes, paper)].filter((one) => needed.has(one))));
  const sheets = tilingOf(frame, paper, connected(tiling, needed, piecesOf));
  return { drawing: lettered, tiling: clearMarks(sheets, lettered) };
}

function offEdges(drawing: Drawing, { tiles, paper }: Tiling, off: Off): Drawing {
  const places = new Map(drawing.placements.map(({ piece, by }) => [piece, by]));
  const grid = everyPaper(drawing.frame, paper);
  const has = new Set(tiles.map(({ row, column }) => `${row} ${column}`));
  const empty = grid.filter(({ row, column }) => !has.has(`${row} ${column}`));
  const pieces = drawing.pieces.map((piece) => {
    const by = places.get(piece.name) ?? { x: 0, y: 0 };
    const edges = edgesOn(piece.frame, by, grid);
    if (edges.xs.length + edges.ys.length === 0) return piece;
    const holes = empty.map(({ frame }) => movedBack(frame, by)).filter((hole) => meet(hole, piece.frame));
    return off(piece, { ...edges, holes });
  });
  return { ...drawing, pieces };
}

const movedBack = ({ left, top, right, bottom }: Frame, { x, y }: Spot): Frame => ({
  left: left - x,
  top: top - y,
  right: right - x,
  bottom: bottom - y,
});

const meet = (a: Frame, b: Frame): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Both sides of every strip in which two sheets lap over each other: words between them are on neither whole. */
function edgesOn(
  { left, top, right, bottom }: Frame,
  by: Spot,
  tiles: readonly Pick<Tile, 'frame'>[],
): Omit<SheetEdges, 'holes'> {
  const all = (values: readonly number[], from: number, to: number): number[] =>
    [...new Set(values)].filter((value) => value > from && value < to).sort((a, b) => a - b);
  return {
    xs: all(
      tiles.flatMap(({ frame }) => [frame.left - by.x, frame.right - by.x]),
      left,
      right,
    ),
    ys: all(
      tiles.flatMap(({ frame }) => [frame.top - by.y, frame.bottom - by.y]),
      top,
      bottom,
    ),
  };
}
