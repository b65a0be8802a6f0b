/** Rows of marks: so many along a line, evenly, the first and the last where they are told to stand. */
import type { MarksNode, MarkWord } from '../../../grammar/syntax';
import { add, contains, lineIntersections, Path, scale, type Point } from '../../geometry';
import type { Edge, Mark } from '../model';
import { distanceAlong } from '../shapes/places';
import { pathOf, type PathShape } from '../shapes/phrase';
import { ofKind } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { barAt, USUAL_BUTTONHOLE } from './buttonholes';
import { sizeOf, type MarkBench } from './marks';

/** More than this along one line is a slip. */
const MOST = 999;

/** A bone ends so far from the seams that it stands between, mm (common practice: 5 to 8 mm short of either end). */
export const BONE_SHORT = 6;

const SINGLE: Readonly<Record<MarksNode['word'], MarkWord>> = {
  marks: 'mark',
  buttons: 'button',
  buttonholes: 'buttonhole',
  drills: 'drill',
  eyelets: 'eyelet',
  bones: 'bone',
};

/** `buttons fronts = 8 along front-edge from 2cm below neck-cf to hem-cf` */
export function rowOfMarks(bench: MarkBench, node: MarksNode): Mark | undefined {
  const { reader, source } = bench;
  const count = countOf(reader, node);
  const line = pathOf(reader, node.along, 'along');
  const size = sizeOf(reader, node);
  if (count === undefined || line === undefined || size === 'none') return undefined;
  const stretch = stretchOf(reader, node, line);
  if (stretch === undefined) return undefined;
  const [from, to] = stretch;
  // round a closed line the last would stand on the first
  const round = node.from === undefined && line.path.isClosed();
  const steps = round ? count : count - 1;
  const apart = steps === 0 ? 0 : Math.abs(to - from) / steps;
  const places = Array.from(
    { length: count },
    (_, i) => from + (steps === 0 ? 0 : (i * (to - from)) / steps),
  );
  const word = SINGLE[node.word];
  const points = places.map((s) => line.path.pointAt(s));
  const paths = places.flatMap((s): readonly Path[] => {
    if (word === 'bone') return boneAt(bench.edges, line.path, s);
    if (word !== 'buttonhole') return [];
    return [
      barAt(bench, line.path.pointAt(s), size ?? USUAL_BUTTONHOLE, node.lengthways, { path: line.path, s }),
    ];
  });
  const { text: name } = node.name;
  return {
    ...{ name, source: `${source}/${name}`, statement: reader.statement, word },
    ...(size !== undefined && { size }),
    points: word === 'bone' ? [] : points,
    paths,
    row: { apart, along: wordsOf(reader, node.along) },
  };
}

function countOf(reader: Reader, { count: expr }: MarksNode): number | undefined {
  const count = ofKind(reader, expr, 'ratio', 'a count');
  if (count === undefined || (Number.isInteger(count) && count >= 1 && count <= MOST)) return count;
  const is = Math.round(count * 1000) / 1000;
  return report(
    reader,
    'no-such-number',
    expr.at,
    `Marks are counted in whole numbers from 1 to ${MOST}; ${wordsOf(reader, expr)} comes to ${is}. round(…) makes a whole number.`,
  );
}

/** Both ends of the row along its line, mm from the line's start. */
function stretchOf(reader: Reader, node: MarksNode, line: PathShape): readonly [number, number] | undefined {
  const { length } = line.path;
  if (node.from === undefined || node.to === undefined) return [0, length];
  const name = wordsOf(reader, node.along);
  const ends = [node.from, node.to].map((place) => {
    const s = distanceAlong(reader, line, place, name);
    if (s === undefined || (s > -0.05 && s < length + 0.05)) return s;
    return report(
      reader,
      'out-of-reach',
      place.at,
      `${wordsOf(reader, place)} lies ${printLength(s < 0 ? -s : s - length, reader.unit)} beyond the end of ${name}, where there is nothing to mark.`,
    );
  });
  const [from, to] = ends;
  return from === undefined || to === undefined ? undefined : [from, to];
}

/** A bone stands square to the line it is counted along, from edge to edge, short of both. */
function boneAt(edges: readonly Edge[], line: Path, s: number): readonly Path[] {
  const at = line.pointAt(s);
  const along = line.tangentAt(Math.min(Math.max(s, 0), line.length));
  const across: Point = { x: -along.y, y: along.x };
  const hits = edges
    .flatMap(({ path }) => lineIntersections(at, across, path).map(({ u }) => u))
    .sort((a, b) => a - b);
  // on an edge one end is the edge itself, and the other lies where the piece is
  const ahead = hits.find((u) => u > 1);
  const behind = [...hits].reverse().find((u) => u < -1);
  const onEdge = hits.some((u) => Math.abs(u) <= 1);
  const [from, to] = onEdge ? between(edges, at, across, behind, ahead) : [behind, ahead];
  if (from === undefined || to === undefined || to - from <= 2 * BONE_SHORT) return [];
  const point = (u: number): Point => add(at, scale(across, u));
  return [Path.line(point(from + BONE_SHORT), point(to - BONE_SHORT))];
}

function between(
  edges: readonly Edge[],
  at: Point,
  across: Point,
  behind: number | undefined,
  ahead: number | undefined,
): readonly [number | undefined, number | undefined] {
  if (ahead === undefined) return [behind, 0];
  if (behind === undefined) return [0, ahead];
  return inside(edges, add(at, scale(across, ahead / 2))) ? [0, ahead] : [behind, 0];
}

const inside = (edges: readonly Edge[], p: Point): boolean =>
  contains(
    edges.map(({ path }) => path),
    p,
  );
