/** The curve beside one segment, at an even or evenly growing distance, as cubics within a tolerance. */
import {
  bendAt,
  coordinateAt,
  cubic,
  derivativeAt,
  directionAt,
  extentOf,
  line,
  pointAt,
  secondDerivativeAt,
  slopeAt,
  type Cubic,
  type Segment,
} from './cubic';
import { lengthBetween, segmentLength } from './length';
import { add, cross, dot, lengthOf, type Point, scale, subtract } from './point';

/** Millimetres to the left of travel at the start and at the end of a segment. */
export interface Widths {
  readonly from: number;
  readonly to: number;
}

/** Parameters between which the curve is tighter than the distance, so that the parallel runs backwards. */
export interface TightSpan {
  readonly t0: number;
  readonly t1: number;
}

/** To the left of travel as seen on paper, where y runs down. */
export const leftOf = (direction: Point): Point => ({ x: direction.y, y: -direction.x });

/**
 * Halvings of one stretch. The error falls sixteenfold with each, so 8 go from a whole curve to a billionth of it; more
 * are only asked for where the source itself has a cusp, and there no number would do.
 */
const MAX_DEPTH = 8;

/** Places at which the turning is looked at for a change of sense; a tight spot shorter than 1/24 of a curve is missed. */
const LOOKS = 24;

/** Appends the parallel of one segment, backward stretches included; `tight` takes those. Nothing for a segment of no size. */
export function offsetSegment(
  seg: Segment,
  widths: Widths,
  tolerance: number,
  out: Segment[],
  tight: TightSpan[],
): void {
  if (seg.kind === 'line') {
    const along = directionAt(seg, 0);
    if (!along) return;
    const left = leftOf(along);
    out.push(line(add(seg.p0, scale(left, widths.from)), add(seg.p3, scale(left, widths.to))));
    return;
  }
  if (!(extentOf(seg) > 0) || !Number.isFinite(extentOf(seg))) return;
  const beside = new Beside(seg, widths);
  const stops = beside.cusps();
  for (let i = 0; i + 1 < stops.length; i++) {
    const t0 = stops[i]!;
    const t1 = stops[i + 1]!;
    if (beside.speedFactor((t0 + t1) / 2) < 0) tight.push({ t0, t1 });
    fit(beside, t0, t1, 0.7 * tolerance, 0, out);
  }
}

/** The parallel as a function of the segment's own parameter. */
class Beside {
  private readonly growth: number;
  private readonly slow: number;

  constructor(
    readonly seg: Cubic,
    readonly widths: Widths,
  ) {
    this.growth = widths.to === widths.from ? 0 : (widths.to - widths.from) / segmentLength(seg);
    this.slow = 1e-9 * extentOf(seg);
  }

  width(t: number): number {
    return this.growth === 0
      ? this.widths.from
      : this.widths.from + this.growth * lengthBetween(this.seg, 0, t);
  }

  /**
   * How fast the direction turns with the parameter, radians; its limit where the handle has no length.
   *
   * @param dx, dy the derivative there
   */
  private turnRate(t: number, dx: number, dy: number): number {
    const { p0, p1, p2, p3 } = this.seg;
    const size = dx * dx + dy * dy;
    if (size > this.slow * this.slow)
      return (dx * bendAt(p0.y, p1.y, p2.y, p3.y, t) - dy * bendAt(p0.x, p1.x, p2.x, p3.x, t)) / size;
    const dd = secondDerivativeAt(this.seg, t);
    const bend = dot(dd, dd);
    const ddd = subtract(secondDerivativeAt(this.seg, 1), secondDerivativeAt(this.seg, 0));
    return bend > 0 ? cross(dd, ddd) / (2 * bend) : 0;
  }

  /** Speed of the parallel along the source's direction; negative where it runs backwards. */
  speedFactor(t: number): number {
    const { p0, p1, p2, p3 } = this.seg;
    const dx = slopeAt(p0.x, p1.x, p2.x, p3.x, t);
    const dy = slopeAt(p0.y, p1.y, p2.y, p3.y, t);
    return Math.sqrt(dx * dx + dy * dy) + this.width(t) * this.turnRate(t, dx, dy);
  }

  place(t: number, side: 'before' | 'after'): { at: Point; along: Point } {
    const direction = directionAt(this.seg, t, side) ?? { x: 1, y: 0 };
    const left = leftOf(direction);
    const forward = scale(direction, this.speedFactor(t));
    const outward = scale(left, this.growth * lengthOf(derivativeAt(this.seg, t)));
    return { at: add(pointAt(this.seg, t), scale(left, this.width(t))), along: add(forward, outward) };
  }

  /** 0, the parameters where the parallel turns back, 1. */
  cusps(): number[] {
    const stops = [0];
    let before = this.speedFactor(0);
    for (let i = 1; i <= LOOKS; i++) {
      const now = this.speedFactor(i / LOOKS);
      if (before < 0 !== now < 0) stops.push(this.turningBack((i - 1) / LOOKS, i / LOOKS, before < 0));
      before = now;
    }
    stops.push(1);
    return stops.filter((t, i) => i === 0 || t - stops[i - 1]! > 1e-9);
  }

  private turningBack(from: number, to: number, negative: boolean): number {
    let lo = from;
    let hi = to;
    for (let step = 0; step < 45; step++) {
      const middle = (lo + hi) / 2;
      if (this.speedFactor(middle) < 0 === negative) lo = middle;
      else hi = middle;
    }
    return (lo + hi) / 2;
  }

  /** How far q, on a fit near parameter t, is from lying at the right distance. */
  error(q: Point, near: number): number {
    const { p0, p1, p2, p3 } = this.seg;
    let t = near;
    for (let step = 0; step < 4; step++) {
      const gapX = q.x - coordinateAt(p0.x, p1.x, p2.x, p3.x, t);
      const gapY = q.y - coordinateAt(p0.y, p1.y, p2.y, p3.y, t);
      const dx = slopeAt(p0.x, p1.x, p2.x, p3.x, t);
      const dy = slopeAt(p0.y, p1.y, p2.y, p3.y, t);
      const bendX = bendAt(p0.x, p1.x, p2.x, p3.x, t);
      const bendY = bendAt(p0.y, p1.y, p2.y, p3.y, t);
      const slope = dx * dx + dy * dy - (gapX * bendX + gapY * bendY);
      if (slope === 0) break;
      t = Math.min(1, Math.max(0, t + (gapX * dx + gapY * dy) / slope));
    }
    return Math.abs(lengthOf(subtract(q, pointAt(this.seg, t))) - Math.abs(this.width(t)));
  }
}

/**
 * One cubic that leaves and arrives as the parallel does (the parallel of a cubic is none: Tiller & Hanson, IEEE CG&A 4,
 * 1984), halved until it is true at the quarters.
 */
function fit(beside: Beside, t0: number, t1: number, tolerance: number, depth: number, out: Segment[]): void {
  const start = beside.place(t0, 'after');
  const end = beside.place(t1, 'before');
  const third = (t1 - t0) / 3;
  const curve = cubic(
    start.at,
    add(start.at, scale(start.along, third)),
    subtract(end.at, scale(end.along, third)),
    end.at,
  );
  const within = (u: number): boolean => beside.error(pointAt(curve, u), t0 + u * (t1 - t0)) <= tolerance;
  if (depth >= MAX_DEPTH || (within(0.5) && within(0.25) && within(0.75))) {
    out.push(curve);
    return;
  }
  const middle = (t0 + t1) / 2;
  fit(beside, t0, middle, tolerance, depth + 1, out);
  fit(beside, middle, t1, tolerance, depth + 1, out);
}
