/** A connected run of lines and curves, measured by the distance walked along it. */
import { DEFAULT_ACCURACY, SAME_POINT } from './accuracy';
import { type Box, boxOf, distanceToBox, union } from './box';
import {
  bounds,
  controlBox,
  directionAt,
  line,
  pointAt,
  quadraticRoots,
  reversedSegment,
  type Segment,
  subsegment,
} from './cubic';
import { flattened } from './flatten';
import { lengthBetween, parameterAtLength, segmentLength } from './length';
import { nearestOnSegment } from './nearest';
import { angleBetween, cross, distance, normalised, ORIGIN, point, type Point, subtract } from './point';
import { type Affine, transformedSegment } from './transform';
import { segmentTurning } from './turning';

/** A place on a path: the segment and the parameter in it. */
export interface PathPlace {
  readonly index: number;
  readonly t: number;
}

/** The place of a path nearest to a point: `s` millimetres from the start, `distance` from the point. */
export interface Located {
  readonly s: number;
  readonly distance: number;
  readonly point: Point;
}

/**
 * Immutable; lengths are worked out once, when first asked for. Distances along the path (`s`, in millimetres) outside
 * 0..length are taken as the nearer end. The segments are taken end to end as they are given: a small gap between two
 * stays a gap, and no length is counted for it.
 */
export class Path {
  private ends: readonly number[] | undefined;
  private bounding: Box | undefined;
  private controls: readonly Box[] | undefined;

  private constructor(readonly segments: readonly Segment[]) {}

  /** No segments at all give a path of no size at the origin. */
  static of(segments: readonly Segment[]): Path {
    return new Path(segments.length > 0 ? segments : [line(ORIGIN, ORIGIN)]);
  }

  /** Several laid end to end; one alone is itself, with what it has worked out. */
  static joined(paths: readonly Path[]): Path {
    if (paths.length === 1) return paths[0]!;
    const segments: Segment[] = [];
    for (const path of paths) for (const seg of path.segments) segments.push(seg);
    return Path.of(segments);
  }

  static line(a: Point, b: Point): Path {
    return new Path([line(a, b)]);
  }

  static polyline(points: readonly Point[]): Path {
    if (points.length === 1) return Path.line(points[0]!, points[0]!);
    return Path.of(points.slice(1).map((p, i) => line(points[i]!, p)));
  }

  get start(): Point {
    return this.segments[0]!.p0;
  }

  get end(): Point {
    return this.segments[this.segments.length - 1]!.p3;
  }

  /** Whether the end is the start, within a tolerance in millimetres. */
  isClosed(tolerance = SAME_POINT): boolean {
    return distance(this.start, this.end) <= tolerance && this.length > tolerance;
  }

  /** Millimetres from the start to the end of each segment. */
  private get lengths(): readonly number[] {
    if (this.ends) return this.ends;
    let sum = 0;
    this.ends = this.segments.map((seg) => (sum += segmentLength(seg)));
    return this.ends;
  }

  /** Millimetres from the start to that of a segment. */
  private before(index: number): number {
    return index === 0 ? 0 : this.lengths[index - 1]!;
  }

  get length(): number {
    return this.lengths[this.segments.length - 1]!;
  }

  /** The exact box. */
  get box(): Box {
    this.bounding ??= this.segments.map(bounds).reduce(union);
    return this.bounding;
  }

  /** Boxes of the segments' control points, for ruling out work. */
  get controlBoxes(): readonly Box[] {
    this.controls ??= this.segments.map(controlBox);
    return this.controls;
  }

  /** Millimetres from the start to a place. */
  lengthTo(place: PathPlace): number {
    const seg = this.segments[place.index];
    if (!seg) return place.index < 0 ? 0 : this.length;
    if (place.t >= 1) return this.lengths[place.index]!;
    const before = this.before(place.index);
    return place.t <= 0 ? before : before + lengthBetween(seg, 0, place.t);
  }

  /** The place at a distance; at a joint, the end of the segment before or the start of the one after. */
  placeAt(s: number, side: 'before' | 'after' = 'after'): PathPlace {
    const ends = this.lengths;
    let lo = 0;
    let hi = this.segments.length - 1;
    while (lo < hi) {
      const middle = (lo + hi + 1) >> 1;
      const start = ends[middle - 1]!;
      const passed = side === 'after' ? s >= start - SAME_POINT : s > start + SAME_POINT;
      if (passed) lo = middle;
      else hi = middle - 1;
    }
    const from = this.before(lo);
    const total = ends[lo]! - from;
    const along = s - from;
    if (!(along > SAME_POINT)) return { index: lo, t: side === 'before' && !(total > SAME_POINT) ? 1 : 0 };
    if (along >= total - SAME_POINT) return { index: lo, t: 1 };
    return { index: lo, t: parameterAtLength(this.segments[lo]!, along, total, DEFAULT_ACCURACY) };
  }

  pointAt(s: number): Point {
    const { index, t } = this.placeAt(s);
    return pointAt(this.segments[index]!, t);
  }

  /**
   * Unit direction of travel at s, just before or just after a joint. Segments of no size are passed over; a path of no
   * size points to the right.
   */
  tangentAt(s: number, side: 'before' | 'after' = 'after'): Point {
    const { index, t } = this.placeAt(s, side);
    return (
      directionAt(this.segments[index]!, t, side) ?? this.neighbouringDirection(index, side) ?? point(1, 0)
    );
  }

  private neighbouringDirection(index: number, side: 'before' | 'after'): Point | undefined {
    for (let away = 1; away < this.segments.length; away++) {
      const before = this.segments[index - away];
      const after = this.segments[index + away];
      const arriving = before && directionAt(before, 1, 'before');
      const leaving = after && directionAt(after, 0, 'after');
      const found = side === 'before' ? (arriving ?? leaving) : (leaving ?? arriving);
      if (found) return found;
    }
    return undefined;
  }

  /** The place nearest to p; the first of several equally near. */
  locate(p: Point): Located {
    let best = { index: 0, t: 0, distance: Infinity, point: this.start };
    const boxes = this.controlBoxes;
    for (let index = 0; index < boxes.length; index++) {
      if (!(distanceToBox(boxes[index]!, p) < best.distance)) continue;
      const found = nearestOnSegment(this.segments[index]!, p);
      if (found.distance < best.distance)
        best = { index, t: found.t, distance: found.distance, point: found.point };
    }
    return { s: this.lengthTo(best), distance: best.distance, point: best.point };
  }

  /** The stretch from s0 to s1; run the other way where s0 > s1. */
  part(s0: number, s1: number): Path {
    if (s0 > s1) return this.part(s1, s0).reversed();
    const from = this.placeAt(s0, 'after');
    const to = this.placeAt(s1, 'before');
    if (from.index > to.index || (from.index === to.index && from.t >= to.t)) {
      const at = this.pointAt(s0);
      return Path.line(at, at);
    }
    const out: Segment[] = [];
    for (let i = from.index; i <= to.index; i++) {
      const t0 = i === from.index ? from.t : 0;
      const t1 = i === to.index ? to.t : 1;
      if (t0 < t1) out.push(subsegment(this.segments[i]!, t0, t1));
    }
    return Path.of(out);
  }

  splitAt(s: number): [Path, Path] {
    return [this.part(0, s), this.part(s, this.length)];
  }

  reversed(): Path {
    return new Path(this.segments.map(reversedSegment).reverse());
  }

  transformed(m: Affine): Path {
    return new Path(this.segments.map((seg) => transformedSegment(seg, m)));
  }

  joinedTo(other: Path): Path {
    return new Path([...this.segments, ...other.segments]);
  }

  /** Whether no point lies further than `tolerance` millimetres from the chord, and the path does not turn back. */
  isStraight(tolerance: number): boolean {
    const along = normalised(subtract(this.end, this.start));
    if (!along) return this.length <= tolerance;
    const straying = (p: Point): number => Math.abs(cross(along, subtract(p, this.start)));
    for (const seg of this.segments) {
      if (straying(seg.p0) > tolerance || straying(seg.p3) > tolerance) return false;
      if (seg.kind === 'line') continue;
      const legs = [subtract(seg.p1, seg.p0), subtract(seg.p2, seg.p1), subtract(seg.p3, seg.p2)];
      const [a, b, c] = legs.map((leg) => cross(along, leg)) as [number, number, number];
      for (const t of quadraticRoots(a, b, c)) if (straying(pointAt(seg, t)) > tolerance) return false;
    }
    return this.length - distance(this.start, this.end) <= 2 * tolerance;
  }

  /** Points along the path, such that no chord strays further than the tolerance (millimetres) from it. */
  polyline(tolerance: number): Point[] {
    const out: Point[] = [this.start];
    for (const seg of this.segments) {
      if (distance(out[out.length - 1]!, seg.p0) > SAME_POINT) out.push(seg.p0);
      flattened(seg, tolerance, out);
    }
    return out;
  }

  /** Whole angle turned through from the start's direction to the end's, corners included; clockwise on paper is positive. */
  turning(): number {
    let total = 0;
    let heading: Point | undefined;
    for (const seg of this.segments) {
      const leaving = directionAt(seg, 0, 'after');
      if (!leaving) continue;
      if (heading) total += angleBetween(heading, leaving);
      total += segmentTurning(seg);
      heading = directionAt(seg, 1, 'before');
    }
    return total;
  }
}

/** Box around several paths. */
export const boxOfPaths = (paths: readonly Path[]): Box =>
  paths.length === 0 ? boxOf([]) : paths.map((p) => p.box).reduce(union);
