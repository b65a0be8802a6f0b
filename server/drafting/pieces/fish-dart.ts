/** Fish darts: inside the piece, with a point at each end and the widest place between. */
import { say } from '../../../grammar/say';
import type { FishDartNode, Statement } from '../../../grammar/syntax';
import { add, distance, Path, scale, type Point } from '../../geometry';
import type { FishDart } from '../model';
import { distanceAlong } from '../shapes/places';
import { pointOf } from '../shapes/phrase';
import { lengthOf } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, type Reader } from '../values/reader';
import { pressing } from './pressing';

/** A dart narrower than this, mm, is none: the body needs no shaping there. */
const NO_DART = 0.05;

/** @returns undefined when it can't be had, `none` when it comes to no width */
export function fishDart(
  reader: Reader,
  statement: Statement,
  node: FishDartNode,
  source: string,
): FishDart | 'none' | undefined {
  const [from, to] = [pointOf(reader, node.from, 'from'), pointOf(reader, node.to, 'to')];
  const width = lengthOf(reader, node.width, 'wide');
  if (from === undefined || to === undefined || width === undefined) return undefined;
  const widest = widestPlace(reader, node, from, to);
  if (widest === undefined) return undefined;
  if (width < -NO_DART) {
    return report(
      reader,
      'negative-dart',
      node.width.at,
      say`${node.name.text} comes to ${printLength(width, reader.unit)} wide: below nothing. There is too little cloth already; give it max(nothing, …), or take less out elsewhere.`,
    );
  }
  if (width <= NO_DART) return 'none';
  const half = scale({ x: to.x - from.x, y: to.y - from.y }, width / 2 / distance(from, to));
  // to the right of the way as seen on paper, y down
  const right = add(widest, { x: -half.y, y: half.x });
  const left = add(widest, { x: half.y, y: -half.x });
  return {
    name: node.name.text,
    source: `${source}/${node.name.text}`,
    statement,
    ...{ from, to, left, right, width },
    pressed: pressing(reader, node.pressed, { side: 'left', at: left }, { side: 'right', at: right }),
  };
}

/** Between the two points, by a place on the straight way from one to the other. */
function widestPlace(reader: Reader, node: FishDartNode, from: Point, to: Point): Point | undefined {
  const { text } = node.name;
  const axis = Path.line(from, to);
  if (axis.length < NO_DART) {
    return report(
      reader,
      'no-length',
      node.to.at,
      say`Both points of ${text} are one place, so it has no length.`,
    );
  }
  const s = distanceAlong(reader, { kind: 'line', path: axis }, node.place, say`the middle of ${text}`);
  if (s === undefined) return undefined;
  if (s > NO_DART && s < axis.length - NO_DART) return axis.pointAt(s);
  return report(
    reader,
    'out-of-reach',
    node.place.at,
    say`${text} is widest between its two points, which lie ${printLength(axis.length, reader.unit)} apart; this place lies at one of them or beyond.`,
  );
}
