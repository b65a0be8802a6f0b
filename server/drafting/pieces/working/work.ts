/** Makes a piece worked from another: its steps in the order they are written, on a copy. */
import { say } from '../../../../grammar/say';
import type { Expr, Statement } from '../../../../grammar/syntax';
import { distance, lineIntersections, mirror, subtract, type Point } from '../../../geometry';
import type { Piece } from '../../model';
import { pointOf } from '../../shapes/phrase';
import { lengthOf, ofKind } from '../../values/arithmetic';
import { printLength } from '../../values/quantity';
import { report, wordsOf, type Reader } from '../../values/reader';
import { moved } from '../moved';
import { areaLeft } from '../holes';
import { stretchesAfter } from '../stretches';
import type { OwnParts } from '../parts';
import { centreOf, dartNamed, edgeNamed, onOutline, placeOn, remember, type Step } from './bench';
import type { Worked } from './ring';
import { benchFor, closedBy, doStep, SHAPING_STEPS, shapedBy, TRUE_STEP } from './shaping';
import { lengthenStep } from './shorten';
import { slash, spread } from './slash';
import { smoothAt } from './smooth';
import { swingDart } from './swing';
import { widenStep } from './widen';

export { remember } from './bench';

/**
 * The piece with every step of a block done; undefined when one can't be. What only shapes it (darts, pleats, gathers) is
 * left out when it can't be had, and named in `unbuilt`.
 */
export function workPiece(
  reader: Reader,
  base: Piece,
  block: readonly Statement[],
  own: { readonly source: string; readonly paired?: string | undefined; readonly parts: OwnParts },
): Piece | undefined {
  const bench = benchFor(reader, own.parts, base, own);
  let worked: Worked = base;
  remember(own.parts, worked);
  for (const line of block) {
    const shaping = SHAPING_STEPS[line.node.kind];
    if (shaping !== undefined) worked = shapedBy(shaping, bench, worked, line);
    const step = STEPS[line.node.kind];
    if (step === undefined) continue;
    const next = doStep(step, bench, worked, line);
    if (next === undefined) return undefined;
    worked = next;
  }
  const area = areaLeft(worked.edges, worked.holes);
  const running = stretchesAfter(base, worked);
  return { ...base, ...worked, area, running, unbuilt: [...base.unbuilt, ...bench.failed] };
}

/** The piece turned over, as `mirrored` asks. */
export const mirroredPiece = (piece: Piece): Piece => moved(piece, mirror({ x: 0, y: 0 }, { x: 0, y: 1 }));

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
      say`A dart is swung by a share above 0 and up to 1, such as 1/2.`,
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
const close: Step = (bench, worked, line) => {
  const { node } = line;
  if (node.kind !== 'close') return undefined;
  const dart = dartNamed(bench, worked, node.dart);
  const into = edgeNamed(bench, worked, node.into);
  if (dart === undefined || into === undefined) return undefined;
  const { shape, index } = into;
  const middle = { x: (dart.from.x + dart.to.x) / 2, y: (dart.from.y + dart.to.y) / 2 };
  const hits = lineIntersections(dart.pivot, subtract(dart.pivot, middle), shape.path).filter(
    ({ u }) => u > 0,
  );
  const s = hits.length > 0 ? hits.reduce((a, b) => (b.u < a.u ? b : a)).s : shape.path.locate(dart.pivot).s;
  const to = {
    dart,
    share: 1,
    edge: index,
    s,
    centre: centreOf(bench, worked),
    opens: 'wedge' as const,
  };
  return closedBy(swingDart(worked, { ...to, taken: new Set() }), dart.name, bench.source, line);
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
      say`${wordsOf(bench.reader, node.hinge)} is neither end of the cut; it hinges at one of them.`,
    );
  }
  const reach = away(open.point);
  if (Math.abs(width) > 2 * reach) {
    return report(
      bench.reader,
      'no-such-number',
      node.open.at,
      say`A cut of ${printLength(reach, bench.reader.unit)} can't be opened ${printLength(width, bench.reader.unit)} about its end: at most twice its length.`,
    );
  }
  return slash(worked, open, turn, width, centreOf(bench, worked), bench.reader.inward ?? 1);
};

const spreadOut: Step = (bench, worked, { node }) => {
  if (node.kind !== 'spread') return undefined;
  const [from, to] = [onOutline(bench, worked, node.along), onOutline(bench, worked, node.to)];
  const width = lengthOf(bench.reader, node.width, 'spread');
  if (from === undefined || to === undefined || width === undefined) return undefined;
  if (distance(from.point, to.point) < 1e-6) {
    return report(
      bench.reader,
      'no-length',
      node.to.at,
      say`Both ends of the cut are one place, so nothing is cut and nothing spreads.`,
    );
  }
  return spread(worked, from, to, width, centreOf(bench, worked), bench.reader.inward ?? 1);
};

const smooth: Step = (bench, worked, line) => {
  const { node } = line;
  if (node.kind !== 'smooth') return undefined;
  const point = pointOf(bench.reader, node.point, 'smooth');
  const by = lengthOf(bench.reader, node.by, 'by');
  if (point === undefined || by === undefined) return undefined;
  const result = smoothAt(worked, point, by);
  if (result !== undefined) {
    const { edge, moved: off, added } = result;
    const name = wordsOf(bench.reader, node.point);
    const smoothed = [...(worked.smoothed ?? []), { name, edge, statement: line, by, moved: off, added }];
    return { ...named(result.worked, node.point, point), smoothed };
  }
  return report(
    bench.reader,
    'out-of-reach',
    node.point.at,
    say`${wordsOf(bench.reader, node.point)} has not ${printLength(by, bench.reader.unit)} of one edge on each side of it to be smoothed.`,
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

const STEPS: { readonly [K in Statement['node']['kind']]?: Step } = {
  swing,
  close,
  slash: slashed,
  spread: spreadOut,
  lengthen: lengthenStep,
  shorten: lengthenStep,
  widen: widenStep,
  smooth,
  true: TRUE_STEP,
};
