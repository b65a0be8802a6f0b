/** Makes a piece worked from another: its steps in the order they are written, on a copy. */
import type { Expr, Place, Statement } from '../../../../grammar/syntax';
import { areaOf, lineIntersections, mirror, signedArea, subtract, type Point } from '../../../geometry';
import type { Edge, Piece } from '../../model';
import { dartPoint, edgeShape } from '../../shapes/parts';
import { distanceAlong } from '../../shapes/places';
import { pathOf, pointOf } from '../../shapes/phrase';
import { lengthOf, ofKind } from '../../values/arithmetic';
import { printLength } from '../../values/quantity';
import { report, wordsOf, type Reader } from '../../values/reader';
import { moved } from '../both-sides';
import { ownEdge } from '../cutting';
import type { OwnParts } from '../parts';
import type { Worked } from './ring';
import { slash, spread, type OnEdge } from './slash';
import { smoothAt, trued } from './smooth';
import { swingDart } from './swing';

/** What a step may look at besides the outline. */
interface Bench {
  readonly reader: Reader;
  readonly parts: OwnParts;
  /** Name of the edge that stays where it is. */
  readonly centre: string | undefined;
}

type Step = (bench: Bench, worked: Worked, line: Statement) => Worked | undefined;

/** The piece with every step of a block done; undefined when one can't be. */
export function workPiece(
  reader: Reader,
  base: Piece,
  block: readonly Statement[],
  parts: OwnParts,
): Piece | undefined {
  const fold = base.fold?.edge ?? base.edges.find(({ name }) => name === 'centre')?.name;
  const bench: Bench = { reader, parts, centre: fold };
  let worked: Worked = base;
  remember(parts, worked);
  for (const { name, path } of base.balance) parts.replace(name, { kind: 'line', path });
  for (const line of block) {
    const step = STEPS[line.node.kind];
    if (step === undefined) continue;
    reader.statement = line;
    reader.inward = signedArea(worked.edges.map(({ path }) => path)) < 0 ? -1 : 1;
    const next = step(bench, worked, line);
    if (next === undefined) return undefined;
    worked = next;
    remember(parts, worked);
  }
  return { ...base, ...worked, area: areaOf(worked.edges.map(({ path }) => path)) };
}

/** The piece's own names mean what they are after the step just done. */
export function remember(parts: OwnParts, { edges, darts, corners }: Worked): void {
  for (const edge of edges) parts.replace(edge.name, edgeShape(edge));
  for (const { name, point } of corners) parts.replace(name, { kind: 'point', point });
  for (const dart of darts) {
    for (const word of ['inner', 'outer', 'pivot', 'tip'])
      parts.replace(`${dart.name}.${word}`, dartPoint(dart, word)!);
  }
}

/** The piece turned over, as `mirrored` asks. */
export const mirroredPiece = (piece: Piece): Piece => moved(piece, mirror({ x: 0, y: 0 }, { x: 0, y: 1 }));

function dartNamed({ reader }: Bench, worked: Worked, expr: Expr): Worked['darts'][number] | undefined {
  const name = expr.kind === 'ref' ? expr.path[0]!.text : '';
  const dart = worked.darts.find((one) => one.name === name);
  if (dart !== undefined) return dart;
  const known =
    worked.darts.length === 0 ? 'It has none.' : `It has ${worked.darts.map((one) => one.name).join(', ')}.`;
  return report(
    reader,
    'unknown-name',
    expr.at,
    `The piece has no dart called ${wordsOf(reader, expr)} at this step. ${known}`,
  );
}

const numberOf = (worked: Worked, edge: Edge): number =>
  worked.edges.findIndex(({ name }) => name === edge.name);

const centreOf = (bench: Bench, worked: Worked): number | undefined => {
  const index = worked.edges.findIndex(({ name }) => name === bench.centre);
  return index < 0 ? undefined : index;
};

function placeOn({ reader }: Bench, worked: Worked, expr: Expr, place: Place): OnEdge | undefined {
  const edge = ownEdge(reader, worked.edges, expr);
  const shape = edge && edgeShape(edge);
  if (edge === undefined || shape === undefined || shape.kind === 'point') return undefined;
  const s = distanceAlong(reader, shape, place, edge.name);
  return s === undefined ? undefined : { edge: numberOf(worked, edge), s, point: shape.path.pointAt(s) };
}

/** A point that must lie on the outline. */
function onOutline({ reader }: Bench, worked: Worked, expr: Expr): OnEdge | undefined {
  const point = pointOf(reader, expr, 'a cut');
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
    `${wordsOf(reader, expr)} lies inside the piece or outside it, ${printLength(best?.away ?? 0, reader.unit)} from its outline; a cut goes from edge to edge.`,
  );
}

const swing: Step = (bench, worked, { node }) => {
  if (node.kind !== 'swing') return undefined;
  const dart = dartNamed(bench, worked, node.dart);
  const share = node.share === undefined ? 1 : ofKind(bench.reader, node.share, 'ratio', 'by');
  const place = placeOn(bench, worked, node.to, node.place);
  if (dart === undefined || share === undefined || place === undefined) return undefined;
  if (!(share > 0 && share <= 1)) {
    return report(
      bench.reader,
      'no-such-number',
      node.share!.at,
      'A dart is swung by a share above 0 and up to 1, such as 1/2.',
    );
  }
  const taken = new Set([...worked.darts, ...worked.edges].map(({ name }) => name));
  return swingDart(worked, {
    dart,
    share,
    edge: place.edge,
    s: place.s,
    centre: centreOf(bench, worked),
    opens: 'dart',
    taken,
  });
};

/** The cut runs from the dart's mouth through its pivot on to the edge; the edge grows by what opens there. */
const close: Step = (bench, worked, { node }) => {
  if (node.kind !== 'close') return undefined;
  const dart = dartNamed(bench, worked, node.dart);
  const edge = ownEdge(bench.reader, worked.edges, node.into);
  const shape = edge && edgeShape(edge);
  if (dart === undefined || edge === undefined || shape === undefined || shape.kind === 'point')
    return undefined;
  const middle = { x: (dart.from.x + dart.to.x) / 2, y: (dart.from.y + dart.to.y) / 2 };
  const hits = lineIntersections(dart.pivot, subtract(dart.pivot, middle), shape.path).filter(
    ({ u }) => u > 0,
  );
  const s = hits.length > 0 ? hits.reduce((a, b) => (b.u < a.u ? b : a)).s : shape.path.locate(dart.pivot).s;
  const to = {
    dart,
    share: 1,
    edge: numberOf(worked, edge),
    s,
    centre: centreOf(bench, worked),
    opens: 'wedge' as const,
  };
  return swingDart(worked, { ...to, taken: new Set() });
};

const slashed: Step = (bench, worked, { node }) => {
  if (node.kind !== 'slash') return undefined;
  const [from, to] = [onOutline(bench, worked, node.from), onOutline(bench, worked, node.to)];
  const width = lengthOf(bench.reader, node.open, 'open');
  const hinge = pointOf(bench.reader, node.hinge, 'hinge at');
  if (from === undefined || to === undefined || width === undefined || hinge === undefined) return undefined;
  const away = (p: Point): number => Math.hypot(p.x - hinge.x, p.y - hinge.y);
  const [open, turn] = away(from.point) < away(to.point) ? [to, from] : [from, to];
  if (away(turn.point) > 0.05) {
    return report(
      bench.reader,
      'not-on-line',
      node.hinge.at,
      `${wordsOf(bench.reader, node.hinge)} is neither end of the cut; it hinges at one of them.`,
    );
  }
  return slash(worked, open, turn, width, centreOf(bench, worked), bench.reader.inward ?? 1);
};

const spreadOut: Step = (bench, worked, { node }) => {
  if (node.kind !== 'spread') return undefined;
  const [from, to] = [onOutline(bench, worked, node.along), onOutline(bench, worked, node.to)];
  const width = lengthOf(bench.reader, node.width, 'spread');
  if (from === undefined || to === undefined || width === undefined) return undefined;
  return spread(worked, from, to, width, centreOf(bench, worked), bench.reader.inward ?? 1);
};

/** Across the piece along a line, drawn out to the outline on both sides; the part below the line moves. */
const lengthen: Step = (bench, worked, { node }) => {
  if (node.kind !== 'lengthen') return undefined;
  const by = lengthOf(bench.reader, node.by, node.kind);
  const line = pathOf(bench.reader, node.line, 'at');
  if (by === undefined || line === undefined) return undefined;
  const direction = subtract(line.path.end, line.path.start);
  const hits = worked.edges.flatMap((edge, index): OnEdge[] => {
    const shape = edgeShape(edge);
    if (shape.kind === 'point') return [];
    return lineIntersections(line.path.start, direction, shape.path).map(({ s, point }) => ({
      edge: index,
      s,
      point,
    }));
  });
  const [one, other] = hits;
  if (one === undefined || other === undefined || hits.length !== 2) {
    return report(
      bench.reader,
      'never-meet',
      node.line.at,
      `${wordsOf(bench.reader, node.line)} must cross the outline twice to lengthen the piece there; it crosses it ${hits.length} times.`,
    );
  }
  return spread(worked, one, other, by, upperEdge(worked), bench.reader.inward ?? 1);
};

/** The edge that lies highest stays where it is. */
function upperEdge(worked: Worked): number {
  const tops = worked.edges.map(({ path }) => (path.box.minY + path.box.maxY) / 2);
  return tops.indexOf(Math.min(...tops));
}

const smooth: Step = (bench, worked, { node }) => {
  if (node.kind !== 'smooth') return undefined;
  const point = pointOf(bench.reader, node.point, 'smooth');
  const by = lengthOf(bench.reader, node.by, 'by');
  if (point === undefined || by === undefined) return undefined;
  const result = smoothAt(worked, point, by);
  if (result.done) return named(result.worked, node.point, point);
  return report(
    bench.reader,
    'out-of-reach',
    node.point.at,
    `${wordsOf(bench.reader, node.point)} has not ${printLength(by, bench.reader.unit)} of one edge on each side of it to be smoothed.`,
  );
};

/** A point that was smoothed keeps its name, on the new line. */
function named(worked: Worked, expr: Expr, point: Point): Worked {
  const name = expr.kind === 'ref' && expr.path.length === 1 ? expr.path[0]!.text : '';
  if (name === '') return worked;
  const places = worked.edges.map(({ path }) => path.locate(point));
  const near = places.reduce((a, b) => (b.distance < a.distance ? b : a));
  return {
    ...worked,
    corners: [...worked.corners.filter((corner) => corner.name !== name), { name, point: near.point }],
  };
}

const trueStep: Step = (bench, worked, { node }) => {
  if (node.kind !== 'true') return undefined;
  const edge = ownEdge(bench.reader, worked.edges, node.edge);
  return edge && trued(worked, numberOf(worked, edge));
};

const STEPS: { readonly [K in Statement['node']['kind']]?: Step } = {
  swing,
  close,
  slash: slashed,
  spread: spreadOut,
  lengthen,
  smooth,
  true: trueStep,
};
