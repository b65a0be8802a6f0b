/** Stretches of an outline that are written by how deep they are (`curve to P hollow 1.2cm toward R`), and where that is. */
import type { Run } from '../../../grammar/syntax';
import { distance, lerp, type Path, type Point } from '../../geometry';
import type { Source } from '../finding';
import type { Edge, Piece } from '../model';
import { everyEdge } from '../shapes/parts';
import { CLOSED_WITHIN, nameOf } from './outline';

export interface HollowRun {
  /** That of its edge, and which of the edge's stretches it is: `front/side#2`. */
  readonly source: Source;
  readonly edge: Edge;
  readonly run: Extract<Run, { kind: 'curve' }>;
  readonly from: Point;
  readonly to: Point;
  readonly deepest: Point;
}

/** Those whose ends the author named, so that they can be found on the edge as it came to be. */
export function hollowRuns(piece: Piece): readonly HollowRun[] {
  const at = (name: string): Point | undefined => piece.corners.find((one) => one.name === name)?.point;
  return everyEdge(piece).flatMap((edge) => {
    const { node } = edge.statement;
    if (node.kind !== 'edge') return [];
    let fromName = edge.fromName;
    return node.runs.flatMap((run, i): HollowRun[] => {
      const [from, to] = [at(fromName), at(nameOf(run.to))];
      fromName = nameOf(run.to);
      if (run.kind !== 'curve' || !run.options.some(({ kind }) => kind === 'hollow')) return [];
      const deepest = from && to && deepestBetween(edge.path, from, to);
      return deepest ? [{ source: `${edge.source}#${i + 1}`, edge, run, from: from!, to: to!, deepest }] : [];
    });
  });
}

/** Looked for at so many places first, then closer about the best of them: finer than a thousandth of a millimetre. */
const PLACES = 64;
const ROUNDS = 3;

/** The place of a stretch that lies furthest from the straight way between its ends. */
function deepestBetween(path: Path, from: Point, to: Point): Point | undefined {
  const [start, end] = [path.locate(from), path.locate(to)];
  if (start.distance > CLOSED_WITHIN || end.distance > CLOSED_WITHIN || start.s === end.s) return undefined;
  const whole = distance(from, to);
  const off = (s: number): number => {
    const { x, y } = path.pointAt(s);
    return Math.abs((to.x - from.x) * (y - from.y) - (to.y - from.y) * (x - from.x)) / whole;
  };
  let [low, high] = [start.s, end.s];
  for (let round = 0; round < ROUNDS; round++) {
    const step = (high - low) / PLACES;
    const places = Array.from({ length: PLACES + 1 }, (_, i) => low + i * step);
    const best = places.reduce((most, s) => (off(s) > off(most) + 1e-9 ? s : most));
    // one that is not deep at all is in its middle
    if (off(best) < 1e-6) return lerp(from, to, 0.5);
    [low, high] = [best - step, best + step];
  }
  return path.pointAt((low + high) / 2);
}
