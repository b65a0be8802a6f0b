/** How far two outlines stray from each other, measured from either to the nearest place of the other, edge by edge. */
import type { Edge } from '../drafting/model';
import { Path, type Rigid } from '../geometry';
import { both } from './causes';
import { TOLERANCE, type Both, type Deviation, type EdgePlace } from './model';

/** Edges that answer to each other; one side is missing for an edge that was added or taken away. */
export type EdgePair = Both<Edge>;

interface Farthest {
  readonly by: number;
  readonly s: number;
  /** On the average of all looks. */
  readonly mean: number;
}

/** A look at least every so far along an edge, mm; between two looks the place is then searched for. */
const STEP = 8;
/** No fewer looks than these on one stretch, and no more on an edge. */
const FEWEST = 6;
const MOST = 120;
/** Halvings of the search: from a step of 8mm to a thousandth. */
const CLOSER = 14;

/** The largest deviation of all edges; of equals the edge that strays as a whole, then the first by name. */
export function deviationOf(pairs: readonly EdgePair[], move: Rigid): Deviation {
  const was = ringOf(pairs.map((pair) => pair.was));
  const now = ringOf(pairs.map((pair) => pair.now)).transformed(move);
  const all = pairs.map((pair) => {
    const from = pair.was && farthest(pair.was.path, now);
    const to = pair.now && farthest(pair.now.path.transformed(move), was);
    const by = Math.max(from?.by ?? 0, to?.by ?? 0);
    const place = (edge: Edge | undefined, far: Farthest | undefined) =>
      edge && far && far.by > by - TOLERANCE ? placeOn(edge, far.s) : undefined;
    return {
      by,
      mean: (from?.mean ?? 0) + (to?.mean ?? 0),
      edge: both(pair.was?.name, pair.now?.name),
      at: both(place(pair.was, from), place(pair.now, to)),
    };
  });
  const name = ({ edge }: Pick<Deviation, 'edge'>): string =>
    [edge.was ?? '', edge.now ?? ''].sort().join(' ');
  const { by, edge, at } = all.reduce((a, b) => {
    if (Math.abs(a.by - b.by) > TOLERANCE) return a.by > b.by ? a : b;
    if (Math.abs(a.mean - b.mean) > TOLERANCE) return a.mean > b.mean ? a : b;
    return name(a) <= name(b) ? a : b;
  });
  return { by, edge, at };
}

const ringOf = (edges: readonly (Edge | undefined)[]): Path =>
  Path.of(edges.flatMap((edge) => (edge === undefined ? [] : edge.path.segments)));

function farthest(path: Path, other: Path): Farthest {
  const steps = Math.min(MOST, Math.max(FEWEST * path.segments.length, Math.ceil(path.length / STEP)));
  const off = (s: number): number => other.locate(path.pointAt(s)).distance;
  const step = path.length / steps;
  let best = { by: off(0), s: 0 };
  let sum = best.by;
  for (let i = 1; i <= steps; i++) {
    const by = off(i * step);
    sum += by;
    // a hair more is no more: a straight edge set out evenly is told at its beginning
    if (by > best.by + 1e-7) best = { by, s: i * step };
  }
  for (let round = 0, reach = step / 2; round < CLOSER; round++, reach /= 2) {
    for (const s of [best.s - reach, best.s + reach]) {
      const by = s < 0 || s > path.length ? 0 : off(s);
      if (by > best.by + 1e-7) best = { by, s };
    }
  }
  // an end that strays as far, as far as anybody sees, is easier found than a place beside it
  const end = [0, path.length].find((s) => off(s) > best.by - TOLERANCE);
  return { by: best.by, s: end ?? best.s, mean: sum / (steps + 1) };
}

/** Counted from the nearer end. */
export function placeOn(edge: Edge, s: number): EdgePlace {
  const { length } = edge.path;
  const first = s <= length - s;
  return {
    edge: edge.name,
    along: first ? s : length - s,
    from: first ? edge.fromName : edge.toName,
    point: edge.path.pointAt(s),
  };
}
