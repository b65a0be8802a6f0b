/** Rows of marks: so many along a line, evenly, the first and the last where they are told to stand. */
import { say } from '../../../grammar/say';
import type { MarksNode, MarkWord, Place } from '../../../grammar/syntax';
import { add, contains, lineIntersections, Path, scale, type Point } from '../../geometry';
import type { Edge, Mark } from '../model';
import { distanceAlong, ON_LINE } from '../shapes/places';
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
  const stretch = stretchOf(bench, node, line, count);
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
  const count = ofKind(reader, expr, 'ratio', say`a count`);
  if (count === undefined || (Number.isInteger(count) && count >= 1 && count <= MOST)) return count;
  const [is, words] = [String(Math.round(count * 1000) / 1000), wordsOf(reader, expr)];
  const found =
    is === words ? say`${is} is none of them` : say`${words} comes to ${is}. round(…) makes a whole number`;
  return report(
    reader,
    'no-such-number',
    expr.at,
    say`Marks are counted in whole numbers from 1 to ${MOST}; ${found}.`,
  );
}

/** Both ends of the row along its line, mm from the line's start. */
function stretchOf(
  bench: MarkBench,
  node: MarksNode,
  line: PathShape,
  count: number,
): readonly [number, number] | undefined {
  const { length } = line.path;
  if (node.from === undefined || node.to === undefined) return [0, length];
  const [from, to] = [node.from, node.to].map((place) => endOf(bench, node, line, place));
  if (from === undefined || to === undefined) return undefined;
  if (count === 1 || Math.abs(to - from) > ON_LINE) return [from, to];
  const { reader } = bench;
  const message = say`The row begins and ends at one place, so all ${count} would stand on each other. Say where it ends: from ${wordsOf(reader, node.from)} to another place of ${wordsOf(reader, node.along)}.`;
  return report(reader, 'no-length', node.to.at, message);
}

function endOf(
  { reader, edges }: MarkBench,
  { along }: MarksNode,
  line: PathShape,
  place: Place,
): number | undefined {
  const name = wordsOf(reader, along);
  const { length } = line.path;
  if (place.counted === undefined && place.value.kind === 'quantity') {
    const own = edges.find((edge) => edge.name === name);
    const [words, from] = [wordsOf(reader, place), own?.fromName || own?.toName || 'P'];
    const message = say`${words} is counted from nowhere: say from which point of ${name}, such as ${words} from ${from}.`;
    return report(reader, 'place-without-start', place.at, message);
  }
  const s = distanceAlong(reader, line, place, name, (point, words) => hintFor(edges, name, point, words));
  if (s === undefined || (s > -ON_LINE && s < length + ON_LINE)) return s;
  return report(
    reader,
    'out-of-reach',
    place.at,
    say`${wordsOf(reader, place)} lies ${printLength(s < 0 ? -s : s - length, reader.unit)} beyond the end of ${name}, which is ${printLength(length, reader.unit)} long: there is nothing to mark.`,
  );
}

/** The point may belong to another edge; else it can be brought to this one. */
function hintFor(edges: readonly Edge[], name: string, point: Point, words: string): string {
  const on = edges.filter(({ path }) => path.locate(point).distance <= ON_LINE);
  if (on.length > 0)
    return say` It lies on ${on.map((edge) => edge.name).join(say` and `)}: count the row along that, or name a place of ${name}.`;
  return say` Name a place of ${name}, such as the nearest: (${words} squared onto ${name}).`;
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
