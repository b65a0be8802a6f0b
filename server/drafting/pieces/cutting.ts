/** The lines of a piece that say how it is cut: fold, grain, allowances, corners. */
import { say } from '../../../grammar/say';
import type { AllowNode, Expr, GrainNode, Ref, Statement } from '../../../grammar/syntax';
import { add, distance, scale, type Point } from '../../geometry';
import type { Corner, Edge, Piece, RunningAllowance } from '../model';
import { nearest } from '../names/spelling';
import { pointOf, pathOf } from '../shapes/phrase';
import { lengthOf } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';

/** One of the piece's own edges by name; a finding with the nearest when there is none. */
export function ownEdge(reader: Reader, edges: readonly Edge[], ref: Ref | Expr): Edge | undefined {
  if (ref.kind !== 'ref' || ref.path.length !== 1) {
    return report(
      reader,
      'wrong-kind',
      ref.at,
      say`${wordsOf(reader, ref)} is no edge of this piece: an edge is written by its name alone here.`,
    );
  }
  const name = ref.path[0]!.text;
  const edge = edges.find((one) => one.name === name);
  if (edge !== undefined) return edge;
  const near = nearest(
    name,
    edges.map((one) => one.name),
  );
  const advice =
    near === undefined
      ? say`Its edges are ${edges.map((one) => one.name).join(', ')}.`
      : say`Did you mean ${near}?`;
  return report(reader, 'unknown-name', ref.at, say`This piece has no edge called ${name}. ${advice}`, {
    fixes:
      near === undefined
        ? []
        : [
            {
              title: say`Change to ${near}`,
              edits: [{ statement: reader.statement, at: ref.at, text: near }],
            },
          ],
  });
}

/** How far a folded edge may stray from straight: paper folds along a ruler (common practice). */
const STRAIGHT = 0.2;

export function foldEdge(reader: Reader, edges: readonly Edge[], ref: Ref): Edge | undefined {
  const edge = ownEdge(reader, edges, ref);
  if (edge === undefined || edge.path.isStraight(STRAIGHT)) return edge;
  return report(
    reader,
    'fold-not-straight',
    ref.at,
    say`Cloth folds along a straight line, but ${edge.name} bends.`,
    {
      related: [{ source: edge.source, message: say`${edge.name} runs here.` }],
    },
  );
}

type Grain = NonNullable<Piece['grain']>;

/** `grain along E`, `from P to Q`, `bias to E` (45° off it, as seen clockwise). */
export function grainLine(reader: Reader, node: GrainNode, source: string): Grain | undefined {
  const along = node.along ?? node.biasTo;
  if (along === undefined) {
    const from = pointOf(reader, node.from!, 'grain from');
    const to = pointOf(reader, node.to!, 'grain to');
    if (from === undefined || to === undefined) return undefined;
    if (distance(from, to) > POINT) return { from, to, bias: false, source };
    const message = say`The grain runs nowhere: ${wordsOf(reader, node.from!)} and ${wordsOf(reader, node.to!)} are one place.`;
    return report(reader, 'no-length', node.at, message);
  }
  const shape = pathOf(reader, along, 'grain');
  if (shape === undefined) return undefined;
  const { start, end } = shape.path;
  if (node.along !== undefined) return { from: start, to: end, bias: false, source };
  return { from: start, to: biasEnd(start, end), bias: true, source };
}

/** Nearer than this, mm, two points give no direction. */
const POINT = 0.01;

function biasEnd(start: Point, end: Point): Point {
  const along = { x: end.x - start.x, y: end.y - start.y };
  const half = Math.SQRT1_2;
  return add(start, scale({ x: along.x - along.y, y: along.x + along.y }, half));
}

/** Allowances by edge, from the piece's own `allow` lines: the whole piece first, then edge by edge, later lines last. */
export function allowances(
  reader: Reader,
  edges: readonly Edge[],
  lines: readonly Statement[],
): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const said = new Map<string, Statement>();
  const stated = lines.filter((line): line is Statement & { node: AllowNode } => line.node.kind === 'allow');
  const inOrder = [
    ...stated.filter(({ node }) => node.edges.length === 0),
    ...stated.filter(({ node }) => node.edges.length > 0),
  ];
  for (const line of inOrder) {
    if (line.node.running !== undefined || line.node.stretch !== undefined) continue;
    reader.statement = line;
    const width = allowance(reader, line.node.width, 'allow');
    if (width === undefined) continue;
    if (line.node.edges.length === 0) {
      saidBefore(reader, line, said, '', say`the whole piece`);
      for (const edge of edges) found.set(edge.name, width);
    }
    for (const ref of line.node.edges) {
      const edge = ownEdge(reader, edges, ref);
      if (edge === undefined) continue;
      saidBefore(reader, line, said, edge.name, edge.name);
      found.set(edge.name, width);
    }
  }
  return found;
}

/** Of two widths for one edge the later counts, and the reader is asked. */
function saidBefore(
  reader: Reader,
  line: Statement & { node: AllowNode },
  said: Map<string, Statement>,
  key: string,
  of: string,
): void {
  const before = said.get(key);
  said.set(key, line);
  if (before === undefined || before === line) return;
  const message = say`This line and an earlier one both give a width to ${of}. This one counts; take one of the two out.`;
  report(reader, 'overlapping-allowances', line.node.at, message);
}

/** No seam or hem wants more than this; a larger one is a slip of the unit (common practice: hems to 15 cm, trains to 40). */
const WIDEST = 500;

/** A width that can be cut beyond the sewing line, mm. */
export function allowance(reader: Reader, expr: Expr, use: string): number | undefined {
  const width = lengthOf(reader, expr, use);
  if (width === undefined || (width >= 0 && width <= WIDEST)) return width;
  return report(
    reader,
    'no-such-number',
    expr.at,
    say`An allowance of ${printLength(width, reader.unit)} can't be cut: it lies between 0 and ${printLength(WIDEST, reader.unit)}.`,
  );
}

/** `allow 4cm at A running to 1cm at B`: between two corners of one edge; beyond them the edge keeps the widths they have. */
export function runningAllowances(
  reader: Reader,
  edges: readonly Edge[],
  corners: readonly Corner[],
  lines: readonly Statement[],
): readonly RunningAllowance[] {
  return lines.flatMap((line): RunningAllowance[] => {
    const { node } = line;
    if (node.kind !== 'allow' || node.running === undefined) return [];
    reader.statement = line;
    const [widthA, widthB] = [
      allowance(reader, node.width, 'allow'),
      allowance(reader, node.running.width, 'running to'),
    ];
    const [a, b] = [
      cornerNamed(reader, corners, node.edges[0]),
      cornerNamed(reader, corners, node.running.at),
    ];
    if (widthA === undefined || widthB === undefined || a === undefined || b === undefined) return [];
    return betweenCorners(reader, edges, node, a, b, widthA, widthB);
  });
}

function cornerNamed(reader: Reader, corners: readonly Corner[], ref: Ref | undefined): Corner | undefined {
  const found = corners.find(({ name }) => name === ref?.path[0]?.text);
  if (found !== undefined || ref === undefined) return found;
  const near = nearest(
    ref.path[0]!.text,
    corners.map(({ name }) => name),
  );
  const advice =
    near === undefined
      ? say`A running allowance goes from one named point of the outline to another.`
      : say`Did you mean ${near}?`;
  return report(
    reader,
    'unknown-name',
    ref.at,
    say`The outline has no point called ${wordsOf(reader, ref)}. ${advice}`,
  );
}

function betweenCorners(
  reader: Reader,
  edges: readonly Edge[],
  node: AllowNode,
  a: Corner,
  b: Corner,
  widthA: number,
  widthB: number,
): RunningAllowance[] {
  const along = node.running?.along?.path[0]?.text;
  const found = edges.flatMap(({ name, path }): RunningAllowance[] => {
    if (along !== undefined && along !== name) return [];
    const [at, end] = [path.locate(a.point), path.locate(b.point)];
    if (at.distance > ON_EDGE || end.distance > ON_EDGE) return [];
    const forward = at.s < end.s;
    const [from, to] = forward ? [at.s, end.s] : [end.s, at.s];
    const [widthFrom, widthTo] = forward ? [widthA, widthB] : [widthB, widthA];
    return [{ edge: name, from, to, widthFrom, widthTo }];
  });
  if (found.length === 1) return found;
  const how = found.length === 0 ? say`No edge runs` : say`More than one edge runs`;
  report(
    reader,
    'which-way',
    node.at,
    say`${how} from ${a.name} to ${b.name}. ${found.length === 0 ? say`A running allowance follows one edge.` : say`Say which: along EDGE.`}`,
  );
  return [];
}

/** A corner lies on its edge to within rounding, mm. */
const ON_EDGE = 0.05;

/** `corner at P turned back` */
export function cornerCuts(reader: Reader, lines: readonly Statement[]): Piece['cornerCuts'] {
  return lines.flatMap((line): Piece['cornerCuts'] => {
    const { node } = line;
    if (node.kind !== 'corner') return [];
    reader.statement = line;
    const point = pointOf(reader, node.point, 'corner at');
    if (point === undefined) return [];
    const { path } = node.point.kind === 'ref' ? node.point : { path: [] };
    return [{ point, how: node.how, ...(path.length === 1 && { name: path[0]!.text }) }];
  });
}
