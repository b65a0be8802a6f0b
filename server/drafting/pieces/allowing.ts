/** Everything a piece's block says of its allowances: widths, stretches of another width, inlays, corners. */
import { say } from '../../../grammar/say';
import type { AllowNode, CornerNode, Expr, InlayNode, Statement } from '../../../grammar/syntax';
import { distance, type Point } from '../../geometry';
import type { Corner, Edge, Piece, RunningAllowance, StatedAllowance } from '../model';
import { edgeShape } from '../shapes/parts';
import { distanceAlong } from '../shapes/places';
import { allOverlaid, shared } from './stretches';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { allowance, allowances, cornerCuts, ownEdge, runningAllowances } from './cutting';

type Allowing = Pick<Piece, 'allowances' | 'running' | 'cornerCuts' | 'statedAllowances' | 'inlays'>;

interface Outline {
  readonly edges: readonly Edge[];
  readonly corners: readonly Corner[];
  /** Edges of holes as well. */
  readonly every: readonly Edge[];
}

export function readAllowing(reader: Reader, outline: Outline, block: readonly Statement[]): Allowing {
  const { edges, corners, every } = outline;
  const ruled: Point[] = [];
  return {
    allowances: allowances(reader, every, block),
    running: stretches(reader, edges, corners, ofKind(block, 'allow')),
    cornerCuts: ofKind(block, 'corner').flatMap(([line, node]) =>
      cornerCut(reader, outline, line, node, ruled),
    ),
    statedAllowances: ofKind(block, 'allow').flatMap(([line, node]) => stated(reader, every, line, node)),
    inlays: inlays(reader, edges, ofKind(block, 'inlay')),
  };
}

/** In the order of the lines; where two lie on each other the later counts, and the reader is asked. */
function stretches(
  reader: Reader,
  edges: readonly Edge[],
  corners: readonly Corner[],
  lines: readonly (readonly [Statement, AllowNode])[],
): readonly RunningAllowance[] {
  const said: { readonly run: RunningAllowance; readonly line: Statement }[] = [];
  for (const [line, node] of lines) {
    const runs = [
      ...runningAllowances(reader, edges, corners, [line]),
      ...steppedAllowance(reader, edges, line, node),
    ];
    for (const run of runs) {
      // a stretch within a width that runs is an exception from it
      const under = said.find((one) => shared(one.run, run) > ON_CORNER && one.run.stepped === run.stepped);
      if (under !== undefined) overlapping(reader, edges, node, [under, { run, line }]);
      said.push({ run, line });
    }
  }
  return allOverlaid(
    [],
    said.map(({ run }) => run),
  );
}

function overlapping(
  reader: Reader,
  edges: readonly Edge[],
  node: AllowNode,
  [under, over]: readonly { readonly run: RunningAllowance; readonly line: Statement }[],
): void {
  const { edge } = over!.run;
  const { source } = edges.find(({ name }) => name === edge)!;
  const both = printLength(shared(under!.run, over!.run), reader.unit);
  const message = say`This line and an earlier one both give a width to ${both} of ${edge}. There this one counts; let one begin where the other ends.`;
  reader.statement = over!.line;
  report(reader, 'overlapping-allowances', node.stretch?.at ?? node.at, message, {
    related: [{ source, statement: under!.line, message: say`The earlier line.` }],
  });
}

/** What a worked piece's own block says, on top of what it was worked from; the later word counts. */
export function allowedAnew(before: Piece, own: Allowing): Allowing {
  const again = (edge: string): boolean => (own.statedAllowances ?? []).some((one) => one.edge === edge);
  // a width for the whole piece takes the place of everything said before
  const whole = [...own.allowances.keys()].some((edge) => !again(edge));
  return {
    allowances:
      own.allowances.size === 0 ? before.allowances : new Map([...before.allowances, ...own.allowances]),
    running: allOverlaid(
      before.running.filter(({ edge }) => !again(edge) && !whole),
      own.running,
    ),
    cornerCuts: [...own.cornerCuts, ...before.cornerCuts],
    statedAllowances: [
      ...(before.statedAllowances ?? []).filter(({ edge }) => !again(edge) && !whole),
      ...(own.statedAllowances ?? []),
    ],
    inlays: new Map([...(before.inlays ?? []), ...(own.inlays ?? [])]),
  };
}

type Of<K> = Extract<Statement['node'], { kind: K }>;

const ofKind = <K extends Statement['node']['kind']>(
  block: readonly Statement[],
  kind: K,
): readonly (readonly [Statement, Of<K>])[] =>
  block.flatMap((line) => (line.node.kind === kind ? [[line, line.node as Of<K>] as const] : []));

/** `allow 3cm at side from slit to hem-side`: that width between two places, the usual one beyond them. */
function steppedAllowance(
  reader: Reader,
  edges: readonly Edge[],
  line: Statement,
  node: AllowNode,
): RunningAllowance[] {
  if (node.stretch === undefined) return [];
  reader.statement = line;
  const width = allowance(reader, node.width, 'allow');
  const edge = ownEdge(reader, edges, node.edges[0]!);
  const shape = edge && edgeShape(edge);
  if (edge === undefined || shape === undefined || shape.kind === 'point') return [];
  const [a, b] = [node.stretch.from, node.stretch.to].map((place) =>
    distanceAlong(reader, shape, place, edge.name),
  );
  if (width === undefined || a === undefined || b === undefined) return [];
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  const over = Math.max(-from, to - shape.path.length);
  if (over > ON_CORNER) {
    const message = say`${edge.name} is ${printLength(shape.path.length, reader.unit)} long: this place lies ${printLength(over, reader.unit)} beyond its end.`;
    report(reader, 'out-of-reach', node.stretch.at, message);
    return [];
  }
  const [start, end] = [drawnAt(edge, from), drawnAt(edge, to)];
  return [{ edge: edge.name, from: start, to: end, widthFrom: width, widthTo: width, stepped: true }];
}

/** How far along an edge as drawn, mouths of darts and all, a sewn distance falls. */
export function drawnAt(edge: Edge, sewn: number): number {
  let [left, drawn] = [sewn, 0];
  for (const { path, dart } of edge.parts) {
    if (dart === undefined && left <= path.length) return drawn + Math.max(0, left);
    if (dart === undefined) left -= path.length;
    drawn += path.length;
  }
  return drawn;
}

/** Lines that give a width to edges by name. */
function stated(
  reader: Reader,
  edges: readonly Edge[],
  line: Statement,
  node: AllowNode,
): readonly StatedAllowance[] {
  if (node.running !== undefined || node.stretch !== undefined || node.edges.length === 0) return [];
  reader.statement = line;
  return node.edges.flatMap((ref): StatedAllowance[] => {
    const name = ref.path[0]?.text ?? '';
    const quiet = edges.some((edge) => edge.name === name && ref.path.length === 1);
    const width = quiet ? widthOf(reader, node.width) : undefined;
    if (width === undefined) return [];
    return [{ edge: name, width, statement: line, at: node.width.at, shared: node.edges.length > 1 }];
  });
}

/** The width once more, without saying its faults again. */
function widthOf(reader: Reader, expr: Expr): number | undefined {
  const before = reader.findings.length;
  const width = allowance(reader, expr, 'allow');
  reader.findings.length = before;
  return width;
}

/** `inlay 2.5cm at side, centre` */
function inlays(
  reader: Reader,
  edges: readonly Edge[],
  lines: readonly (readonly [Statement, InlayNode])[],
): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (const [line, node] of lines) {
    reader.statement = line;
    const width = allowance(reader, node.width, 'inlay');
    if (width === undefined) continue;
    for (const ref of node.edges) {
      const edge = ownEdge(reader, edges, ref);
      if (edge !== undefined && width > 0) found.set(edge.name, width);
    }
  }
  return found;
}

/** A point is a corner within rounding, mm. */
export const ON_CORNER = 0.05;

/** `corner at P turned back`; P must be a corner. */
function ruledBefore(reader: Reader, said: Point[], { at, point }: CornerNode, place: Point): void {
  if (said.some((other) => distance(other, place) < ON_CORNER)) {
    const message = say`How the corner at ${wordsOf(reader, point)} is cut was said already, and the first line counts. Take one of the two out.`;
    report(reader, 'defined-twice', at, message);
  }
  said.push(place);
}

function cornerCut(
  reader: Reader,
  { edges, corners }: Outline,
  line: Statement,
  node: CornerNode,
  said: Point[],
): Piece['cornerCuts'] {
  const cuts = cornerCuts(reader, [line]);
  const isCorner = ({ point }: Piece['cornerCuts'][number]): boolean =>
    edges.some(({ path }) => distance(path.end, point) < ON_CORNER);
  if (cuts.every(isCorner)) {
    cuts.forEach(({ point }) => ruledBefore(reader, said, node, point));
    return cuts;
  }
  const known = corners.map((corner) => corner.name).filter((one) => one !== '');
  report(
    reader,
    'not-on-line',
    node.point.at,
    say`${wordsOf(reader, node.point)} is no corner of this piece: no edge ends there.${known.length > 0 ? say` Its corners are ${known.join(', ')}.` : ''}`,
  );
  return [];
}
