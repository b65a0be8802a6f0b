/** The strip of a piece along some of its edges: an inner line beside them, and ends that follow the neighbours. */
import {
  add,
  intersections,
  parallel,
  Path,
  scale,
  subtract,
  translation,
  type Point,
} from '../../../geometry';
import type { Edge } from '../../model';
import type { Chain } from './chain';

export interface Strip {
  /** One path for each edge of the chain. */
  readonly outer: readonly Path[];
  /** From the outer line's end inwards, along the edge that follows. */
  readonly endSide: Path;
  /** From there back to the beginning. */
  readonly inner: Path;
  /** Outwards, along the edge before, to where the outer line begins. */
  readonly startSide: Path;
}

/** The inner line misses the edge where it should end, or (without one) can't follow the outer. */
export interface TooDeep {
  readonly short: Edge | undefined;
}

/** The inner line is drawn on by this many depths, to meet neighbours that lean outwards. */
const REACH = 3;

/**
 * @param inward 1 where the inside lies to the right of travel as seen on paper, else -1
 * @param shorter what is taken off at either end, mm: the ends keep their shape
 */
export function stripAlong(
  chain: Chain,
  deep: number,
  inward: 1 | -1,
  shorter: { readonly start: number; readonly end: number },
): Strip | TooDeep {
  const paths = chain.edges.map(({ path }) => path);
  const whole = paths.reduce((a, b) => a.joinedTo(b));
  const beside = parallel(whole, -inward * deep);
  if (beside.length !== 1) return { short: undefined };
  const outer = shortened(paths, shorter);
  const first = outer[0]!.start;
  const last = outer[outer.length - 1]!.end;
  const startSide = movedTo(chain.beforePath.reversed(), first);
  const endSide = movedTo(chain.afterPath, last);
  const line = drawnOut(beside[0]!, deep * REACH);
  const [begin, end] = [firstMeeting(line, startSide), firstMeeting(line, endSide)];
  if (begin === undefined) return { short: chain.before };
  if (end === undefined) return { short: chain.after };
  if (begin.onLine >= end.onLine) return { short: undefined };
  return {
    outer,
    endSide: endSide.part(0, end.onSide),
    inner: line.part(begin.onLine, end.onLine).reversed(),
    startSide: startSide.part(0, begin.onSide).reversed(),
  };
}

function shortened(
  paths: readonly Path[],
  shorter: { readonly start: number; readonly end: number },
): Path[] {
  return paths.map((path, i) => {
    const from = i === 0 ? shorter.start : 0;
    const to = path.length - (i === paths.length - 1 ? shorter.end : 0);
    return from === 0 && to === path.length ? path : path.part(from, to);
  });
}

const movedTo = (path: Path, start: Point): Path =>
  path.transformed(translation(subtract(start, path.start)));

function drawnOut(path: Path, by: number): Path {
  const { start, end, length } = path;
  const [ahead, back] = [path.tangentAt(length, 'before'), path.tangentAt(0)];
  const before = Path.line(add(start, scale(back, -by)), start);
  return before.joinedTo(path).joinedTo(Path.line(end, add(end, scale(ahead, by))));
}

/** Where a side, walked inwards from the outer line, first meets the inner one. */
function firstMeeting(
  line: Path,
  side: Path,
): { readonly onLine: number; readonly onSide: number } | undefined {
  const met = intersections(line, side).reduce<{ sA: number; sB: number } | undefined>(
    (best, one) => (best === undefined || one.sB < best.sB ? one : best),
    undefined,
  );
  return met && { onLine: met.sA, onSide: met.sB };
}
