/** The plain lengths in a shape's phrase that say where it is, and which way it goes when each of them grows. */
import type { Axis } from '../../client/preview/protocol';
import type { Expr, Quantity, Step } from '../../grammar/syntax';
import type { Shape } from '../drafting/model';
import { written } from '../drafting/values/quantity';
import { dot, normalised, perpendicular, scale, subtract, type Path, type Point } from '../geometry';

export interface Held {
  readonly axis: Axis;
  /** The length in the text. */
  readonly at: Quantity;
}

/** The shape that a plain name of the same draft stands for. */
export type Sibling = (name: string) => Shape | undefined;

/** Lies on a line, or lies where it is said to lie, mm. */
const SAME_PLACE = 0.01;

/**
 * What a hand can change: steps by a length, a distance along a line or square to it, the depth of a hollow curve.
 *
 * @param at where the point lies, or where the curve is deepest
 */
export function heldBy(phrase: Expr, at: Point, sibling: Sibling): readonly Held[] {
  if (phrase.kind === 'bracket') return heldBy(phrase.inside, at, sibling);
  if (phrase.kind === 'placed') return found(alongLine(phrase, at, sibling));
  if (phrase.kind === 'way') return found(hollowHeld(phrase, sibling));
  if (phrase.kind !== 'step') return [];
  if (phrase.step.kind === 'squared-out') return found(squaredHeld(phrase.step, at, sibling));
  if (phrase.step.kind === 'bearing') return found(bearingHeld(phrase, at, sibling));
  return stepsHeld(phrase);
}

const found = (one: Held | undefined): readonly Held[] => (one === undefined ? [] : [one]);

/** `right 3cm down 2cm`: each step by its own; of two steps one way only the last is moved. */
function stepsHeld(phrase: Step): readonly Held[] {
  const held: Held[] = [];
  for (let step: Expr = phrase; step.kind === 'step' && step.step.kind === 'by'; step = step.base) {
    const one = lengthHeld(step.step.distance, WAYS[step.step.direction]);
    if (one === undefined) break;
    if (held.every(({ axis }) => dot(axis, one.axis) === 0)) held.push(one);
  }
  return held;
}

const WAYS = {
  up: { x: 0, y: -1 },
  down: { x: 0, y: 1 },
  left: { x: -1, y: 0 },
  right: { x: 1, y: 0 },
} as const;

/** Undefined for what is worked out, a share, or an angle. */
function lengthHeld(length: Expr, { x, y }: Point): Held | undefined {
  if (length.kind !== 'quantity' || length.unit === undefined) return undefined;
  if (written(length).kind !== 'length') return undefined;
  const { amount, unit } = length;
  const mm = written({ ...length, amount: 1 }).amount;
  return { axis: { x, y, amount, unit, mm }, at: length };
}

/** `on L 7cm from A`: along the line, away from A. */
function alongLine(
  { on, place }: Extract<Expr, { kind: 'placed' }>,
  at: Point,
  sibling: Sibling,
): Held | undefined {
  const path = pathAt(on, sibling);
  if (place.counted !== 'from' || path === undefined) return undefined;
  const { s } = path.locate(at);
  const from = place.point && pointAt(place.point, sibling);
  const began = from && path.locate(from).s;
  const bare = lengthHeld(place.value, { x: 0, y: 0 });
  if (bare === undefined || began === undefined) return undefined;
  const distance = bare.axis.amount * bare.axis.mm;
  // a point within the line may be counted from toward either end
  const way =
    Math.abs(s - began - distance) < SAME_PLACE ? 1 : Math.abs(began - s - distance) < SAME_PLACE ? -1 : 0;
  const onward = distance < SAME_PLACE && began > path.length / 2 ? -1 : way;
  return onward === 0 ? undefined : lengthHeld(place.value, scale(path.tangentAt(s), onward));
}

/** `P squared from L 1.5cm toward R`: out from L, on R's side. */
function squaredHeld(
  { line, distance, toward }: Extract<Step['step'], { kind: 'squared-out' }>,
  at: Point,
  sibling: Sibling,
): Held | undefined {
  const [path, side] = [pathAt(line, sibling), pointAt(toward, sibling)];
  if (path === undefined || side === undefined) return undefined;
  const { s } = path.locate(at);
  return lengthHeld(distance, facing(perpendicular(path.tangentAt(s)), subtract(side, path.pointAt(s))));
}

/** `P at 20deg below right for 12cm`: away from P. */
function bearingHeld({ base, step }: Step, at: Point, sibling: Sibling): Held | undefined {
  const from = pointAt(base, sibling);
  const way = from && normalised(subtract(at, from));
  return step.kind === 'bearing' && way !== undefined ? lengthHeld(step.distance, way) : undefined;
}

/** `P to Q hollow 1.2cm toward R`: square to the straight way, on R's side. */
function hollowHeld(
  { start, end, options }: Extract<Expr, { kind: 'way' }>,
  sibling: Sibling,
): Held | undefined {
  const hollow = options.find((option) => option.kind === 'hollow');
  const [from, to] = [pointAt(start, sibling), pointAt(end, sibling)];
  const side = hollow && pointAt(hollow.toward, sibling);
  const chord = from && to && normalised(subtract(to, from));
  if (hollow === undefined || side === undefined || chord === undefined) return undefined;
  return lengthHeld(hollow.depth, facing(perpendicular(chord), subtract(side, from!)));
}

/** The one of both ways along a line that goes toward something. */
const facing = (way: Point, toward: Point): Point => (dot(way, toward) < 0 ? scale(way, -1) : way);

function shapeAt(expr: Expr, sibling: Sibling): Shape | undefined {
  if (expr.kind === 'bracket') return shapeAt(expr.inside, sibling);
  return expr.kind === 'ref' && expr.path.length === 1 ? sibling(expr.path[0]!.text) : undefined;
}

function pathAt(expr: Expr, sibling: Sibling): Path | undefined {
  const shape = shapeAt(expr, sibling);
  return shape === undefined || shape.kind === 'point' ? undefined : shape.path;
}

function pointAt(expr: Expr, sibling: Sibling): Point | undefined {
  const shape = shapeAt(expr, sibling);
  return shape?.kind === 'point' ? shape.point : undefined;
}
