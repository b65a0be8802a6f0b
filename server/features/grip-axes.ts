/** The plain lengths in a shape's phrase that say where it is, and which way it goes when each of them grows. */
import type { Axis } from '../../client/preview/protocol';
import type { Expr, Quantity, Step, WayOption } from '../../grammar/syntax';
import type { Shape } from '../drafting/model';
import { written } from '../drafting/values/quantity';
import { add, dot, normalised, perpendicular, scale, subtract, Path, type Point } from '../geometry';

export interface Held {
  readonly axis: Axis;
  /** The length in the text. */
  readonly at: Quantity;
}

/** The shape that a plain name of the same draft stands for. */
export type Sibling = (name: string) => Shape | undefined;

/** Lies on a line, or lies where it is said to lie, mm. */
const SAME_PLACE = 0.01;

/** What is taken hold of: a point, or the deepest place of a curve with the two ends that it is counted from. */
export interface Grasp {
  readonly at: Point;
  readonly ends?: readonly [Point, Point];
}

/** What a hand can change: steps by a length, a distance along a line or square to it, the depth of a hollow curve. */
export function heldBy(phrase: Expr, grasp: Grasp, sibling: Sibling): readonly Held[] {
  const { at } = grasp;
  if (phrase.kind === 'bracket') return heldBy(phrase.inside, grasp, sibling);
  if (phrase.kind === 'placed') return found(alongLine(phrase, at, sibling));
  if (phrase.kind === 'way') return found(hollowHeld(phrase.options, grasp, sibling));
  if (phrase.kind !== 'step') return [];
  switch (phrase.step.kind) {
    case 'squared-out':
      return found(squaredHeld(phrase.step, at, sibling));
    case 'bearing':
      return found(bearingHeld(phrase, at, sibling));
    case 'reach':
      return found(reachHeld(phrase, at, sibling));
    case 'moved':
      return eachWay([...phrase.step.by].reverse());
    default:
      return eachWay(stepsOf(phrase));
  }
}

const found = (one: Held | undefined): readonly Held[] => (one === undefined ? [] : [one]);

interface StepBy {
  readonly direction: keyof typeof WAYS;
  readonly distance: Expr;
}

/** `right 3cm down 2cm`: the steps by a length with which a phrase ends, the last first. */
function stepsOf(phrase: Step): StepBy[] {
  const steps: StepBy[] = [];
  for (let step: Expr = phrase; step.kind === 'step' && step.step.kind === 'by'; step = step.base)
    steps.push(step.step);
  return steps;
}

/** Each step by its own, from the last till one is worked out; of two steps one way only the last is moved. */
function eachWay(steps: readonly StepBy[]): readonly Held[] {
  const held: Held[] = [];
  for (const { direction, distance } of steps) {
    const one = lengthHeld(distance, WAYS[direction]);
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

/** `on L 7cm from A`, `2cm beyond A`: along the line, away from A. */
function alongLine(
  { on, place }: Extract<Expr, { kind: 'placed' }>,
  at: Point,
  sibling: Sibling,
): Held | undefined {
  const path = pathAt(on, sibling);
  const from = place.point && pointAt(place.point, sibling);
  const bare = lengthHeld(place.value, { x: 0, y: 0 });
  if (bare === undefined || path === undefined || from === undefined) return undefined;
  const [s, began] = [placeOn(path, at), placeOn(path, from)];
  const length = bare.axis.amount * bare.axis.mm;
  // counted the other way round a closed curve, or not from there at all
  if (Math.abs(Math.abs(s - began) - length) > SAME_PLACE) return undefined;
  const onward = length < SAME_PLACE ? firstWay(place.counted, began, path) : Math.sign(s - began);
  return lengthHeld(place.value, scale(path.tangentAt(Math.min(Math.max(s, 0), path.length)), onward));
}

/** Millimetres from the start of a path; of a straight one also on its extension. */
function placeOn(path: Path, point: Point): number {
  const { s, distance } = path.locate(point);
  const straight = path.segments.length === 1 && path.segments[0]!.kind === 'line';
  if (distance <= SAME_PLACE || !straight) return s;
  return dot(subtract(point, path.start), path.tangentAt(0));
}

/** Which way a place goes that does not lie away yet. */
function firstWay(counted: string | undefined, began: number, path: Path): number {
  if (counted === 'before' || counted === 'after') return counted === 'before' ? -1 : 1;
  const inward = began > path.length / 2 ? -1 : 1;
  return counted === 'beyond' ? -inward : inward;
}

/** `P squared from L 1.5cm toward R`: out from L, on the side where it lies, or R where it lies on L. */
function squaredHeld(
  { line, distance, toward }: Extract<Step['step'], { kind: 'squared-out' }>,
  at: Point,
  sibling: Sibling,
): Held | undefined {
  const path = pathAt(line, sibling);
  if (path === undefined) return undefined;
  const foot = path.pointAt(path.locate(at).s);
  const side = apart(at, foot) ? at : pointAt(toward, sibling);
  return (
    side &&
    lengthHeld(distance, facing(perpendicular(path.tangentAt(path.locate(at).s)), subtract(side, foot)))
  );
}

/** `P at 20deg below right for 12cm`: away from P. */
function bearingHeld({ base, step }: Step, at: Point, sibling: Sibling): Held | undefined {
  const from = pointAt(base, sibling);
  const way = from && normalised(subtract(at, from));
  return step.kind === 'bearing' && way !== undefined ? lengthHeld(step.distance, way) : undefined;
}

/** Where the compass meets a line so aslant, the point would run away from the hand. */
const ASLANT = 0.3;

/** `P reach 12.5cm to L`: along L, by as much as it leads away from P. */
function reachHeld({ base, step }: Step, at: Point, sibling: Sibling): Held | undefined {
  if (step.kind !== 'reach') return undefined;
  const [from, path] = [pointAt(base, sibling), pathAt(step.target, sibling)];
  const out = from && normalised(subtract(at, from));
  if (path === undefined || out === undefined) return undefined;
  const along = path.tangentAt(Math.min(Math.max(placeOn(path, at), 0), path.length));
  const share = dot(along, out);
  return Math.abs(share) < ASLANT ? undefined : lengthHeld(step.radius, scale(along, share));
}

/** `hollow 1.2cm toward R`: square to the straight way, on the side where it is deep, or R's. */
export function hollowHeld(
  options: readonly WayOption[],
  { at, ends }: Grasp,
  sibling: Sibling,
): Held | undefined {
  const hollow = options.find((option) => option.kind === 'hollow');
  const chord = ends && normalised(subtract(ends[1], ends[0]));
  if (hollow === undefined || chord === undefined) return undefined;
  const [across, off] = [perpendicular(chord), subtract(at, ends![0])];
  const deep = Math.abs(dot(across, off)) > SAME_PLACE;
  const side = deep ? at : pointAt(hollow.toward, sibling);
  return side && lengthHeld(hollow.depth, facing(across, subtract(side, ends![0])));
}

const apart = (p: Point, q: Point): boolean => Math.hypot(p.x - q.x, p.y - q.y) > SAME_PLACE;

/** The one of both ways along a line that goes toward something. */
const facing = (way: Point, toward: Point): Point => (dot(way, toward) < 0 ? scale(way, -1) : way);

function shapeAt(expr: Expr, sibling: Sibling): Shape | undefined {
  return expr.kind === 'ref' && expr.path.length === 1 ? sibling(expr.path[0]!.text) : undefined;
}

/** A line by its name, or one without a name: `(P to Q)`. */
function pathAt(expr: Expr, sibling: Sibling): Path | undefined {
  if (expr.kind === 'bracket') return pathAt(expr.inside, sibling);
  if (expr.kind === 'way' && expr.options.length === 0) {
    const [start, end] = [pointAt(expr.start, sibling), pointAt(expr.end, sibling)];
    return start && end && Path.line(start, end);
  }
  const shape = shapeAt(expr, sibling);
  return shape === undefined || shape.kind === 'point' ? undefined : shape.path;
}

/** A point by its name, an end of a line, or squared from one by plain lengths: `(P down 2cm)`. */
function pointAt(expr: Expr, sibling: Sibling): Point | undefined {
  if (expr.kind === 'bracket') return pointAt(expr.inside, sibling);
  if (expr.kind === 'step' && expr.step.kind === 'by') {
    const [base, by] = [
      pointAt(expr.base, sibling),
      lengthHeld(expr.step.distance, WAYS[expr.step.direction]),
    ];
    return base && by && add(base, scale(by.axis, by.axis.amount * by.axis.mm));
  }
  if (expr.kind !== 'ref') return undefined;
  const [name, end] = expr.path.map(({ text }) => text);
  if (name === 'origin') return { x: 0, y: 0 };
  const shape = sibling(name!);
  if (shape?.kind === 'point') return end === undefined ? shape.point : undefined;
  return end === 'start' ? shape?.path.start : end === 'end' ? shape?.path.end : undefined;
}
