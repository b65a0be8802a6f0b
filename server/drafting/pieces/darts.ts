/** Darts: laid on an edge or drafted in the outline, their legs made equal, their edge ready to be trued. */
import { say } from '../../../grammar/say';
import type { DartNode, Statement } from '../../../grammar/syntax';
import { add, distance, midpoint, normalised, Path, scale, subtract, type Point } from '../../geometry';
import type { Dart, Edge, EdgePart } from '../model';
import { distanceAlong } from '../shapes/places';
import { edgeShape } from '../shapes/parts';
import { pointOf } from '../shapes/phrase';
import { lengthOf } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, type Reader } from '../values/reader';
import { ownEdge } from './cutting';
import { edgeOf, type DraftedDart } from './outline';
import { pressing } from './pressing';

/** A dart narrower than this, mm, is none: the body needs no shaping there. */
const NO_DART = 0.05;

/** A dart as its line says it, not yet cut into the edge. */
export interface Laid {
  readonly statement: Statement;
  readonly node: DartNode;
  readonly edge: Edge;
  /** Sewn distance of its middle along the edge, darts not counted. */
  readonly s: number;
  readonly width: number;
}

/** Reads the line of a dart laid on an edge; undefined when it can't be had, `none` when it is too narrow to be one. */
export function laidDart(
  reader: Reader,
  edges: readonly Edge[],
  statement: Statement,
  node: DartNode,
): Laid | 'none' | undefined {
  reader.statement = statement;
  const edge = ownEdge(reader, edges, node.on!);
  const width = node.width === undefined ? noWidth(reader, node) : lengthOf(reader, node.width, 'wide');
  if (edge === undefined || width === undefined) return undefined;
  const shape = edgeShape(edge);
  const s = shape.kind === 'point' ? undefined : distanceAlong(reader, shape, node.place!, edge.name);
  if (s === undefined) return undefined;
  if (width < -NO_DART) {
    return report(
      reader,
      'negative-dart',
      node.width!.at,
      say`${node.name.text} comes to ${printLength(width, reader.unit)} wide: below nothing. The edge is too short for the body already; take less out at the side, or give the dart max(nothing, …).`,
    );
  }
  return width <= NO_DART ? 'none' : { statement, node, edge, s, width };
}

const noWidth = (reader: Reader, node: DartNode): undefined =>
  report(
    reader,
    'dart-without-width',
    node.name.at,
    say`How wide is ${node.name.text}? Say it after a comma: 2.5cm wide.`,
  );

/** Where a dart's mouth lies on its edge: two distances whose points are the width apart, straight across. */
function mouth(path: Path, s: number, width: number): { a: number; b: number } {
  let half = width / 2;
  // the chord of a shallow curve is a hair shorter than the stretch: two or three corrections settle it
  for (let i = 0; i < 8; i++) {
    const chord = distance(path.pointAt(s - half), path.pointAt(s + half));
    if (!(chord > 0) || Math.abs(chord - width) < 1e-9) break;
    half *= width / chord;
  }
  return { a: s - half, b: s + half };
}

/** Cuts darts into one edge. The edge comes back in parts; the darts with legs as they fall, to be made equal by truing. */
export function cutDarts(
  reader: Reader,
  edge: Edge,
  laid: readonly Laid[],
  source: string,
): { readonly edge: Edge; readonly darts: readonly Dart[] } {
  const shape = edgeShape(edge);
  if (shape.kind === 'point' || edge.parts.some((part) => part.dart !== undefined))
    return mixed(reader, edge, laid);
  const { path } = shape;
  const parts: EdgePart[] = [];
  const darts: Dart[] = [];
  let from = 0;
  for (const one of [...laid].sort((p, q) => p.s - q.s)) {
    reader.statement = one.statement;
    const { a, b } = mouth(path, one.s, one.width);
    if (a < from - 1e-6 || b > path.length + 1e-6) {
      const over =
        from > 0 && a < from ? say`runs into the dart before it` : say`runs beyond the end of ${edge.name}`;
      report(
        reader,
        'darts-overlap',
        one.node.name.at,
        say`${one.node.name.text}, ${printLength(one.width, reader.unit)} wide, ${over}. Move it, or make it narrower.`,
      );
      continue;
    }
    const dart = placedDart(reader, one, [path.pointAt(a), path.pointAt(b)], path, source);
    if (dart === undefined) continue;
    darts.push(dart);
    parts.push({ path: path.part(from, a) }, { path: Path.line(dart.from, dart.to), dart: dart.name });
    from = b;
  }
  parts.push({ path: path.part(from, path.length) });
  return { edge: { ...edge, ...edgeOf(parts, path.start) }, darts };
}

function mixed(reader: Reader, edge: Edge, laid: readonly Laid[]): { edge: Edge; darts: readonly Dart[] } {
  for (const one of laid) {
    reader.statement = one.statement;
    report(
      reader,
      'darts-overlap',
      one.node.name.at,
      say`${edge.name} has a dart in its outline already; draft this one in the outline as well.`,
    );
  }
  return { edge, darts: [] };
}

/** Pivot, tip and pressing of a dart with its mouth in place. */
function placedDart(
  reader: Reader,
  laid: Laid,
  [from, to]: readonly [Point, Point],
  path: Path,
  source: string,
): Dart | undefined {
  const { node, statement, s } = laid;
  const middle = path.pointAt(s);
  const pivot = pivotOf(reader, node, middle, path.tangentAt(s));
  if (pivot === undefined) return undefined;
  const short = node.sewnTo === undefined ? 0 : lengthOf(reader, node.sewnTo, 'short');
  if (short === undefined) return undefined;
  const tip = shortOf(pivot, midpoint(from, to), short);
  return {
    name: node.name.text,
    source: `${source}/${node.name.text}`,
    statement,
    edge: laid.edge.name,
    from,
    to,
    ...legs(from, to, pivot),
    ...{ tip, asLaid: asLaid(from, to, tip) },
    pressed: pressing(reader, node.pressed, { side: 'from', at: from }, { side: 'to', at: to }),
    drafted: false,
  };
}

function legs(from: Point, to: Point, pivot: Point): Pick<Dart, 'pivot' | 'width' | 'angle' | 'legsApart'> {
  const [a, b] = [subtract(from, pivot), subtract(to, pivot)];
  const angle = Math.abs(Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)) * (180 / Math.PI);
  return {
    pivot,
    width: distance(from, to),
    angle,
    legsApart: Math.abs(distance(from, pivot) - distance(to, pivot)),
  };
}

export const asLaid = (from: Point, to: Point, tip: Point): Dart['asLaid'] => ({
  width: distance(from, to),
  length: distance(midpoint(from, to), tip),
});

/** `swings about P`, or square in from the edge by its length. */
function pivotOf(reader: Reader, node: DartNode, middle: Point, along: Point): Point | undefined {
  if (node.swingsAbout !== undefined) return pointOf(reader, node.swingsAbout, 'swings about');
  if (node.long === undefined) {
    return report(
      reader,
      'dart-without-length',
      node.name.at,
      say`How long is ${node.name.text}? Say 9cm long, or swings about P.`,
    );
  }
  const long = lengthOf(reader, node.long, 'long');
  if (long === undefined) return undefined;
  const inward = reader.inward ?? 1;
  return add(middle, scale({ x: -along.y * inward, y: along.x * inward }, long));
}

/** The sewn end: on the way from the pivot to the mouth's middle. */
function shortOf(pivot: Point, middle: Point, short: number): Point {
  const toward = normalised(subtract(middle, pivot));
  return toward === undefined || short <= 0
    ? pivot
    : add(pivot, scale(toward, Math.min(short, distance(pivot, middle))));
}

/** A dart drafted in the outline, with what its own line adds. */
export function draftedDart(
  reader: Reader,
  drafted: DraftedDart,
  lines: readonly Statement[],
  source: string,
): Dart {
  const { name, statement, edge, from, to, apex } = drafted;
  const line = lines.find(
    ({ node }) => node.kind === 'dart' && node.on === undefined && node.name.text === name,
  );
  const node = line?.node.kind === 'dart' ? line.node : undefined;
  if (line !== undefined) reader.statement = line;
  const short = node?.sewnTo === undefined ? 0 : (lengthOf(reader, node.sewnTo, 'short') ?? 0);
  const tip = shortOf(apex, midpoint(from, to), short);
  return {
    name,
    source: `${source}/${name}`,
    statement: line ?? statement,
    edge,
    from,
    to,
    ...legs(from, to, apex),
    ...{ tip, asLaid: asLaid(from, to, tip) },
    pressed: pressing(reader, node?.pressed, { side: 'from', at: from }, { side: 'to', at: to }),
    drafted: true,
  };
}

/** The dart with its mouth moved, as truing leaves it. */
export const withMouth = (dart: Dart, from: Point, to: Point): Dart => {
  const short = distance(dart.pivot, dart.tip);
  const { legsApart } = dart;
  return {
    ...dart,
    from,
    to,
    ...legs(from, to, dart.pivot),
    tip: shortOf(dart.pivot, midpoint(from, to), short),
    legsApart,
  };
};
