/** Moves an edge out by a width, or in: a parallel edge, to which its neighbours are drawn on or cut back. */
import { say } from '../../../../grammar/say';
import {
  add,
  distance,
  intersections,
  lengthOf as sizeOf,
  derivativeAt,
  parallel,
  Path,
  scale,
  subsegment,
  subtract,
  type Point,
  type Segment,
} from '../../../geometry';
import type { Corner, Dart, Edge, EdgePart } from '../../model';
import { lengthOf } from '../../values/arithmetic';
import { printLength } from '../../values/quantity';
import { report, wordsOf } from '../../values/reader';
import { edgeOf } from '../outline';
import { edgeNamed, type Step } from './bench';
import type { Worked } from './ring';
import { legsOf } from './swing';

export const widenStep: Step = (bench, worked, { node }) => {
  if (node.kind !== 'widen') return undefined;
  const { reader } = bench;
  const by = lengthOf(reader, node.by, 'widen');
  const named = edgeNamed(bench, worked, node.line);
  if (by === undefined || named === undefined) return undefined;
  const made = widened(worked, named.index, by, reader.inward ?? 1);
  if (made !== undefined) return made;
  return report(
    reader,
    'never-meet',
    node.line.at,
    say`${wordsOf(reader, node.line)} moved by ${printLength(by, reader.unit)} does not meet the edges beside it, drawn on as they run. Move it less.`,
  );
};

/** Edges drawn on reach so much further than the width that the edge moves, mm: neighbours may lean as far as 5° to it. */
const REACH = 12;

/** @returns undefined where the edge beside does not come to the moved one */
export function widened(worked: Worked, index: number, by: number, inward: 1 | -1): Worked | undefined {
  if (Math.abs(by) < 1e-9) return worked;
  const edge = worked.edges[index]!;
  const count = worked.edges.length;
  const [before, after] = [(index - 1 + count) % count, (index + 1) % count];
  const reach = Math.abs(by) * REACH + 1;
  const prev = lastPart(worked.edges[before]!);
  const next = firstPart(worked.edges[after]!);
  const moved = movedParts(edge, worked.darts, by * inward, reach, [
    drawnOn(prev.path, reach),
    drawnOn(next.path.reversed(), reach),
  ]);
  if (moved === undefined) return undefined;
  const [start, end] = [moved.parts[0]!.path.start, moved.parts[moved.parts.length - 1]!.path.end];
  const edges = [...worked.edges];
  edges[index] = { ...edge, ...edgeOf(moved.parts, start) };
  edges[before] = withPart(edges[before]!, prev.index, endingAt(prev.path, start, reach));
  // where two edges make the whole outline, the neighbour is one and the same
  const last = firstPart(edges[after]!);
  edges[after] = withPart(edges[after]!, last.index, endingAt(last.path.reversed(), end, reach).reversed());
  const corners = worked.corners.map((corner) => movedCorner(corner, edge, edges[index]!));
  const darts = worked.darts.map((dart) => moved.darts.find(({ name }) => name === dart.name) ?? dart);
  return { ...worked, edges, corners, darts };
}

/** A corner at an end of the edge goes with it; one in its midst goes to the nearest place. */
function movedCorner(corner: Corner, before: Edge, after: Edge): Corner {
  const { s, distance: away } = before.path.locate(corner.point);
  if (away > 1e-6) return corner;
  const { path } = after;
  if (s < 1e-6) return { ...corner, point: path.start };
  if (s > before.path.length - 1e-6) return { ...corner, point: path.end };
  return { ...corner, point: path.locate(corner.point).point };
}

const lastPart = ({ parts }: Edge): { readonly path: Path; readonly index: number } => ({
  path: parts[parts.length - 1]!.path,
  index: parts.length - 1,
});
const firstPart = ({ parts }: Edge): { readonly path: Path; readonly index: number } => ({
  path: parts[0]!.path,
  index: 0,
});

const withPart = (edge: Edge, index: number, path: Path): Edge => {
  const parts = edge.parts.map((part, i) => (i === index ? { ...part, path } : part));
  return { ...edge, ...edgeOf(parts, parts[0]!.path.start) };
};

/** Every stretch of the edge moved out, from its neighbour or the leg of a dart to the next. */
function movedParts(
  { parts }: Edge,
  darts: readonly Dart[],
  left: number,
  reach: number,
  [first, last]: readonly [Path, Path],
): { readonly parts: readonly EdgePart[]; readonly darts: readonly Dart[] } | undefined {
  const found: EdgePart[] = [];
  const opened: Dart[] = [];
  for (const [i, part] of parts.entries()) {
    if (part.dart !== undefined) {
      found.push(part);
      continue;
    }
    const [before, after] = [dartBeside(parts[i - 1], darts), dartBeside(parts[i + 1], darts)];
    const from = before === undefined ? first : legOn(before.pivot, before.to, reach);
    const to = after === undefined ? last : legOn(after.pivot, after.from, reach);
    const path = movedPart(part.path, left, reach, from, to);
    if (path === undefined) return undefined;
    found.push({ ...part, path });
  }
  const whole = found.map((part, i): EdgePart => {
    const dart = darts.find(({ name }) => name === part.dart);
    if (part.dart === undefined || dart === undefined) return part;
    const [from, to] = [found[i - 1]?.path.end ?? dart.from, found[i + 1]?.path.start ?? dart.to];
    opened.push(legsOf({ ...dart, from, to }));
    return { ...part, path: Path.line(from, to) };
  });
  return { parts: whole, darts: opened };
}

const dartBeside = (part: EdgePart | undefined, darts: readonly Dart[]): Dart | undefined =>
  part?.dart === undefined ? undefined : darts.find(({ name }) => name === part.dart);

const legOn = (pivot: Point, end: Point, reach: number): Path => drawnOn(Path.line(pivot, end), reach);

/** A stretch beside itself, from one limit to the other; undefined where it comes to neither. */
function movedPart(path: Path, left: number, reach: number, from: Path, to: Path): Path | undefined {
  const beside = parallel(path, left);
  if (beside.length === 0) return undefined;
  const whole = Path.of(beside.flatMap(({ segments }) => segments));
  const long = drawnOn(drawnOn(whole, reach).reversed(), reach).reversed();
  const start = meeting(long, from, whole.start);
  const end = meeting(long, to, whole.end);
  return start === undefined || end === undefined || start >= end ? undefined : long.part(start, end);
}

/** Where a path meets its limit, nearest to where it ended. */
function meeting(path: Path, limit: Path, near: Point): number | undefined {
  const hits = intersections(path, limit);
  if (hits.length === 0) return undefined;
  return hits.reduce((a, b) => (distance(b.point, near) < distance(a.point, near) ? b : a)).sA;
}

/** A path drawn on beyond its end: under the ruler where it is straight, as it bends where it is a curve. */
function drawnOn(path: Path, reach: number): Path {
  const last = path.segments[path.segments.length - 1]!;
  const more = continued(last, reach);
  return more === undefined ? path : Path.of([...path.segments.slice(0, -1), more]);
}

function continued(segment: Segment, reach: number): Segment | undefined {
  if (segment.kind === 'line') {
    const size = distance(segment.p0, segment.p3);
    if (size < 1e-9) return undefined;
    const along = scale(subtract(segment.p3, segment.p0), reach / size);
    return { ...segment, p3: add(segment.p3, along) };
  }
  const speed = sizeOf(derivativeAt(segment, 1));
  return speed < 1e-9 ? undefined : subsegment(segment, 0, 1 + reach / speed);
}

/** A path ending at a point of itself, or of what it runs on to. */
function endingAt(path: Path, end: Point, reach: number): Path {
  const long = drawnOn(path, reach);
  const { s } = long.locate(end);
  return long.part(0, s);
}
