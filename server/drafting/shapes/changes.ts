/** Points and lines moved as paper is moved: turned, mirrored, moved, run parallel, laid, reversed. */
import { say } from '../../../grammar/say';
import type { Change, Step } from '../../../grammar/syntax';
import {
  add,
  apply,
  distance,
  isMirroring,
  layOn,
  mirror,
  parallelWithTight,
  rotation,
  scale,
  translation,
  type Affine,
  type Point,
} from '../../geometry';
import type { Shape } from '../model';
import { angleOf, lengthOf } from '../values/arithmetic';
import { printLength } from '../values/quantity';
import { report, wordsOf, type Reader } from '../values/reader';
import { DIRECTIONS } from './directions';
import { pathOf, pointOf, type PathShape } from './phrase';
import { ON_LINE } from './places';
import { sameKind } from './ways';

type Form<K extends Change['kind']> = Extract<Change, { kind: K }>;

export function changed(reader: Reader, expr: Step, form: Change, base: Shape): Shape | undefined {
  switch (form.kind) {
    case 'reversed':
      return needsPath(reader, expr, base, 'reversed', (shape) => sameKind(shape, shape.path.reversed()));
    case 'parallel':
      return needsPath(reader, expr, base, 'parallel', (shape) => parallelTo(reader, expr, form, shape));
    default: {
      const m = movement(reader, form);
      return m && transformed(base, m);
    }
  }
}

/** A shape carried by a rigid movement. */
export function transformed(shape: Shape, m: Affine): Shape {
  if (shape.kind === 'point') return { kind: 'point', point: apply(m, shape.point) };
  const path = shape.path.transformed(m);
  if (shape.kind === 'line') return { kind: 'line', path };
  return { ...shape, path, ...(shape.centre === undefined ? {} : { centre: apply(m, shape.centre) }) };
}

function needsPath(
  reader: Reader,
  expr: Step,
  base: Shape,
  word: string,
  act: (shape: PathShape) => Shape | undefined,
): Shape | undefined {
  if (base.kind !== 'point') return act(base);
  return report(
    reader,
    'wrong-kind',
    expr.base.at,
    say`${wordsOf(reader, expr.base)} is a point, but only a line or curve can be ${word}.`,
  );
}

/** The movement of the paper, or a finding that says why there is none. */
function movement(reader: Reader, form: Exclude<Change, Form<'reversed' | 'parallel'>>): Affine | undefined {
  switch (form.kind) {
    case 'turned': {
      const degrees = angleOf(reader, form.angle, 'turned');
      const about = pointOf(reader, form.about, 'about');
      if (degrees === undefined || about === undefined) return undefined;
      // y points down, so a positive turn is clockwise as seen; `anticlockwise` is the schoolbook's plain `turned`
      const sense = form.clockwise === true ? 1 : -1;
      return rotation(about, (sense * degrees * Math.PI) / 180);
    }
    case 'mirrored': {
      const across = pathOf(reader, form.across, 'mirrored across');
      if (across === undefined) return undefined;
      if (across.path.isStraight(ON_LINE)) return mirror(across.path.start, across.path.end);
      return report(
        reader,
        'wrong-kind',
        form.across.at,
        say`Paper folds along a straight line only; ${wordsOf(reader, form.across)} bends.`,
      );
    }
    case 'moved': {
      let by: Point = { x: 0, y: 0 };
      for (const one of form.by) {
        const length = lengthOf(reader, one.distance, 'moved');
        if (length === undefined) return undefined;
        by = add(by, scale(DIRECTIONS[one.direction], length));
      }
      return translation(by);
    }
    case 'laid':
      return laid(reader, form);
  }
}

function laid(reader: Reader, form: Form<'laid'>): Affine | undefined {
  const [anchor, on, second, toward] = [form.anchor, form.on, form.second, form.toward].map((expr) =>
    pointOf(reader, expr, 'laid'),
  );
  if (anchor === undefined || on === undefined || second === undefined || toward === undefined)
    return undefined;
  for (const [a, b, expr] of [
    [anchor, second, form.second],
    [on, toward, form.toward],
  ] as const) {
    if (distance(a, b) < ON_LINE) {
      return report(
        reader,
        'no-direction',
        expr.at,
        say`${wordsOf(reader, expr)} lies on the point it is to turn about, so it gives no direction.`,
      );
    }
  }
  const m = layOn(anchor, second, on, toward);
  return isMirroring(m) ? undefined : m;
}

function parallelTo(reader: Reader, expr: Step, form: Form<'parallel'>, shape: PathShape): Shape | undefined {
  const by = lengthOf(reader, form.distance, 'parallel');
  const toward = pointOf(reader, form.toward, 'toward');
  if (by === undefined || toward === undefined) return undefined;
  const { s } = shape.path.locate(toward);
  const at = shape.path.pointAt(s);
  const along = shape.path.tangentAt(s, s > shape.path.length / 2 ? 'before' : 'after');
  const side = along.x * (toward.y - at.y) - along.y * (toward.x - at.x);
  if (Math.abs(side) < ON_LINE) {
    return report(
      reader,
      'no-direction',
      form.toward.at,
      say`${wordsOf(reader, form.toward)} lies along ${wordsOf(reader, expr.base)}, so it does not say to which side. Name a point beside it.`,
    );
  }
  // as seen on paper, a point with a positive cross product lies to the right of travel (y points down)
  const { paths, tight } = parallelWithTight(shape.path, side > 0 ? -by : by);
  if (paths.length === 1) return sameKind(shape, paths[0]!);
  const where =
    tight[0] === undefined
      ? ''
      : say` (the tightest bend is ${printLength(tight[0].s0, reader.unit)} along it)`;
  return report(
    reader,
    'out-of-reach',
    expr.stepAt,
    say`${wordsOf(reader, expr.base)} bends tighter than ${printLength(by, reader.unit)}, so nothing runs parallel to it there${where}.`,
  );
}
