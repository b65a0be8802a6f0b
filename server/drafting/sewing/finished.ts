/** The last step of making a piece: allowances that finishes take, notches, and the cutting line. */
import { cuttingLine, distance, Path, type CutEdge, type Point } from '../../geometry';
import type { Edge, Finish, Notch, Piece } from '../model';
import { cutPath } from '../pieces/roof';
import { finishAllowance } from './finish';
import type { PlacedNotch } from './notch';

/**
 * A piece ready to be cut.
 *
 * @param finishes those that take an edge of this piece, in file order
 * @param notches those cut into this piece
 */
export function finished(piece: Piece, finishes: readonly Finish[], notches: readonly PlacedNotch[]): Piece {
  const cut = notches.map(({ piece: _, ...notch }): Notch => notch);
  return withCutting({
    ...piece,
    allowances: withFinishes(piece, finishes),
    notches: cut,
    hems: hemsOf(piece, finishes),
  });
}

/** The piece with its cutting line drawn anew from its allowances. */
export const withCutting = (piece: Piece): Piece => {
  const { cutting: _, ...rest } = piece;
  return { ...rest, ...cutting(rest) };
};

/** A finish gives its own allowance; a fold has none. */
function withFinishes(piece: Piece, finishes: readonly Finish[]): ReadonlyMap<string, number> {
  const allowances = new Map(piece.allowances);
  for (const finish of finishes) {
    const width = finishAllowance(finish);
    if (width === undefined) continue;
    for (const edge of finish.edges) if (edge.piece === piece.base) allowances.set(edge.edge, width);
  }
  if (piece.fold !== undefined) allowances.set(piece.fold.edge, 0);
  return allowances;
}

/** Edges that are turned up: how often each is folded. */
function hemsOf(piece: Piece, finishes: readonly Finish[]): ReadonlyMap<string, 1 | 2> {
  const hems = new Map<string, 1 | 2>();
  for (const { how, edges } of finishes) {
    if (how !== 'turned-up' && how !== 'turned-twice') continue;
    for (const { piece: of, edge } of edges)
      if (of === piece.base) hems.set(edge, how === 'turned-up' ? 1 : 2);
  }
  return hems;
}

/** None for an outline with a gap, or where no allowance is stated at all: such a piece is shown by its sewing line. */
function cutting(piece: Omit<Piece, 'cutting'>): Pick<Piece, 'cutting'> {
  const { allowances } = piece;
  const stated = [...allowances.values()].some((width) => width > 0) || allowances.size >= piece.edges.length;
  if (piece.gaps.length > 0 || !stated) return {};
  const runs = piece.edges.map((edge) => cutEdges(piece, edge));
  const { outline } = cuttingLine(runs.flat());
  let next = 0;
  return {
    cutting: runs.map((of) =>
      Path.of(outline.slice(next, (next += of.length)).flatMap((path) => path.segments)),
    ),
  };
}

/** An edge as it is cut: one run of one width, or several where the allowance runs from one width to another. */
function cutEdges(piece: Omit<Piece, 'cutting'>, edge: Edge): readonly CutEdge[] {
  const path = cutPath(edge, piece.darts);
  const allowance = piece.allowances.get(edge.name) ?? 0;
  const running = piece.running.filter((one) => one.edge === edge.name).sort((a, b) => a.from - b.from);
  const turnedBack = turnedBackAt(piece, edge);
  if (running.length === 0) return [{ path, allowance, ...(turnedBack && { turnedBack }) }];
  const found: CutEdge[] = [];
  let at = 0;
  // beyond a running stretch the edge keeps the width that was run to, without a step
  let width = running[0]!.widthFrom;
  for (const { from, to, widthFrom, widthTo } of running) {
    if (from > at + SHORTEST) found.push({ path: path.part(at, from), allowance: width });
    found.push({ path: path.part(from, to), allowance: widthFrom, allowanceAtEnd: widthTo });
    [at, width] = [to, widthTo];
  }
  if (path.length > at + SHORTEST) found.push({ path: path.part(at, path.length), allowance: width });
  return found;
}

/** Stretches shorter than this, mm, are rounding. */
const SHORTEST = 0.01;

/** A hem is turned back at both ends, unless a corner says otherwise; never beside a fold. */
function turnedBackAt(piece: Omit<Piece, 'cutting'>, edge: Edge): CutEdge['turnedBack'] {
  const folds = piece.hems.get(edge.name);
  const said = (point: Point): string | undefined =>
    piece.cornerCuts.find((corner) => distance(corner.point, point) < 0.05)?.how;
  const back = (point: Point): boolean =>
    folds === undefined ? said(point) === 'turned-back' : said(point) !== 'mitred';
  const hemmed = folds !== undefined || (piece.allowances.get(edge.name) ?? 0) > 0;
  const [start, end] = [back(edge.path.start), back(edge.path.end)];
  if (!hemmed || (!start && !end) || (folds === undefined && !isHem(piece, edge))) return undefined;
  return {
    start: start && !besideFold(piece, edge, -1),
    end: end && !besideFold(piece, edge, 1),
    folds: folds ?? 1,
  };
}

/** Of the edges at a corner that is turned back and has no finish yet, the wider allowance is the hem. */
function isHem(piece: Omit<Piece, 'cutting'>, edge: Edge): boolean {
  const index = piece.edges.indexOf(edge);
  const width = (of: Edge | undefined): number => piece.allowances.get(of?.name ?? '') ?? 0;
  const around = [index - 1, index + 1].map(
    (i) => piece.edges[(i + piece.edges.length) % piece.edges.length],
  );
  return around.every((other) => width(edge) > width(other));
}

function besideFold(piece: Omit<Piece, 'cutting'>, edge: Edge, step: 1 | -1): boolean {
  const count = piece.edges.length;
  const other = piece.edges[(piece.edges.indexOf(edge) + step + count) % count];
  return other?.name === piece.fold?.edge;
}
