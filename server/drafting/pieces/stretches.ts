/** Stretches of edges that are allowed a width of their own: which counts where two lie on each other. */
import type { Edge, Piece, RunningAllowance } from '../model';

/** Shorter stretches are rounding, mm. */
const SHORTEST = 0.05;

/** How much of an edge two stretches share, mm. */
export const shared = (a: RunningAllowance, b: RunningAllowance): number =>
  a.edge === b.edge ? Math.min(a.to, b.to) - Math.max(a.from, b.from) : 0;

/** Stretches with another laid over them: where they lie on each other the later counts. */
export function overlaid(
  before: readonly RunningAllowance[],
  over: RunningAllowance,
): readonly RunningAllowance[] {
  const left = before.flatMap((run) =>
    shared(run, over) > SHORTEST
      ? [part(run, run.from, over.from), part(run, over.to, run.to)].filter(isLong)
      : [run],
  );
  return [...left, over];
}

export const allOverlaid = (
  before: readonly RunningAllowance[],
  over: readonly RunningAllowance[],
): readonly RunningAllowance[] => over.reduce(overlaid, before);

const isLong = ({ from, to }: RunningAllowance): boolean => to - from > SHORTEST;

function part(run: RunningAllowance, from: number, to: number): RunningAllowance {
  const slope = (run.widthTo - run.widthFrom) / (run.to - run.from || 1);
  const width = (s: number): number => run.widthFrom + slope * (s - run.from);
  return { ...run, from, to, widthFrom: width(from), widthTo: width(to) };
}

/**
 * Stretches of a piece that was worked, on its edges as they are now: they keep with the named corners and the ends of
 * their edges, and grow and shrink with what lies between.
 */
export function stretchesAfter(
  before: Pick<Piece, 'edges' | 'corners' | 'running'>,
  after: Pick<Piece, 'edges' | 'corners'>,
): readonly RunningAllowance[] {
  return before.running.map((run) => {
    const [was, is] = [before, after].map(({ edges }) => edges.find(({ name }) => name === run.edge));
    if (was === undefined || is === undefined || was.path === is.path) return run;
    const anchors = anchorsOf(before, was, after, is);
    return { ...run, from: carried(anchors, run.from), to: carried(anchors, run.to) };
  });
}

/** A place of the edge before, and where it lies along the edge now. */
type Anchor = readonly [was: number, is: number];

function anchorsOf(
  before: Pick<Piece, 'corners'>,
  was: Edge,
  after: Pick<Piece, 'corners'>,
  is: Edge,
): readonly Anchor[] {
  const within = before.corners.flatMap(({ name, point }): Anchor[] => {
    const now = after.corners.find((corner) => corner.name === name);
    const [old, own] = [was.path.locate(point), now && is.path.locate(now.point)];
    const lies = old.distance < SHORTEST && own !== undefined && own.distance < SHORTEST;
    return lies ? [[old.s, own.s]] : [];
  });
  const ends: Anchor[] = [
    [0, 0],
    [was.path.length, is.path.length],
  ];
  return [...within, ...ends].sort(([a], [b]) => a - b);
}

/** Between two anchors evenly. */
function carried(anchors: readonly Anchor[], s: number): number {
  const next = Math.max(
    1,
    anchors.findIndex(([was]) => was >= s),
  );
  const [[a, from], [b, to]] = [anchors[next - 1]!, anchors[next]!];
  return b - a < 1e-9 ? to : from + ((s - a) / (b - a)) * (to - from);
}
