/** The allowances that finishes take: of whole edges, and of stretches of them. */
import type { Edge, Finish, Piece, RunningAllowance } from '../model';
import { drawnAt } from '../pieces/allowing';
import { allOverlaid } from '../pieces/stretches';
import { everyEdge, flatAt } from '../shapes/parts';
import { finishAllowance } from './finish';

/** An edge of a piece as a finish takes it; `stretch` as sewn, where it is not the whole edge. */
export interface FinishedEdge {
  readonly finish: Finish;
  readonly edge: Edge;
  readonly stretch?: { readonly from: number; readonly to: number };
}

/** Nearer to a corner, mm, a stretch ends at it. */
const AT_CORNER = 0.05;

/** Every edge of a piece that a finish takes, in file order. */
export function takenByFinishes(piece: Piece, finishes: readonly Finish[]): readonly FinishedEdge[] {
  return finishes.flatMap((finish) =>
    finish.edges.flatMap((taken): FinishedEdge[] => {
      if (taken.piece !== piece.base) return [];
      const edge = everyEdge(piece).find(({ name }) => name === taken.edge);
      if (edge === undefined) return [];
      // a hole is cut with one width an edge
      const inside = !piece.edges.includes(edge);
      if (taken.stretch === undefined || inside) return [{ finish, edge }];
      // on the wearer's other side the edge may be longer or shorter
      const whole = taken.of && everyEdge(taken.of).find(({ name }) => name === taken.edge);
      const share = whole !== undefined && whole.sewn > 0 ? edge.sewn / whole.sewn : 1;
      const [a, b] = [taken.stretch.from * share, taken.stretch.to * share];
      const [from, to] = [Math.min(a, b), Math.max(a, b)];
      if (from < AT_CORNER && to > edge.sewn - AT_CORNER) return [{ finish, edge }];
      return [{ finish, edge, stretch: { from, to } }];
    }),
  );
}

/** A finish of a whole edge gives it its own allowance; a fold has none. */
export function withFinishes(piece: Piece, taken: readonly FinishedEdge[]): ReadonlyMap<string, number> {
  const allowances = new Map(piece.allowances);
  for (const { finish, edge, stretch } of taken) {
    const width = finishAllowance(finish);
    if (width !== undefined && stretch === undefined) allowances.set(edge.name, width);
  }
  if (piece.fold !== undefined) allowances.set(piece.fold.edge, 0);
  return allowances;
}

/** A finish of a stretch steps at its ends; beyond them the edge has the width it had. */
export function withStretches(piece: Piece, taken: readonly FinishedEdge[]): Piece['running'] {
  const own = taken.flatMap(({ finish, edge, stretch }): RunningAllowance[] => {
    const width = finishAllowance(finish);
    if (width === undefined || stretch === undefined) return [];
    const [from, to] = [stretch.from, stretch.to].map((s) => drawnAt(edge, flatAt(edge, s)));
    return [{ edge: edge.name, from: from!, to: to!, widthFrom: width, widthTo: width, stepped: true }];
  });
  return own.length === 0 ? piece.running : allOverlaid(piece.running, own);
}

const foldsOf = ({ how }: Finish): 1 | 2 | undefined =>
  how === 'turned-up' ? 1 : how === 'turned-twice' ? 2 : undefined;

/** Edges that are turned up along their whole length: how often each is folded. */
export function hemsOf(taken: readonly FinishedEdge[]): ReadonlyMap<string, 1 | 2> {
  const hems = new Map<string, 1 | 2>();
  for (const { finish, edge, stretch } of taken) {
    const folds = foldsOf(finish);
    if (folds !== undefined && stretch === undefined) hems.set(edge.name, folds);
  }
  return hems;
}

/** How often an edge is folded where it ends; undefined where it is not turned up there. */
export function hemAtEnd(
  taken: readonly FinishedEdge[],
  { name, sewn }: Edge,
  end: 'start' | 'end',
): 1 | 2 | undefined {
  const there = taken.filter(({ edge, stretch, finish }) => {
    if (edge.name !== name || foldsOf(finish) === undefined) return false;
    if (stretch === undefined) return true;
    return end === 'start' ? stretch.from < AT_CORNER : stretch.to > sewn - AT_CORNER;
  });
  const last = there[there.length - 1];
  return last && foldsOf(last.finish);
}
