/** What every step of working a piece stands on: the piece as it is by then, and where its names lead. */
import { say } from '../../../../grammar/say';
import type { Expr, Place, Statement } from '../../../../grammar/syntax';
import type { Point } from '../../../geometry';
import type { ClosedDart, Edge } from '../../model';
import { dartPoint, edgeShape, fishPoint } from '../../shapes/parts';
import { distanceAlong } from '../../shapes/places';
import { pointOf, type PathShape } from '../../shapes/phrase';
import { printLength } from '../../values/quantity';
import { report, wordsOf, type Reader } from '../../values/reader';
import { ownEdge } from '../cutting';
import { rememberMark } from '../marks';
import type { OwnParts } from '../parts';
import type { Worked } from './ring';
import type { OnEdge } from './slash';

/** What a step may look at besides the outline. */
export interface Bench {
  readonly reader: Reader;
  readonly parts: OwnParts;
  /** Path of the piece that is made. */
  readonly source: string;
  /** Name of the edge that stays where it is. */
  readonly centre: string | undefined;
  /** Along the grain, where the piece has one on the straight: unit vector, either way. */
  readonly grain: Point | undefined;
  /** Darts, pleats and gathers that could not be had: the piece goes on without them. */
  readonly failed: Set<string>;
}

export type Step = (bench: Bench, worked: Worked, line: Statement) => Worked | undefined;

/** The piece's own names mean what they are after the step just done. */
export function remember(parts: OwnParts, { edges, darts, corners, balance, marks, shaping }: Worked): void {
  for (const { name, path } of balance) parts.replace(name, { kind: 'line', path });
  for (const mark of marks) rememberMark(parts, mark);
  for (const edge of edges) parts.replace(edge.name, edgeShape(edge));
  for (const { name, point } of corners) parts.replace(name, { kind: 'point', point });
  for (const dart of darts) {
    for (const word of ['inner', 'outer', 'pivot', 'tip'])
      parts.replace(`${dart.name}.${word}`, dartPoint(dart, word)!);
  }
  for (const dart of shaping?.fishDarts ?? []) {
    for (const word of ['inner', 'outer']) parts.replace(`${dart.name}.${word}`, fishPoint(dart, word)!);
  }
}

export function dartNamed(bench: Bench, worked: Worked, expr: Expr): Worked['darts'][number] | undefined {
  const { reader } = bench;
  const name = expr.kind === 'ref' ? expr.path[0]!.text : '';
  const dart = worked.darts.find((one) => one.name === name);
  if (dart !== undefined) return dart;
  if (bench.failed.has(name)) {
    // it has said why it is not there
    reader.blocked = true;
    return undefined;
  }
  const closed = worked.shaping?.closed.find((one) => one.name === name);
  if (closed !== undefined) return isClosed(reader, expr, closed);
  const known =
    worked.darts.length === 0
      ? say`It has none.`
      : say`It has ${worked.darts.map((one) => one.name).join(', ')}.`;
  return report(
    reader,
    'unknown-name',
    expr.at,
    say`The piece has no dart called ${wordsOf(reader, expr)} at this step. ${known}`,
  );
}

/** "bust-dart was closed by “close bust-dart into hem” before": the line is shown beside it. */
function isClosed(reader: Reader, expr: Expr, { name, source, statement }: ClosedDart): undefined {
  const words = statement.text.split('{')[0]!.trim();
  return report(
    reader,
    'unknown-name',
    expr.at,
    say`${name} was closed by “${words}” before: there is no such dart any more at this step.`,
    { related: [{ source, statement, message: say`${name} was closed here.` }] },
  );
}

export const numberOf = (worked: Worked, edge: Edge): number =>
  worked.edges.findIndex(({ name }) => name === edge.name);

export const centreOf = (bench: Bench, worked: Worked): number | undefined => {
  const index = worked.edges.findIndex(({ name }) => name === bench.centre);
  return index < 0 ? undefined : index;
};

/** An edge of the piece, and what is sewn of it. */
export interface Named {
  readonly edge: Edge;
  readonly index: number;
  readonly shape: PathShape;
}

export function edgeNamed({ reader }: Bench, worked: Worked, expr: Expr): Named | undefined {
  const edge = ownEdge(reader, worked.edges, expr);
  const shape = edge && edgeShape(edge);
  if (edge === undefined || shape === undefined || shape.kind === 'point') return undefined;
  return { edge, index: numberOf(worked, edge), shape };
}

export function placeOn(bench: Bench, worked: Worked, expr: Expr, place: Place): OnEdge | undefined {
  const named = edgeNamed(bench, worked, expr);
  const s = named && distanceAlong(bench.reader, named.shape, place, named.edge.name);
  return s === undefined ? undefined : { edge: named!.index, s, point: named!.shape.path.pointAt(s) };
}

/** A point that must lie on the outline. */
export function onOutline({ reader }: Bench, worked: Worked, expr: Expr): OnEdge | undefined {
  const point = pointOf(reader, expr, say`a cut`);
  if (point === undefined) return undefined;
  let best: (OnEdge & { away: number }) | undefined;
  worked.edges.forEach((edge, index) => {
    const shape = edgeShape(edge);
    if (shape.kind === 'point') return;
    const { s, distance } = shape.path.locate(point);
    if (best === undefined || distance < best.away) best = { edge: index, s, point, away: distance };
  });
  if (best !== undefined && best.away < 0.05) return best;
  return report(
    reader,
    'not-on-line',
    expr.at,
    say`${wordsOf(reader, expr)} lies inside the piece or outside it, ${printLength(best?.away ?? 0, reader.unit)} from its outline; a cut goes from edge to edge.`,
  );
}
