/** The steps that lead from one point to another: squared, on a bearing, by compass, dropped, squared out. */
import { say } from '../../../grammar/say';
import type { Direction, Expr, Midpoint, Step, StepForm } from '../../../grammar/syntax';
import { add, dot, midpoint, perpendicularFeet, scale, subtract, type Point } from '../../geometry';
import { lengthOf } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { replace, report, wordsOf, type Reader } from '../values/reader';
import { bearingOf, DIRECTIONS } from './directions';
import { compassMeets, rulerMeets } from './meeting';
import { pathOf, pointOf, shapeOf } from './phrase';
import { picked } from './picking';

type Form<K extends StepForm['kind']> = Extract<StepForm, { kind: K }>;
export type PointForm = Form<'by' | 'until' | 'bearing' | 'reach' | 'dropped' | 'squared-out'>;

export function midpointOf(reader: Reader, expr: Midpoint): Point | undefined {
  const one = pointOf(reader, expr.one, 'midpoint of');
  const other = pointOf(reader, expr.other, 'midpoint of');
  return one && other && midpoint(one, other);
}

export function pointStep(reader: Reader, expr: Step, form: PointForm): Point | undefined {
  const from = pointOf(reader, expr.base, () => wordsOf(reader, { at: expr.stepAt }).split(' ')[0]!);
  if (from === undefined) return undefined;
  switch (form.kind) {
    case 'by': {
      const by = lengthOf(reader, form.distance, form.direction);
      return by === undefined ? undefined : add(from, scale(DIRECTIONS[form.direction], by));
    }
    case 'until':
      return until(reader, expr, form, from);
    case 'bearing': {
      const direction = bearingOf(reader, form.bearing);
      const by = lengthOf(reader, form.distance, 'for');
      return direction === undefined || by === undefined ? undefined : add(from, scale(direction, by));
    }
    case 'reach':
      return reach(reader, expr, form, from);
    case 'dropped':
      return dropped(reader, expr, form, from);
    case 'squared-out':
      return squaredOut(reader, form, from);
  }
}

const OPPOSITE: Readonly<Record<Direction, Direction>> = {
  up: 'down',
  down: 'up',
  left: 'right',
  right: 'left',
};

/** Below this a point is level already, whichever way the ruler was laid: a tenth of what a pencil can show. */
const LEVEL = 1e-2;

function until(reader: Reader, expr: Step, form: Form<'until'>, from: Point): Point | undefined {
  const target = shapeOf(reader, form.target);
  if (target === undefined) return undefined;
  if (target.kind === 'point') {
    const level =
      form.direction === 'up' || form.direction === 'down'
        ? { x: from.x, y: target.point.y }
        : { x: target.point.x, y: from.y };
    if (form.direction === undefined) return level;
    const ahead = dot(subtract(level, from), DIRECTIONS[form.direction]);
    return ahead >= -LEVEL ? level : behind(reader, expr, form.direction, form.target, -ahead);
  }
  const direction = DIRECTIONS[form.direction ?? 'right'];
  const all = rulerMeets(from, direction, target);
  const ahead = form.direction === undefined ? all : all.filter((one) => one.ahead >= -LEVEL);
  const names = say`The ruler laid ${form.direction ?? 'across'} from ${wordsOf(reader, expr.base)}`;
  if (ahead.length > 0) {
    return picked(reader, ahead, form.pick, expr.stepAt, say`${names} meets ${wordsOf(reader, form.target)}`);
  }
  if (all.length > 0) return behind(reader, expr, form.direction!, form.target, -all[all.length - 1]!.ahead);
  const off = offRuler(from, direction, target.path.box);
  const by = off > 0 ? say`: it passes ${printLength(off, reader.unit)} beside it` : '';
  return report(
    reader,
    'never-meet',
    expr.stepAt,
    say`${names} never meets ${wordsOf(reader, form.target)}${by}.`,
  );
}

/** How far a shape's box lies beside an upright or level ruler. */
function offRuler(
  from: Point,
  direction: Point,
  box: { minX: number; minY: number; maxX: number; maxY: number },
): number {
  const [at, low, high] = direction.x === 0 ? [from.x, box.minX, box.maxX] : [from.y, box.minY, box.maxY];
  return Math.max(low - at, at - high);
}

/** The target lies the other way. */
function behind(reader: Reader, expr: Step, direction: Direction, target: Expr, by: number): undefined {
  const other = OPPOSITE[direction];
  const word = { from: expr.stepAt.from, to: expr.stepAt.from + direction.length };
  return report(
    reader,
    'other-way',
    expr.stepAt,
    say`${wordsOf(reader, target)} lies ${printLength(by, reader.unit)} ${other} from ${wordsOf(reader, expr.base)}, not ${direction}.`,
    { fixes: [replace(reader, say`Write ${other} to`, word, other)] },
  );
}

function reach(reader: Reader, expr: Step, form: Form<'reach'>, from: Point): Point | undefined {
  const radius = lengthOf(reader, form.radius, 'reach');
  const target = pathOf(reader, form.target, 'reach … to');
  if (radius === undefined || target === undefined) return undefined;
  const name = wordsOf(reader, form.target);
  const compass = say`The compass of ${printLength(radius, reader.unit)} from ${wordsOf(reader, expr.base)}`;
  if (radius <= 0)
    return report(
      reader,
      'no-such-number',
      form.radius.at,
      say`${compass} has no opening: the length must be above zero.`,
    );
  const candidates = compassMeets(from, radius, target);
  if (candidates.length > 0)
    return picked(reader, candidates, form.pick, expr.stepAt, say`${compass} meets ${name}`);
  return report(
    reader,
    'out-of-reach',
    expr.stepAt,
    say`${compass} never reaches ${name}: ${nearestAndFarthest(reader, from, radius, target)}.`,
  );
}

function nearestAndFarthest(
  reader: Reader,
  from: Point,
  radius: number,
  target: NonNullable<ReturnType<typeof pathOf>>,
): string {
  if (target.kind === 'line') {
    const along = target.path.tangentAt(0);
    const off = subtract(from, target.path.start);
    return say`nearest ${printLength(Math.abs(off.x * along.y - off.y * along.x), reader.unit)}`;
  }
  const near = target.path.locate(from).distance;
  if (near > radius) return say`nearest ${printLength(near, reader.unit)}`;
  const far = Math.max(
    ...target.path.polyline(0.05).map((point) => Math.hypot(point.x - from.x, point.y - from.y)),
  );
  return say`farthest ${printLength(far, reader.unit)}`;
}

/** `P squared onto L`: the foot of the square; a line extends, a curve does not. */
function dropped(reader: Reader, expr: Step, form: Form<'dropped'>, from: Point): Point | undefined {
  const target = pathOf(reader, form.onto, 'squared onto');
  if (target === undefined) return undefined;
  if (target.kind === 'line') {
    const along = target.path.tangentAt(0);
    return add(target.path.start, scale(along, dot(subtract(from, target.path.start), along)));
  }
  const feet = perpendicularFeet(target.path, from).map(({ point }) => ({ point, drawn: true }));
  const base = wordsOf(reader, expr.base);
  const name = wordsOf(reader, form.onto);
  if (feet.length > 0)
    return picked(reader, feet, form.pick, expr.stepAt, say`${base} drops square onto ${name}`);
  const near = target.path.locate(from);
  return report(
    reader,
    'out-of-reach',
    expr.stepAt,
    say`No square from ${base} falls on ${name}: the curve ends before it (its nearest point is an end, ${printLength(near.distance, reader.unit)} away).`,
  );
}

/** `P squared from L 1.5cm toward R`: out from L at P, on R's side. */
function squaredOut(reader: Reader, form: Form<'squared-out'>, from: Point): Point | undefined {
  const line = pathOf(reader, form.line, 'squared from');
  const by = lengthOf(reader, form.distance, 'squared from');
  const toward = pointOf(reader, form.toward, 'toward');
  if (line === undefined || by === undefined || toward === undefined) return undefined;
  const along = line.path.tangentAt(line.path.locate(from).s);
  const out = { x: -along.y, y: along.x };
  const side = dot(subtract(toward, from), out);
  if (Math.abs(side) > LEVEL) return add(from, scale(out, side > 0 ? by : -by));
  return report(
    reader,
    'no-direction',
    form.toward.at,
    say`${wordsOf(reader, form.toward)} lies along ${wordsOf(reader, form.line)}, so it does not say to which side. Name a point beside it.`,
  );
}
