/** The figures of a drafted pattern as JSON: millimetres, square millimetres, degrees; y down. */
import type { Dart, Pattern, Piece, Seam, Shape, Trued, Value } from '../../drafting/model';
import { rounded } from './json';

const VERSION = 1;

export function measureJson(pattern: Pattern): unknown {
  return {
    version: VERSION,
    body: bodyName(pattern),
    values: mapped(pattern.values, valueJson),
    points: mapped(pattern.shapes, (shape) =>
      shape.kind === 'point' ? [rounded(shape.point.x), rounded(shape.point.y)] : undefined,
    ),
    curves: mapped(pattern.shapes, curveJson),
    pieces: mapped(byName(pattern.pieces), pieceJson),
    seams: mapped(byName(pattern.seams), seamJson),
  };
}

/** `ferrywoman`, `standard M`, or null where the pattern is drafted for nobody. */
export function bodyName({ body }: Pattern): string | null {
  if (body === undefined) return null;
  return body.size === undefined ? body.name : `${body.name} ${body.size}`;
}

/** An object in the order of a map; what comes out undefined is left out. */
function mapped<T>(map: ReadonlyMap<string, T>, make: (value: T) => unknown): Record<string, unknown> {
  const entries = [...map].map(([name, value]) => [name, make(value)] as const);
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined));
}

const byName = <T extends { readonly name: string }>(things: readonly T[]): ReadonlyMap<string, T> =>
  new Map(things.map((thing) => [thing.name, thing]));

function valueJson(value: Value): unknown {
  if (value.kind === 'text') return { kind: 'text', value: value.text };
  return { kind: value.kind, value: rounded(value.amount) };
}

function curveJson(shape: Shape): unknown {
  return shape.kind === 'point' ? undefined : { length: rounded(shape.path.length) };
}

function pieceJson({ area, edges, darts, trued }: Piece): unknown {
  return {
    area: rounded(area),
    edges: mapped(byName(edges), ({ drawn, sewn }) => ({ drawn: rounded(drawn), sewn: rounded(sewn) })),
    ...(darts.length > 0 && { darts: mapped(byName(darts), dartJson) }),
    ...(trued.length > 0 && { trued: Object.fromEntries(trued.map((one) => [one.edge, truedJson(one)])) }),
  };
}

function dartJson({ edge, width, angle, from, pivot }: Dart): unknown {
  const legs = Math.hypot(from.x - pivot.x, from.y - pivot.y);
  return { edge, width: rounded(width), angle: rounded(angle), legs: rounded(legs) };
}

/** What was moved when the edge was trued, the farthest bend that it had, and its sewn length before. */
function truedJson({ kinks, moved, sewnBefore }: Trued): unknown {
  const bend = kinks.reduce((most, kink) => Math.max(most, Math.abs(kink)), 0);
  return { bend: rounded(bend), moved: rounded(moved), sewnBefore: rounded(sewnBefore) };
}

function seamJson({ leftLength, rightLength, difference }: Seam): unknown {
  return { left: rounded(leftLength), right: rounded(rightLength), difference: rounded(difference) };
}
