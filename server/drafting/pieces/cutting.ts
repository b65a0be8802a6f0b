/** The lines of a piece that say how it is cut: cutting words, fold, grain, allowances, labels, balance lines. */
import type { AllowNode, CutLayer as CutLayerNode, CutNode, Expr, GrainNode, Ref, Statement } from '../../../grammar/syntax';
import { add, scale, type Point } from '../../geometry';
import type { CutLayer, CutWords, Edge, Piece } from '../model';
import { nearest } from '../names/spelling';
import { pointOf, pathOf } from '../shapes/phrase';
import { lengthOf, ofKind } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';

/** `cut pair in silk, right side up` */
export function cutWords(reader: Reader, node: CutNode): CutWords | undefined {
  const layers = node.layers.map((layer) => cutLayer(reader, layer));
  if (layers.some((layer) => layer === undefined)) return undefined;
  return { layers: layers as CutLayer[], rightSideUp: node.rightSideUp, text: reader.statement.text.trim() };
}

function cutLayer(reader: Reader, node: CutLayerNode): CutLayer | undefined {
  const count = typeof node.count === 'number' ? node.count : ofKind(reader, node.count, 'ratio', 'cut');
  if (count === undefined) return undefined;
  const at = typeof node.count === 'number' ? node.at : node.count.at;
  if (!Number.isInteger(count) || count < 1 || count > 999) {
    return report(reader, 'no-such-number', at, `Pieces are cut in whole numbers from 1 up; this comes to ${count}.`);
  }
  return { count, as: node.as ?? 'single', cloth: node.cloth?.text ?? '' };
}

/** One of the piece's own edges by name; a finding with the nearest when there is none. */
export function ownEdge(reader: Reader, edges: readonly Edge[], ref: Ref | Expr): Edge | undefined {
  if (ref.kind !== 'ref' || ref.path.length !== 1) {
    return report(reader, 'wrong-kind', ref.at, `${wordsOf(reader, ref)} is no edge of this piece: an edge is written by its name alone here.`);
  }
  const name = ref.path[0]!.text;
  const edge = edges.find((one) => one.name === name);
  if (edge !== undefined) return edge;
  const near = nearest(name, edges.map((one) => one.name));
  const advice = near === undefined ? `Its edges are ${edges.map((one) => one.name).join(', ')}.` : `Did you mean ${near}?`;
  return report(reader, 'unknown-name', ref.at, `This piece has no edge called ${name}. ${advice}`, {
    fixes: near === undefined ? [] : [{ title: `Change to ${near}`, edits: [{ statement: reader.statement, at: ref.at, text: near }] }],
  });
}

/** How far a folded edge may stray from straight: paper folds along a ruler (common practice). */
const STRAIGHT = 0.2;

export function foldEdge(reader: Reader, edges: readonly Edge[], ref: Ref): Edge | undefined {
  const edge = ownEdge(reader, edges, ref);
  if (edge === undefined || edge.path.isStraight(STRAIGHT)) return edge;
  return report(reader, 'fold-not-straight', ref.at, `Cloth folds along a straight line, but ${edge.name} bends.`, {
    related: [{ source: edge.source, message: `${edge.name} runs here.` }],
  });
}

type Grain = NonNullable<Piece['grain']>;

/** `grain along E`, `from P to Q`, `bias to E` (45° off it, as seen clockwise). */
export function grainLine(reader: Reader, node: GrainNode, source: string): Grain | undefined {
  const along = node.along ?? node.biasTo;
  if (along === undefined) {
    const from = pointOf(reader, node.from!, 'grain from');
    const to = pointOf(reader, node.to!, 'grain to');
    return from && to && { from, to, bias: false, source };
  }
  const shape = pathOf(reader, along, 'grain');
  if (shape === undefined) return undefined;
  const { start, end } = shape.path;
  if (node.along !== undefined) return { from: start, to: end, bias: false, source };
  return { from: start, to: biasEnd(start, end), bias: true, source };
}

function biasEnd(start: Point, end: Point): Point {
  const along = { x: end.x - start.x, y: end.y - start.y };
  const half = Math.SQRT1_2;
  return add(start, scale({ x: along.x - along.y, y: along.x + along.y }, half));
}

/** Allowances by edge, from the piece's own `allow` lines: the whole piece first, then edge by edge, later lines last. */
export function allowances(reader: Reader, edges: readonly Edge[], lines: readonly Statement[]): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  const stated = lines.filter((line): line is Statement & { node: AllowNode } => line.node.kind === 'allow');
  const inOrder = [...stated.filter(({ node }) => node.edges.length === 0), ...stated.filter(({ node }) => node.edges.length > 0)];
  for (const line of inOrder) {
    if (line.node.running !== undefined) continue;
    reader.statement = line;
    const width = allowance(reader, line.node);
    if (width === undefined) continue;
    if (line.node.edges.length === 0) for (const edge of edges) found.set(edge.name, width);
    for (const ref of line.node.edges) {
      const edge = ownEdge(reader, edges, ref);
      if (edge !== undefined) found.set(edge.name, width);
    }
  }
  return found;
}

/** No seam or hem wants more than this; a larger one is a slip of the unit (common practice: hems to 15 cm, trains to 40). */
const WIDEST = 500;

function allowance(reader: Reader, node: AllowNode): number | undefined {
  const width = lengthOf(reader, node.width, 'allow');
  if (width === undefined || (width >= 0 && width <= WIDEST)) return width;
  return report(
    reader,
    'no-such-number',
    node.width.at,
    `An allowance of ${printLength(width, reader.unit)} can't be cut: it lies between 0 and ${printLength(WIDEST, reader.unit)}.`,
  );
}
